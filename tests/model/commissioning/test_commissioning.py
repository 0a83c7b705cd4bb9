"""What must hold of test runs and diagnoses whatever the junction; and answers that are known by hand."""

from __future__ import annotations

from itertools import combinations
from math import isclose, log2
from random import Random

import pytest

from model.commissioning import STAYS, Commissioning, Diagnosis, Fault, Kind, Observed, Run, diagnose
from model.commissioning.faults import go_together
from model.commissioning.trials import numbers_in
from model.files.plan_file import read_plan
from model.grid import ALL_TURNS, Cell, Turn
from model.routing.junction import Junction
from model.text_drawing import plan_from_drawing
from model.track.shapes import Shape
from tests.model.commissioning.junctions import EXAMPLES, Pair, random_plans
from tests.oracle.carts import trace
from tests.oracle.settings import state
from tests.oracle.shapes import build
from tests.oracle.turning import turned, turned_cell

LADDER = """
level 64
───────────────
···│·│···│·│···
···│·│···│·│···
arm West: in 0 64 0 east, out 0 64 0 west
arm East: in 14 64 0 west, out 14 64 0 east
arm Mill: in 3 64 2 north, out 3 64 2 south
arm Fen: in 5 64 2 north, out 5 64 2 south
arm Quay: in 9 64 2 north, out 9 64 2 south
arm Orchard: in 11 64 2 north, out 11 64 2 south
route Mill: idle West, called East
route Fen: idle West, called East, waybill Salt
route Quay: idle West, called East
route Orchard: idle West, called East
route East: idle West, called Orchard
"""
"""Switches close to one another in pairs, and the pairs apart."""


@pytest.fixture(params=[*EXAMPLES, LADDER], ids=lambda given: getattr(given, "stem", "ladder"))
def commissioning(request: pytest.FixtureRequest) -> Commissioning:
    given = request.param
    return Commissioning(Junction(plan_from_drawing(given) if isinstance(given, str) else read_plan(given)))


def all_seen(commissioning: Commissioning, faults: tuple[Fault, ...]) -> list[Observed]:
    """Every run as it comes out with these faults."""
    return [Observed(run, commissioning.outcome(run, faults)) for run in commissioning.runs]


def test_a_fault_that_is_there_is_found(commissioning: Commissioning) -> None:
    """Each single fault: it is among the diagnoses of what it does in all runs, or shows in none."""
    for fault in commissioning.faults:
        found = diagnose(commissioning, all_seen(commissioning, (fault,)))
        if fault in commissioning.hidden:
            assert found == Diagnosis((), ((),), None)
        else:
            assert (fault,) in found.diagnoses
            alike = next((group for group in commissioning.alike if fault in group), (fault,))
            assert [faults for faults in found.diagnoses if len(faults) == 1] == [(one,) for one in alike]
            assert found.next_run is None


def test_the_order_of_the_runs_makes_no_difference(commissioning: Commissioning) -> None:
    random = Random(3)
    for _ in range(10):
        there = tuple(random.sample(commissioning.faults, 2))
        seen = random.sample(all_seen(commissioning, there), 3) if go_together(there) else []
        found = diagnose(commissioning, seen)
        for _ in range(4):
            assert diagnose(commissioning, random.sample(seen, len(seen))) == found


def test_without_what_bears_on_it_a_cart_goes_the_same_way(commissioning: Commissioning) -> None:
    """Two faults are there, and up to four more come that do not bear on the run."""
    random = Random(5)
    trials, faults = commissioning.trials, commissioning.faults
    compared = 0
    for _ in range(400):
        run = random.choice(commissioning.runs)
        there = tuple(random.sample(faults, random.randint(0, 2)))
        seen = trials.seen(run, there)
        bearing = set(numbers_in(seen.bearing))
        idle = [fault for number, fault in enumerate(faults) if number not in bearing]
        more = tuple(random.sample(idle, min(len(idle), random.randint(1, 4))))
        if go_together((*there, *more)):
            compared += 1
            assert commissioning.outcome(run, (*there, *more)) == seen.outcome
    assert compared > 100


def test_the_ladder_against_trying_all() -> None:
    """Two regions of two switches each, which the examples do not have; pairs of faults in both."""
    pair = Pair(plan_from_drawing(LADDER))
    assert len(pair.model.trials.wired) == 4
    for chosen in combinations(pair.model.faults, 2):
        for run in pair.model.runs if go_together(chosen) else ():
            assert pair.model.outcome(run, chosen) == pair.tried_outcome(run, chosen)


def test_the_next_run_tells_most(commissioning: Commissioning) -> None:
    """The entropy of every run left, worked out plainly; two faults count for a hundredth of one."""
    random = Random(7)
    asked = 0
    for _ in range(30):
        there = tuple(random.sample(commissioning.faults, 1))
        seen = random.sample(all_seen(commissioning, there), random.randint(1, 3))
        found = diagnose(commissioning, seen)
        left = [run for run in commissioning.runs if run not in {each.run for each in seen}]
        told = {run: entropy(commissioning, found, run) for run in left}
        most = max(told.values(), default=0.0)
        if found.next_run is None:
            assert isclose(most, 0, abs_tol=1e-6)
        else:
            asked += 1
            assert found.next_run == next(run for run in left if isclose(told[run], most, abs_tol=1e-6))
    assert asked > 3


