"""Where nodes are placed and how links run: deterministic, apart, in steps of 45°."""

from __future__ import annotations

from itertools import combinations, pairwise
from math import hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.network.items import Item, Kind, followed, nodes
from app.network.lines import LANE, beside, routes, ways_between
from app.network.placing import first_spots
from model.files.network_file import read_network
from model.network.network import Link, Network, Station
from tests.app.network.networks import EXAMPLE, small_network

SPOT = st.tuples(st.integers(-20, 20), st.integers(-20, 20)).map(
    lambda spot: (float(spot[0]), float(spot[1]))
)


def is_octilinear(line: tuple[tuple[float, float], ...]) -> bool:
    """Whether every piece of a line lies at a step of 45°."""
    steps = [(abs(bx - ax), abs(by - ay)) for (ax, ay), (bx, by) in pairwise(line)]
    return all(min(dx, dy) < 1e-9 or abs(dx - dy) < 1e-9 for dx, dy in steps)


@pytest.mark.parametrize("network", [small_network(), read_network(EXAMPLE)], ids=["small", "example"])
def test_every_node_has_a_crossing_of_its_own_and_the_same_every_time(network: Network) -> None:
    spots = first_spots(network)
    assert set(spots) == set(nodes(network))
    assert len(set(spots.values())) == len(spots)
    assert all(x == int(x) and y == int(y) for x, y in spots.values())
    assert spots == first_spots(network)


def test_the_example_comes_out_straight_and_apart() -> None:
    network = read_network(EXAMPLE)
    spots = first_spots(network)
    assert all(max(abs(a[0] - b[0]), abs(a[1] - b[1])) >= 2 for a, b in combinations(spots.values(), 2))
    straight = [line for line in routes(network, spots).values() if len(line) == 2]
    assert len(straight) >= 0.8 * len(network.links)


def test_parts_that_do_not_hang_together_stand_side_by_side() -> None:
    names = [Station(name) for name in ("A", "B", "C", "D")]
    network = Network(stations=tuple(names), links=(Link("A", "B", 5), Link("C", "D", 5)))
    spots = [first_spots(network)[Item(Kind.STATION, at)] for at in range(4)]
    assert max(x for x, _ in spots[:2]) < min(x for x, _ in spots[2:])


@given(SPOT, SPOT)
def test_every_line_between_two_places_is_in_steps_of_45_degrees(
    a: tuple[float, float], b: tuple[float, float]
) -> None:
    if a == b:
        return
    for line in ways_between(a, b):
        assert (line[0], line[-1]) == (a, b)
        assert is_octilinear(line)
        assert len(line) <= 4


@given(SPOT, SPOT, st.sampled_from([-1.0, -0.3, 0.2, 1.0]))
def test_a_line_beside_another_keeps_its_distance(
    a: tuple[float, float], b: tuple[float, float], left: float
) -> None:
    if a == b:
        return
    for line in ways_between(a, b):
        moved = beside(line, left)
        assert is_octilinear(moved)
        for (p, q), (r, _) in zip(pairwise(line), pairwise(moved), strict=True):
            length = hypot(q[0] - p[0], q[1] - p[1])
            across = ((q[1] - p[1]) * (r[0] - p[0]) - (q[0] - p[0]) * (r[1] - p[1])) / length
            assert across == pytest.approx(left)


def test_the_two_ways_of_a_line_run_side_by_side_on_the_left() -> None:
    """Northward on a map is up: who rides to the east keeps to the north of the middle."""
    network = small_network()
    lines = routes(network, first_spots(network))
    there, back = lines[0], lines[1]
    assert hypot(there[0][0] - back[-1][0], there[0][1] - back[-1][1]) == pytest.approx(LANE)
    (ax, ay), (bx, by) = there[0], there[1]
    mx, my = back[-1]
    # The line back lies to the right: the cross product is positive with y down.
    assert (bx - ax) * (my - ay) - (by - ay) * (mx - ax) > 0


@settings(max_examples=60)
@given(st.lists(st.sampled_from("ABCDEF"), unique=True), st.lists(st.sampled_from("ABCDEF"), unique=True))
def test_what_is_chosen_follows_its_name(before: list[str], after: list[str]) -> None:
    old = Network(stations=tuple(map(Station, before)))
    new = Network(stations=tuple(map(Station, after)))
    chosen = {Item(Kind.STATION, at) for at in range(len(before))}
    kept = followed(chosen, old, new)
    names = {new.stations[item.place].name for item in kept}
    assert names >= set(before) & set(after)
    if len(before) != len(after):
        assert names == set(before) & set(after)
