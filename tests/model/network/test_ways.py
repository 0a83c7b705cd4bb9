"""Shortest ways against published figures and against networkx."""

from __future__ import annotations

import random
from collections.abc import Iterator

import networkx as nx
import pytest

from model.network.network import JunctionSpec, Link, Network, ReaderSpec, Station, Trip, end_of
from model.network.ways import NO_TURN, Tracks, Ways, shortest_ways, ways_through
from tests.oracle.network_plans import Choices, Way
from tests.oracle.random_networks import random_network

Weights = dict[tuple[str, str], int]

# CLRS, Introduction to Algorithms, the figure of Dijkstra's algorithm; from memory, recomputed.
DIJKSTRA: Weights = {
    ("s", "t"): 10, ("s", "y"): 5, ("t", "x"): 1, ("t", "y"): 2, ("y", "t"): 3, ("y", "x"): 9, ("y", "z"): 2,
    ("x", "z"): 4, ("z", "x"): 6, ("z", "s"): 7,
}  # fmt: skip
FROM_S = {"y": 5, "z": 7, "t": 8, "x": 9}

# CLRS, the figure of all-pairs shortest paths, with negative weights; from memory, recomputed.
ALL_PAIRS: Weights = {
    ("1", "2"): 3, ("1", "3"): 8, ("1", "5"): -4, ("2", "4"): 1, ("2", "5"): 7, ("3", "2"): 4, ("4", "1"): 2,
    ("4", "3"): -5, ("5", "4"): 6,
}  # fmt: skip
ROWS = ((0, 1, -3, 2, -4), (3, 0, -4, 1, -1), (7, 4, 0, 5, 3), (2, -1, -5, 0, -2), (8, 5, 1, 6, 0))


def test_dijkstras_figure() -> None:
    assert _cells_between(DIJKSTRA, scale=10, start="s") == {
        vertex: 10 * length for vertex, length in FROM_S.items()
    }


def test_the_figure_of_all_pairs() -> None:
    """No link is shorter than a cell: weights are moved by a height for each vertex, as Johnson does.

    The figure has a circle of no length at all, so each edge has a tenth on top: less than one in all.
    """
    scale = 100
    longer = {ends: scale * weight + 10 for ends, weight in ALL_PAIRS.items()}
    lowered: nx.DiGraph[str] = nx.DiGraph()
    lowered.add_weighted_edges_from((*ends, weight - 6) for ends, weight in longer.items())
    lowered.add_weighted_edges_from(("over all", vertex, 0) for vertex in "12345")
    height = nx.single_source_bellman_ford_path_length(lowered, "over all")
    moved = {(start, end): weight + height[start] - height[end] for (start, end), weight in longer.items()}
    for start, row in zip("12345", ROWS, strict=True):
        cells = _cells_between(moved, scale=1, start=start)
        for end, weight in zip("12345", row, strict=True):
            if end != start:
                assert (cells[end] - height[start] + height[end]) // scale == weight


def _cells_between(weights: Weights, scale: int, start: str) -> dict[str, int]:
    """The cells to each other vertex: a junction whose readers are asked one after the other."""
    onward: dict[str, list[tuple[str, int]]] = {}
    for (one, other), weight in weights.items():
        onward.setdefault(one, []).append((other, scale * weight))
    junctions: list[JunctionSpec] = []
    links: list[Link] = []
    for vertex, leads in onward.items():
        for place, (end, length) in enumerate(leads):
            more = place < len(leads) - 1
            name = vertex + "'" * place
            junctions.append(JunctionSpec(name, readers=(ReaderSpec("In", ("Out", "More")[: 1 + more]),)))
            links.append(Link(end_of(name, "Out"), end_of(end, "In"), length - place))
            if more:
                links.append(Link(end_of(name, "More"), end_of(name + "'", "In"), 1))
    links += [Link("Start", end_of(end, "In"), length) for end, length in onward[start]]
    tracks = Tracks(Network(stations=(Station("Start"),), junctions=tuple(junctions), links=tuple(links)))
    (distance,) = tracks.distances([tracks.departure["Start"]])
    places = {vertex: tracks.entry(end_of(vertex, "In")) for vertex in onward if vertex != start}
    return {vertex: int(distance[place]) for vertex, place in places.items() if place is not None}


@pytest.mark.parametrize("seed", range(40))
def test_all_shortest_ways_are_those_of_networkx(seed: int) -> None:
    rng = random.Random(seed)
    network = random_network(rng, 12, 25, lengths=rng.choice(((1,), (1, 2), (1, 2, 3, 4))))
    choices, tracks = Choices(network), Tracks(network)
    for (start, end), ways in shortest_ways(tracks, [(trip.start, trip.end) for trip in network.trips]):
        length, known = choices.shortest(start, end)
        assert ways.length == length
        assert ways.complete
        found = list(_each(network, tracks, ways))
        assert sorted(found) == sorted(known)
        assert ways.only == (len(known) < 2)


def _each(network: Network, tracks: Tracks, ways: Ways) -> Iterator[Way]:
    """Each of the ways: the ends where junctions are entered, with the arm of leaving."""
    if ways.length is None:
        return
    onward: dict[int, list[int]] = {}
    for number in ways.stretches:
        onward.setdefault(tracks.stretches[number].start, []).append(number)
    last = tracks.stretches[ways.stretches[-1]].end
    waiting = [(tracks.stretches[ways.stretches[0]].start, list[tuple[str, str]]())]
    while waiting:
        place, way = waiting.pop()
        if place == last:
            yield tuple(way)
            continue
        for number in onward[place]:
            link = network.links[tracks.stretches[number].link]
            junction, _, arm = link.start.partition("/")
            left = [(_way_in(tracks, place, junction), arm)] if arm else []
            waiting.append((tracks.stretches[number].end, [*way, *left]))


