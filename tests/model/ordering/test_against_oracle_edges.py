"""Plans that are no junctions, and routes that nothing can serve."""

from __future__ import annotations

from random import Random

import pytest

from model.ordering import best_order
from model.plan import EMPTY_PLAN
from tests.model.ordering.comparing import SECONDS, compare_best_order, cost_said, on_blocks
from tests.oracle.adapter import plan_from
from tests.oracle.carts import ArmSpec
from tests.oracle.choice import RouteSpec
from tests.oracle.random_junctions import Junction
from tests.oracle.shapes import Place, Rail

FREE = (0, 0, 0)


def rails(*cells: tuple[int, int], part: str = "rail") -> list[Rail]:
    return [(part, at(x, z), "east") for x, z in cells]


def at(x: int, z: int) -> Place:
    return (x, 64, z)


T = rails((0, 0), (1, 0), (2, 0), (1, 1))
ARMS = [
    ArmSpec("Quay", (at(0, 0), "east"), (at(0, 0), "west")),
    ArmSpec("Mill", (at(2, 0), "west"), (at(2, 0), "east")),
    ArmSpec("Fen", (at(1, 1), "north"), (at(1, 1), "south")),
]
OUT_ONLY = [ARMS[0]._replace(way_in=None), *ARMS[1:]]
IN_ONLY = [ARMS[0], ARMS[1]._replace(way_out=None), ARMS[2]]


@pytest.mark.parametrize("plan", [EMPTY_PLAN, plan_from([("solid-block", at(0, 0), "north")])])
def test_nothing_to_place(plan) -> None:
    found = list(best_order(plan, SECONDS))[-1]
    assert (found.rails, cost_said(found), found.proved) == ((), FREE, True)


@pytest.mark.parametrize(
    ("name", "junction"),
    [
        ("rails without arms and routes", (T, [], [])),
        ("arms without routes", (T, ARMS, [])),
        ("straight track", (rails((0, 0), (1, 0), (2, 0)), ARMS[:2], [RouteSpec("Quay", "Mill", None)])),
        ("a t", (T, ARMS, [RouteSpec("Quay", "Mill", "Fen")])),
        ("a way only out of the junction", (T, OUT_ONLY, [RouteSpec("Mill", "Quay", "Fen")])),
        (
            "a booster crossed at a right angle, which turns to the south",
            (
                [*rails((0, 0), (1, 1)), *rails((1, 0), part="booster-rail")],
                ARMS,
                [RouteSpec("Quay", "Fen", None)],
            ),
        ),
        ("two pieces of track", ([*T, *rails((9, 9), (9, 10))], ARMS, [RouteSpec("Quay", "Fen", "Mill")])),
    ],
)
def test_served(name: str, junction: Junction) -> None:
    assert compare_best_order(name, junction) is not None
    assert compare_best_order(name, (on_blocks(Random(1), junction[0]), *junction[1:])) is not None


@pytest.mark.parametrize(
    ("name", "junction"),
    [
        ("from an unknown arm", (T, ARMS, [RouteSpec("Orchard", "Mill", None)])),
        ("to an unknown arm", (T, ARMS, [RouteSpec("Quay", "Orchard", None)])),
        ("called to an unknown arm", (T, ARMS, [RouteSpec("Quay", "Mill", "Orchard")])),
        ("no way in", (T, OUT_ONLY, [RouteSpec("Quay", "Mill", None)])),
        ("no way out", (T, IN_ONLY, [RouteSpec("Quay", "Mill", None)])),
        ("no rail at the arm", (T[1:], ARMS, [RouteSpec("Quay", "Mill", None)])),
        ("idle and called alike but apart", (T, ARMS, [RouteSpec("Quay", "Mill", "Quay")])),
        ("one rail is no way back", (rails((0, 0)), [ARMS[0]], [RouteSpec("Quay", "Quay", None)])),
        ("a gap", (rails((0, 0), (2, 0)), ARMS[:2], [RouteSpec("Quay", "Mill", None)])),
        (
            "a block in the way",
            (
                [*rails((0, 0), (1, 0)), ("solid-block", at(2, 0), "north")],
                [ARMS[0], ARMS[1]._replace(way_out=(at(1, 0), "east"))],
                [RouteSpec("Quay", "Mill", None)],
            ),
        ),
    ],
)
def test_never_served(name: str, junction: Junction) -> None:
    assert compare_best_order(name, junction) is None
