"""The search for the next branch of a line: A* over cells and strengths.

After Hart, Nilsson and Raphael 1968, with several labels a cell of which none is better in everything, as in
Martins 1984 (both from memory).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from heapq import heappop, heappush
from typing import NamedTuple

from model.wiring.laying_field import Field
from model.wiring.laying_tree import DUST_PRICE, FULL, REPEATER_DELAY, REPEATER_PRICE, Step, Tree

_REACH = FULL + 1
"""Cells that one more repeater leads further: it and fifteen dust."""
_DEAR = REPEATER_PRICE - DUST_PRICE
"""What a repeater costs more than the dust in whose place it stands."""


class Tables(NamedTuple):
    """What takes the line, and what it costs there above the price of its parts."""

    dust_ok: bytearray
    rest_ok: bytearray
    clear: bytearray
    dust_extra: Mapping[int, int]
    rest_extra: Mapping[int, int]
    head_extra: Mapping[int, int]


class _Label(NamedTuple):
    bound: int
    number: int
    """Makes labels differ; of those with one bound the latest comes first."""
    price: int
    step: Step
    before: _Label | None


class Branches:
    """Finds branches of one line, each from the tree as it is to the cheapest of some goals."""

    def __init__(self, field: Field, tables: Tables, headings: tuple[int, ...]) -> None:
        self._field = field
        self._tables = tables
        self._ways = tuple((way, way + field.up, way - field.up) for way in headings)
        self._near = frozenset(field.near)
        self._stacked = (0, field.up, -field.up)

    def find(
        self, tree: Tree, goals: Mapping[int, int | None], apart: Callable[[int], int]
    ) -> list[Step] | None:
        """The steps of a cheapest branch to one of ``goals``, each with its latest delay, if any.

        ``apart`` tells how many steps at least a cell is from all goals.
        """
        self._heap: list[_Label] = []
        self._tree = tree
        self._apart = apart
        self._number = 0
        self._latest = (
            None if None in goals.values() else max((each or 0 for each in goals.values()), default=0)
        )
        bars = tree.bars_parts()
        self._barred, self._blocks, self._tree_near = bars, tree.blocks, tree.near
        done: dict[int, list[tuple[int, int, int]]] = {}
        for step in tree.steps.values():
            self._push(0, step, None)
        while self._heap:
            label = heappop(self._heap)
            step = label.step
            fronts = done.setdefault(step.cell, [])
            rank = (label.price, step.strength, step.delay)
            if any(p <= rank[0] and s >= rank[1] and d <= rank[2] for p, s, d in fronts):
                continue
            if label.before is not None and self._clashes(label):
                continue
            fronts.append(rank)
            if step.cell in goals and label.before is not None:
                latest = goals[step.cell]
                if latest is None or step.delay <= latest:
                    return _steps(label)
            self._expand(label)
        return None

    def _expand(self, label: _Label) -> None:
        tables, price, step = self._tables, label.price, label.step
        up, dust_ok, clear = self._field.up, tables.dust_ok, tables.clear
        cell, strength, delay, segment = step.cell, step.strength - 1, step.delay, step.segment
        for level, rising, falling in self._ways:
            if strength > 0:
                other = cell + level
                if self._free(other, segment):
                    cost = price + DUST_PRICE + tables.dust_extra.get(other, 0)
                    self._push(cost, Step(other, strength, delay, segment, 0, 0, cell), label)
                for other, head in ((cell + rising, cell + up), (cell + falling, cell + level)):
                    if (
                        dust_ok[other]
                        and clear[head]
                        and head not in self._blocks
                        and self._free(other, segment)
                    ):
                        extra = tables.dust_extra.get(other, 0) + tables.head_extra.get(head, 0)
                        cost = price + DUST_PRICE + extra
                        self._push(cost, Step(other, strength, delay, segment, 0, head, cell), label)
            self._repeat(label, level)

    def _repeat(self, label: _Label, way: int) -> None:
        """A repeater beside the dust, and dust in front of it."""
        tables, step = self._tables, label.step
        repeater, front = step.cell + way, step.cell + 2 * way
        if not tables.rest_ok[repeater] or repeater in self._barred:
            return
        delay = step.delay + REPEATER_DELAY
        if self._latest is not None and delay > self._latest:
            return
        segment = max(self._tree.segments, step.segment + 1)
        if self._free(front, segment):
            extra = tables.dust_extra.get(front, 0) + tables.rest_extra.get(repeater, 0)
            price = label.price + DUST_PRICE + REPEATER_PRICE + extra
            self._push(price, Step(front, FULL, delay, segment, repeater, 0, step.cell), label)

    def _free(self, cell: int, segment: int) -> bool:
        if not self._tables.dust_ok[cell] or cell in self._barred:
            return False
        return self._tree_near.get(cell, segment) == segment

    def _push(self, price: int, step: Step, before: _Label | None) -> None:
        left = self._apart(step.cell)
        repeaters = max(0, -((step.strength - 1 - left) // _REACH))
        bound = price + left * DUST_PRICE + repeaters * _DEAR
        self._number -= 1
        heappush(self._heap, _Label(bound, self._number, price, step, before))

    def _clashes(self, label: _Label) -> bool:
        """Whether the last step gets in the way of an earlier one of the same branch."""
        step, up = label.step, self._field.up
        before, near, stacked = label.before, self._near, self._stacked
        cell, segment, repeater, head = step.cell, step.segment, step.repeater, step.head
        while before is not None and before.before is not None:
            earlier = before.step
            apart = cell - earlier.cell
            if apart in stacked or (segment != earlier.segment and apart in near):
                return True
            if earlier.head and earlier.head in (cell - up, repeater - up):
                return True
            if head and head in (earlier.cell - up, earlier.repeater - up):
                return True
            if earlier.repeater and (cell - earlier.repeater in stacked):
                return True
            if repeater and (
                repeater - earlier.cell in stacked
                or (earlier.repeater and repeater - earlier.repeater in stacked)
            ):
                return True
            before = before.before
        return False


def _steps(label: _Label | None) -> list[Step]:
    found: list[Step] = []
    while label is not None and label.before is not None:
        found.append(label.step)
        label = label.before
    found.reverse()
    return found
