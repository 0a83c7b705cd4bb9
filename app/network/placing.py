"""Where stations and junctions stand on the map before anybody has moved them.

A layout of networkx gives the rough picture; then every node goes to a crossing of the grid and moves about
there until links lie at steps of 45° and nothing stands in the way. The same network always comes out the
same: nothing here is left to chance.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import ceil, hypot, sqrt
from typing import TYPE_CHECKING, Final

from app.network.aligning import aligned
from app.network.items import Ends, Item, nodes
from model.network.network import Network, Spot

if TYPE_CHECKING:
    import networkx as nx

STEP: Final = 4
"""Squares of the map between two neighbours."""
CAREFUL_LIMIT: Final = 150
"""Nodes of a part that hangs together, up to which it is laid out by the lengths of all ways in it."""
ALIGNED_LIMIT: Final = 80
"""Nodes up to which they are moved about afterwards."""
ROUNDS: Final = 30
SEED: Final = 1


def graph_of(network: Network) -> nx.Graph[Item]:
    """The nodes, joined where at least one link runs."""
    import networkx as nx  # slow to import, and a map that has its places needs none of it

    graph: nx.Graph[Item] = nx.Graph()
    graph.add_nodes_from(nodes(network))
    ends = Ends(network)
    for link in network.links:
        a, b = ends.node(link.start), ends.node(link.end)
        if a is not None and b is not None and a != b:
            graph.add_edge(a, b)
    return graph


def in_rows(network: Network) -> dict[Item, Spot]:
    """All nodes in rows: a picture for the moment until a better one is found."""
    found = nodes(network)
    wide = max(1, ceil(sqrt(len(found))))
    return {item: (float(at % wide * STEP), float(at // wide * STEP)) for at, item in enumerate(found)}


def first_spots(network: Network) -> dict[Item, Spot]:
    """A place on the grid for every node; parts that do not hang together stand side by side."""
    import networkx as nx

    graph = graph_of(network)
    placed: dict[Item, Spot] = {}
    left = 0.0
    for part in sorted(nx.connected_components(graph), key=lambda part: (-len(part), min(part))):
        inner = _part_spots(graph.subgraph(sorted(part)))
        west = min(x for x, _ in inner.values())
        north = min(y for _, y in inner.values())
        for item, (x, y) in inner.items():
            placed[item] = (x - west + left, y - north)
        left = max(x for x, _ in placed.values()) + STEP
    return placed


def _part_spots(part: nx.Graph[Item]) -> dict[Item, Spot]:
    import networkx as nx

    order = sorted(part.nodes)
    # networkx walks through its own sets; a graph made anew in order always gives the same picture.
    ordered: nx.Graph[Item] = nx.Graph()
    ordered.add_nodes_from(order)
    ordered.add_edges_from(sorted((min(edge), max(edge)) for edge in part.edges))
    if len(order) == 1:
        return {order[0]: (0.0, 0.0)}
    if len(order) > CAREFUL_LIMIT:
        return on_grid(_with_leaves(ordered), ordered)
    rough = nx.kamada_kawai_layout(ordered)
    spots = on_grid({item: (float(x), float(y)) for item, (x, y) in rough.items()}, ordered)
    return aligned(spots, ordered) if len(order) <= ALIGNED_LIMIT else spots


def _with_leaves(graph: nx.Graph[Item]) -> dict[Item, Spot]:
    """A rough place for each node of a large part: what hangs by one line only is placed last, outward.

    Forces between all pairs take long, and every second node of a network is a station at the end of a line.
    """
    import networkx as nx

    leaves = [item for item in graph if graph.degree(item) == 1]
    inner = graph.subgraph([item for item in graph if graph.degree(item) != 1])
    # A copy keeps the order of the nodes, which the layout starts from.
    ordered: nx.Graph[Item] = nx.Graph(inner)
    rough = nx.spring_layout(ordered, seed=SEED, iterations=ROUNDS)
    places = {item: (float(x), float(y)) for item, (x, y) in rough.items()}
    step = _usual_length(places, inner, 2)
    for leaf in leaves:
        at = next(iter(graph[leaf]))
        x, y = places[at]
        others = [places[other] for other in graph[at] if other in places and other != leaf]
        away_x = sum(x - ox for ox, _ in others) or 1.0
        away_y = sum(y - oy for _, oy in others)
        length = sqrt(away_x**2 + away_y**2)
        places[leaf] = (x + away_x / length * step, y + away_y / length * step)
    return places


def _usual_length(places: Mapping[Item, Spot], graph: nx.Graph[Item], part: int) -> float:
    """The length of the line that is longer than one in ``part`` of them."""
    lengths = sorted(hypot(places[a][0] - places[b][0], places[a][1] - places[b][1]) for a, b in graph.edges)
    return (lengths[len(lengths) // part] if lengths else 0.0) or 1.0


def on_grid(rough: Mapping[Item, Spot], graph: nx.Graph[Item]) -> dict[Item, Spot]:
    """Each node on the free crossing of the grid that is nearest to where it was."""
    # In a large part the forces press the middle together; there a shorter line is the measure.
    middle = _usual_length(rough, graph, 2 if len(rough) <= CAREFUL_LIMIT else 6)
    taken: set[tuple[int, int]] = set()
    placed = {}
    for item in sorted(rough):
        x, y = (round(part / middle * STEP / 2) for part in rough[item])
        spot = _nearest_free(x, y, taken)
        taken.add(spot)
        placed[item] = (2.0 * spot[0], 2.0 * spot[1])
    return placed


def _nearest_free(x: int, y: int, taken: set[tuple[int, int]]) -> tuple[int, int]:
    reach = 0
    while True:
        ring = [
            (x + dx, y + dy)
            for dx in range(-reach, reach + 1)
            for dy in range(-reach, reach + 1)
            if max(abs(dx), abs(dy)) == reach
        ]
        free = [spot for spot in ring if spot not in taken]
        if free:
            return min(free, key=lambda spot: ((spot[0] - x) ** 2 + (spot[1] - y) ** 2, spot))
        reach += 1
