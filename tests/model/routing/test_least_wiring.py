"""The least wiring as the solver finds it, against all choices tried one by one, and against the search."""

from __future__ import annotations

from itertools import islice
from random import Random

import pytest

from model.routing import search
from model.routing.junction import Junction
from tests.model.routing.test_junction_against_oracle import Pair
from tests.model.routing.test_large_plans import crossovers
from tests.oracle.adapter import plan_from
from tests.oracle.carts import ArmSpec
from tests.oracle.choice import Drawn, RouteSpec, best_choice
from tests.oracle.random_junctions import Junction as Specified
from tests.oracle.random_junctions import junctions, random_junction

ROUND_IN_CIRCLES = (77_725, 78_099, 78_180)
"""Seeds of junctions in which the cheapest wiring of all would let carts run in circles."""


@pytest.fixture
def solver_only(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(search, "MOST_STANDS", 0)


@pytest.mark.usefixtures("solver_only")
def test_it_is_the_best_of_all_choices() -> None:
    seen = set()
    for seed, specified in islice(junctions(500), 12):
        pair = Pair(seed, specified)
        pair.compare_choice()
        seen.add((pair.best.serves, len(pair.best.wired)))
    assert {True, False} == {serves for serves, wired in seen if wired}


@pytest.mark.usefixtures("solver_only")
@pytest.mark.parametrize("seed", ROUND_IN_CIRCLES)
def test_no_cart_that_is_to_arrive_runs_in_circles(seed: int) -> None:
    specified = random_junction(Random(seed))
    assert specified is not None
    Pair(seed, specified).compare_choice()


def test_conflicts_are_those_found_by_following_ways(monkeypatch: pytest.MonkeyPatch) -> None:
    made = [specified for _, specified in islice(junctions(500), 12)]
    followed = [Junction(plan_from(*specified)).control.conflicts for specified in made]
    monkeypatch.setattr(search, "MOST_STANDS", 0)
    assert [Junction(plan_from(*specified)).control.conflicts for specified in made] == followed
    assert any(followed)


def run_both_ways(count: int) -> Specified:
    """Crossovers laid from the east, with arms at both ends of both tracks."""
    rails, _, _ = crossovers(count)
    last = max(x for _, (x, _, _), _ in rails)
    arms = [
        ArmSpec(name, ((x, 64, z), inward), ((x, 64, z), outward))
        for name, x, z, inward, outward in (
            ("Quay", 0, 0, "east", "west"),
            ("Mill", 0, 3, "east", "west"),
            ("Fen", last, 0, "west", "east"),
            ("Orchard", last, 3, "west", "east"),
        )
    ]
    routes = [
        RouteSpec("Quay", "Fen", "Orchard"),
        RouteSpec("Mill", "Orchard", "Fen"),
        RouteSpec("Fen", "Quay", "Mill"),
        RouteSpec("Orchard", "Mill", "Quay"),
    ]
    return rails[::-1], arms, routes


@pytest.mark.timeout(120)
def test_ways_too_many_to_be_followed_come_to_an_end() -> None:
    # Each crossover more doubles the ways of all four called routes, and following them the time.
    alone = best_choice(Drawn(*run_both_ways(1)))
    junction = Junction(plan_from(*run_both_ways(10)))
    reached = [arrives for route in junction.routes for arrives in (route.idle_reached, route.called_reached)]
    assert junction.control.serves == alone.serves
    assert reached.count(True) == len(alone.reached)
