"""Plans with many ways and long ones: what is worked out must not grow faster than the plan."""

from __future__ import annotations

import pytest

from model.routing.junction import Junction
from tests.oracle.adapter import plan_from
from tests.oracle.carts import ArmSpec
from tests.oracle.choice import Drawn, RouteSpec, best_choice
from tests.oracle.shapes import Place, Rail

LOOP = 10
"""Cells from one passing loop to the next."""
MANY = 30


def passing_loops(loops: int) -> tuple[list[Rail], list[ArmSpec], list[RouteSpec]]:
    """A single track with passing loops to its south, run both ways; laid from the east, the loops first."""
    length = loops * LOOP
    track = [((x, 64, 0), "east") for x in range(length)]
    for west in range(2, length, LOOP):
        east = west + 6
        track += [((west, 64, 1), "south"), ((west, 64, 2), "south")]
        track += [((x, 64, 2), "east") for x in range(west + 1, east)]
        track += [((east, 64, 2), "north"), ((east, 64, 1), "north")]
    first, last = (0, 64, 0), (length - 1, 64, 0)
    arms = [
        ArmSpec("Quay", (first, "east"), (first, "west")),
        ArmSpec("Fen", (last, "west"), (last, "east")),
    ]
    routes = [RouteSpec("Quay", "Fen", None), RouteSpec("Fen", "Quay", None)]
    return [("rail", at, facing) for at, facing in reversed(track)], arms, routes


@pytest.mark.timeout(60)
def test_many_loops_one_behind_another_are_wired_as_each_alone() -> None:
    # Through each loop lead two ways, so 2^30 through all of them.
    alone = best_choice(Drawn(*passing_loops(1)))
    assert alone.serves
    assert alone.idle, "a loop that needs no wiring would prove little"
    junction = Junction(plan_from(*passing_loops(MANY)))
    assert junction.control.serves
    assert len(junction.switches) == 2 * MANY
    assert set(map(tuple, junction.choice.idle)) == shifted(alone.idle)
    assert all(route.idle_reached for route in junction.routes)


def shifted(cells: frozenset[Place]) -> set[Place]:
    """The cells of the first loop, in all loops."""
    return {(x + LOOP * loop, y, z) for x, y, z in cells for loop in range(MANY)}


def crossovers(count: int) -> tuple[list[Rail], list[ArmSpec], list[RouteSpec]]:
    """Two tracks side by side, both run to the east, with crossovers between them."""
    length = count * 8 + 4
    track = [((x, 64, z), "east") for z in (0, 3) for x in range(length)]
    track += [((3 + 8 * i, 64, z), "south") for i in range(count) for z in (1, 2)]
    arms = [
        ArmSpec("Quay", ((0, 64, 0), "east"), None),
        ArmSpec("Mill", ((0, 64, 3), "east"), None),
        ArmSpec("Fen", None, ((length - 1, 64, 0), "east")),
        ArmSpec("Orchard", None, ((length - 1, 64, 3), "east")),
    ]
    routes = [RouteSpec("Quay", "Fen", "Orchard"), RouteSpec("Mill", "Orchard", "Fen")]
    return [("rail", at, facing) for at, facing in track], arms, routes


@pytest.mark.timeout(60)
def test_more_crossovers_than_needed_do_not_multiply_the_work() -> None:
    # Through n crossovers lead 2^(n-1) ways between two arms; one crossover is enough for each reader.
    few = best_choice(Drawn(*crossovers(1)))
    junction = Junction(plan_from(*crossovers(12)))
    assert junction.control.serves == few.serves
    assert len(junction.choice.idle) == len(few.idle)
    assert {arm: len(cells) for arm, cells in junction.choice.thrown.items()} == {
        arm: len(cells) for arm, cells in few.thrown.items()
    }


@pytest.mark.timeout(120)
def test_a_long_track_is_followed_to_its_end() -> None:
    # Once every cell copied the cells before it: 60,000 of them then took longer than the time allowed.
    length = 60_000
    rails = [("rail", (x, 64, 0), "east") for x in range(length)]
    arms = [ArmSpec("Quay", ((0, 64, 0), "east"), None), ArmSpec("Fen", None, ((length - 1, 64, 0), "east"))]
    junction = Junction(plan_from(rails, arms, [RouteSpec("Quay", "Fen", "Fen")]))
    assert junction.control.serves
    assert [len(way.path) for way in junction.ways.values()] == [length, length]
