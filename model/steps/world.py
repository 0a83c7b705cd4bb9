"""The world as it is built: how the rails lie after each step."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import NamedTuple

from model.grid import Cell, Heading
from model.parts import Part
from model.pieces import Piece
from model.steps.signals import rails_touched
from model.track.layout import Layout
from model.track.rails import Overlay, Rails, pack, unpack
from model.track.settling import notice, place
from model.track.shapes import Shape


class Sight(NamedTuple):
    """What a builder sees of the rails after a step."""

    laid: dict[Cell, Shape]
    """Those placed, in the order of placing."""
    bent: dict[Cell, tuple[Shape, Shape]]
    """Those that stood already and lie in another shape now: before, and after."""
    for_now: frozenset[Cell]
    """Of both, those that will be bent again."""
    turned: dict[Cell, Shape]
    """What becomes of those to which a detector rail gives notice as it is placed, where they do not stay."""

    @property
    def shapes(self) -> dict[Cell, Shape]:
        """Of all that changed."""
        return self.laid | {cell: after for cell, (_, after) in self.bent.items()}


class World:
    """The rails that stand so far; first there are none."""

    def __init__(self, layout: Layout) -> None:
        self._layout = layout
        self._rails: dict[int, Shape] = {}

    def lay(self, pieces: Sequence[Piece]) -> Sight:
        """Places rails one after another."""
        watched = _Watched(self._rails)
        self._place(watched, pieces, _faced)
        laid = {piece.at: self._rails[pack(piece.at)] for piece in pieces}
        bent = {
            unpack(key): (before, self._rails[key])
            for key, before in watched.before.items()
            if before is not None and before is not self._rails[key]
        }
        for_now = (cell for cell in (*laid, *bent) if not self._lies_as_planned(cell))
        return Sight(laid, bent, frozenset(for_now), dict(self._turned_by(pieces)))

    def shows_facing(self, pieces: Sequence[Piece]) -> bool:
        """Whether something would lie otherwise, if only for now, were all of them laid facing across."""
        as_planned, across = Overlay(self._rails), Overlay(self._rails)
        self._place(as_planned, pieces, _faced)
        self._place(across, pieces, lambda piece: _faced(piece).clockwise)
        return as_planned.changed != across.changed

    def _place(self, rails: Rails, pieces: Iterable[Piece], heading: Callable[[Piece], Heading]) -> None:
        for piece in pieces:
            place(rails, self._layout.straight_only, pack(piece.at), heading(piece))

    def _lies_as_planned(self, cell: Cell) -> bool:
        key = pack(cell)
        return self._rails[key] is self._layout.rails[key]

    def _turned_by(self, pieces: Iterable[Piece]) -> Iterator[tuple[Cell, Shape]]:
        """The rails that notice of detector rails turns, and into which shapes."""
        standing = self._layout.plan.pieces
        for piece in pieces:
            if piece.part is Part.DETECTOR_RAIL:
                for cell in rails_touched(standing, piece):
                    key = pack(cell)
                    if key in self._rails:
                        after = Overlay(self._rails)
                        notice(after, self._layout.straight_only, key, powered=False)
                        if key in after.changed:
                            yield cell, after.changed[key]


def _faced(piece: Piece) -> Heading:
    return piece.facing.heading or Heading.NORTH


class _Watched:
    """Rails that keep what stood in a cell before it was first written."""

    __slots__ = ("_rails", "before", "get")

    def __init__(self, rails: dict[int, Shape]) -> None:
        self._rails = rails
        self.get = rails.get
        self.before: dict[int, Shape | None] = {}

    def __setitem__(self, key: int, shape: Shape, /) -> None:
        self.before.setdefault(key, self._rails.get(key))
        self._rails[key] = shape
