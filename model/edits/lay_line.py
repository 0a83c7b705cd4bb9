"""Laying a line of dust by a drag."""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from itertools import pairwise

from model.edits.changes import appended
from model.grid import VECTORS, Cell, Facing
from model.parts import CARRIERS, Part
from model.pieces import Piece
from model.plan import Change, Plan
from model.wording import tr


def lay_line(plan: Plan, cells: Sequence[Cell], repeaters: Mapping[Cell, Facing] | None = None) -> Change:
    """Dust along a drag, in its order, with a solid block under each where nothing carries it yet.

    ``cells`` are consecutive: each is in a column beside the one before, a level higher or lower at most.
    Those that hold a piece, or under which another piece or the drag itself leaves no room for a block, are
    skipped. In the cells of ``repeaters`` a repeater that faces so takes the place of the dust. The blocks
    come first in order. Raises ValueError for cells that are not consecutive, EditRefused for cells out of
    reach.
    """
    for pair in pairwise(cells):
        _check_step(*pair)
    facings = repeaters or {}
    taken = frozenset(cells)
    free = [cell for cell in dict.fromkeys(cells) if is_free_for_line(plan, taken, cell)]
    blocks = [Piece(Part.SOLID_BLOCK, below) for cell in free if (below := _below(cell)) not in plan.pieces]
    parts = [
        Piece(Part.REPEATER, cell, facings[cell]) if cell in facings else Piece(Part.DUST, cell)
        for cell in free
    ]
    return appended(plan, _label(parts), [*blocks, *parts])


def is_free_for_line(plan: Plan, cells: Set[Cell], cell: Cell) -> bool:
    """Whether a cell of a drag takes dust: it is empty, and below it something carries or may."""
    below = _below(cell)
    if cell in plan.pieces or (below in plan.pieces and plan.pieces.part_at(below) not in CARRIERS):
        return False
    return below in plan.pieces or below not in cells


def _label(parts: Sequence[Piece]) -> str:
    repeaters = sum(piece.part is Part.REPEATER for piece in parts)
    dust = tr("{count:,} dust", count=len(parts) - repeaters)
    if not repeaters:
        return tr("Lay line of {dust}", dust=dust)
    return tr("Lay line of {dust} and {repeaters}", dust=dust, repeaters=tr("%n repeater(s)", "", repeaters))


def _below(cell: Cell) -> Cell:
    return cell.beside(Facing.DOWN)


def _check_step(start: Cell, end: Cell) -> None:
    if (end.x - start.x, end.z - start.z) not in VECTORS or abs(end.y - start.y) > 1:
        raise ValueError(f"{end} is not a step from {start}")
