"""Whoever places what the steps say, and knows nothing else, gets the plan: every piece, and every shape."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given, settings

from model.files.plan_file import read_plan
from model.pieces import Piece
from model.plan import EMPTY_PLAN, Plan, plan_of
from model.steps import build_steps, laying
from model.track.layout import Layout
from tests.app.cli.running import SALTERN
from tests.model.steps.builder import built, inspect, pieces_of, place_of, steps_of
from tests.oracle.adapter import plan_from
from tests.oracle.random_junctions import random_junction
from tests.oracle.random_plans import random_pieces
from tests.oracle.shapes import RAIL_PARTS, STEP, Place, Track
from tests.strategies import piece_lists, rail_lists, tracks


def build_and_inspect(plan: Plan) -> None:
    inspect(pieces_of(plan), steps_of(plan))


def random_plan(seed: int) -> Plan | None:
    """By turns a dense blob with slopes, boosters, detectors and signal parts, and a small junction."""
    random = Random(seed)
    if seed % 3:
        return plan_from(random_pieces(random))
    junction = random_junction(random)
    return None if junction is None else plan_from(*junction)


def build_random_plans(seeds: range) -> int:
    """How many there were."""
    plans = [plan for seed in seeds if (plan := random_plan(seed)) is not None]
    for plan in plans:
        build_and_inspect(plan)
    return len(plans)


def test_random_plans_are_built_from_their_steps() -> None:
    assert build_random_plans(range(180)) >= 120


@pytest.mark.slow
@pytest.mark.timeout(0)
def test_many_random_plans_are_built_from_their_steps() -> None:
    assert build_random_plans(range(180, 9_000)) > 5_900


@settings(max_examples=120, deadline=None)
@given(piece_lists(most=30) | rail_lists(most=12) | tracks())
def test_any_plan_is_built_from_its_steps(pieces: list[Piece]) -> None:
    build_and_inspect(plan_of(pieces))


@pytest.mark.slow
@pytest.mark.timeout(0)
@settings(max_examples=10_000, deadline=None)
@given(piece_lists(most=40) | rail_lists(most=20) | tracks())
def test_any_plan_is_built_from_its_steps_at_length(pieces: list[Piece]) -> None:
    build_and_inspect(plan_of(pieces))


def test_the_order_of_the_plan_itself_always_serves(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is done at last, where nothing nicer is found: all that may see one another keep their order."""
    monkeypatch.setattr(laying, "TRIES", 0)
    assert build_random_plans(range(90)) >= 60


def dense(seed: int, side: int) -> Plan:
    """Three levels of a square, half filled in random order."""
    random = Random(seed)
    cells = [(x, y, z) for x in range(side) for y in (64, 65, 66) for z in range(side)]
    parts = random.choices(
        ("rail", "booster-rail", "detector-rail", "solid-block", "dust"), (20, 1, 1, 3, 1), k=len(cells) // 2
    )
    places = random.sample(cells, len(parts))
    ways = random.choices(("north", "east", "south", "west"), k=len(parts))
    return plan_from(zip(parts, places, ways, strict=True))


def test_a_large_tangle_is_built_from_its_steps() -> None:
    build_and_inspect(dense(1, 12))


@pytest.mark.slow
@pytest.mark.timeout(0)
@pytest.mark.parametrize("seed", range(12))
def test_larger_tangles_are_built_from_their_steps(seed: int) -> None:
    build_and_inspect(dense(seed, 30))


def test_an_empty_plan_has_no_steps() -> None:
    assert build_steps(EMPTY_PLAN) == ()


def test_a_layout_that_is_there_already_changes_nothing() -> None:
    plan = read_plan(SALTERN)
    assert build_steps(plan, Layout(plan)) == build_steps(plan)


def build_facing_any_way(plan: Plan, random: Random) -> None:
    """A builder who faces as the titles say, and anyhow where they say nothing, sees what the steps say."""
    track = Track()
    shapes: dict[Place, str] = {}
    for step in steps_of(plan):
        named = " facing " in step["title"]
        for doc in step["place"]:
            if doc["part"] in RAIL_PARTS:
                facing = doc["facing"] if named else random.choice(tuple(STEP))
                track.place(doc["part"], place_of(doc), facing)
        shapes |= {place_of(entry): entry["shape"] for entry in step["shapes"]}
        assert track.shape == shapes, step


def face_any_way(seeds: range) -> None:
    for seed in seeds:
        plan = random_plan(seed)
        if plan is not None:
            build_facing_any_way(plan, Random(seed))


def test_a_rail_whose_title_names_no_facing_may_face_any_way() -> None:
    face_any_way(range(75))


@pytest.mark.slow
@pytest.mark.timeout(0)
def test_a_rail_whose_title_names_no_facing_may_face_any_way_at_length() -> None:
    face_any_way(range(75, 6_000))


def test_steps_in_another_order_do_not_give_the_plan() -> None:
    """The control: were the order of no account, the tests above would show nothing."""
    plan = read_plan(SALTERN)
    steps = steps_of(plan)
    wanted = built(steps).shape
    random = Random(1)
    others = 0
    for _ in range(20):
        track = Track()
        for step in random.sample(steps, len(steps)):
            for doc in step["place"]:
                if doc["part"].endswith("rail"):
                    track.place(doc["part"], tuple(doc["at"]), doc["facing"])
        others += track.shape != wanted
    assert others == 20
