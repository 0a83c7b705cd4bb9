"""When parts change, in ticks. Common practice, no source, unless a test names one."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.dry_run import DryRun, Lever, Press
from model.grid import Cell, Facing
from model.parts import DELAYS, Mode
from tests.model.dry_run.building import UP, Bench, E, N, S, W, cell, changes, off, on, pulse

LEVER = cell(0, 0)


def torch_at_end() -> tuple[Bench, Cell]:
    """A lever, a dust, a block, and a torch on its far side."""
    bench = Bench()
    bench.put("lever", 0, 0)
    bench.put("dust", 1, 0)
    bench.put("solid-block", 2, 0)
    return bench, bench.put("torch", 3, 0, E)


def repeater_after_lever(delay: int) -> tuple[Bench, Cell]:
    bench = Bench()
    bench.put("lever", 0, 0)
    return bench, bench.put("repeater", 1, 0, E, delay=delay)


def test_a_lever_shows_in_dust_at_once_and_behind_a_torch_two_ticks_later() -> None:
    bench, torch = torch_at_end()
    dust = cell(1, 0)
    done = bench.watch([dust, torch, cell(2, 0)], [on(LEVER, 7), off(LEVER, 20)])
    assert done.probes[dust] == ((0, 0), (7, 15), (20, 0))
    assert done.probes[cell(2, 0)] == ((0, 0), (7, 15), (20, 0))
    assert done.probes[torch] == ((0, 15), (9, 0), (22, 15))
    assert done.ticks == 23


def test_a_torch_stands_on_its_block_or_hangs_on_its_side() -> None:
    bench = Bench()
    bench.put("lever", 0, 0)
    bench.put("solid-block", 1, 0)
    bench.put("dust", 1, 1)
    standing = bench.put("torch", 2, 0, y=65)
    bench.put("lever", 2, 1)
    hanging = bench.put("torch", 3, 0, E)
    done = bench.watch([standing, hanging], [on(cell(2, 1), 4)])
    assert done.probes[standing] == done.probes[hanging] == ((0, 15),)
    bench.put("dust", 1, -1)
    bench.put("lever", 1, -2)
    bench.put("lever", 2, -1)
    done = bench.watch([standing, hanging], [on(cell(2, -1), 4)])
    assert done.probes[standing] == ((0, 15),)


@pytest.mark.parametrize(("length", "shows"), [(1, False), (2, True), (3, True)])
def test_a_torch_looks_at_the_end_of_the_tick_before(length: int, shows: bool) -> None:
    bench, torch = torch_at_end()
    seen = changes(bench, torch, pulse(LEVER, 5, length))
    assert seen == ([(0, 15), (7, 0), (7 + length, 15)] if shows else [(0, 15)])


@pytest.mark.parametrize("delay", DELAYS)
def test_a_repeater_waits_its_delay(delay: int) -> None:
    bench, repeater = repeater_after_lever(delay)
    assert changes(bench, repeater, pulse(LEVER, 3, 20)) == [(0, 0), (3 + delay, 15), (23 + delay, 0)]


@pytest.mark.parametrize("delay", DELAYS)
@given(length=st.integers(1, 12))
def test_a_short_pulse_comes_out_as_long_as_the_delay(delay: int, length: int) -> None:
    bench, repeater = repeater_after_lever(delay)
    seen = changes(bench, repeater, pulse(LEVER, 3, length))
    assert seen == [(0, 0), (3 + delay, 15), (3 + delay + max(delay, length), 0)]


@pytest.mark.parametrize("delay", DELAYS)
@given(gap=st.integers(1, 12))
def test_a_gap_shorter_than_the_delay_is_swallowed(delay: int, gap: int) -> None:
    bench, repeater = repeater_after_lever(delay)
    seen = changes(bench, repeater, [on(LEVER, 0), *[off(LEVER, 20), on(LEVER, 20 + gap)]])
    expected = [(0, 0), (delay, 15)]
    if gap >= delay:
        expected += [(20 + delay, 0), (20 + delay + max(gap, delay), 15)]
    assert seen == expected


def test_a_repeater_gives_15_whatever_it_gets_and_only_in_front() -> None:
    bench = Bench()
    bench.put("lever", 0, 0)
    bench.line(1, 0, 15)
    repeater = bench.put("repeater", 16, 0, E)
    front, beside = bench.put("dust", 17, 0), bench.put("lamp", 16, 1)
    done = bench.watch([cell(15, 0), repeater, front, beside], [on(LEVER)])
    assert [seen[-1] for seen in done.probes.values()] == [(0, 1), (2, 15), (2, 15), (0, 0)]


def locking() -> tuple[Bench, Cell, Cell, Cell]:
    """A repeater of 4 from LEVER, locked by a repeater of 2 from another lever; and what it feeds."""
    bench = Bench()
    bench.put("lever", 0, 0)
    locked = bench.put("repeater", 1, 0, E, delay=4)
    locker = bench.put("repeater", 1, 1, N, delay=2)
    return bench, locked, locker, bench.put("lever", 1, 2)


def test_a_locked_repeater_keeps_its_output_and_looks_again_when_freed() -> None:
    bench, locked, _, lock = locking()
    events = [on(lock, 0), on(LEVER, 10), off(lock, 30), on(lock, 50), off(LEVER, 60), off(lock, 80)]
    # Freed when the locker goes off, two ticks after its lever; then it waits its four ticks.
    assert changes(bench, locked, events) == [(0, 0), (36, 15), (86, 0)]


def test_a_locked_repeater_drops_a_pending_change() -> None:
    bench, locked, _, lock = locking()
    # It would come on in tick 14; the lock comes in tick 13, and goes in tick 43 while nothing is behind it.
    assert changes(bench, locked, [on(LEVER, 10), on(lock, 11), off(LEVER, 20), off(lock, 41)]) == [(0, 0)]


@pytest.mark.parametrize(("facing", "lever"), [(E, (0, 1)), (W, (2, 1))])
def test_a_powered_repeater_that_faces_elsewhere_locks_nothing(
    facing: Facing, lever: tuple[int, int]
) -> None:
    bench = Bench()
    bench.put("lever", 0, 0)
    repeater = bench.put("repeater", 1, 0, E)
    beside = bench.put("repeater", 1, 1, facing)
    power = bench.put("lever", *lever)
    done = bench.watch([repeater, beside], [on(power, 0), on(LEVER, 10)])
    assert done.probes[repeater] == ((0, 0), (12, 15))
    assert done.probes[beside] == ((0, 0), (2, 15))


@pytest.mark.parametrize("locker_first", [True, False])
def test_a_repeater_due_in_the_tick_of_its_lock_is_unsure(locker_first: bool) -> None:
    bench, locked, locker, lock = locking()
    if locker_first:
        bench.pieces = {locker: bench.pieces.pop(locker), **bench.pieces}
    done = bench.watch([locked], [on(LEVER, 10), on(lock, 12)])
    assert [(each.tick, set(each.at)) for each in done.unsure] == [(14, {locked, locker})]
    assert done.probes[locked] == (((0, 0),) if locker_first else ((0, 0), (14, 15)))


def test_a_button_is_on_for_20_ticks_and_a_wooden_one_for_30() -> None:
    for wooden, length in ((False, 20), (True, 30)):
        bench = Bench()
        button = bench.put("button", 0, 0, wooden=wooden)
        assert changes(bench, button, [(3, Press(button))]) == [(0, 0), (3, 15), (3 + length, 0)]
        again = [(3, Press(button)), (3 + length - 1, Press(button))]
        assert changes(bench, button, again) == [(0, 0), (3, 15), (2 + 2 * length, 0)]


def test_the_ninth_change_within_60_ticks_puts_a_torch_out_for_160() -> None:
    """A torch that works back on its own block changes every two ticks.

    The start takes 201 ticks, 0 to 200. It changes in ticks 2 to 18 and is out up to tick 178; then it goes
    on and off four times, and the ninth change, in tick 194, puts it out again: 7 ticks before tick 0.
    """
    bench = Bench()
    bench.put("target-block", 0, 0)
    torch = bench.put("torch", 1, 0, E)
    bench.put("dust", 1, 1)
    bench.put("dust", 0, 1)
    seen = changes(bench, torch, [], ticks=600)
    lit = [153 + 176 * turn + 4 * index for turn in range(3) for index in range(4)]
    assert seen == [(0, 0), *(change for tick in lit for change in ((tick, 15), (tick + 2, 0)))]
    assert bench.watch([], []).ticks == 12_000


@pytest.mark.parametrize(("apart", "burns"), [(7, True), (8, False)])
def test_the_first_and_the_ninth_change_are_at_most_60_ticks_apart(apart: int, burns: bool) -> None:
    """Eight gaps of 7 ticks are 56, of 8 are 64."""
    bench, torch = torch_at_end()
    events = [(10 + apart * index, Lever(LEVER, index % 2 == 0)) for index in range(10)]
    seen = changes(bench, torch, events)
    every = [(0, 15)] + [(12 + apart * index, 15 * (index % 2)) for index in range(10)]
    ninth = 12 + apart * 8
    assert seen == (every if not burns else [*every[:10], (ninth + 160, 15)])


@pytest.mark.parametrize(("last", "burns"), [(60, True), (61, False)])
def test_60_ticks_between_the_first_and_the_ninth_change_are_enough(last: int, burns: bool) -> None:
    bench, torch = torch_at_end()
    ticks = [10 + 4 * index for index in range(8)] + [10 + last, 200]
    events = [(tick, Lever(LEVER, index % 2 == 0)) for index, tick in enumerate(ticks)]
    seen = changes(bench, torch, events)
    # The block is free again from tick 200; a burnt-out torch looks 160 ticks after it went out.
    assert seen[9:] == [(12 + last, 0), (12 + last + 160 if burns else 202, 15)]


def test_a_ninth_change_that_lights_a_torch_puts_it_out_too() -> None:
    bench, torch = torch_at_end()
    events = [on(LEVER, 0)] + [(100 + 4 * index, Lever(LEVER, index % 2 == 1)) for index in range(9)]
    seen = changes(bench, torch, events)
    before = [(102 + 4 * index, 15 * (1 - index % 2)) for index in range(8)]
    assert seen == [(0, 15), (2, 0), *before, (102 + 32 + 160, 15)]


@given(st.integers(0, 15), st.integers(0, 15), st.sampled_from(Mode))
def test_a_comparator_compares_or_subtracts_two_ticks_later(back: int, side: int, mode: Mode) -> None:
    """Back and side are dust so far from levers."""
    bench = Bench()
    comparator = bench.put("comparator", 0, 0, E, mode=mode)
    events = []
    if back:
        bench.line(-1, 0, 16 - back, W)
        events.append(on(bench.put("lever", -1 - (16 - back), 0)))
    if side:
        bench.line(0, 1, 16 - side, S)
        events.append(on(bench.put("lever", 0, 1 + (16 - side))))
    value = max(0, back - side) if mode is Mode.SUBTRACT else (back if side <= back else 0)
    assert changes(bench, comparator, events) == [(0, 0)] + ([(2, value)] if value else [])


def test_14_behind_and_15_at_the_side_subtract_to_0() -> None:
    """The swapped default of a reader: common practice, no source."""
    bench = Bench()
    comparator = bench.put("comparator", 0, 0, E, mode=Mode.SUBTRACT)
    bench.line(-1, 0, 2, W)
    back = bench.put("lever", -3, 0)
    bench.put("repeater", 0, 1, N)
    side = bench.put("lever", 0, 2)
    done = bench.watch([comparator, cell(-1, 0)], [on(back, 0), on(side, 10), off(side, 20)])
    assert done.probes[comparator] == ((0, 0), (2, 14), (14, 0), (24, 14))
    assert done.probes[cell(-1, 0)] == ((0, 0), (0, 14))[1:]


def test_a_torch_at_the_side_of_a_comparator_does_not_count() -> None:
    bench = Bench()
    comparator = bench.put("comparator", 0, 0, E)
    bench.put("dust", -1, 0)
    bench.put("dust", -2, 0)
    lever = bench.put("lever", -3, 0)
    bench.put("torch", 0, 1, UP)
    assert changes(bench, comparator, [on(lever, 5)]) == [(0, 0), (7, 14)]


def test_reset_starts_again() -> None:
    bench, torch = torch_at_end()
    dry_run: DryRun = bench.dry_run()
    dry_run.step([Lever(LEVER, True)])
    dry_run.step()
    dry_run.step()
    assert (dry_run.output(torch), dry_run.tick) == (0, 3)
    dry_run.reset()
    assert (dry_run.output(torch), dry_run.output(cell(1, 0)), dry_run.tick) == (15, 0, 0)
    assert dry_run.is_quiet
