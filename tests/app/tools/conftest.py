"""A desk with nothing on it, and one with a small junction."""

from __future__ import annotations

import pytest

from model.edits import lay_track
from model.grid import Cell, Heading
from model.plan import EMPTY_PLAN, Arm, ArmEnd, Details, Plan
from tests.app.tools.desk import LEVEL, Desk


def tee() -> Plan:
    """A track from west to east with a branch to the south: the middle rail is a switch."""
    plan = EMPTY_PLAN
    for cells in ([(-2, 0), (-1, 0), (0, 0), (1, 0), (2, 0)], [(0, 2), (0, 1)]):
        plan = lay_track(plan, [Cell(x, LEVEL, z) for x, z in cells]).applied(plan)
    arm = Arm("Quay", ArmEnd(Cell(-2, LEVEL, 0), Heading.EAST))
    return Plan(plan.pieces, Details(arms=(arm,)))


@pytest.fixture
def desk() -> Desk:
    return Desk()


@pytest.fixture
def junction() -> Desk:
    return Desk(tee())
