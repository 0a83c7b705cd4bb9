"""The search for the next branch of a line: A* over cells and strengths.

After Hart, Nilsson and Raphael 1968, with several labels a cell of which none is better in everything, as in
Martins 1984 (both from memory).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from heapq import heappop, heappush
from typing import Final, NamedTuple

from model.wiring.laying.goals import Goals
from model.wiring.laying.tree import DUST_PRICE, FULL, REPEATER_DELAY, REPEATER_PRICE, Step, Tree

_REACH = FULL + 1
"""Cells that one more repeater leads further: it and fifteen dust."""
_DEAR = REPEATER_PRICE - DUST_PRICE
"""What a repeater costs more than the dust in whose place it stands."""


DEAREST: Final = 1 << 30
"""No line costs as much."""


class Tables(NamedTuple):
    """What takes the line, and what it costs there above the price of its parts."""

    dust_ok: bytearray
    rest_ok: bytearray
    clear: bytearray
    dust_extra: Mapping[int, int]
    rest_extra: Mapping[int, int]
    head_extra: Mapping[int, int]


class Budget:
    """How many cells may still be looked at: hopeless searches end, and everywhere at the same place."""

    def __init__(self, left: int) -> None:
        self.left = left


_Move = tuple[int, int, int, int, int, int, int]
"""To a dust: price so far, its cell, strength, delay, segment, the repeater before it, the head of the step.

A plain tuple, since many are made.
"""


class _Label(NamedTuple):
    """A way from the tree to a dust."""

    bound: int
    """What the whole branch costs at least."""
    number: int
    """Makes labels differ; of those with one bound the latest comes first."""
    move: _Move
    before: _Label | None
    """``None`` for the dust of the tree."""


class Search:
    """Finds one branch, from the tree as it is to the cheapest of some goals."""

    def __init__(self, tables: Tables, tree: Tree, goals: Goals, headings: tuple[int, ...]) -> None:
        field = tree.field
        self._up = field.up
        self._near = frozenset(field.near)
        self._stacked = (0, field.up, -field.up)
        self._headings = headings
        self._tables = tables
        self._tree = tree
        self._goals = goals
        self._barred = tree.bars_parts()
        self._heap: list[_Label] = []
        self._pushed = 0
        self._below = DEAREST
        self._done: dict[int, list[tuple[int, int, int]]] = {}
        """By cell the labels that were the best so far: price, strength, delay."""

    def run(self, budget: Budget, below: int) -> list[Step] | None:
        """The steps of a cheapest branch; ``None`` where none costs less than ``below``.

        ``None`` also where the budget does not reach.
        """
        self._below = below
        for step in self._tree.steps.values():
            self._push((0, step.cell, step.strength, step.delay, step.segment, 0, 0), None)
        while self._heap and budget.left > 0:
            label = heappop(self._heap)
            move = label.move
            if self._is_worse(move) or self._clashes(label):
                continue
            budget.left -= 1
            self._done.setdefault(move[1], []).append((move[0], move[2], move[3]))
            if move[3] <= self._goals.latest.get(move[1], -1):
                return _steps(label)
            for other in self._moves(move):
                self._push(other, label)
        return None

    def _moves(self, move: _Move) -> Iterator[_Move]:
        tables, up, blocks = self._tables, self._up, self._tree.blocks
        price, cell, strength, delay, segment, _, _ = move
        cost, weaker = price + DUST_PRICE, strength - 1
        for way in self._headings:
            beside = cell + way
            if weaker:
                if self._is_free(beside, segment):
                    yield cost + tables.dust_extra.get(beside, 0), beside, weaker, delay, segment, 0, 0
                for other, head in ((beside + up, cell + up), (beside - up, beside)):
                    if tables.clear[head] and head not in blocks and self._is_free(other, segment):
                        extra = tables.dust_extra.get(other, 0) + tables.head_extra.get(head, 0)
                        yield cost + extra, other, weaker, delay, segment, 0, head
            if tables.rest_ok[beside] and beside not in self._barred:
                front, after = beside + way, max(self._tree.segments, segment + 1)
                if self._is_free(front, after):
                    extra = tables.dust_extra.get(front, 0) + tables.rest_extra.get(beside, 0)
                    later = delay + REPEATER_DELAY
                    yield cost + REPEATER_PRICE + extra, front, FULL, later, after, beside, 0

    def _is_free(self, cell: int, segment: int) -> bool:
        """Whether dust of a segment can lie in a cell, as far as the tree goes."""
        if not self._tables.dust_ok[cell] or cell in self._barred:
            return False
        return self._tree.near.get(cell, segment) == segment

    def _push(self, move: _Move, before: _Label | None) -> None:
        price, cell, strength, delay, _, _, _ = move
        left = self._goals.apart(cell)
        repeaters = max(0, (left - strength + _REACH) // _REACH)
        in_time = delay + REPEATER_DELAY * repeaters <= self._goals.last
        if in_time and not self._is_worse(move):
            self._pushed -= 1
            bound = price + left * DUST_PRICE + repeaters * _DEAR
            if bound < self._below:
                heappush(self._heap, _Label(bound, self._pushed, move, before))

    def _is_worse(self, move: _Move) -> bool:
        """Whether an earlier label of the cell is as good in everything."""
        for price, strength, delay in self._done.get(move[1], ()):
            if price <= move[0] and strength >= move[2] and delay <= move[3]:
                return True
        return False

    def _clashes(self, label: _Label) -> bool:
        """Whether the last move gets in the way of an earlier one of the same branch."""
        _, cell, _, _, segment, repeater, head = label.move
        up, near, stacked = self._up, self._near, self._stacked
        before = label.before
        while before is not None and before.before is not None:
            _, dust, _, _, earlier, rest, clear = before.move
            if cell - dust in stacked or (segment != earlier and cell - dust in near):
                return True
            if (clear and clear + up in (cell, repeater)) or (head and head + up in (dust, rest)):
                return True
            if rest and (cell - rest in stacked or (repeater and repeater - rest in stacked)):
                return True
            if repeater and repeater - dust in stacked:
                return True
            before = before.before
        return False


def _steps(label: _Label) -> list[Step]:
    found: list[Step] = []
    while label.before is not None:
        _, cell, strength, delay, segment, repeater, head = label.move
        label = label.before
        found.append(Step(cell, strength, delay, segment, repeater, head, label.move[1]))
    found.reverse()
    return found
