"""Which way signal dust points. Common practice of the trade, written from memory, no published source."""

from __future__ import annotations

from typing import Final

from model.grid import FACING_OF, Cell, Heading
from model.parts import TRAITS, Part
from model.pieces import Pieces

ALL_SIDES: Final = frozenset(Heading)
LINKED_BESIDE: Final = frozenset(
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
"""Parts to which dust beside them links, whichever way they face."""


def dust_links(pieces: Pieces, cell: Cell) -> frozenset[Heading]:
    """The sides on which the dust in ``cell`` finds something to link to."""
    return frozenset(heading for heading in Heading if _links(pieces, cell, heading))


def dust_points(pieces: Pieces, cell: Cell) -> frozenset[Heading]:
    """The sides to which the dust in ``cell`` points.

    Without links to all four; with links on one axis only both ways along it; else to the linked sides.
    """
    links = dust_links(pieces, cell)
    if not links:
        return ALL_SIDES
    if len({heading.lies_north_south for heading in links}) == 1:
        return links | {heading.opposite for heading in links}
    return links


def _links(pieces: Pieces, cell: Cell, heading: Heading) -> bool:
    beside = cell.step(heading)
    piece = pieces.get(beside)
    if piece is not None:
        if piece.part in LINKED_BESIDE:
            return True
        if piece.part is Part.REPEATER:
            return piece.facing in (FACING_OF[heading], FACING_OF[heading.opposite])
    if _is_dust(pieces, beside.moved(dy=1)) and not _is_solid(pieces, cell.moved(dy=1)):
        return True
    return _is_dust(pieces, beside.moved(dy=-1)) and not _is_solid(pieces, beside)


def _is_dust(pieces: Pieces, cell: Cell) -> bool:
    return pieces.part_at(cell) is Part.DUST


def _is_solid(pieces: Pieces, cell: Cell) -> bool:
    part = pieces.part_at(cell)
    return part is not None and TRAITS[part].solid
