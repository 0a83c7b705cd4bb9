"""Which rails must face as the plan has them for it to come out as drawn.

A rail lies as its builder faces when nothing beside it has room, and mostly the next rail that joins it
decides otherwise. So the plan is built once more, step by step, with every facing left open: a rail that
lies as it faces is *pending*, it may lie along either axis. Whatever is placed within sight of pending rails
is placed in every case of them. Where all cases come out alike nothing needs a mark; where they do not, the
rails on which it hangs get one, and from then on lie as the plan has them.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from itertools import product
from typing import Final

from model.grid import Cell, Heading
from model.parts import RAILS, Part
from model.pieces import Piece
from model.plan import Plan
from model.steps.bound import rail_parts, rails_beside
from model.track.layout import SEEN_FROM
from model.track.rails import Overlay, pack, unpack
from model.track.settling import place
from model.track.shapes import Shape

LYING: Final = (Shape.NORTH_SOUTH, Shape.EAST_WEST)
CASES_LIMIT: Final = 6
"""Pending rails within sight of a placing that are told apart; of more, all are marked."""

Written = dict[int, Shape]
"""What a placing writes, by packed cell."""


def facing_marks(plan: Plan, laid: Iterable[Piece], ordered: Collection[Cell]) -> frozenset[Cell]:
    """The rails that must be placed facing as the plan has them, given those whose order matters.

    ``laid`` is an order of placing that gives the plan as drawn, that of the builder's steps.

    A rail without neighbours always lies as its builder faces. Other rails whose order does not matter are
    linked to all their neighbours in the end, and need no mark; the rest is built without them. What is
    pending then and has one of them beside it will be joined by it, whatever it faces.
    """
    rails = rail_parts(plan)
    alone = {unpack(key) for key in rails if not any(rails_beside(rails, key))}
    building = _Building()
    for piece in laid:
        if piece.at in ordered and piece.part in RAILS:
            building.place(piece)
    free = rails.keys() - {pack(cell) for cell in ordered}
    pending = {cell for cell in building.pending if not any(rails_beside(free, pack(cell)))}
    return frozenset(alone | building.marked | pending)


class _Building:
    """A plan as it is built, with the rails that may lie either way."""

    def __init__(self) -> None:
        self.marked: set[Cell] = set()
        self._rails: dict[int, Shape] = {}
        self._straight_only: set[int] = set()
        self._pending: dict[int, Cell] = {}

    @property
    def pending(self) -> set[Cell]:
        """The rails that still lie as they were faced."""
        return set(self._pending.values())

    def place(self, piece: Piece) -> None:
        """Places the next rail, in every case of what is pending within its sight."""
        key, heading = pack(piece.at), piece.facing.heading or Heading.NORTH
        if piece.part is not Part.RAIL:
            self._straight_only.add(key)
        near = [seen for offset in SEEN_FROM if (seen := key - offset) in self._pending]
        if len(near) > CASES_LIMIT or not _alike(self._cases(key, heading, near)):
            self._mark(near)
            near = []
        own = self._written({}, key, heading)
        self._leave_open(piece.at, own, [*self._cases(key, heading.clockwise, near)])
        self._rails.update(own)
        for seen in near:
            if seen in own:
                del self._pending[seen]

    def _leave_open(self, cell: Cell, own: Written, other: list[Written]) -> None:
        """The rail becomes pending where facing otherwise changes only how it lies, else it is marked."""
        key = pack(cell)
        lying = {own[key], *(written[key] for written in other)}
        if not _alike(_without(key, written) for written in (own, *other)):
            self.marked.add(cell)
        elif lying == set(LYING):
            self._pending[key] = cell
        elif len(lying) > 1:
            self.marked.add(cell)

    def _mark(self, keys: Iterable[int]) -> None:
        self.marked.update(self._pending.pop(key) for key in keys)

    def _cases(self, key: int, heading: Heading, near: list[int]) -> Iterator[Written]:
        for lying in product(LYING, repeat=len(near)):
            yield self._written(dict(zip(near, lying, strict=True)), key, heading)

    def _written(self, assumed: Written, key: int, heading: Heading) -> Written:
        """What placing a rail changes where the pending rails lie as assumed."""
        before = Overlay(self._rails)
        before.changed.update(assumed)
        after = Overlay(before)
        place(after, self._straight_only, key, heading)
        return {
            written: shape
            for written, shape in after.changed.items()
            if written in self._pending or shape != before.get(written)
        }


def _alike(cases: Iterable[Written]) -> bool:
    first, *others = cases
    return all(other == first for other in others)


def _without(key: int, written: Written) -> Written:
    return {other: shape for other, shape in written.items() if other != key}
