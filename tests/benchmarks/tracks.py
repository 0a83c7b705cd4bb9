"""Plans of any size for the benchmarks."""

from __future__ import annotations

import math
from collections.abc import Iterable

import msgspec

from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece
from model.plan import Arm, ArmEnd, Details, Plan, Route, plan_of

BAY = 100
"""Cells from one crossover to the next; the search for wiring doubles with each one more."""


def side_by_side(plan: Plan, pieces: int) -> Plan:
    """So many pieces of a plan laid again and again in a square, four cells apart; the first has the arms."""
    one = list(plan.pieces)
    wide, high = _extent(piece.at.x for piece in one) + 4, _extent(piece.at.z for piece in one) + 4
    copies = -(-pieces // len(one))
    a_row = math.isqrt(copies) + 1
    laid = [
        msgspec.structs.replace(piece, at=piece.at.moved(dx=copy % a_row * wide, dz=copy // a_row * high))
        for copy in range(copies)
        for piece in one
    ]
    return plan_of(laid[:pieces], plan.details)


def _extent(places: Iterable[int]) -> int:
    known = list(places)
    return max(known) - min(known) + 1


def carried(pieces: int) -> Plan:
    """Track on blocks: a square without a gap, in which an early rail bends hundreds of others."""
    side = math.isqrt(pieces // 2)
    return plan_of(
        [
            Piece(part, Cell(x, level, z), Facing.NORTH)
            for x in range(side)
            for z in range(side)
            for part, level in ((Part.SOLID_BLOCK, 63), (Part.RAIL, 64))
        ]
    )


def winding(rails: int, width: int = 1_000) -> Plan:
    """One long track in rows to and fro, laid from end to end, and one idle route over it."""
    cells = [_on_row(*divmod(number, width + 1), width) for number in range(rails)]
    pieces = [Piece(Part.RAIL, at, facing) for at, facing in cells]
    row, along = divmod(rails - 1, width + 1)
    is_between_rows = along == width or (row > 0 and along == 0)  # then nothing has bent the last rail
    leaving = Heading.SOUTH if is_between_rows else Heading.WEST if row % 2 else Heading.EAST
    arms = (
        Arm("Quay", ArmEnd(cells[0][0], Heading.EAST)),
        Arm("Mill", leave=ArmEnd(cells[-1][0], leaving)),
    )
    return plan_of(pieces, Details(arms=arms, routes=(Route("Quay", "Mill"),)))


def _on_row(row: int, along: int, width: int) -> tuple[Cell, Facing]:
    """The rows run to and fro on every other z; the last rail of each leads down to the next."""
    z = 2 * row
    if along == width:
        return Cell(0 if row % 2 else width - 1, 64, z + 1), Facing.SOUTH
    return Cell(width - 1 - along if row % 2 else along, 64, z), Facing.EAST


def station_throat(rails: int) -> Plan:
    """Two tracks side by side on blocks, with a crossover in each bay; both are run to the east."""
    bays = rails // (2 * BAY + 2)
    length = rails // 2 - bays
    track = [Piece(Part.RAIL, Cell(x, 64, z), Facing.EAST) for z in (0, 3) for x in range(length)]
    for bay in range(bays):
        track += [Piece(Part.RAIL, Cell(bay * BAY + 7, 64, z), Facing.SOUTH) for z in (1, 2)]
    blocks = [Piece(Part.SOLID_BLOCK, rail.at.moved(dy=-1)) for rail in track]
    arms = (
        Arm("Quay", ArmEnd(Cell(0, 64, 0), Heading.EAST)),
        Arm("Mill", ArmEnd(Cell(0, 64, 3), Heading.EAST)),
        Arm("Fen", leave=ArmEnd(Cell(length - 1, 64, 0), Heading.EAST)),
        Arm("Orchard", leave=ArmEnd(Cell(length - 1, 64, 3), Heading.EAST)),
    )
    routes = (Route("Quay", "Fen", "Orchard"), Route("Mill", "Orchard", "Fen"))
    return plan_of(blocks + track, Details(arms=arms, routes=routes))
