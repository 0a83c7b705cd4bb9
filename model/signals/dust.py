"""Which sides a signal dust links to. Common practice of the trade, from memory, no published source."""

from __future__ import annotations

from typing import Final

from model.grid import FACING_OF, Cell, Heading
from model.parts import TRAITS, Part
from model.pieces import Piece, Pieces

ALL_SIDES: Final = frozenset(Heading)
BENDS_TO: Final = frozenset(
    {
        Part.DUST,
        Part.COMPARATOR,
        Part.TORCH,
        Part.LEVER,
        Part.BUTTON,
        Part.DETECTOR_RAIL,
        Part.TARGET_BLOCK,
    }
)
"""Parts beside it on its level that it links to from any side; to a repeater only along its axis."""

_GIVES_NOTHING_DOWN: Final = frozenset({Part.GLASS, Part.SLAB})
"""Under the upper of two dusts."""


def links(pieces: Pieces, at: Cell) -> frozenset[Heading]:
    """The sides that the dust in a cell points to.

    Without a link it points to all four sides; with links on one axis only it lies straight along that axis.
    """
    linked = frozenset(side for side in Heading if _links_to(pieces, at, side))
    if not linked:
        return ALL_SIDES
    if len({side.lies_north_south for side in linked}) == 1:
        return linked | {side.opposite for side in linked}
    return linked


def takes_from(pieces: Pieces, at: Cell) -> list[Cell]:
    """The dust from which the dust in a cell takes its strength, one weaker: what it links to.

    Dust on glass or a slab gives nothing to the dust one step down.
    """
    found: list[Cell] = []
    for side in Heading:
        beside = at.step(side)
        level, above, below = beside, beside.moved(dy=1), beside.moved(dy=-1)
        if _is_dust(pieces, level):
            found.append(level)
        climbs = not _is_solid(pieces, at.moved(dy=1)) and _is_dust(pieces, above)
        if climbs and pieces.part_at(beside) not in _GIVES_NOTHING_DOWN:
            found.append(above)
        if not _is_solid(pieces, beside) and _is_dust(pieces, below):
            found.append(below)
    return found


def _links_to(pieces: Pieces, at: Cell, side: Heading) -> bool:
    beside = at.step(side)
    piece = pieces.get(beside)
    if piece is not None and _bends_to(piece, side):
        return True
    climbs = not _is_solid(pieces, at.moved(dy=1)) and _is_dust(pieces, beside.moved(dy=1))
    descends = not _is_solid(pieces, beside) and _is_dust(pieces, beside.moved(dy=-1))
    return climbs or descends


def _bends_to(piece: Piece, side: Heading) -> bool:
    if piece.part is Part.REPEATER:
        return piece.facing in (FACING_OF[side], FACING_OF[side.opposite])
    return piece.part in BENDS_TO


def _is_dust(pieces: Pieces, cell: Cell) -> bool:
    return pieces.part_at(cell) is Part.DUST


def _is_solid(pieces: Pieces, cell: Cell) -> bool:
    part = pieces.part_at(cell)
    return part is not None and TRAITS[part].solid
