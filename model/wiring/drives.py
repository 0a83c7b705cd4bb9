"""What stands under a switch to drive it: inverter, torch stack, or a target block as its carrier."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from msgspec import Struct

from model.edits.words import counted
from model.grid import Cell, Heading, Turn
from model.parts import Part
from model.pieces import Piece
from model.wiring.fitting import Fitted, is_free_carrier
from model.wiring.ground import Ground
from model.wiring.modules import Module, load_module

UNDER: Final = {"inverter-upright": 2, "torch-stack": 4}
"""By module: how many levels under the carrier its target block lies."""


class Drive(Struct, frozen=True):
    """One way to bring a signal to a switch."""

    switch: Cell
    target: Cell
    """The target block beside which lines end."""
    fitted: Fitted
    delay: int
    """Ticks from the target block to the switch."""


def drives(ground: Ground, switch: Cell, inverted: bool, lines: int) -> Iterator[Drive | str]:
    """The ways in which that many lines may drive a switch, and why others are not possible, as sentences."""
    if inverted:
        yield _from_below(ground, switch, "inverter-upright")
    else:
        yield _beside_carrier(ground, switch, lines)
        yield _from_below(ground, switch, "torch-stack")


def _from_below(ground: Ground, switch: Cell, name: str) -> Drive | str:
    carrier = switch.moved(dy=-1)
    module = load_module(name).turned(Turn(), carrier.moved(dy=-UNDER[name]))
    new_carrier = _as_carrier(ground, carrier, Part.SOLID_BLOCK)
    if isinstance(new_carrier, str):
        return new_carrier
    if problem := _problem(ground, module):
        return problem
    if any(ground.pieces.part_at(beside) is Part.HOPPER for beside in carrier.six_beside()):
        return f"A hopper beside {carrier} would stop when that block is powered."
    fitted = Fitted(new_carrier.taken, new_carrier.placed + module.pieces)
    return Drive(switch, module.origin, fitted, module.delay)


def _problem(ground: Ground, module: Module) -> str | None:
    taken = next((piece.at for piece in module.pieces if not ground.allows(piece.at)), None)
    if taken is None:
        return None
    if taken in ground.pieces:
        return f"Something stands in the way of the {module.title.lower()} at {taken}."
    return f"The {module.title.lower()} would reach down to {taken}, which is outside the box."


def _beside_carrier(ground: Ground, switch: Cell, lines: int) -> Drive | str:
    carrier = switch.moved(dy=-1)
    new_carrier = _as_carrier(ground, carrier, Part.TARGET_BLOCK)
    if isinstance(new_carrier, str):
        return new_carrier
    free = sum(ground.allows(carrier.step(side)) for side in Heading)
    if free < lines:
        return f"Of the sides of the block at {carrier} {free} are free, for {counted(lines, 'line')}."
    return Drive(switch, carrier, new_carrier, 0)


def _as_carrier(ground: Ground, cell: Cell, part: Part) -> Fitted | str:
    there = ground.pieces.get(cell)
    if there is None:
        return Fitted((), (Piece(part, cell),))
    if not is_free_carrier(ground.pieces, cell):
        return f"Signal parts touch the block at {cell} already."
    if there.part is part:
        return Fitted((), ())
    return Fitted((there,), (Piece(part, cell),))
