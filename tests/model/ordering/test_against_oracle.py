"""The order planner against all orders, as a second implementation enumerates them."""

from __future__ import annotations

from random import Random

import pytest

from model.ordering import best_order
from tests.model.ordering.comparing import (
    SECONDS,
    built_in,
    compare_best_order,
    compare_cost_of_order,
    cost_said,
    on_blocks,
    told,
)
from tests.oracle.adapter import drawn_from, plan_from
from tests.oracle.compact_junctions import (
    SMALL,
    TINY,
    Sort,
    all_ways,
    compact_junction,
    double_track_t,
    shuffled,
)
from tests.oracle.optimum import Cost, cost_of_order
from tests.oracle.turning import turned

FEW = SMALL._replace(branching=(2, 4), kept=9)
LARGE = SMALL._replace(arms=(4, 7), branching=(7, 10), kept=16)
IDLE = {"West": "East", "East": "West", "South": "West"}


def compare_many(seeds: range, sort: Sort) -> list[Cost | None]:
    """Half of the junctions on blocks that are placed between the rails."""
    costs = []
    for seed in seeds:
        pieces, arms, routes = compact_junction(seed, sort)
        if seed % 2:
            pieces = on_blocks(Random(seed), pieces)
        costs.append(compare_best_order(f"seed {seed}, {sort}", (pieces, arms, routes)))
    return costs


def test_tiny_junctions() -> None:
    assert len(set(compare_many(range(25), TINY))) > 2


def test_small_junctions() -> None:
    assert len(set(compare_many(range(8), FEW))) > 2


@pytest.mark.slow
@pytest.mark.timeout(7200)
def test_many_junctions() -> None:
    assert len(set(compare_many(range(1_000, 1_400), TINY))) > 6
    assert len(set(compare_many(range(1_000, 1_100), SMALL))) > 6


@pytest.mark.slow
@pytest.mark.timeout(7200)
def test_junctions_with_seven_to_ten_branching_rails_are_proved() -> None:
    """Which of these can be served at all, and how cheaply, is not tried here; that it is proved counts."""
    served = 0
    for seed in range(12):
        plan = plan_from(*compact_junction(seed, LARGE))
        found = list(best_order(plan, SECONDS))[-1]
        assert found.proved, told(seed, plan)
        compare_cost_of_order(seed, plan, found)
        served += found.served
    assert served > 3


@pytest.mark.slow
@pytest.mark.timeout(3600)
@pytest.mark.parametrize("mirror", [False, True])
@pytest.mark.parametrize("quarter", range(4))
def test_a_double_track_t_is_served_in_every_orientation(quarter: int, mirror: bool) -> None:
    """Two parallel lines directly beside each other meet two others; ten three- and four-way rails."""
    pieces, arms = turned(*double_track_t(2), quarter, mirror)
    plan = plan_from(pieces, arms, all_ways(IDLE))
    found = list(best_order(plan, SECONDS))[-1]
    assert found.served, told((quarter, mirror), plan)
    assert found.proved, told((quarter, mirror), plan)
    compare_cost_of_order((quarter, mirror), plan, found)


@pytest.mark.slow
@pytest.mark.timeout(3600)
def test_random_orders_of_a_double_track_t_mostly_serve_nothing() -> None:
    """Why a planner is needed: it finds what shuffling finds once in very many times."""
    pieces, arms = double_track_t(2)
    routes = all_ways(IDLE)
    random = Random(1)
    lucky = sum(cost_of_order(shuffled(random, pieces), arms, routes) is not None for _ in range(300))
    assert lucky < 15
    plan = plan_from(pieces, arms, routes)
    found = list(best_order(plan, SECONDS))[-1]
    drawn = drawn_from(built_in(plan, found.rails))
    assert cost_said(found) is not None
    assert drawn.routes == routes
