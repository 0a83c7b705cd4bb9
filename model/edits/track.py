"""Laying track by a drag."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from model.edits.changes import appended
from model.edits.words import counted_text
from model.grid import FACING_OF, VECTORS, Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece
from model.plan import Change, Plan
from model.wording import tr


def lay_track(
    plan: Plan, cells: Sequence[Cell], part: Part = Part.RAIL, facing: Facing = Facing.NORTH
) -> Change:
    """Rails of one kind along a drag, in its order; cells that hold a piece are skipped.

    ``cells`` are consecutive: each is beside the one before, on one level. A rail faces the way in which
    the drag came into its cell, for then it lies towards the rail before it, and the next one joins it;
    the first faces the second. ``facing`` is for a drag over a single cell. Raises ValueError for cells
    that are not consecutive, EditRefused for cells out of reach.
    """
    facings = _facings(cells, facing)
    first_visits = dict(reversed([*zip(cells, facings, strict=True)]))
    pieces = [
        Piece(part, cell, first_visits[cell]) for cell in dict.fromkeys(cells) if cell not in plan.pieces
    ]
    label = tr("Lay {rails}", rails=tr(counted_text(part), "", len(pieces)))
    return appended(plan, label, pieces)


def _facings(cells: Sequence[Cell], alone: Facing) -> list[Facing]:
    if len(cells) < 2:
        return [alone] * len(cells)
    ways = [FACING_OF[_heading(*pair)] for pair in pairwise(cells)]
    return [ways[0], *ways]


def _heading(start: Cell, end: Cell) -> Heading:
    step = (end.x - start.x, end.z - start.z)
    if step not in VECTORS or start.y != end.y:
        raise ValueError(f"{end} is not beside {start}")
    return Heading(VECTORS.index(step))