def entropy(commissioning: Commissioning, found: Diagnosis, run: Run) -> float:
    weight = {1: 100.0, 2: 1.0}
    shares: dict[str, float] = {}
    if found.diagnoses == ((),):
        return 0.0
    total = sum(weight[len(faults)] for faults in found.diagnoses)
    for faults in found.diagnoses:
        outcome = commissioning.outcome(run, faults)
        shares[outcome] = shares.get(outcome, 0.0) + weight[len(faults)] / total
    return -sum(share * log2(share) for share in shares.values())


def tried_turn(pair: Pair, run: Run, turn: Turn) -> str:
    """Where the cart goes in the turned plan, wired as the plan is; by the second implementation."""
    drawn = pair.tried.drawn
    pieces = [(str(p.part), tuple(p.at), str(p.facing)) for p in pair.junction.plan.pieces]
    pieces, arms = turned(pieces, drawn.arms, turn.quarter, turn.mirror)

    def moved(cells):
        return frozenset(turned_cell(at, turn.quarter, turn.mirror) for at in cells)

    start, holds = pair.sent(run)
    powered = pair.tried.idle ^ pair.tried.thrown[start] if holds else pair.tried.idle
    track = state(build(pieces), moved(pair.tried.wired), moved(powered))
    way_in = next(arm.way_in for arm in arms if arm.name == start)
    others = {at: part for part, at, _ in pieces if "rail" not in part}
    return trace(track, others, arms, *way_in).arm or STAYS


def check_turns(pair: Pair) -> int:
    """What a turned plan does is found again, unless the plan as designed does it too; how often it was."""
    outcomes = {turn: [tried_turn(pair, run, turn) for run in pair.model.runs] for turn in ALL_TURNS}
    found = 0
    for seen in outcomes.values():
        told = diagnose(pair.model, list(map(Observed, pair.model.runs, seen)))
        if seen == outcomes[Turn()]:
            assert told == Diagnosis((), ((),), None)
        else:
            assert told.built_otherwise == tuple(turn for turn in ALL_TURNS if outcomes[turn] == seen)
            found += 1
    return found


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_examples_built_otherwise(path) -> None:
    """The rule that shapes follow is tied to the world's axes, so that most turns show."""
    assert check_turns(Pair(read_plan(path))) >= 4


def test_random_junctions_built_otherwise() -> None:
    assert sum(check_turns(Pair(plan)) for _, plan in random_plans(300, 8)) > 20


def test_rails_that_lie_otherwise() -> None:
    """Worked out by hand from the rules of the track (common practice, no source).

    Beside each of the four rails in the middle lies another, so that it might be a curve to the south. From
    the west a cart runs straight through a curve between east and south, as no end lies to the west; by one
    between west and south it comes across the lower line, which turns it to the east.
    """
    plan = """
    level 64
    ──────
    ·────·
    arm Quay: in 0 64 0 east
    arm Mill: out 5 64 0 east
    arm Fen: out 4 64 1 east
    route Quay: idle Mill
    """
    commissioning = Commissioning(Junction(plan_from_drawing(plan)))
    through, astray = (
        tuple(Fault(Kind.RAIL_TURNED, at=Cell(x, 64, 0), shape=shape) for x in range(1, 5))
        for shape in (Shape.SOUTH_EAST, Shape.SOUTH_WEST)
    )
    run = Run("Quay")
    assert set(commissioning.faults) == {*through, *astray}
    assert commissioning.tests == commissioning.runs == (run,)
    assert (commissioning.hidden, commissioning.alike) == (through, (astray,))
    found = diagnose(commissioning, [Observed(run, "Fen")])
    assert found == Diagnosis(found.built_otherwise, tuple((fault,) for fault in astray), None)
    assert diagnose(commissioning, [Observed(run, STAYS)]).diagnoses == ()


def test_nothing_wanted_and_nothing_wired() -> None:
    nothing = Commissioning(Junction(plan_from_drawing("level 64\n───")))
    assert (nothing.faults, nothing.runs, nothing.tests) == ((), (), ())
    assert diagnose(nothing, []) == Diagnosis((), ((),), None)


def test_a_reader_takes_its_own_waybill_only() -> None:
    """Fen's reader takes Salt; Mill's is named after its arm."""
    commissioning = Commissioning(Junction(plan_from_drawing(LADDER)))
    assert Run("Mill", "Mill") in commissioning.runs
    assert Run("Fen", "Salt") in commissioning.runs
    for start in ("Mill", "Fen"):
        assert commissioning.outcome(Run(start)) == commissioning.outcome(Run(start, "Reed")) == "West"
    assert commissioning.outcome(Run("Mill", "Mill")) == commissioning.outcome(Run("Fen", "Salt")) == "East"
    assert commissioning.outcome(Run("Mill", "Salt")) == "West"
