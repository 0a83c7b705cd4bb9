"""What a dry run finds wrong: a case for and one against each. Common practice, no source."""

from __future__ import annotations

import pytest

from model.dry_run import Event, Lever, RunFinding, Send, Trouble
from model.dry_run.findings import most_below
from model.grid import Cell, Heading
from tests.model.dry_run.building import DOWN, Bench, E, N, S, W, cell, holding, off, on

Events = list[tuple[int, Event]]


def found(bench: Bench, trouble: Trouble, events: Events, ticks: int = 60) -> list[RunFinding]:
    """The findings of one kind, and no finding of another kind."""
    findings = bench.watch([], events, ticks).findings
    assert all(each.trouble is trouble for each in findings), findings
    return list(findings)


@pytest.mark.parametrize(("length", "dry"), [(15, []), (16, [16]), (20, [16])])
def test_the_first_dust_that_nothing_reaches(length: int, dry: list[int]) -> None:
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    bench.line(1, 0, length)
    seen = found(bench, Trouble.DUST_OUT_OF_REACH, [on(lever, 3)])
    assert [(each.cells, each.tick) for each in seen] == [((cell(x, 0),), 3) for x in dry]


def test_dust_that_another_source_reaches_later_is_not_out_of_reach() -> None:
    bench = Bench()
    one, other = bench.put("lever", 0, 0), bench.put("lever", 25, 0)
    bench.line(1, 0, 24)
    assert not found(bench, Trouble.DUST_OUT_OF_REACH, [on(one, 3), on(other, 9)])


def switch_with_two_lines(first: str = "lever") -> tuple[Bench, Cell, Cell]:
    """A three-way rail at the end of a line that two repeaters feed."""
    bench = Bench()
    bench.track(0, -1, 3, N)
    bench.track(0, 1, 3, S)
    bench.track(1, 0, 3, E)
    bench.put("rail", 0, 0, N)
    bench.line(-1, 0, 3, W)
    bench.put("repeater", -4, 0, E)
    bench.put("repeater", -3, 1, N)
    return bench, bench.put(first, -5, 0), bench.put("lever", -3, 2)


def test_two_lines_that_meet_on_their_way_to_a_switch() -> None:
    bench, one, other = switch_with_two_lines()
    (seen,) = found(bench, Trouble.LINES_TOUCH, [on(one, 4)])
    assert (set(seen.cells[1:]), seen.tick) == ({cell(-4, 0), cell(-3, 1)}, 6)
    assert not found(bench, Trouble.LINES_TOUCH, [on(one, 4), on(other, 4)]), "both throw it at one time"


def test_a_line_that_meets_one_that_is_on_from_the_start() -> None:
    """Nothing changes while it runs: the torch throws all the time what the lever would throw."""
    bench, _, _ = switch_with_two_lines("torch")
    (seen,) = found(bench, Trouble.LINES_TOUCH, [])
    assert (set(seen.cells[1:]), seen.tick) == ({cell(-4, 0), cell(-3, 1)}, 0)


def test_lines_that_meet_in_a_gate_that_throws_nothing() -> None:
    bench = Bench()
    bench.line(0, 0, 3)
    bench.put("lamp", 3, 0)
    bench.put("repeater", -1, 0, E)
    bench.put("repeater", 1, 1, N)
    lever = bench.put("lever", -2, 0)
    assert not bench.watch([], [on(lever, 4)], 30).findings


def test_a_block_that_two_lines_power() -> None:
    bench = Bench()
    one, other = bench.put("lever", 0, 0), bench.put("lever", 4, 0)
    bench.put("dust", 1, 0)
    bench.put("solid-block", 2, 0)
    bench.put("dust", 3, 0)
    bench.put("torch", 2, 1, S)
    (seen,) = found(bench, Trouble.BLOCK_FROM_TWO_LINES, [on(one, 4), off(one, 10), on(other, 20)])
    assert (seen.cells, seen.tick) == ((cell(2, 0),), 20)
    (seen,) = found(bench, Trouble.BLOCK_FROM_TWO_LINES, [on(one, 4), on(other, 20)])
    assert seen.tick == 20, "the second line makes the power no stronger"
    assert not found(bench, Trouble.BLOCK_FROM_TWO_LINES, [on(one, 4)])


def test_a_block_that_two_lines_power_from_the_start() -> None:
    bench = Bench()
    for x in (-1, 5):
        bench.put("torch", x, 0)
    bench.put("dust", 0, 0)
    bench.put("dust", 1, 0)
    bench.put("solid-block", 2, 0)
    bench.put("dust", 3, 0)
    bench.put("dust", 4, 0)
    bench.put("lamp", 2, 1)
    (seen,) = found(bench, Trouble.BLOCK_FROM_TWO_LINES, [])
    assert (seen.cells, seen.tick) == ((cell(2, 0),), 0)


