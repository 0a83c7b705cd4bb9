"""Testing a large junction, and looking for two faults in it, against sending carts with every single one."""

from __future__ import annotations

import math
from random import Random
from typing import Final

import numpy as np
import pytest
from scipy.optimize import linprog

from model.commissioning import Commissioning, Observed, diagnose
from model.commissioning.faults import Fault, go_together
from model.commissioning.runs import Run
from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece
from model.plan import Arm, ArmEnd, Details, Plan, Route, plan_of
from model.routing.junction import Junction
from tests.benchmarks.conftest import AddRow, Ratio

pytestmark = pytest.mark.slow

BRANCHES: Final = 38
APART: Final = 6
PAIRS: Final = 5


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


@pytest.fixture(scope="module")
def commissioning() -> Commissioning:
    return Commissioning(Junction(ladder()))


def every_cart_sent(commissioning: Commissioning) -> Commissioning:
    """Anew every run as designed, and once with each single fault that bears on it."""
    fresh = Commissioning(commissioning.junction)
    assert set(fresh.hidden) < set(fresh.faults)
    return fresh


def test_pairs_of_faults_cost_little_more_than_single_ones(
    commissioning: Commissioning, ratio: Ratio
) -> None:
    """There are 430 times as many pairs as single faults."""
    assert len(commissioning.faults) > 800
    random = Random(1)
    seen = [observed(commissioning, random) for _ in range(PAIRS)]
    ratio(
        f"diagnoses of {PAIRS} pairs of faults, 40 arms",
        lambda: [diagnose(Commissioning(commissioning.junction), runs) for runs in seen],
        against="sending carts with every single fault once",
        bound=lambda: every_cart_sent(commissioning),
        goal=8 * PAIRS,
        rounds=2,
    )


def observed(commissioning: Commissioning, random: Random) -> list[Observed]:
    """What somebody sees who runs everything, with two faults drawn by lot."""
    there = tuple(random.sample(commissioning.faults, 2))
    assert go_together(there)
    return [Observed(run, commissioning.outcome(run, there)) for run in commissioning.runs]


def test_choosing_the_test_runs(commissioning: Commissioning, ratio: Ratio) -> None:
    ratio(
        "choice of the fewest test runs, 40 arms",
        lambda: Commissioning(commissioning.junction).tests,
        against="sending carts with every single fault once",
        bound=lambda: every_cart_sent(commissioning),
        goal=2,
        rounds=3,
    )


def test_the_number_of_test_runs(commissioning: Commissioning, add_row: AddRow) -> None:
    """No choice has fewer than the linear relaxation of set cover allows (Chvátal 1979, from memory)."""
    shown = {
        fault: [run for run in commissioning.runs if shows(commissioning, run, fault)]
        for fault in commissioning.faults
    }
    demands = {tuple(runs) for runs in shown.values() if runs}
    assert all(set(runs) & set(commissioning.tests) for runs in demands)
    meets = np.array([[run in runs for run in commissioning.runs] for runs in demands], float)
    least = linprog(np.ones(len(commissioning.runs)), A_ub=-meets, b_ub=-np.ones(len(demands)), bounds=(0, 1))
    add_row(
        "test runs that show every fault, 40 arms",
        "the least that a linear programme allows",
        len(commissioning.tests) / math.ceil(least.fun - 1e-6),
        1,
    )


def shows(commissioning: Commissioning, run: Run, fault: Fault) -> bool:
    return commissioning.outcome(run, (fault,)) != commissioning.outcome(run)
