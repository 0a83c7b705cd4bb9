"""The order planner against all orders, as a second implementation enumerates them."""

from __future__ import annotations

from random import Random

import pytest

from model.grid import ALL_TURNS
from model.ordering import best_order, orders_by_orientation
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
from tests.oracle.optimum import Cost, cost_of_order, optimum
from tests.oracle.turning import turned

FEW = SMALL._replace(branching=(2, 4), kept=9)
LARGE = SMALL._replace(arms=(4, 7), branching=(7, 10), kept=13)
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
    assert len(set(compare_many(range(15), TINY))) > 2
    assert len(set(compare_many(range(5), TINY._replace(hilly=True)))) > 1


def test_small_junctions() -> None:
    assert len(set(compare_many(range(4), FEW))) > 1
    assert len(set(compare_many(range(3), FEW._replace(hilly=True)))) > 1


@pytest.mark.slow
@pytest.mark.timeout(7200)
@pytest.mark.parametrize("hilly", [False, True])
def test_many_junctions(hilly: bool) -> None:
    assert len(set(compare_many(range(1_000, 1_400), TINY._replace(hilly=hilly)))) > 6
    assert len(set(compare_many(range(1_000, 1_050), SMALL._replace(hilly=hilly)))) > 6


@pytest.mark.slow
@pytest.mark.timeout(3600)
def test_junctions_under_bridges() -> None:
    assert len(set(compare_many(range(40), SMALL._replace(bridged=True, kept=13)))) > 4


def test_all_orientations() -> None:
    """Each turned junction is as cheap as its own best order; the order found is one of the turned plan."""
    for seed in range(4):
        pieces, arms, routes = compact_junction(seed, TINY)
        found = dict(orders_by_orientation(plan_from(pieces, arms, routes), SECONDS * 8))
        assert list(found) == list(ALL_TURNS)
        for turn, order in found.items():
            quarter, mirror = turn.quarter, turn.mirror
            turned_pieces, turned_arms = turned(pieces, arms, quarter, mirror)
            plan = plan_from(turned_pieces, turned_arms, routes)
            best = optimum(turned_pieces, turned_arms, routes)
            assert (cost_said(order), order.proved) == (best.cost, True), told((seed, turn), plan)
            compare_cost_of_order((seed, turn), plan, order)


@pytest.mark.slow
@pytest.mark.timeout(7200)
def test_junctions_with_seven_to_ten_branching_rails() -> None:
    assert len(set(compare_many(range(16), LARGE))) > 4


@pytest.mark.slow
@pytest.mark.timeout(7200)
def test_larger_junctions_are_proved() -> None:
    """Too large for trying all orders, so that the costs are not compared here but with what was said."""
    served = 0
    for seed in range(12):
        plan = plan_from(*compact_junction(seed, LARGE._replace(kept=20, arms=(5, 9))))
        found = list(best_order(plan, SECONDS))[-1]
        assert found.proved, told(seed, plan)
        compare_cost_of_order(seed, plan, found)
        served += found.served
    assert served > 3


@pytest.mark.slow
@pytest.mark.timeout(3600)
@pytest.mark.parametrize("mirror", [False, True])
@pytest.mark.parametrize("quarter", range(4))
def test_a_double_track_t_in_every_orientation(quarter: int, mirror: bool) -> None:
    """Two parallel lines directly beside each other meet two others; ten three- and four-way rails."""
    pieces, arms = turned(*double_track_t(2), quarter, mirror)
    assert compare_best_order((quarter, mirror), (pieces, arms, all_ways(IDLE))) is not None


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
