"""The modules with a memory, against small models of their own, over many waveforms."""

from __future__ import annotations

from itertools import product
from random import Random

import pytest

from model.dry_run import DryRun, Lever
from model.grid import ALL_TURNS
from model.parts import Part
from model.pieces import Piece, Pieces
from model.plan import Plan
from model.wiring.modules.modules import module_parameters
from tests.model.wiring.module_bench import Bench, Wave
from tests.model.wiring.module_checks import hold_of

HOLDS = module_parameters("off-delay")[0].choices
LONGEST = 8
"""Ticks to which a repeater makes a shorter pulse, and under which it may swallow a gap, at most."""


def off_delay(wave: Wave, preset: int) -> list[bool]:
    """IEC 61131-3, TOF, from memory: Q follows IN up at once, and down once IN has been off for PT."""
    q: list[bool] = []
    elapsed = preset + 1
    for on in wave:
        elapsed = 0 if on else elapsed + 1
        q.append(elapsed <= preset)
    return q


def random_wave(random: Random, preset: int) -> Wave:
    """Pulses that the first repeater lets through as they are, and gaps that the last one does not swallow.

    The last repeater fills a gap that would show for less than its own delay.
    """
    wave: list[bool] = [False] * random.randrange(1, 10)
    for _ in range(6):
        wave += [True] * random.randrange(LONGEST, 40)
        wave += [False] * random.choice(
            (
                random.randrange(1, 12),
                random.randrange(1, preset + 1),
                random.randrange(preset + LONGEST, preset + 20),
                preset - 1,
                preset,
                preset + LONGEST,
            )
        )
    return [*wave, *[False] * (preset + 20)]


def test_the_model_of_an_off_delay() -> None:
    assert off_delay([True, False, False, False], 2) == [True, True, True, False]
    assert off_delay([False, True, False, True, False, False, False], 2) == [False, *[True] * 5, False]


@pytest.mark.parametrize("hold", HOLDS)
@pytest.mark.parametrize("seed", range(2))
def test_an_off_delay_is_the_timer_of_the_norm(hold: str, seed: int) -> None:
    """It is the timer, late by its delay; the timer's own time is the hold less that delay."""
    random = Random(seed)
    bench = Bench("off-delay", {"hold": hold}, random.choice(ALL_TURNS))
    late = bench.module.delay
    preset = int(hold) - late
    wave = random_wave(random, preset)
    expected = off_delay(wave, preset)
    assert bench.answer({"in": wave}, "held") == [False] * late + expected[:-late]


@pytest.mark.parametrize("length", range(1, LONGEST))
@pytest.mark.parametrize("hold", HOLDS)
def test_a_short_pulse_is_held_without_a_gap(hold: str, length: int) -> None:
    bench = Bench("off-delay", {"hold": hold})
    on = bench.answer({"in": [True] * length + [False] * (hold_of(bench) + 20)}, "held")
    first, last = on.index(True), len(on) - on[::-1].index(True)
    assert all(on[first:last])
    assert first == bench.module.delay
    assert length + int(hold) <= last <= LONGEST + int(hold)


@pytest.mark.parametrize("strength", range(1, 16))
def test_any_strength_starts_an_off_delay(strength: int) -> None:
    """A line of dust that is that strong where it ends."""
    bench = Bench("off-delay", {})
    port = bench.module.port("in")
    far = port.at.moved(dx=strength - 15)
    dust = [Piece(Part.DUST, port.at.moved(dx=-step)) for step in range(16 - strength)]
    cells = {piece.at for piece in dust} | {port.at.moved(dx=-1)}
    stay = [piece for piece in bench.plan.pieces if piece.at not in cells]
    lever = far.moved(dx=-1)
    run = DryRun(Plan(Pieces.of([*stay, *dust, Piece(Part.LEVER, lever)])))
    run.step([Lever(lever, True)])
    assert run.strength(port.at) == strength
    for _ in range(bench.module.delay):
        run.step()
    assert run.strength(bench.module.port("held").at) == 15


LENGTHS = (1, 3, 5, 7, 10)
SET_BY, RESET_BY = 4, 8
"""Delays of the repeaters at set and reset, in ticks: so late, and so long at least, is a pulse there."""


@pytest.mark.parametrize("length", LENGTHS)
def test_a_latch_comes_to_rest_and_the_later_pulse_decides(length: int) -> None:
    """A set pulse, and a reset pulse before, across or after it: nothing runs round for ever."""
    first = 8
    for start, reset in product(range(28), LENGTHS):
        bench = Bench("latch", {"outputs": "one"})
        set_wave = [first <= tick < first + length for tick in range(70)]
        reset_wave = [start <= tick < start + reset for tick in range(70)]
        on = bench.answer({"set": set_wave, "reset": reset_wave}, "on")
        assert bench.run.is_quiet, (start, reset)
        set_ends = first + SET_BY + max(length, SET_BY)
        reset_ends = start + RESET_BY + max(reset, RESET_BY)
        if set_ends - reset_ends != 1:
            assert on[-1] == (set_ends > reset_ends), (start, reset)


@pytest.mark.parametrize("length", range(1, 14))
def test_a_latch_changes_once_for_a_pulse_however_short(length: int) -> None:
    bench = Bench("latch", {"outputs": "two"})
    wave = [tick < length for tick in range(40)]
    on = bench.answer({"set": wave}, "on")
    assert on == [False] * bench.module.delay + [True] * (40 - bench.module.delay)
    off = bench.answer({"reset": wave}, "on")
    assert off == [True] * 14 + [False] * 26


@pytest.mark.parametrize("name", ["merge-repeaters", "merge-target"])
def test_a_merge_lets_nothing_back(name: str) -> None:
    """The common line is on from elsewhere; the lines that end here stay off."""
    bench = Bench(name, {})
    line = bench.module.port("line")
    lamp = line.at.beside(line.facing)
    pieces = [piece for piece in bench.plan.pieces if piece.at != lamp]
    run = DryRun(Plan(Pieces.of([*pieces, Piece(Part.LEVER, lamp)])))
    run.step([Lever(lamp, True)])
    for _ in range(20):
        run.step()
    assert run.strength(line.at) == 15
    assert [run.strength(bench.module.port(port).at) for port in bench.ins] == [0] * len(bench.ins)
