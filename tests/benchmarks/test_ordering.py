"""The cheapest order of placing, against a brute force over all orders, and against one replay."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import pytest

from model.files.plan_file import read_plan
from model.ordering import BuildOrder, best_order
from model.plan import Plan
from model.track.layout import Layout
from tests.benchmarks.conftest import AddRow, Ratio
from tests.benchmarks.measuring import seconds
from tests.oracle.adapter import plan_from
from tests.oracle.compact_junctions import compact_junction
from tests.oracle.optimum import Optimum, optimum
from tests.oracle.random_junctions import Junction

pytestmark = pytest.mark.slow

JUNCTIONS: Final = 12
SECONDS: Final = 600
"""Never needed on a quiet machine; how far the planner comes in less would hang on who else works there."""
EXAMPLES: Final = Path(__file__).parents[2] / "resources" / "examples"


class Compared:
    """Compact junctions drawn by lot, ordered by the planner and by brute force over all orders."""

    def __init__(self) -> None:
        self.junctions = [compact_junction(seed) for seed in range(JUNCTIONS)]
        self.orders: list[BuildOrder] = []
        self.optima: list[Optimum] = []
        self.seconds = sum(seconds(lambda j=junction: self._order(j)) for junction in self.junctions)
        self.seconds_by_force = sum(seconds(lambda j=junction: self._force(j)) for junction in self.junctions)

    def _order(self, junction: Junction) -> None:
        self.orders.append(cheapest(plan_from(*junction)))

    def _force(self, junction: Junction) -> None:
        self.optima.append(optimum(*junction))


def cheapest(plan: Plan) -> BuildOrder:
    """The planner's last word."""
    *_, order = best_order(plan, SECONDS)
    return order


def test_compact_junctions_against_brute_force(add_row: AddRow) -> None:
    """What the brute force cannot serve the planner must not serve either."""
    compared = Compared()
    pairs = list(zip(compared.orders, compared.optima, strict=True))
    assert all(order.served == (best.cost is not None) for order, best in pairs)
    served = [(sum(order.cost), sum(best.cost)) for order, best in pairs if best.cost is not None]
    spent, least = map(sum, zip(*served, strict=True))
    against = "brute force over all orders"
    add_row(f"inverters, throws and wired switches of {JUNCTIONS} junctions", against, spent / least, 1)
    proved = sum(order.proved for order in compared.orders)
    add_row("of these, the share proved to be the cheapest", "all", proved / JUNCTIONS, 1, at_least=True)
    time = compared.seconds / compared.seconds_by_force
    add_row("the time that it takes to find these orders", against, time, 1)


@pytest.mark.parametrize("name", ["fen-ring", "saltern-junction"])
def test_an_example_against_one_replay(ratio: Ratio, name: str) -> None:
    plan = read_plan(EXAMPLES / f"{name}.plan.json")
    rails = len(Layout(plan).rails)
    assert cheapest(plan).proved
    ratio(
        f"the cheapest order of {plan.details.title}, {rails} rails, proved",
        lambda: cheapest(plan),
        against="replaying one order",
        bound=lambda: Layout(plan),
        rounds=3,
    )
