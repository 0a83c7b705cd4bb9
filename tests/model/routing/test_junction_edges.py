"""Junctions at the edges of the rules: what is wanted, and that both implementations agree on it."""

from __future__ import annotations

import pytest

from tests.model.routing.test_junction_against_oracle import Pair, compare_orientations
from tests.oracle.carts import ArmSpec
from tests.oracle.choice import RouteSpec
from tests.oracle.random_junctions import Junction as Specified

LINE = [("rail", (x, 64, 0), "east") for x in range(5)]
QUAY = ArmSpec("Quay", ((0, 64, 0), "east"), ((0, 64, 0), "west"))
MILL = ArmSpec("Mill", ((4, 64, 0), "west"), ((4, 64, 0), "east"))
BRANCH = [("rail", (2, 64, 1), "south"), ("rail", (2, 64, 2), "south")]
FEN = ArmSpec("Fen", ((2, 64, 2), "north"), ((2, 64, 2), "south"))
BLOCK_AT_THE_END = ("solid-block", (5, 64, 0), "north")

EDGES: dict[str, tuple[Specified, bool, set[tuple[str, bool]]]] = {
    "nothing at all": (([], [], []), True, set()),
    "nothing is wanted": (([*LINE, *BRANCH], [QUAY, MILL, FEN], []), True, set()),
    "straight on": ((LINE, [QUAY, MILL], [RouteSpec("Quay", "Mill", None)]), True, {("Quay", False)}),
    "to an unknown arm": ((LINE, [QUAY, MILL], [RouteSpec("Quay", "Orchard", None)]), False, set()),
    "from an unknown arm": ((LINE, [QUAY, MILL], [RouteSpec("Orchard", "Quay", "Mill")]), False, set()),
    "from an arm with no way in": (
        (LINE, [QUAY._replace(way_in=None), MILL], [RouteSpec("Quay", "Mill", None)]),
        False,
        set(),
    ),
    "from an arm off the track": (
        (LINE, [QUAY._replace(way_in=((0, 65, 0), "east")), MILL], [RouteSpec("Quay", "Mill", None)]),
        False,
        set(),
    ),
    "one of two goals": (
        (LINE, [QUAY, MILL], [RouteSpec("Quay", "Mill", "Orchard")]),
        False,
        {("Quay", False)},
    ),
    "idle and called the same": (
        ([*LINE, *BRANCH], [QUAY, MILL, FEN], [RouteSpec("Quay", "Fen", "Fen")]),
        True,
        {("Quay", False), ("Quay", True)},
    ),
    "a fork with a reader": (
        (
            [*LINE, *BRANCH],
            [QUAY, MILL, FEN],
            [RouteSpec("Quay", "Mill", "Fen"), RouteSpec("Fen", "Mill", "Quay")],
        ),
        True,
        {("Quay", False), ("Quay", True), ("Fen", False), ("Fen", True)},
    ),
    "two arms with one way out": (
        (
            LINE,
            [QUAY, MILL, MILL._replace(name="Beacon")],
            [RouteSpec("Quay", "Beacon", None)],
        ),
        False,
        set(),
    ),
    "a block beyond the way out": (
        ([*LINE, BLOCK_AT_THE_END], [QUAY, MILL], [RouteSpec("Quay", "Mill", None)]),
        False,
        set(),
    ),
    "an arm in the midst of the track": (
        (LINE, [QUAY, MILL, ArmSpec("Fen", None, ((2, 64, 0), "east"))], [RouteSpec("Quay", "Fen", None)]),
        True,
        {("Quay", False)},
    ),
}


@pytest.mark.parametrize("name", EDGES)
def test_edges(name: str) -> None:
    specified, serves, reached = EDGES[name]
    pair = Pair(0, specified)
    assert (pair.best.serves, pair.best.reached) == (serves, reached)
    pair.compare_all()
    compare_orientations(0, specified)
