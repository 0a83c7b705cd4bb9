"""The ways that a trip could take, for pinning one of them."""

from __future__ import annotations

from itertools import islice
from typing import Final, NamedTuple

import networkx as nx

from model.network.network import Network, junction_and_arm

OFFERED: Final = 8
LOOKED_AT: Final = 400
"""Ways that are looked at before it is enough."""


class WayOffer(NamedTuple):
    """A way with the arms by which it enters junctions."""

    via: tuple[str, ...]
    length: int


def ways_offered(network: Network, start: str, end: str) -> list[WayOffer]:
    """The shortest ways that enter no arm twice, the shortest first; of those by the same arms one.

    Carts stop at stations, so no way runs through one.
    """
    graph = _graph(network, start, end)
    if start not in graph or end not in graph or start == end:
        return []
    found: dict[tuple[str, ...], WayOffer] = {}
    try:
        for path in islice(nx.shortest_simple_paths(graph, start, end, weight="length"), LOOKED_AT):
            via = tuple(path[1:-1])
            found.setdefault(via, WayOffer(via, round(nx.path_weight(graph, path, "length"))))
            if len(found) == OFFERED:
                break
    except nx.NetworkXNoPath:
        return []
    return list(found.values())


def _graph(network: Network, start: str, end: str) -> nx.DiGraph[str]:
    """Arms by which junctions are entered, and the two stations; edges to where carts come next."""
    graph: nx.DiGraph[str] = nx.DiGraph()
    out: dict[str, tuple[str, int]] = {}
    for link in network.links:
        if junction_and_arm(link.end) is None and link.end != end:
            continue
        if link.start == start:
            _add(graph, start, link.end, link.length)
        elif junction_and_arm(link.start) is not None:
            out.setdefault(link.start, (link.end, link.length))
    for junction in network.junctions:
        for reader in junction.readers:
            for way in reader.ways:
                follows = out.get(f"{junction.name}/{way}")
                if follows is not None:
                    _add(graph, f"{junction.name}/{reader.start}", *follows)
    return graph


def _add(graph: nx.DiGraph[str], a: str, b: str, length: int) -> None:
    if not graph.has_edge(a, b) or graph[a][b]["length"] > length:
        graph.add_edge(a, b, length=length)
