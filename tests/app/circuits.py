"""Small plans to run dry: each a few parts on solid blocks, at level 64."""

from __future__ import annotations

from collections.abc import Iterable

from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Held, Piece, new_piece
from model.plan import Arm, ArmEnd, Details, Plan, plan_of

LEVEL = 64
LEVER, LAMP = Cell(0, LEVEL, 0), Cell(17, LEVEL, 0)
JUNCTION, THROW = Cell(9, LEVEL, 0), Cell(9, LEVEL, -1)


def at(x: int, z: int) -> Cell:
    """A cell of the level."""
    return Cell(x, LEVEL, z)


def piece(x: int, z: int, part: Part, facing: Facing | None = None, delay: int = 2) -> Piece:
    """A part at the level."""
    made = new_piece(part, at(x, z))
    return Piece(part, made.at, made.facing if facing is None else facing, delay=delay)


def on_blocks(pieces: Iterable[Piece], details: Details | None = None) -> Plan:
    """The pieces, each on a solid block."""
    placed = tuple(pieces)
    blocks = [new_piece(Part.SOLID_BLOCK, one.at.beside(Facing.DOWN)) for one in placed]
    return plan_of([*blocks, *placed], Details() if details is None else details)


def dust_line() -> Plan:
    """A lever, 16 dust, and a lamp that the signal just does not reach."""
    dust = [piece(x, 0, Part.DUST) for x in range(1, 17)]
    return on_blocks([piece(0, 0, Part.LEVER, Facing.UP), *dust, piece(17, 0, Part.LAMP)])


def blinker(delay: int = 2) -> Plan:
    """A torch that puts itself out by a repeater: it goes on and off for as long as it does not burn out."""
    return on_blocks(
        [
            piece(0, 0, Part.SOLID_BLOCK),
            piece(1, 0, Part.TORCH, Facing.EAST),
            piece(1, -1, Part.DUST),
            piece(1, -2, Part.DUST),
            piece(0, -2, Part.DUST),
            piece(0, -1, Part.REPEATER, Facing.SOUTH, delay),
        ]
    )


def ring() -> Plan:
    """A button starts a pulse that runs round in two repeaters for ever."""
    return on_blocks(
        [
            piece(-1, 0, Part.BUTTON, Facing.UP),
            *(piece(x, z, Part.DUST) for x in (0, 2) for z in (0, 1)),
            piece(1, 0, Part.REPEATER, Facing.EAST, 8),
            piece(1, 1, Part.REPEATER, Facing.WEST, 8),
        ]
    )


def line_with_switch() -> Plan:
    """From Quay in the west past a detector rail to a switch, and on to Mill in the south or a block.

    A lever throws the switch, another drives the booster.
    """
    special = {2: Part.BOOSTER_RAIL, 4: Part.DETECTOR_RAIL}
    rails = [piece(x, 0, special.get(x, Part.RAIL), Facing.EAST) for x in range(-2, 16)]
    branch = [piece(9, z, Part.RAIL, Facing.NORTH) for z in (1, 2, 3)]
    others = [
        piece(9, -1, Part.LEVER, Facing.UP),
        piece(2, -1, Part.LEVER, Facing.UP),
        piece(4, -1, Part.LAMP),
        piece(16, 0, Part.SOLID_BLOCK),
    ]
    arms = (
        Arm("Quay", enter=ArmEnd(at(-2, 0), Heading.EAST)),
        Arm("Mill", leave=ArmEnd(at(9, 3), Heading.SOUTH)),
    )
    return on_blocks([*rails, *branch, *others], Details(arms=arms))


def two_hoppers() -> Plan:
    """Two hoppers that give to each other: which acts first within a tick matters."""
    one = Piece(Part.HOPPER, at(0, 0), Facing.EAST, holds=(Held("waybill:Salt", 22),))
    return on_blocks([one, piece(1, 0, Part.HOPPER, Facing.WEST)])
