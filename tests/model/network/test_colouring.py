"""The colouring core against graphs whose chromatic number is published, networkx, and brute force."""

from __future__ import annotations

import random
from collections.abc import Mapping
from itertools import combinations, count, product
from typing import Any

import networkx as nx
import pytest

from model.network.colouring import Colouring, colourings, greedy_colours, largest_clique

# Queen graphs: no two squares of a colour on one line of a queen. Chromatic numbers from OEIS A088202 (1, 4,
# 5, 5, 5, 7, 7) and the DIMACS colouring instances queen5_5 = 5, queen6_6 = 7, queen7_7 = 7; from memory.
QUEENS = {1: 1, 2: 4, 3: 5, 4: 5, 5: 5, 6: 7, 7: 7}


def odds_of(graph: nx.Graph[Any]) -> list[int]:
    place = {node: number for number, node in enumerate(graph)}
    odds = [0] * len(place)
    for one, other in graph.edges:
        odds[place[one]] |= 1 << place[other]
        odds[place[other]] |= 1 << place[one]
    return odds


def queens(size: int) -> nx.Graph[tuple[int, int]]:
    graph: nx.Graph[tuple[int, int]] = nx.Graph()
    graph.add_nodes_from(product(range(size), repeat=2))
    for one, other in combinations(list(graph), 2):
        across, down = abs(one[0] - other[0]), abs(one[1] - other[1])
        if across == 0 or down == 0 or across == down:
            graph.add_edge(one, other)
    return graph


def _best(odds: list[int], pinned: Mapping[int, int] | None = None) -> Colouring:
    """The last colouring, after a look at all of them: each is proper, none is worse than the one before."""
    last: Colouring | None = None
    for colouring in colourings(odds, pinned or {}):
        for one, bits in enumerate(odds):
            for other in range(len(odds)):
                assert not bits >> other & 1 or colouring.colours[one] != colouring.colours[other]
        assert colouring.bound <= colouring.number
        assert last is None or (colouring.number <= last.number and colouring.bound >= last.bound)
        assert all(colouring.colours[one] == colour for one, colour in (pinned or {}).items())
        last = colouring
    assert last is not None
    return last


@pytest.mark.parametrize("number", range(1, 6))
def test_mycielski_graphs_need_as_many_colours_as_their_number(number: int) -> None:
    """Mycielski 1955, from memory: no triangle, and yet k colours. The clique alone proves two."""
    odds = odds_of(nx.mycielski_graph(number))
    assert len(largest_clique(odds)) == min(number, 2)
    best = _best(odds)
    assert (best.number, best.proved) == (number, True)


@pytest.mark.slow
def test_the_sixth_mycielski_graph() -> None:
    best = _best(odds_of(nx.mycielski_graph(6)))
    assert (best.number, best.proved) == (6, True)


@pytest.mark.parametrize(("size", "colours"), QUEENS.items())
def test_queen_graphs_need_the_published_number_of_colours(size: int, colours: int) -> None:
    best = _best(odds_of(queens(size)))
    assert (best.number, best.proved) == (colours, True)


@pytest.mark.parametrize("seed", range(40))
def test_random_graphs_against_brute_force_with_pins(seed: int) -> None:
    rng = random.Random(seed)
    graph = nx.gnp_random_graph(7, rng.choice((0.3, 0.5, 0.8)), seed=seed)
    odds = odds_of(graph)
    pinned = {}
    for one in rng.sample(range(7), rng.randint(0, 3)):
        seen = {pinned[other] for other in pinned if odds[one] >> other & 1}
        free = [colour for colour in range(len(set(pinned.values())) + 1) if colour not in seen]
        pinned[one] = rng.choice(free)
    best = _best(odds, pinned)
    assert best.proved
    assert best.number == _by_brute_force(graph, pinned)


def _by_brute_force(graph: nx.Graph[int], pinned: Mapping[int, int]) -> int:
    for number in count(1):
        for colours in product(range(number), repeat=len(graph)):
            if all(colours[one] != colours[other] for one, other in graph.edges) and all(
                colours[one] == colour for one, colour in pinned.items()
            ):
                return number
    raise AssertionError


@pytest.mark.parametrize("seed", range(30))
def test_the_largest_clique_is_that_of_networkx(seed: int) -> None:
    graph = nx.gnp_random_graph(30, 0.1 + 0.025 * seed, seed=seed)
    odds = odds_of(graph)
    clique = largest_clique(odds)
    assert len(clique) == max(map(len, nx.find_cliques(graph)))
    assert all(odds[one] >> other & 1 for one, other in combinations(clique, 2))


def test_a_clique_is_one_when_the_work_is_cut_short() -> None:
    odds = odds_of(nx.gnp_random_graph(60, 0.5, seed=1))
    short, whole = largest_clique(odds, work=1), largest_clique(odds)
    assert 1 <= len(short) < len(whole)
    assert all(odds[one] >> other & 1 for one, other in combinations(short, 2))


def test_a_clique_of_nearly_all_is_found_at_once() -> None:
    """A thousand, all at odds with one another but for ten pairs."""
    everyone = (1 << 1000) - 1
    odds = [everyone & ~(1 << one) & ~(1 << (one ^ 1) if one < 20 else 0) for one in range(1000)]
    assert len(largest_clique(odds)) == 990
    assert [colouring.number for colouring in colourings(odds)] == [990]


def test_nothing_needs_no_colour() -> None:
    assert _best([]) == Colouring((), 0)
    assert largest_clique([]) == []


def test_dsatur_is_exact_for_two_colours() -> None:
    """Brélaz 1979, from memory: DSATUR colours every bipartite graph with two."""
    for seed in range(10):
        graph = nx.bipartite.random_graph(8, 9, 0.4, seed=seed)
        assert max(greedy_colours(odds_of(graph))) == 1


def test_where_a_solver_is_told_too_much_greed_is_the_result() -> None:
    odds = odds_of(nx.gnp_random_graph(700, 0.4, seed=1))
    steps = list(colourings(odds))
    assert len(steps) == 1
    assert steps[0].bound < steps[0].number
