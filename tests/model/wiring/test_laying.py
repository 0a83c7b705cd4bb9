"""Lines as laid, tried in the dry run: each reaches its own targets and nothing else."""

from __future__ import annotations

from functools import cache

import pytest

from model.dry_run import DryRun, Lever
from model.grid import Cell, Heading
from model.parts import Part
from model.pieces import Piece
from model.plan import plan_of
from model.routing.junction import Junction
from model.rules import unsupported
from model.wiring.laying.ground import Ground
from model.wiring.laying.laid import Line, Routed
from model.wiring.lines.coupling import couplings
from tests.model.wiring.laying_bench import Problem, Trial, Yard, random_problem, routed, wired

SEEDS = range(12)


@cache
def solved(seed: int) -> tuple[Problem, Routed]:
    problem = random_problem(seed)
    return problem, routed(problem.plan, problem.lines)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_source_powers_its_own_targets_alone_and_lets_go_of_them(seed: int) -> None:
    problem, result = solved(seed)
    assert not result.failed
    assert_each_powers_its_own(problem, result)


def test_nor_does_it_where_there_is_little_room() -> None:
    laid = 0
    for seed in range(10):
        problem = random_problem(seed, glass=700)
        result = routed(problem.plan, problem.lines)
        if not result.failed:
            assert_each_powers_its_own(problem, result)
            laid += 1
    assert laid >= 8


def assert_each_powers_its_own(problem: Problem, result: Routed) -> None:
    """Pulls one lever after another, and looks at all sinks each time."""
    trial = Trial(wired(problem.plan, result))
    called = [False] * len(problem.lines)
    assert [trial.is_called(sink) for sinks in problem.sinks for sink in sinks] == [False] * sum(
        map(len, problem.sinks)
    )
    for on in (True, False):
        for place, source in enumerate(problem.sources):
            trial.pull(source.lever, on=on)
            called[place] = on
            for sinks, wanted in zip(problem.sinks, called, strict=True):
                assert [trial.is_called(sink) for sink in sinks] == [wanted] * len(sinks)
            if on:
                trial.pull(source.lever, on=False)
                called[place] = False


@pytest.mark.parametrize("seed", SEEDS)
def test_lines_couple_with_their_source_and_what_stands_on_their_targets_alone(seed: int) -> None:
    problem, result = solved(seed)
    for laid, source, sinks in zip(result.laid, problem.sources, problem.sinks, strict=True):
        others = Routed(tuple(other for other in result.laid if other is not laid), ())
        found = couplings(wired(problem.plan, others), laid.pieces)
        assert {coupling.other for coupling in found} == {source.repeater, *sinks}


@pytest.mark.parametrize("seed", SEEDS)
def test_everything_stands_in_the_box_on_something(seed: int) -> None:
    problem, result = solved(seed)
    ground = Ground(problem.plan)
    pieces = [piece for laid in result.laid for piece in laid.pieces]
    assert all(ground.allows(piece.at) for piece in pieces)
    assert not list(unsupported.find(Junction(wired(problem.plan, result))))


@pytest.mark.parametrize("seed", SEEDS)
def test_the_delays_told_are_those_of_the_dry_run(seed: int) -> None:
    problem, result = solved(seed)
    trial = DryRun(wired(problem.plan, result))
    for laid, source in zip(result.laid, problem.sources, strict=True):
        trial.step([Lever(source.lever, True)])
        on: dict[Cell, int] = {}
        for tick in range(60):
            for target in laid.reached:
                if trial.output(target):
                    on.setdefault(target, tick)
            trial.step()
        # The repeater of the source takes two ticks before the line starts.
        assert [on[target] - 2 for target in laid.reached] == list(laid.delays)


def test_the_same_seed_gives_the_same_lines() -> None:
    problem, result = solved(3)
    assert routed(problem.plan, problem.lines) == result
    others = [routed(problem.plan, problem.lines, seed) for seed in range(1, 6)]
    assert any(other != result for other in others)


@pytest.mark.parametrize("heading", list(Heading))
def test_a_line_that_cannot_do_without_repeaters_does_not_hold_itself(heading: Heading) -> None:
    yard = Yard(24)
    source = yard.source(Cell(12, 61, 12), heading)
    corners = [Cell(x, 60, z) for x in (2, 21) for z in (2, 21)]
    lamps = [yard.sink(corner, Part.LAMP) for corner in corners]
    line = Line("round", source.start, tuple((corner,) for corner in corners))
    result = routed(yard.plan, [line])
    assert result.laid[0].repeaters >= 2
    trial = Trial(wired(yard.plan, result))
    for on in (True, False):
        trial.pull(source.lever, on=on)
        assert [trial.is_called(lamp) for lamp in lamps] == [on] * 4


def test_of_alternatives_the_nearer_is_reached() -> None:
    yard = Yard(16)
    source = yard.source(Cell(3, 61, 8), Heading.EAST)
    near, far = Cell(7, 61, 8), Cell(13, 61, 8)
    for target in (far, near):
        yard.sink(target, Part.LAMP)
    (laid,) = routed(yard.plan, [Line("either", source.start, ((far, near),))]).laid
    assert laid.reached == (near,)
    assert (laid.dust, laid.repeaters) == (3, 0)


def test_lines_may_share_a_target() -> None:
    yard = Yard(16)
    sources = [yard.source(Cell(x, 61, 8), heading) for x, heading in ((3, Heading.EAST), (12, Heading.WEST))]
    lamp = yard.sink(Cell(8, 61, 8), Part.LAMP)
    lines = [Line(str(place), each.start, ((Cell(8, 61, 8),),)) for place, each in enumerate(sources)]
    trial = Trial(wired(yard.plan, routed(yard.plan, lines)))
    for source in sources:
        trial.pull(source.lever, on=True)
        assert trial.is_called(lamp)
        trial.pull(source.lever, on=False)
        assert not trial.is_called(lamp)


