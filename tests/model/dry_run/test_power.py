"""Power into blocks, and what it gives to. Common practice, no source."""

from __future__ import annotations

import pytest

from model.dry_run import DryRun, Lever, Send
from model.grid import Cell, Heading
from model.parts import Mode, Part
from tests.model.dry_run.building import DOWN, UP, Bench, E, N, S, W, cell, changes, holding, on

BLOCKS = [Part.SOLID_BLOCK, Part.TARGET_BLOCK, Part.BARREL, Part.AUTO_CRAFTER, Part.LAMP]
NOT_SOLID = [Part.GLASS, Part.SLAB, Part.HOPPER]


def pulled(bench: Bench, lever: Cell, ticks: int = 12) -> DryRun:
    """Some ticks after a lever was pulled."""
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True)])
    for _ in range(ticks):
        dry_run.step()
    return dry_run


@pytest.mark.parametrize("part", BLOCKS + NOT_SOLID)
def test_a_repeater_powers_a_solid_block_strongly_and_dust_beside_that_gets_it(part: Part) -> None:
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    bench.put("repeater", 1, 0, E)
    block = bench.put(part, 2, 0)
    dust = [bench.put("dust", 3, 0), bench.put("dust", 2, 1), bench.put("dust", 2, 0, y=65)]
    dry_run = pulled(bench, lever)
    solid = part in BLOCKS
    assert dry_run.block_power(block) == ((15, True) if solid else (0, False))
    assert [dry_run.strength(at) for at in dust] == [15 if solid else 0] * 3


@pytest.mark.parametrize("part", BLOCKS + NOT_SOLID)
def test_dust_powers_a_solid_block_weakly_and_parts_beside_that_get_it(part: Part) -> None:
    """A repeater behind it, a torch on it, a lamp, a hopper; but not dust."""
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    bench.put("dust", 1, 0)
    bench.put(part, 2, 0)
    repeater = bench.put("repeater", 3, 0, E)
    torch = bench.put("torch", 2, 0, UP, y=65)
    hopper = bench.put("hopper", 2, 1)
    dust = bench.put("dust", 2, -1)
    dry_run = pulled(bench, lever)
    solid = part in BLOCKS
    assert dry_run.output(repeater) == (15 if solid else 0)
    assert dry_run.output(torch) == (0 if solid else 15)
    assert dry_run.output(hopper) == (15 if solid else 0)
    assert dry_run.strength(dust) == 0


def test_a_torch_powers_the_block_above_it_and_no_block_beside_it() -> None:
    bench = Bench()
    bench.put("torch", 0, 0)
    above, beside = bench.put("solid-block", 0, 0, y=65), bench.put("solid-block", 1, 0)
    dust = bench.put("dust", 0, 1, y=65)
    dry_run = bench.dry_run()
    assert dry_run.block_power(above) == (15, True)
    assert dry_run.block_power(beside) == (0, False)
    assert dry_run.strength(dust) == 15


def test_a_lever_powers_the_block_that_holds_it_and_no_other() -> None:
    bench = Bench()
    bench.put("solid-block", 0, 0)
    lever = bench.put("lever", 1, 0, E)
    other = bench.put("solid-block", 2, 0)
    dry_run = pulled(bench, lever)
    assert dry_run.block_power(cell(0, 0)) == (15, True)
    assert dry_run.block_power(other) == (0, False)


def test_a_comparator_gives_its_strength_through_a_block() -> None:
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    bench.line(1, 0, 9)
    bench.put("comparator", 10, 0, E)
    block, dust = bench.put("solid-block", 11, 0), bench.put("dust", 12, 0)
    dry_run = pulled(bench, lever)
    assert dry_run.block_power(block) == (7, True)
    assert dry_run.strength(dust) == 7


def test_a_powered_comparator_locks_a_repeater_too() -> None:
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    repeater = bench.put("repeater", 1, 0, E)
    bench.put("comparator", 1, 1, N)
    lock = bench.put("lever", 1, 2)
    assert changes(bench, repeater, [on(lock, 0), on(lever, 10)]) == [(0, 0)]
    assert changes(bench, repeater, [on(lever, 10)]) == [(0, 0), (12, 15)]


