"""The shortest tree that joins some places of a graph (Steiner tree): its length, or bounds for it.

Few places: exact, by subsets of them (Dreyfus & Wagner 1971, in the form of Erickson, Monma & Veinott 1987;
from memory). Many: the approximation of networkx, whose documentation says how far off it can be.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable
from heapq import heapify, heappop, heappush
from math import inf
from typing import NamedTuple

import networkx as nx
from networkx.algorithms.approximation import steiner_tree

EXACT_FOR = 10
"""Places at most for which the exact length is worked out: the work grows with 3 to the power of them."""


class Bounds(NamedTuple):
    """The length of the shortest tree lies between these; both are equal where it is known."""

    lower: float
    upper: float


def steiner_bounds(graph: nx.Graph, places: Iterable[Hashable]) -> Bounds:
    """Bounds of the length; lengths of edges are their ``weight``, 1 where left out.

    Raises nx.NetworkXNoPath where no tree joins the places.
    """
    wanted = list(dict.fromkeys(places))
    if len(wanted) <= EXACT_FOR:
        length = steiner_length(graph, wanted)
        return Bounds(length, length)
    if len(wanted) > 1 and not all(nx.has_path(graph, wanted[0], other) for other in wanted):
        raise nx.NetworkXNoPath("the places are not joined")
    upper = steiner_tree(graph, wanted, method="mehlhorn").size(weight="weight")
    return Bounds(upper / (2 - 2 / len(wanted)), upper)


def steiner_length(graph: nx.Graph, places: Iterable[Hashable]) -> float:
    """The length of the shortest tree. Raises nx.NetworkXNoPath where there is none."""
    nodes = list(graph)
    number = {node: index for index, node in enumerate(nodes)}
    beside = [
        [(number[other], edge.get("weight", 1)) for other, edge in graph.adj[node].items()] for node in nodes
    ]
    root, *others = (number[place] for place in dict.fromkeys(places))
    if not others:
        return 0
    length = _trees(beside, others)[-1][root]
    if length == inf:
        raise nx.NetworkXNoPath("the places are not joined")
    return length


def _trees(beside: list[list[tuple[int, float]]], ends: list[int]) -> list[list[float]]:
    """By the set of the ends, as bits, and by node: the shortest tree that joins these ends and the node."""
    trees: list[list[float]] = [[]]
    for subset in range(1, 1 << len(ends)):
        if subset & (subset - 1) == 0:
            joined = [inf] * len(beside)
            joined[ends[subset.bit_length() - 1]] = 0
        else:
            joined = _joined(trees, subset)
        trees.append(_grown(beside, joined))
    return trees


def _joined(trees: list[list[float]], subset: int) -> list[float]:
    """Two trees that meet in the node and share the ends out between them."""
    best = [inf] * len(trees[1])
    part = (subset - 1) & subset
    while part > subset ^ part:
        pairs = zip(best, trees[part], trees[subset ^ part], strict=True)
        best = [min(known, one + other) for known, one, other in pairs]
        part = (part - 1) & subset
    return best


def _grown(beside: list[list[tuple[int, float]]], lengths: list[float]) -> list[float]:
    """Each tree goes on along shortest ways to all other nodes."""
    waiting = [(length, node) for node, length in enumerate(lengths) if length < inf]
    heapify(waiting)
    while waiting:
        length, node = heappop(waiting)
        if length > lengths[node]:
            continue
        for other, weight in beside[node]:
            if length + weight < lengths[other]:
                lengths[other] = length + weight
                heappush(waiting, (length + weight, other))
    return lengths
