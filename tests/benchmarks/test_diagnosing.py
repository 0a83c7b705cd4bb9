"""Looking for two faults in a large junction against sending every cart once with every single fault."""

from __future__ import annotations

import time
from collections.abc import Callable
from random import Random

import pytest

from model.commissioning import Commissioning, Observed, diagnose
from model.commissioning.faults import go_together
from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece
from model.plan import Arm, ArmEnd, Details, Plan, Route, plan_of
from model.routing.junction import Junction

pytestmark = pytest.mark.slow

BRANCHES = 38
APART = 6


def ladder() -> Plan:
    """A line from west to east with branches to the south: 40 arms, each with an idle and a called route."""
    length = APART * (BRANCHES + 1)
    rails = [Piece(Part.RAIL, Cell(x, 64, 0), Facing.EAST) for x in range(length + 1)]
    arms = [arm("West", Cell(0, 64, 0), Heading.EAST), arm("East", Cell(length, 64, 0), Heading.WEST)]
    routes = [Route("West", "East", "Branch 1"), Route("East", "West", f"Branch {BRANCHES}")]
    for number in range(1, BRANCHES + 1):
        x, name = APART * number, f"Branch {number}"
        rails += [Piece(Part.RAIL, Cell(x, 64, z), Facing.NORTH) for z in range(1, 5)]
        arms.append(arm(name, Cell(x, 64, 4), Heading.NORTH))
        routes.append(Route(name, "West", "East"))
    return plan_of(rails, Details(arms=tuple(arms), routes=tuple(routes)))


def arm(name: str, at: Cell, heading: Heading) -> Arm:
    return Arm(name, ArmEnd(at, heading), ArmEnd(at, heading.opposite))


def test_pairs_of_faults_cost_little_more_than_single_ones() -> None:
    """A ratio; measured: 0.2 to 2. There are 430 times as many pairs as single faults."""
    commissioning = Commissioning(Junction(ladder()))
    assert len(commissioning.faults) > 800
    single = _seconds(lambda: commissioning.hidden)
    random = Random(1)
    for _ in range(5):
        there = tuple(random.sample(commissioning.faults, 2))
        seen = [Observed(run, commissioning.outcome(run, there)) for run in commissioning.runs]
        fresh = Commissioning(commissioning.junction)
        assert go_together(there)
        assert _seconds(lambda fresh=fresh, seen=seen: diagnose(fresh, seen)) <= 8 * single


def _seconds(action: Callable[[], object]) -> float:
    start = time.process_time()
    action()
    return time.process_time() - start
