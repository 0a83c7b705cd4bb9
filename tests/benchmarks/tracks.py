"""Plans of any size for the benchmarks."""

from __future__ import annotations

from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece
from model.plan import Arm, ArmEnd, Details, Plan, Route, plan_of

BAY = 100
"""Cells from one crossover to the next; the search for wiring doubles with each one more."""


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