def test_a_torch_that_burns_out() -> None:
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    bench.put("dust", 1, 0)
    bench.put("solid-block", 2, 0)
    torch = bench.put("torch", 3, 0, E)
    events: Events = [(4 * index, Lever(lever, index % 2 == 0)) for index in range(9)]
    (seen,) = found(bench, Trouble.TORCH_BURNS_OUT, events)
    assert (seen.cells, seen.tick) == ((torch,), 34)
    assert not found(bench, Trouble.TORCH_BURNS_OUT, events[:8])


def test_a_torch_that_burns_out_as_it_would_light() -> None:
    """The ninth change would light it; it is out all the time, and looks otherwise for the 160 ticks."""
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    torch = bench.put("torch", 0, -1, N, y=63)
    turns = {0: True, **{100 + 4 * index: index % 2 == 1 for index in range(9)}, 140: True}
    events: Events = [(tick, Lever(lever, on)) for tick, on in turns.items()]
    (seen,) = found(bench, Trouble.TORCH_BURNS_OUT, events, 300)
    assert (seen.cells, seen.tick) == ((torch,), 134)
    dry_run, waits, looks = bench.dry_run(), [], []
    for tick in range(300):
        dry_run.step([Lever(lever, turns[tick])] if tick in turns else [])
        if dry_run.is_burnt_out(torch):
            waits.append(tick)
        if tick > 130 and torch in dry_run.changed:
            looks.append(tick)
    assert waits == list(range(134, 294))
    assert looks == [134, 294]


def test_a_circuit_that_never_settles() -> None:
    """A repeater and a torch in a ring change every six ticks, which is too slow to burn out."""
    bench = Bench()
    bench.put("target-block", 0, 0)
    bench.put("torch", 1, 0, E)
    bench.put("repeater", 1, 1, S, delay=8)
    bench.put("dust", 1, 2)
    bench.put("dust", 0, 2)
    bench.put("dust", 0, 1)
    seen = found(bench, Trouble.NEVER_SETTLES, [], 500)
    assert {each.cells[0] for each in seen} == {cell(1, 0), cell(1, 1)}
    assert min(each.tick for each in seen) > 400
    assert not found(bench, Trouble.NEVER_SETTLES, [], 390)


def reader(count: int, read: bool = True) -> Bench:
    bench = Bench()
    bench.put("hopper", 0, 0, DOWN, y=63, **holding(("waybill:Salt", count)))
    bench.put("rail", 0, 0, E)
    if read:
        bench.put("comparator", 0, 1, S, y=63)
    return bench


@pytest.mark.parametrize("count", [21, 23])
def test_a_reader_with_the_wrong_count(count: int) -> None:
    (seen,) = found(reader(count), Trouble.READER_COUNT, [])
    assert seen.cells == (cell(0, 0, 63),)
    assert "must hold 22" in seen.message
    assert not found(reader(count, read=False), Trouble.READER_COUNT, [])


def test_a_reader_with_22() -> None:
    """22 → 1, 23 → 2 of items that stack to 64; 5 → 1, 6 → 2 of those that stack to 16."""
    assert not found(reader(22), Trouble.READER_COUNT, [])
    assert (most_below(2), most_below(2, 16)) == (22, 5)
    for stack, most in ((64, 22), (16, 5)):
        assert [1 + 14 * count // (5 * stack) for count in (most, most + 1)] == [1, 2]


def held_switch() -> Bench:
    """A detector rail whose signal throws a switch further on: the fifth cell and the ninth.

    The first cart puts the detector rail on in tick 10, and leaves the switch in tick 23.
    """
    bench = Bench()
    bench.track(-8, 0, 4)
    bench.put("detector-rail", -4, 0, E)
    bench.track(-3, 0, 3)
    bench.track(0, -1, 3, N)
    bench.track(1, 0, 3, E)
    bench.put("rail", 0, 0, N)
    bench.put("dust", -4, 1)
    bench.line(-4, 2, 5)
    bench.put("dust", 0, 1)
    bench.arm("Quay", into=(cell(-8, 0), Heading.EAST))
    bench.arm("Mill", out=(cell(0, -3), Heading.NORTH))
    bench.arm("Fen", out=(cell(3, 0), Heading.EAST))
    return bench


@pytest.mark.parametrize(("gap", "short"), [(1, False), (5, True)])
def test_a_hold_that_is_shorter_than_the_gap_of_a_train(gap: int, short: bool) -> None:
    """The signal lasts up to tick 30. A gap of 1 is 5 ticks, of 5 is 15: then the switch is at rest again."""
    train = Send("Quay", ((), ()), gap)
    seen = found(held_switch(), Trouble.HOLD_TOO_SHORT, [(0, train)], 120)
    assert [each.cells for each in seen] == ([(cell(0, 0),)] if short else [])


def test_two_trains_may_go_two_ways() -> None:
    one, other = Send("Quay", ((),)), Send("Quay", ((),))
    assert not found(held_switch(), Trouble.HOLD_TOO_SHORT, [(0, one), (15, other)], 120)
