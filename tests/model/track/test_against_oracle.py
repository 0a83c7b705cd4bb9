"""Shapes, power states, settings and traces against the second implementation, the small domains whole."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

import pytest

from model.plan import plan_of
from model.track.layout import Layout
from tests.model.track.comparing import (
    assert_same_power_states,
    assert_same_setting,
    assert_same_shapes,
    assert_same_trips,
)
from tests.oracle.adapter import piece_of, plan_from
from tests.oracle.random_plans import random_arms, random_pieces
from tests.oracle.settings import switches
from tests.oracle.shapes import STEP, Place, Rail, Track, build

AXES = ("north", "east")
FLAT_3_BY_3 = [[(x, 0, z)] for x in range(3) for z in range(3)]
CENTRE = (0, 0, 0)
CROSS = [[CENTRE]] + [[(dx, level, dz) for level in (0, 1, -1)] for dx, dz in STEP.values()]


def plans_of(columns: list[list[Place]], limit: int) -> Iterator[tuple[list[Rail], Track]]:
    """All plans of plain rails with at most one in each column, in all orders and along both axes.

    Plans with the same beginning share the work of building it.
    """

    def grow(pieces: list[Rail], track: Track, left: list[list[Place]]) -> Iterator[tuple[list[Rail], Track]]:
        yield pieces, track
        if len(pieces) == limit:
            return
        for column in left:
            others = [other for other in left if other is not column]
            for at in column:
                for facing in AXES:
                    longer = track.copy()
                    longer.place("rail", at, facing)
                    yield from grow([*pieces, ("rail", at, facing)], longer, others)

    return grow([], Track(), columns)


class Comparison:
    """Compares plan after plan; what follows from shapes alone only for shapes not met before."""

    def __init__(self) -> None:
        self.plans = 0
        self._met: set[frozenset[tuple[Place, str]]] = set()

    def compare(self, pieces: list[Rail], track: Track) -> None:
        """Builds the plan afresh in the model and compares."""
        self.plans += 1
        layout = Layout(plan_of([piece_of(*piece) for piece in pieces]))
        assert_same_shapes(layout, track)
        shapes = frozenset(track.shape.items())
        if shapes not in self._met:
            self._met.add(shapes)
            assert_same_power_states(layout, track)
            assert_same_trips(layout, track, [], ())


@pytest.mark.timeout(300)
def test_a_cell_and_its_four_neighbours_on_three_levels_in_all_orders() -> None:
    comparison = Comparison()
    for pieces, track in plans_of(CROSS, 5):
        if CENTRE in track.part:
            comparison.compare(pieces, track)
    assert comparison.plans == 355_202


@pytest.mark.timeout(300)
def test_flat_three_by_three_with_up_to_four_rails() -> None:
    comparison = Comparison()
    for pieces, track in plans_of(FLAT_3_BY_3, 4):
        comparison.compare(pieces, track)
    assert comparison.plans == 52_723


@pytest.mark.slow
@pytest.mark.timeout(1200)
def test_flat_three_by_three_with_up_to_five_rails() -> None:
    comparison = Comparison()
    for pieces, track in plans_of(FLAT_3_BY_3, 5):
        comparison.compare(pieces, track)
    assert comparison.plans == 536_563


def compare_random_plan(seed: int) -> None:
    """Everything about one random plan; the seed stands in the failure."""
    random = Random(seed)
    pieces = random_pieces(random)
    track = build(pieces)
    if not track.part:
        return
    arms = random_arms(random, list(track.part))
    plan = plan_from(pieces, arms)
    layout = Layout(plan)
    assert_same_shapes(layout, track)
    assert_same_power_states(layout, track)
    assert_same_trips(layout, track, arms, plan.arms)
    found = switches(track)
    for _ in range(3):
        wired = [at for at in found if random.random() < 0.7]
        assert_same_setting(layout, track, wired, {at for at in wired if random.random() < 0.5})


@pytest.mark.timeout(300)
def test_random_plans_with_heights_boosters_and_blocks() -> None:
    for seed in range(2_000):
        compare_random_plan(seed)


@pytest.mark.slow
@pytest.mark.timeout(3600)
def test_many_random_plans_with_heights_boosters_and_blocks() -> None:
    for seed in range(2_000, 102_000):
        compare_random_plan(seed)
