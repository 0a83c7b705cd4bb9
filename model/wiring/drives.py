"""What stands under a switch to drive it: an inverter, a torch stack, or dust beside its carrier."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from msgspec import Struct

from model.edits.words import counted
from model.grid import Cell, Heading, Turn
from model.parts import Part
from model.pieces import Piece
from model.wiring.fitting import Fitted, fit, is_free_carrier
from model.wiring.ground import Ground
from model.wiring.modules import load_module

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


class Driven(Struct, frozen=True):
    """A switch that needs a drive."""

    at: Cell
    inverted: bool
    lines: int
    """How many lines throw it."""
    rests: bool
    """Whether it lies at rest as built. Else something must be lit under it at the start, to give it notice."""


def drives(ground: Ground, driven: Driven) -> Iterator[Drive | str]:
    """The ways to drive a switch, the quickest first, and why others are not possible, as sentences."""
    carrier = driven.at.moved(dy=-1)
    free = [side for side in Heading if ground.allows(carrier.step(side))]
    if driven.inverted:
        yield _from_below(ground, driven.at, "inverter-upright")
        return
    if driven.rests and len(free) >= driven.lines:
        yield _with_carrier(ground, driven.at, Part.TARGET_BLOCK, carrier, 0)
    elif driven.rests:
        yield f"Of the sides of the block at {carrier} {len(free)} are free, for {counted(driven.lines, 'line')}."
    for side in free if driven.rests else ():
        yield _from_side(ground, driven.at, side)
    yield _from_below(ground, driven.at, "torch-stack")


def _from_below(ground: Ground, switch: Cell, name: str) -> Drive | str:
    carrier = switch.moved(dy=-1)
    module = load_module(name).turned(Turn(), carrier.moved(dy=-UNDER[name]))
    if any(ground.pieces.part_at(beside) is Part.HOPPER for beside in carrier.six_beside()):
        return f"A hopper beside {carrier} would stop when that block is powered."
    fitted = fit(ground, module)
    if isinstance(fitted, str):
        return fitted
    return _with_carrier(ground, switch, Part.SOLID_BLOCK, module.origin, module.delay, fitted.placed)


def _from_side(ground: Ground, switch: Cell, side: Heading) -> Drive | str:
    turn = next(turn for quarter in range(4) if (turn := Turn(quarter)).heading(Heading.EAST) is side)
    module = load_module("side-drive").turned(turn, switch.moved(dy=-2).step(side.opposite))
    fitted = fit(ground, module)
    if isinstance(fitted, str):
        return fitted
    return _with_carrier(ground, switch, Part.TARGET_BLOCK, module.origin, module.delay, fitted.placed)


def _with_carrier(
    ground: Ground, switch: Cell, part: Part, target: Cell, delay: int, placed: tuple[Piece, ...] = ()
) -> Drive | str:
    """A drive whose switch is carried by a block of that part."""
    cell = switch.moved(dy=-1)
    there = ground.pieces.get(cell)
    if there is not None and not is_free_carrier(ground.pieces, cell):
        return f"Signal parts touch the block at {cell} already."
    if there is not None and there.part is part:
        return Drive(switch, target, Fitted((), placed), delay)
    taken = () if there is None else (there,)
    return Drive(switch, target, Fitted(taken, (Piece(part, cell), *placed)), delay)
