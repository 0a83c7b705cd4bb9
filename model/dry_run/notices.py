"""Which rails get notice when a signal part goes on or off."""

from __future__ import annotations

from collections.abc import Iterator

from model.grid import Cell
from model.parts import CARRIERS
from model.pieces import Piece, Pieces, rests_on
from model.track.layout import Layout
from model.track.rails import pack
from model.track.settling import is_three_way


class Notices:
    """The three-way plain rails of a plan that lie about its signal parts.

    That a rail is three-way hangs on which rails there are, not on how they lie, so a run does not change it.
    Common practice of the trade, written from memory, no published source.
    """

    def __init__(self, layout: Layout) -> None:
        self._layout = layout
        self._pieces = layout.plan.pieces

    def around(self, piece: Piece) -> tuple[int, ...]:
        """The packed cells of those beside a signal part, or beside the part that it stands or hangs on."""
        if not self._layout.rails:
            return ()
        three_way = (pack(cell) for cell in _touched(piece, self._pieces) if self.takes(cell))
        return tuple(dict.fromkeys(three_way))

    def takes(self, cell: Cell) -> bool:
        """Whether a cell holds a three-way plain rail."""
        layout, key = self._layout, pack(cell)
        return key in layout.rails and is_three_way(layout.rails, layout.straight_only, key)


def _touched(piece: Piece, pieces: Pieces) -> Iterator[Cell]:
    yield from piece.at.six_beside()
    holder = rests_on(piece)
    if holder is not None and pieces.part_at(holder) in CARRIERS:
        yield from holder.six_beside()
