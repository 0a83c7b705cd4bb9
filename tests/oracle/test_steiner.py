"""Shortest trees against published values, an integer program, and what networkx promises.

The files of SteinLib and the OR-Library could not be had where this was written; random graphs of the size of
their series B stand in for them.
"""

from __future__ import annotations

from itertools import combinations, pairwise, product
from random import Random

import networkx as nx
import numpy as np
import pytest
from networkx.algorithms.approximation import steiner_tree
from scipy.optimize import Bounds as VariableBounds
from scipy.optimize import LinearConstraint, milp

from tests.oracle.steiner import EXACT_FOR, steiner_bounds, steiner_length

Point = tuple[int, int]

NETWORKX_GRAPHS = (
    (
        [(1, 2, 10), (2, 3, 10), (3, 4, 10), (4, 5, 10), (5, 6, 10), (2, 7, 1), (7, 5, 1)],
        (1, 2, 3, 4, 5),
        32,
    ),
    ([(0, 5, 6), (1, 2, 2), (1, 5, 3), (2, 4, 4), (3, 5, 5), (4, 5, 1)], (0, 2, 3), 16),
)
"""The test graphs of networkx, from its test_steinertree.py: edges, places, length."""

PLANE = (
    (
        [(1, 0), (-1, 0), (0, 1), (0, -1)],
        4,
    ),  # Hwang 1976, the tight case of 3/2; computed again by brute force
    ([(0, 0), (2, 0), (1, 1)], 3),  # computed by brute force
    ([(0, 0), (0, 1), (1, 0), (1, 1)], 3),  # the unit square; computed by brute force
    (list(product(range(3), range(3))), 8),  # the lattice of three by three; computed by brute force
)
"""Points, and the length of the shortest tree along the two axes."""


@pytest.mark.parametrize(("edges", "places", "length"), NETWORKX_GRAPHS)
def test_graphs_of_networkx(edges: list[tuple[int, int, int]], places: tuple[int, ...], length: int) -> None:
    graph = nx.Graph()
    graph.add_weighted_edges_from(edges)
    assert steiner_length(graph, places) == length


@pytest.mark.parametrize("spokes", [4, 8])
def test_hub_with_spokes(spokes: int) -> None:
    """Spokes of 1, a rim of 1.99: near to the worst case of networkx (computed: 4 and 5.97, 8 and 13.93)."""
    graph = nx.Graph()
    for spoke in range(spokes):
        graph.add_edge("hub", spoke, weight=1)
        graph.add_edge(spoke, (spoke + 1) % spokes, weight=1.99)
    assert steiner_length(graph, range(spokes)) == spokes
    rim = steiner_tree(graph, range(spokes), method="kou").size(weight="weight")
    assert rim == pytest.approx(1.99 * (spokes - 1))


@pytest.mark.parametrize(("points", "length"), PLANE)
def test_trees_in_the_plane(points: list[Point], length: int) -> None:
    """Hanan 1966: the grid through all points contains a shortest tree (from memory)."""
    assert steiner_length(hanan_grid(points), points) == length


def test_a_finer_grid_gives_no_shorter_tree() -> None:
    """Hanan again, with random points on a lattice of which their own grid is a part."""
    random = Random(5)
    lattice = nx.grid_2d_graph(8, 8)
    for _ in range(8):
        points = random.sample(list(lattice), random.randint(2, 5))
        assert steiner_length(hanan_grid(points), points) == steiner_length(lattice, points)


def test_two_places_are_joined_by_a_shortest_path() -> None:
    random = Random(1)
    for _ in range(20):
        graph = random_graph(random, 30, 45)
        start, end = random.sample(list(graph), 2)
        assert steiner_length(graph, (start, end)) == nx.shortest_path_length(graph, start, end, "weight")


def test_all_places_are_joined_by_a_spanning_tree() -> None:
    random = Random(2)
    for _ in range(20):
        graph = random_graph(random, 8, 14)
        spanning = nx.minimum_spanning_tree(graph).size(weight="weight")
        assert steiner_length(graph, list(graph)) == spanning