def _way_in(tracks: Tracks, place: int, junction: str) -> str:
    """The end by which a junction was entered."""
    arms = ("North", "East", "South", "West")
    return next(end_of(junction, arm) for arm in arms if tracks.entry(end_of(junction, arm)) == place)


WYE = Network(
    stations=tuple(map(Station, ("Quay", "Fen", "Mill"))),
    junctions=(
        JunctionSpec(
            "Wye",
            readers=(
                ReaderSpec("North", ("East", "West")),
                ReaderSpec("East", ("North",)),
                ReaderSpec("West", ("North", "East")),
            ),
        ),
    ),
    links=(
        Link("Quay", "Wye/North", 10),
        Link("Wye/North", "Quay", 10),
        Link("Fen", "Wye/East", 5),
        Link("Wye/East", "Fen", 5),
        Link("Wye/West", "Mill", 7),
        Link("Mill", "Wye/West", 7),
    ),
    trips=(Trip("Quay", "Fen", 1), Trip("Fen", "Mill", 1), Trip("Quay", "Quay", 1), Trip("Quay", "Moor", 1)),
)


def _ways(network: Network, start: str, end: str) -> tuple[Tracks, Ways]:
    tracks = Tracks(network)
    return tracks, next(ways for _, ways in shortest_ways(tracks, [(start, end)]))


def test_no_way_runs_on_through_a_station() -> None:
    """From Fen one could only come to Mill by way of Quay."""
    assert _ways(WYE, "Quay", "Fen")[1].length == 15
    assert _ways(WYE, "Fen", "Mill")[1].length is None


def test_who_is_there_already_goes_nowhere() -> None:
    assert _ways(WYE, "Quay", "Quay")[1] == Ways(0, ())


def test_what_is_no_station_is_not_reached() -> None:
    assert _ways(WYE, "Quay", "Moor")[1].length is None
    assert _ways(WYE, "Moor", "Quay")[1].length is None


def test_a_network_without_links() -> None:
    lonely = Network(stations=(Station("Quay"), Station("Fen")))
    assert _ways(lonely, "Quay", "Fen")[1].length is None


def test_only_a_reader_with_two_ways_turns_carts() -> None:
    tracks, ways = _ways(WYE, "Mill", "Fen")
    turns = [tracks.stretches[number].turn for number in ways.stretches]
    west = [reader.key for reader in tracks.readers].index("Wye/West")
    assert turns == [NO_TURN, 2 * west + 1]
    tracks, ways = _ways(WYE, "Fen", "Quay")
    assert [tracks.stretches[number].turn for number in ways.stretches] == [NO_TURN, NO_TURN]


def test_of_two_links_out_of_an_arm_carts_take_the_first() -> None:
    doubled = WYE.replace(links=(*WYE.links, Link("Wye/East", "Fen", 1), Link("Quay", "Wye/North", 3)))
    # Out of a station the traveller chooses: 3 + 5 cells.
    assert _ways(doubled, "Quay", "Fen")[1].length == 8


def test_a_way_through_arms_is_the_shortest_of_those() -> None:
    loop = WYE.replace(links=(*WYE.links[:4], Link("Wye/West", "Wye/West", 100), Link("Mill", "Wye/West", 7)))
    tracks = Tracks(loop)
    assert ways_through(tracks, "Quay", "Fen", ("Wye/North",)).length == 15
    assert ways_through(tracks, "Quay", "Fen", ("Wye/North", "Wye/West")).length == 115
    assert ways_through(tracks, "Quay", "Fen", ("Wye/West",)).length == 115


def test_a_way_enters_by_no_arm_twice() -> None:
    loop = WYE.replace(links=(*WYE.links, Link("Wye/East", "Wye/North", 1)))
    tracks = Tracks(loop)
    assert ways_through(tracks, "Quay", "Mill", ("Wye/North", "Wye/North")).length is None
    assert ways_through(tracks, "Quay", "Mill", ("Wye/East",)).length is None
    assert ways_through(tracks, "Quay", "Mill", ("Moor/East",)).length is None


def test_where_room_is_short_one_way_is_kept() -> None:
    """Two junctions side by side, equally far."""
    side = tuple(JunctionSpec(name, readers=(ReaderSpec("In", ("Out",)),)) for name in ("Left", "Right"))
    links = tuple(
        Link(*ends, 4)
        for name in ("Left", "Right")
        for ends in (("Quay", end_of(name, "In")), (end_of(name, "Out"), "Fen"))
    )
    tracks = Tracks(WYE.replace(junctions=side, links=links))
    (distance,) = tracks.distances([tracks.departure["Quay"]])
    end = tracks.arrival("Fen")
    assert end is not None
    all_ways = tracks.ways(distance, end, room=4)
    assert (all_ways.only, all_ways.complete, len(all_ways.stretches)) == (False, True, 4)
    one_way = tracks.ways(distance, end, room=3)
    assert (one_way.length, one_way.complete, len(one_way.stretches)) == (8, False, 2)