def test_dust_and_a_lever_beside_a_repeater_lock_nothing() -> None:
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    repeater = bench.put("repeater", 1, 0, E)
    other = bench.put("lever", 1, 1)
    assert changes(bench, repeater, [on(other, 0), on(lever, 10)]) == [(0, 0), (12, 15)]


@pytest.mark.parametrize("facing", [N, E, S, W, UP, DOWN])
def test_a_lamp_gets_a_signal_from_any_of_six_sides(facing: object) -> None:
    """A lever on a side of it, which also powers it as a block."""
    bench = Bench()
    lamp = bench.put("lamp", 0, 0)
    at = lamp.beside(facing)  # type: ignore[arg-type]
    lever = bench.put("lever", at.x, at.z, facing, y=at.y)  # type: ignore[arg-type]
    dry_run = pulled(bench, lever)
    assert (dry_run.output(lamp), dry_run.block_power(lamp)) == (15, (15, True))


def test_a_lit_lamp_is_not_always_a_powered_block() -> None:
    """A torch beside it lights it, but powers no block; a lamp beside a powered lamp is lit, too."""
    bench = Bench()
    bench.put("torch", 0, 0)
    lamp, next_lamp = bench.put("lamp", 1, 0), bench.put("lamp", 2, 0)
    dry_run = bench.dry_run()
    assert (dry_run.output(lamp), dry_run.block_power(lamp)) == (15, (0, False))
    assert dry_run.output(next_lamp) == 0
    powered = Bench()
    lever = powered.put("lever", 0, 0)
    powered.put("repeater", 1, 0, E)
    powered.put("lamp", 2, 0)
    assert pulled(powered, lever).output(powered.put("lamp", 3, 0)) == 0
    assert pulled(powered, lever).output(cell(3, 0)) == 15


def test_a_comparator_in_front_of_a_detector_rail_reads_15() -> None:
    bench = Bench()
    bench.put("detector-rail", 0, 0, N)
    comparator = bench.put("comparator", 1, 0, E, mode=Mode.COMPARE)
    bench.arm("Quay", into=(cell(0, 0), Heading.NORTH))
    assert changes(bench, comparator, [(5, Send("Quay"))]) == [(0, 0), (7, 15), (27, 0)]


def test_a_detector_rail_powers_the_block_under_it() -> None:
    bench = Bench()
    bench.put("detector-rail", 0, 0, N)
    dust = bench.put("dust", 1, 0, y=63)
    bench.arm("Quay", into=(cell(0, 0), Heading.NORTH))
    assert changes(bench, dust, [(5, Send("Quay"))]) == [(0, 0), (5, 15), (25, 0)]


def test_nothing_is_crafted_or_moved_at_the_start() -> None:
    """The crafter has its signal from the start, so that does not rise; the hopper first acts in tick 0."""
    bench = Bench()
    crafter = bench.put("auto-crafter", 0, 0, E, **holding(("ingot", 1)))
    bench.put("torch", 0, 1)
    hopper = bench.put("hopper", 0, 5, E, **holding(("salt", 1)))
    bench.put("barrel", 1, 5)
    dry_run = bench.dry_run()
    assert dry_run.output(crafter) == 15
    assert dry_run.contents(hopper)[0] == ("salt", 1)
    for _ in range(10):
        dry_run.step()
    assert dry_run.contents(crafter)[0] == ("ingot", 1)
    assert dry_run.contents(hopper)[0] is None


def test_what_is_pending_after_the_start_keeps_its_time() -> None:
    """A torch and a repeater in a ring do not settle: 201 ticks are the start, tick 0 is the next.

    The torch is lit at first, and changes every ten ticks: 2 of its own, 8 of the repeater. In tick 8 the
    repeater comes on, in tick 10 the torch goes off, and so on; so it changes in tick 210, which is tick 9.
    """
    bench = Bench()
    bench.put("target-block", 0, 0)
    torch = bench.put("torch", 1, 0, E)
    bench.put("repeater", 1, 1, S, delay=8)
    bench.put("dust", 1, 2)
    bench.put("dust", 0, 2)
    bench.put("dust", 0, 1)
    seen = changes(bench, torch, [], ticks=40)
    assert [tick for tick, _ in seen] == [0, 9, 19, 29, 39]
    assert [strength for _, strength in seen] == [15, 0, 15, 0, 15]
