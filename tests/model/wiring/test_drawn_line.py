"""Lines drawn by hand.

Rules: common practice of the trade, no source. What is expected was worked out by hand from the text of the
rules, as each test says.
"""

from __future__ import annotations

from random import Random

import pytest

from model.dry_run import DryRun, Lever
from model.edits import lay_line
from model.grid import Cell, Heading
from model.plan import EMPTY_PLAN
from model.wiring.lines.drawn_line import DrawnLine, draw_line
from model.wiring.lines.lines import lines
from tests.model.dry_run.building import UP, Bench, E, W, cell


def drawn(bench: Bench, cells: list[Cell], **more) -> DrawnLine:
    plan = bench.plan()
    return draw_line(plan, lines(plan), cells, **more)


def along(start: int, end: int, z: int = 0) -> list[Cell]:
    step = 1 if end >= start else -1
    return [cell(x, z) for x in range(start, end + step, step)]


@pytest.fixture
def bench() -> Bench:
    return Bench()


def test_alone_it_is_as_strong_as_from_a_source(bench: Bench) -> None:
    line = drawn(bench, along(0, 4))
    assert [line.strength[at] for at in along(0, 4)] == [15, 14, 13, 12, 11]
    assert (line.left, line.problem, line.marked) == (11, "", frozenset())


@pytest.mark.parametrize("source", ["lever", "torch", "button"])
def test_from_a_source_on_which_or_beside_which_it_begins(bench: Bench, source: str) -> None:
    bench.put(source, 0, 0, UP)
    for cells in (along(0, 3), along(1, 3)):
        line = drawn(bench, cells)
        assert line.problem == ""
        assert [line.strength[at] for at in along(1, 3)] == [15, 14, 13]


def test_it_goes_on_with_the_strength_of_the_line_that_it_joins(bench: Bench) -> None:
    bench.put("lever", 0, 0, UP)
    bench.line(1, 0, 5)
    for cells in (along(5, 7), along(6, 7)):
        line = drawn(bench, cells)
        assert line.problem == ""
        assert line.strength == {cell(6, 0): 10, cell(7, 0): 9}


def test_a_drag_towards_the_source_runs_the_other_way(bench: Bench) -> None:
    bench.put("lever", 0, 0, UP)
    line = drawn(bench, along(20, 1))
    assert line.strength[cell(1, 0)] == 15
    assert line.repeaters == (cell(16, 0),)
    placed = line.change.applied(bench.plan()).pieces.get(cell(16, 0))
    assert placed is not None
    assert placed.facing is E


def test_a_repeater_comes_at_the_last_place_before_the_strength_runs_out(bench: Bench) -> None:
    """From 15 the 15th dust has 1: the 16th cell takes the repeater, and the 17th has 15 again."""
    line = drawn(bench, along(1, 40))
    assert line.repeaters == (cell(16, 0), cell(32, 0))
    assert line.strength[cell(15, 0)] == 1
    assert line.strength[cell(17, 0)] == 15
    assert line.dead == ()


def test_a_line_of_any_length_has_its_repeaters_at_the_last_places(bench: Bench) -> None:
    """Every sixteenth cell; 15 to 1 between two. There and back, far apart, no repeater holds itself."""
    line = drawn(bench, [*along(1, 400), *(cell(400, z) for z in range(1, 9)), *along(400, 300, 9)])
    assert line.repeaters[:24] == tuple(cell(x, 0) for x in range(16, 385, 16))
    there = [line.strength[at] for at in along(1, 384) if at not in line.repeaters]
    assert there == [*range(15, 0, -1)] * 24
    assert line.dead == ()


def test_before_a_gap_stands_no_repeater_that_helps_nothing(bench: Bench) -> None:
    """Glass takes no power, so nothing comes beyond it; a solid block takes a repeater's and gives it on."""
    bench.put("glass", 3, 0)
    line = drawn(bench, along(0, 6))
    assert line.repeaters == ()
    assert [line.strength[at] for at in (*along(0, 2), *along(4, 6))] == [15, 14, 13, 0, 0, 0]
    bench.put("solid-block", 3, 5)
    line = drawn(bench, along(0, 6, 5))
    assert line.repeaters == (cell(2, 5),)
    assert [line.strength[at] for at in along(4, 6, 5)] == [15, 14, 13]


def test_dust_alone_runs_out_and_is_marked_there(bench: Bench) -> None:
    line = drawn(bench, along(1, 20), with_repeaters=False)
    assert line.repeaters == ()
    assert line.dead == tuple(along(16, 20))
    assert line.marked == {cell(16, 0)}
    assert line.problem == "No signal comes as far as 16 64 0."


