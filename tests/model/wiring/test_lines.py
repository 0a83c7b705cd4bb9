"""Lines found in a plan.

Rules: common practice of the trade, no source. What is expected was worked out by hand from the text of the
rules, as each test says.
"""

from __future__ import annotations

import pytest

from model.dry_run import Lever
from model.grid import Facing
from model.parts import Part
from model.wiring.lines.lines import End, FoundLine, line_at, lines
from model.wiring.lines.own_supports import own_supports
from model.wiring.modules.modules import load_module, trial_plan
from tests.model.dry_run.building import UP, Bench, E, S, W, cell


def only(bench: Bench) -> FoundLine:
    found = lines(bench.plan())
    assert len(found) == 1, found
    return found[0]


@pytest.fixture
def bench() -> Bench:
    return Bench()


def lever_line(bench: Bench, length: int) -> None:
    """A lever, and a straight line of dust to the east of it."""
    bench.put("lever", 0, 0, UP)
    bench.line(1, 0, length)


def test_strength_falls_by_one_a_cell(bench: Bench) -> None:
    lever_line(bench, 17)
    line = only(bench)
    assert line.start == cell(1, 0)
    assert line.drivers == (cell(0, 0),)
    assert [line.strength[cell(x, 0)] for x in range(1, 18)] == [*range(15, 0, -1), 0, 0]
    assert line.dust == tuple(cell(x, 0) for x in range(1, 18))
    assert line.ends == ()


def test_strength_is_what_the_dry_run_shows(bench: Bench) -> None:
    lever_line(bench, 12)
    bench.put("repeater", 13, 0, E)
    bench.line(14, 0, 4)
    bench.line(17, 1, 3, S)
    line = only(bench)
    run = bench.dry_run()
    run.step([Lever(cell(0, 0), True)])
    for _ in range(4):
        run.step()
    assert dict(line.strength) == {at: run.strength(at) for at in line.dust}
    assert line.repeaters == (cell(13, 0),)
    assert line.segment_of(cell(14, 0)) == line.segments[1]
    assert line.cells == {*line.dust, cell(13, 0)}


def test_a_repeater_that_nothing_reaches_gives_nothing(bench: Bench) -> None:
    """The 16th dust has no strength left."""
    lever_line(bench, 16)
    bench.put("repeater", 17, 0, E)
    bench.put("dust", 18, 0)
    line = only(bench)
    assert line.strength[cell(16, 0)] == 0
    assert line.strength[cell(18, 0)] == 0


def test_repeaters_in_a_row_belong_to_the_line(bench: Bench) -> None:
    lever_line(bench, 2)
    bench.line(3, 0, 3, E, "repeater")
    for x in (3, 4, 5):
        bench.pieces[cell(x, 0)] = bench.pieces[cell(x, 0)].__class__(Part.REPEATER, cell(x, 0), E)
    bench.put("dust", 6, 0)
    line = only(bench)
    assert line.repeaters == (cell(3, 0), cell(4, 0), cell(5, 0))
    assert line.strength[cell(6, 0)] == 15


def test_dust_that_nothing_drives_begins_where_it_was_placed_first(bench: Bench) -> None:
    bench.line(5, 0, 3, W)
    line = only(bench)
    assert line.start == cell(5, 0)
    assert line.drivers == ()
    assert [line.strength[cell(x, 0)] for x in (5, 4, 3)] == [15, 14, 13]


def test_the_ends_of_a_line(bench: Bench) -> None:
    """A target block with its torch, a lamp at the side of it, and a rail that is not three-way: no end."""
    lever_line(bench, 3)
    bench.put("target-block", 4, 0)
    bench.put("torch", 4, 0, UP, y=65)
    bench.put("lamp", 4, 1)
    bench.track(1, 1, 2)
    assert only(bench).ends == (End(cell(4, 0), (cell(4, 1), cell(4, 0, 65))),)