def test_against_an_integer_program() -> None:
    compare_with_program(range(1))


@pytest.mark.slow
def test_many_against_an_integer_program() -> None:
    compare_with_program(range(1, 12))


def compare_with_program(seeds: range) -> None:
    """Graphs as in series B of SteinLib: 50 nodes, 63 edges, 9 places, lengths of 1 to 10."""
    for seed in seeds:
        random = Random(seed)
        graph = random_graph(random, 50, 63)
        places = random.sample(list(graph), 9)
        assert steiner_length(graph, places) == pytest.approx(length_by_program(graph, places)), seed


def test_bounds_for_many_places() -> None:
    """The bounds by the promise of networkx hold the exact length between them, and are not equal."""
    random = Random(4)
    for _ in range(5):
        graph = random_graph(random, 40, 60)
        places = random.sample(list(graph), EXACT_FOR + 1)
        bounds = steiner_bounds(graph, places)
        assert bounds.lower <= steiner_length(graph, places) <= bounds.upper
        assert bounds.lower == pytest.approx(bounds.upper / (2 - 2 / (EXACT_FOR + 1)))
        few = steiner_bounds(graph, places[:4])
        assert few.lower == few.upper == steiner_length(graph, places[:4])


def test_places_that_nothing_joins() -> None:
    graph = nx.disjoint_union(nx.path_graph(8), nx.path_graph(8))
    for places in ((0, 9), range(16)):
        with pytest.raises(nx.NetworkXNoPath):
            steiner_bounds(graph, places)
    assert steiner_bounds(graph, (3, 3)) == (0, 0)


def hanan_grid(points: list[Point]) -> nx.Graph:
    """The lines along both axes through all points; edges as long as they are."""
    graph = nx.Graph()
    for axis in (0, 1):
        along, across = (sorted({point[a] for point in points}) for a in (axis, 1 - axis))
        for at, (start, end) in product(across, pairwise(along)):
            ends = ((start, at), (end, at)) if axis == 0 else ((at, start), (at, end))
            graph.add_edge(*ends, weight=end - start)
    return graph


def random_graph(random: Random, nodes: int, edges: int) -> nx.Graph:
    """A connected graph: a random tree and more edges."""
    pairs = {(random.randrange(node), node) for node in range(1, nodes)}
    others = sorted(set(combinations(range(nodes), 2)) - pairs)
    pairs |= set(random.sample(others, edges - len(pairs)))
    graph = nx.Graph()
    graph.add_weighted_edges_from((*pair, random.randint(1, 10)) for pair in sorted(pairs))
    return graph


def length_by_program(graph: nx.Graph, places: list[int]) -> float:
    """One unit flows from the first place to each other; edges that carry any are paid for (HiGHS)."""
    edges = [(*pair, weight) for *pair, weight in graph.edges(data="weight")]
    root, *others = places
    count, nodes = len(edges), list(graph)
    size = count * (1 + 2 * len(others))
    rows, limits = [], []
    for number, end in enumerate(others):
        first = count * (1 + 2 * number)
        for node in nodes:
            row = np.zeros(size)
            for index, (a, b, _) in enumerate(edges):
                sign = (a == node) - (b == node)
                row[first + index], row[first + count + index] = sign, -sign
            rows.append(row)
            limits.append(((node == root) - (node == end),) * 2)
        for index in range(count):
            row = np.zeros(size)
            row[index], row[first + index], row[first + count + index] = 1, -1, -1
            rows.append(row)
            limits.append((0, np.inf))
    costs = np.array([edge[2] for edge in edges] + [0] * (size - count), dtype=float)
    whole = np.array([1] * count + [0] * (size - count))
    low, high = np.array(limits, dtype=float).T
    found = milp(
        costs,
        integrality=whole,
        bounds=VariableBounds(0, 1),
        constraints=LinearConstraint(np.array(rows), low, high),
    )
    return float(found.fun)
