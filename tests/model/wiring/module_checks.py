"""What each module must do, as checks on a bench; they fail with an AssertionError."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product

from model.grid import Cell, Facing
from model.parts import RAILS
from model.track.shapes import Shape
from tests.model.wiring.module_bench import Bench

SETTLED = 20
"""Ticks after which all modules but the off-delay have settled."""


def check_delay(bench: Bench) -> None:
    """From a change at the first port in until the first port out changes, in ticks."""
    (first, *_), (out, *_) = bench.ins, bench.outs
    before = bench.strength(out)
    bench.set(**{first: True})
    for waited in range(bench.module.delay):
        assert bench.strength(out) == before, f"after {waited} ticks already"
        bench.step()
    assert {before, bench.strength(out)} == {0, 15}


def _follows(bench: Bench, *, inverted: bool) -> None:
    """The one port out is the one port in, or its opposite, at full strength."""
    (first, *_), (out,) = bench.ins, bench.outs
    for number, on in enumerate((False, True, False, True)):
        bench.set(**{first: on})
        bench.step(SETTLED)
        assert bench.strength(out) == (15 if on != inverted else 0)
        if number > 0 or inverted:
            # As built a switch may lie otherwise than it rests; the first power cycle brings it there.
            _throws(bench, out, on != inverted)


def _throws(bench: Bench, out: str, powered: bool) -> None:
    """A port out that is the block under a switch throws that."""
    rail = bench.module.port(out).at.beside(Facing.UP)
    if bench.plan.pieces.part_at(rail) not in RAILS:
        return
    assert bench.run.shape(rail) is (POWERED if powered else RESTING)[_stem(bench, rail)]


def _stem(bench: Bench, rail: Cell) -> Facing:
    """The side on which a three-way rail has no neighbour."""
    level = [facing for facing in Facing if facing.heading is not None]
    (none,) = [facing for facing in level if bench.plan.pieces.get(rail.beside(facing)) is None]
    return none


# By the side on which there is no rail; common practice, no source.
RESTING = {
    Facing.WEST: Shape.SOUTH_EAST,
    Facing.EAST: Shape.SOUTH_WEST,
    Facing.NORTH: Shape.SOUTH_EAST,
    Facing.SOUTH: Shape.NORTH_EAST,
}
POWERED = {
    Facing.WEST: Shape.NORTH_EAST,
    Facing.EAST: Shape.NORTH_WEST,
    Facing.NORTH: Shape.SOUTH_WEST,
    Facing.SOUTH: Shape.NORTH_WEST,
}


def check_inverter(bench: Bench) -> None:
    """Off where the line is on, on where it is off."""
    _follows(bench, inverted=True)


def check_drive(bench: Bench) -> None:
    """The switch has the signal of the line."""
    _follows(bench, inverted=False)


def check_stack(bench: Bench) -> None:
    """Two torches leave the signal as it is, three turn it round."""
    _follows(bench, inverted=bench.module.delay % 4 == 2)


def check_merge(bench: Bench) -> None:
    """The line is the OR of the lines in, and none of those hears another, or what is on the line."""
    (line,) = bench.outs
    for states in product((False, True), repeat=len(bench.ins)):
        bench.set(**dict(zip(bench.ins, states, strict=True)))
        bench.step(SETTLED)
        assert bench.strength(line) == (15 if any(states) else 0)
        for name, on in zip(bench.ins, states, strict=True):
            assert bench.strength(name) == (15 if on else 0)


def check_latch(bench: Bench) -> None:
    """The table of a latch with set and reset (NOR form): 00 hold, 01 off, 10 on, 11 off.

    Source: the table of the latch of two NOR gates in any book on logic, from memory. In row 11, which it
    forbids, that latch has both outputs off; here the second output then is on.
    """
    kept = False
    for number in SR_ROWS:
        set_on, reset_on = number in (2, 3), number in (1, 3)
        kept = {0: kept, 1: False, 2: True, 3: False}[number]
        bench.set(set=set_on, reset=reset_on)
        bench.step(SETTLED)
        assert bench.strength("on") == (15 if kept else 0)
        if "off" in bench.outs:
            assert bench.strength("off") == (0 if kept else 15)


SR_ROWS = (0, 1, 0, 2, 0, 2, 1, 0, 3, 0, 2, 3, 1, 3, 2, 0, 1, 2, 0)
"""Each row of the table after each other row (2·set + reset), but for itself."""


def check_off_delay(bench: Bench) -> None:
    """On with its input, and off so many ticks after it, gaps that are a little shorter not counting."""
    assert bench.strength("held") == 0
    hold = hold_of(bench)
    on = bench.answer({"in": [True] + [False] * (hold + 8)}, "held")
    assert not any(on[: bench.module.delay])
    assert on[bench.module.delay : hold] == [True] * (hold - bench.module.delay)
    gap = hold - bench.module.delay - 1
    wave = [True] * 40 + [False] * gap + [True] * 40 + [False] * (hold + 40)
    on = bench.answer({"in": wave}, "held")
    fallen = 80 + gap
    assert on[40 : fallen + hold] == [True] * (fallen + hold - 40)
    assert not any(on[fallen + hold :])


def hold_of(bench: Bench) -> int:
    """The hold that the bench was made for, in ticks."""
    return int(bench.parameters["hold"])


CHECKS: dict[str, Callable[[Bench], None]] = {
    "inverter-flat": check_inverter,
    "inverter-upright": check_inverter,
    "latch": check_latch,
    "merge-repeaters": check_merge,
    "merge-target": check_merge,
    "off-delay": check_off_delay,
    "side-drive": check_drive,
    "swapped-default": check_inverter,
    "torch-stack": check_stack,
}
