"""What a drawn line is meant to join: what it begins and ends on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.grid import Cell, Facing, Heading
from model.parts import RAILS, Part
from model.pieces import Pieces
from model.plan import Plan
from model.signals.giving import SOURCES, gives_to
from model.wiring.lines.lines import FoundLine, line_at


def joints(plan: Plan, found: Sequence[FoundLine], cells: Sequence[Cell]) -> frozenset[Cell]:
    """The cells of the parts that a drag over ``cells`` is meant to join.

    They are those in which it begins and ends, or those straight behind and ahead of these; of the first and
    last dust also what gives to it and the target blocks beside it; and of a line all the dust that hangs
    together. A drag of one cell means all that is beside it.
    """
    meant = set(cells[:1]) | set(cells[-1:])
    for end, inner in ((cells[0], cells[1:2]), (cells[-1], cells[-2:-1])):
        meant.update(_beyond(plan.pieces, end, inner))
    whole = {cell for joint in meant if (line := line_at(found, joint)) for cell in line.segment_of(joint)}
    return frozenset(cell for cell in meant | whole if cell in plan.pieces)


def _beyond(pieces: Pieces, end: Cell, inner: Sequence[Cell]) -> Iterator[Cell]:
    """What lies beyond an end of a drag, seen from the cell before it."""
    if end in pieces:
        return
    for side in Heading:
        beside = end.step(side)
        part = pieces.part_at(beside)
        if not inner or (end.x - inner[0].x, end.z - inner[0].z) == (beside.x - end.x, beside.z - end.z):
            yield from (
                cell
                for cell in (beside, beside.moved(dy=1), beside.moved(dy=-1))
                if _joins(pieces, cell, end)
            )
        elif part is Part.TARGET_BLOCK or _feeds(pieces, beside, end):
            yield beside
    yield end.beside(Facing.DOWN)


def _joins(pieces: Pieces, cell: Cell, end: Cell) -> bool:
    """Whether a line may be meant to join what is in a cell: on its level anything, else dust."""
    part = pieces.part_at(cell)
    return part is Part.DUST or (part is not None and part not in RAILS and cell.y == end.y)


def _feeds(pieces: Pieces, cell: Cell, end: Cell) -> bool:
    piece = pieces.get(cell)
    return piece is not None and piece.part in SOURCES and end in gives_to(piece, pieces)