def test_limits_are_kept() -> None:
    """Every target that is reached late is asked for two ticks earlier, and is so where that is possible."""
    earlier = 0
    for seed in SEEDS:
        problem, result = solved(seed)
        for laid in result.laid:
            for place, delay in enumerate(laid.delays):
                limits = {(laid.line.name, place): delay - 2} if delay else {}
                for again in routed(problem.plan, [laid.line], limits=limits).laid if limits else ():
                    assert again.delays[place] <= delay - 2
                    earlier += 1
    assert earlier > 0


def test_a_line_that_would_be_late_is_not_laid() -> None:
    yard = Yard(24)
    source = yard.source(Cell(2, 61, 4), Heading.EAST)
    yard.sink(Cell(20, 61, 4), Part.LAMP)
    line = Line("late", source.start, ((Cell(20, 61, 4),),))
    assert routed(yard.plan, [line], limits={("late", 0): 2}).laid[0].delays == (2,)
    result = routed(yard.plan, [line], limits={("late", 0): 1})
    assert result.laid == ()
    assert [(each.line, each.target) for each in result.failed] == [(line, Cell(20, 61, 4))]
    why = "There is no way of 1 ticks or less to the target block at 20 61 4."
    assert result.failed[0].reason == why


def test_a_walled_target_is_told() -> None:
    yard = Yard(16)
    source = yard.source(Cell(3, 61, 8), Heading.EAST)
    target = Cell(10, 61, 8)
    yard.sink(target, Part.LAMP)
    for heading in Heading:
        yard.pieces[target.step(heading)] = Piece(Part.GLASS, target.step(heading))
    result = routed(yard.plan, [Line("walled", source.start, ((target,),))])
    assert result.laid == ()
    assert [each.reason for each in result.failed] == ["No dust can lie beside the target block at 10 61 8."]


def test_a_start_beside_another_circuit_is_told() -> None:
    yard = Yard(16)
    source = yard.source(Cell(3, 61, 8), Heading.EAST)
    yard.put(Part.DUST, source.start.step(Heading.NORTH))
    yard.sink(Cell(10, 61, 8), Part.LAMP)
    result = routed(yard.plan, [Line("coupled", source.start, ((Cell(10, 61, 8),),))])
    assert [each.reason for each in result.failed] == ["No dust can lie at 4 61 8, where the line starts."]


def test_lines_that_must_meet_are_told() -> None:
    yard = Yard(16)
    sources = [yard.source(Cell(3, 61, z), Heading.EAST) for z in (8, 9)]
    yard.sink(Cell(10, 61, 4), Part.LAMP)
    yard.sink(Cell(10, 61, 12), Part.LAMP)
    lines = [
        Line(str(z), source.start, ((Cell(10, 61, z),),)) for source, z in zip(sources, (4, 12), strict=True)
    ]
    result = routed(yard.plan, lines)
    assert result.laid == ()
    assert {each.line for each in result.failed} == set(lines)


def test_more_lines_than_free_sides_are_told() -> None:
    """Of the four sides one is taken: three lines may end there, four may not."""
    yard = Yard(16)
    target = yard.put(Part.TARGET_BLOCK, Cell(8, 61, 8))
    yard.put(Part.GLASS, target.step(Heading.NORTH))
    places = [(2, 8, Heading.EAST), (14, 8, Heading.WEST), (8, 14, Heading.NORTH), (3, 3, Heading.EAST)]
    lines = [
        Line(str(place), yard.source(Cell(x, 61, z), heading).start, ((target,),))
        for place, (x, z, heading) in enumerate(places)
    ]
    assert len(routed(yard.plan, lines[:3]).laid) == 3
    result = routed(yard.plan, lines)
    assert result.laid == ()
    assert {each.reason for each in result.failed} == {
        "The lines have too little room at the target block at 8 61 8."
    }


def walled_off(*gaps: int) -> tuple[Yard, list[Line]]:
    """Two sources and their targets on one level, a wall of glass between them, with gaps."""
    yard = Yard(16)
    lines = []
    for z in (4, 10):
        source = yard.source(Cell(2, 63, z), Heading.EAST)
        yard.put(Part.TARGET_BLOCK, Cell(12, 63, z))
        lines.append(Line(str(z), source.start, ((Cell(12, 63, z),),)))
    for z in range(-1, 17):
        if z not in gaps:
            yard.put(Part.GLASS, Cell(8, 63, z))
    return yard, lines


def test_one_line_alone_comes_through_a_gap() -> None:
    yard, lines = walled_off(7)
    for line in lines:
        assert len(routed(yard.plan, [line], depth=2).laid) == 1
    result = routed(yard.plan, lines, depth=2)
    assert len(result.laid) == 1
    why = f"No way was found past the other lines to the target block at {result.failed[0].target}."
    assert [each.reason for each in result.failed] == [why]
    yard, lines = walled_off(7, 9)
    assert len(routed(yard.plan, lines, depth=2).laid) == 2


def test_no_line_comes_through_a_wall() -> None:
    yard, lines = walled_off()
    result = routed(yard.plan, lines[:1], depth=2)
    assert result.laid == ()
    assert [each.reason for each in result.failed] == ["There is no way to the target block at 12 63 4."]


def test_without_rails_there_is_no_room() -> None:
    plan = plan_of([Piece(Part.TARGET_BLOCK, Cell(4, 0, 0))])
    result = routed(plan, [Line("nowhere", Cell(0, 0, 0), ((Cell(4, 0, 0),),))])
    assert result.laid == ()
    assert result.failed