def test_a_target_block_is_an_end_though_nothing_heeds_it(bench: Bench) -> None:
    lever_line(bench, 3)
    bench.put("target-block", 4, 0)
    assert only(bench).ends == (End(cell(4, 0), ()),)


def test_a_repeater_that_faces_a_block_ends_the_line(bench: Bench) -> None:
    lever_line(bench, 2)
    bench.put("repeater", 3, 0, E)
    bench.put("solid-block", 4, 0)
    bench.put("lamp", 4, 1)
    line = only(bench)
    assert line.repeaters == (cell(3, 0),)
    assert line.ends == (End(cell(4, 0), (cell(4, 1),)),)


def test_where_two_lines_run_together_a_third_begins(bench: Bench) -> None:
    lever_line(bench, 2)
    bench.put("repeater", 3, 0, E)
    bench.put("lever", 0, 2, UP)
    bench.line(1, 2, 2)
    bench.put("repeater", 3, 2, E)
    bench.line(4, 0, 3, S)
    first, second, third = lines(bench.plan())
    assert first.drivers == (cell(0, 0),)
    assert second.drivers == (cell(0, 2),)
    assert set(third.drivers) == {cell(3, 0), cell(3, 2)}
    assert first.ends == (End(cell(4, 0), (cell(4, 0),)),)


def test_dust_at_a_comparator_is_a_circuit_and_a_line_begins_behind_its_repeater(bench: Bench) -> None:
    bench.put("comparator", 1, 1, W)
    bench.line(2, 1, 1)
    bench.put("repeater", 3, 1, E)
    bench.line(4, 1, 3)
    circuit, line = lines(bench.plan())
    assert circuit.dust == (cell(2, 1),)
    assert line.start == cell(4, 1)
    assert line.drivers == (cell(3, 1),)
    assert line_at((circuit, line), cell(5, 1)) is line
    assert line_at((circuit, line), cell(9, 9)) is None


def test_a_ring_of_repeaters_is_one_line(bench: Bench) -> None:
    bench.line(0, 0, 2)
    bench.put("repeater", 2, 0, E)
    bench.line(3, 0, 3, S)
    bench.put("repeater", 2, 2, W)
    bench.line(1, 2, 2, W)
    bench.put("repeater", 0, 1, Facing.NORTH)
    line = only(bench)
    assert len(line.dust) == 7
    assert len(line.repeaters) == 3


def test_own_supports_carry_nothing_else(bench: Bench) -> None:
    lever_line(bench, 4)
    bench.put("torch", 2, 1, S, y=63)
    bench.put("glass", 5, 0, y=63)
    bench.put("dust", 5, 0)
    bench.put("target-block", 6, 0, y=63)
    bench.put("dust", 6, 0)
    plan = bench.plan()
    line = only(bench)
    # The torch hangs on the block under the second dust; a target block is there for more than to carry.
    assert own_supports(plan.pieces, line) == {cell(x, 0, 63) for x in (1, 3, 4, 5)}


def test_a_block_that_keeps_two_others_apart_stays(bench: Bench) -> None:
    """The block under the dust at 2 lies right above foreign dust, which would else join dust a step up."""
    bench.put("dust", 2, 0, y=62)
    bench.put("dust", 2, 1, S, y=63)
    bench.put("solid-block", 2, 1)
    bench.put("lever", 0, 0, UP)
    bench.line(1, 0, 3)
    plan = bench.plan()
    line = next(line for line in lines(plan) if cell(1, 0) in line.dust)
    assert own_supports(plan.pieces, line) == {cell(1, 0, 63), cell(3, 0, 63)}


@pytest.mark.parametrize("name", ["reader", "swapped-default"])
def test_a_line_begins_at_the_port_of_a_reader(name: str) -> None:
    """Its inner dust is no part of the line: a reader gives by a repeater; there the line starts."""
    port = next(port for port in load_module(name).ports if port.name == "line")
    line = line_at(lines(trial_plan(name)), port.at)
    assert line is not None
    assert line.start == port.at
    assert len(line.drivers) == 1
    assert line.cells.isdisjoint(load_module(name).cells)