def test_a_repeater_comes_earlier_where_none_can_stand(bench: Bench) -> None:
    """At the end of a drag it would drive nothing, at a bend and on stairs it cannot stand."""
    assert drawn(bench, along(1, 16)).repeaters == (cell(15, 0),)
    assert drawn(bench, [*along(1, 16), cell(16, 1), cell(16, 2)]).repeaters == (cell(15, 0),)
    stairs = [Cell(x, 64 + x, 0) for x in range(20)]
    line = drawn(bench, stairs)
    assert line.repeaters == ()
    assert line.dead == tuple(stairs[15:])


def test_a_repeater_that_would_hold_itself_is_not_set(bench: Bench) -> None:
    """There and back side by side, then up stairs: only there and back a repeater could stand."""
    cells = [*along(1, 10), *along(10, 1, 1), *(Cell(-n, 65 + n, 1) for n in range(16))]
    line = drawn(bench, cells)
    assert line.repeaters == ()
    assert line.dead != ()
    for repeaters, stays_on in (({}, False), ({cell(5, 1): W}, True)):
        bench.pieces = {e.piece.at: e.piece for e in lay_line(EMPTY_PLAN, cells, repeaters).placed}
        bench.put("lever", 1, -1, UP)
        run = bench.dry_run()
        run.step([Lever(cell(1, -1), True)])
        for _ in range(9):
            run.step()
        run.step([Lever(cell(1, -1), False)])
        for _ in range(9):
            run.step()
        assert (run.strength(cell(3, 0)) > 0) is stays_on


def test_what_it_begins_and_ends_on_is_meant(bench: Bench) -> None:
    bench.put("repeater", -1, 0, E)
    bench.put("target-block", 4, 0)
    bench.put("torch", 4, 0, UP, y=65)
    assert drawn(bench, along(0, 3)).couplings == ()
    assert drawn(bench, along(0, 4)).couplings == ()
    passing = drawn(bench, [*along(0, 8, 1)])
    assert {coupling.other for coupling in passing.couplings} == {cell(4, 0, 65)}
    assert passing.marked == {cell(4, 1)}


def test_passing_a_foreign_line_is_marked(bench: Bench) -> None:
    bench.line(2, 1, 2)
    line = drawn(bench, along(0, 5))
    assert line.marked == {cell(2, 0), cell(3, 0)}
    assert line.problem == "The dust at 2 64 0 would join the dust at 2 64 1."


def test_running_beside_the_line_that_it_goes_on_with_is_meant(bench: Bench) -> None:
    bench.put("lever", 0, 0, UP)
    bench.line(1, 0, 5)
    line = drawn(bench, [cell(5, 0), cell(5, 1), *along(4, 1, 1)])
    assert line.couplings == ()


def test_a_piece_in_the_way_is_named(bench: Bench) -> None:
    bench.put("lamp", 2, 0)
    line = drawn(bench, along(0, 4))
    assert line.skipped == {cell(2, 0)}
    assert line.problem == "The lamp at 2 64 0 is in the way."


def test_no_room_for_a_block(bench: Bench) -> None:
    bench.put("rail", 2, 0, y=63)
    line = drawn(bench, along(0, 4))
    assert line.problem == "At 2 64 0 the rail below leaves no room for a block under the dust."


def test_random_lines_are_as_strong_as_the_dry_run_says() -> None:
    """A lever stands where the drag begins; after the delays of all repeaters the dust shows the same."""
    seen = 0
    for seed in range(60):
        random = Random(seed)
        bench = Bench()
        bench.put("lever", 0, 0, UP)
        heading, path = Heading.EAST, [cell(1, 0)]
        for _ in range(random.randint(3, 90)):
            if random.random() < 0.15:
                heading = random.choice((heading.clockwise, heading.clockwise.opposite))
            path.append(path[-1].step(heading, random.choice((0, 0, 0, 0, 0, 1, -1))))
        if len({(at.x, at.z) for at in path}) < len(path):
            continue
        plan = bench.plan()
        line = draw_line(plan, lines(plan), path, with_repeaters=random.random() < 0.8)
        whole = line.change.applied(plan)
        run = DryRun(whole)
        run.step([Lever(cell(0, 0), True)])
        for _ in range(4 * len(line.repeaters) + 2):
            run.step()
        assert {at: run.strength(at) for at in line.strength} == dict(line.strength), f"seed {seed}"
        seen += len(line.repeaters)
    assert seen > 60
