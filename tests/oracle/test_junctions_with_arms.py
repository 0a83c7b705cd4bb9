"""The random junctions with arms are what they are said to be."""

from __future__ import annotations

import pytest

from model.grid import Heading
from model.parts import Part
from model.plan import Plan, Side
from model.routing.junction import Junction
from tests.oracle.adapter import drawn_from
from tests.oracle.junction_cores import CORES, SHORTEST
from tests.oracle.junctions_with_arms import junction_with_arms

SEEDS = (1, 2, 3, 5, 8, 9, 10, 11, 14, 15, 20, 24)
"""All cores; of those that take long to serve only one."""


@pytest.fixture(scope="module")
def junctions() -> list[Junction]:
    return [Junction(junction_with_arms(seed)) for seed in SEEDS]


def test_every_wanted_route_is_reached(junctions: list[Junction]) -> None:
    for junction in junctions:
        assert all(junction.reaches(route) for route in junction.wanted)
        assert any(route.called for route in junction.wanted)


def test_arms_run_straight_before_the_first_switch(junctions: list[Junction]) -> None:
    """The plain tracer of the second implementation says how carts run."""
    for junction in junctions:
        drawn = drawn_from(junction.plan)
        for route in junction.plan.routes:
            wired, idle = junction.choice.wired, junction.choice.idle
            trip = drawn.trip(route.start, frozenset(map(tuple, wired)), frozenset(map(tuple, idle)))
            assert trip is not None
            first = trip.path[:SHORTEST]
            assert not set(map(tuple, junction.three_way_states)) & set(first)
            assert min(len({at[axis] for at in first}) for axis in (0, 2)) == 1


def test_all_cores_come_in_all_turns(junctions: list[Junction]) -> None:
    titles = {junction.plan.details.title for junction in junctions}
    assert titles == {core.__name__.replace("_", " ") for core in CORES}
    assert {heading for junction in junctions for heading in ways_in(junction.plan)} == set(Heading)
    assert {junction.plan.details.running_side for junction in junctions} == {Side.LEFT, Side.RIGHT, None}


def test_a_seed_gives_the_same_plan_again() -> None:
    assert junction_with_arms(3) == junction_with_arms(3)
    assert junction_with_arms(3) != junction_with_arms(4)


def test_rails_and_torches_stand_on_something(junctions: list[Junction]) -> None:
    """Some torches stand beside their booster, some under its block."""
    under = set()
    for junction in junctions:
        pieces = junction.plan.pieces
        for piece in pieces:
            if piece.part is not Part.SOLID_BLOCK:
                assert pieces.part_at(piece.at.moved(dy=-1)) is Part.SOLID_BLOCK
            if piece.part is Part.TORCH:
                under.add(pieces.part_at(piece.at.moved(dy=1)) is Part.SOLID_BLOCK)
    assert under == {True, False}


def ways_in(plan: Plan) -> list[Heading]:
    return [arm.enter.heading for arm in plan.arms if arm.enter is not None]
