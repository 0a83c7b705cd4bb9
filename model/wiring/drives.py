"""What stands under a switch to drive it: an inverter, a torch stack, or dust beside its carrier."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from msgspec import Struct

from model.grid import Cell, Facing, Heading, Turn
from model.parts import Part
from model.pieces import Piece, Pieces
from model.wiring.laying.ground import Ground
from model.wiring.modules.fitting import Fitted, fit, is_free_carrier
from model.wiring.modules.modules import load_module
from model.wording import tr

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
    """Whether it lies at rest as built. Else something about it must give it notice at the start."""


def drives(ground: Ground, driven: Driven) -> Iterator[Drive | str]:
    """The ways to drive a switch, the quickest first, and why others are not possible, as sentences."""
    if is_touched(ground.pieces, driven.at):
        carrier = driven.at.moved(dy=-1)
        yield tr("Signal parts touch the block at {carrier} already; take them away first.", carrier=carrier)
        return
    if driven.inverted:
        yield _from_below(ground, driven.at, "inverter-upright")
        return
    if driven.lines == 0:
        yield _notice_alone(ground, driven)
        return
    yield _beside_carrier(ground, driven)
    for side in Heading:
        if ground.allows(driven.at.moved(dy=-1).step(side)):
            yield from _from_side(ground, driven, side)
    yield _from_below(ground, driven.at, "torch-stack")


def is_touched(pieces: Pieces, switch: Cell) -> bool:
    """Whether what carries a switch has to do with signals already."""
    carrier = switch.moved(dy=-1)
    return carrier in pieces and not is_free_carrier(pieces, carrier)


def _beside_carrier(ground: Ground, driven: Driven) -> Drive | str:
    carrier = driven.at.moved(dy=-1)
    free = sum(ground.allows(carrier.step(side)) for side in Heading)
    if free < driven.lines:
        return tr(
            "Of the sides of the block at {carrier} {free} are free, for {lines}.",
            carrier=carrier,
            free=free,
            lines=tr("%n line(s)", "", driven.lines),
        )
    return _with_carrier(ground, driven.at, Part.TARGET_BLOCK, carrier, 0, _notice(driven))


def _from_below(ground: Ground, switch: Cell, name: str) -> Drive | str:
    carrier = switch.moved(dy=-1)
    module = load_module(name).turned(Turn(), carrier.moved(dy=-UNDER[name]))
    if any(ground.pieces.part_at(beside) is Part.HOPPER for beside in carrier.six_beside()):
        return tr("A hopper beside {carrier} would stop when that block is powered.", carrier=carrier)
    fitted = fit(ground, module)
    if isinstance(fitted, str):
        return fitted
    return _with_carrier(ground, switch, Part.SOLID_BLOCK, module.origin, module.delay, fitted.placed)


def _from_side(ground: Ground, driven: Driven, side: Heading) -> Iterator[Drive | str]:
    """The side drive with its repeater under the switch, or along the side, to one hand or the other."""
    for lead, mirror in (("under", False), ("along", False), ("along", True)):
        if lead == "under" and not driven.rests:
            continue
        turn = next(
            turn for quarter in range(4) if (turn := Turn(quarter, mirror)).heading(Heading.EAST) is side
        )
        module = load_module("side-drive", lead=lead).turned(turn, driven.at.moved(dy=-2).step(side.opposite))
        fitted = fit(ground, module)
        if isinstance(fitted, str):
            yield fitted
            continue
        target = next(piece.at for piece in module.pieces if piece.part is Part.TARGET_BLOCK)
        placed = (*fitted.placed, *_notice(driven))
        yield _with_carrier(ground, driven.at, Part.TARGET_BLOCK, target, module.delay, placed)


def _notice_alone(ground: Ground, driven: Driven) -> Drive | str:
    carrier, notice = driven.at.moved(dy=-1), _notice(driven)
    if all(ground.allows(piece.at) for piece in notice):
        return Drive(driven.at, carrier, Fitted((), notice), 0)
    return tr("There is no room for a button under the block at {carrier}.", carrier=carrier)


def _notice(driven: Driven) -> tuple[Piece, ...]:
    """A button under the carrier of a switch that does not lie at rest as built.

    Nobody presses it; it gives the switch notice by being there.
    """
    return () if driven.rests else (Piece(Part.BUTTON, driven.at.moved(dy=-2), Facing.DOWN),)


def _with_carrier(
    ground: Ground, switch: Cell, part: Part, target: Cell, delay: int, placed: tuple[Piece, ...]
) -> Drive | str:
    """A drive whose switch is carried by a block of that part."""
    cell = switch.moved(dy=-1)
    there = ground.pieces.get(cell)
    taken_below = next((piece.at for piece in placed if piece.at in ground.pieces), None)
    if taken_below is not None:
        return tr("Something stands in the way at {taken_below}.", taken_below=taken_below)
    if there is not None and there.part is part:
        return Drive(switch, target, Fitted((), placed), delay)
    taken = () if there is None else (there,)
    return Drive(switch, target, Fitted(taken, (Piece(part, cell), *placed)), delay)
