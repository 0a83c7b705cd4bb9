"""Crossing routes: two routes whose carts could meet, or that need one switch in two states at one time."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import combinations

import msgspec

from model.grid import Cell
from model.routing.control import WantedRoute
from model.routing.junction import Junction


class Crossing(msgspec.Struct, frozen=True):
    """Two wanted routes that may not be run together."""

    first: WantedRoute
    second: WantedRoute
    cells: tuple[Cell, ...]
    """The cells that both pass, in the order of the first route."""
    switches: tuple[Cell, ...]
    """Those of them that are switches which the two routes need in different states."""


def crossing_pairs(junction: Junction, routes: Iterable[WantedRoute] | None = None) -> tuple[Crossing, ...]:
    """The pairs of these routes, or of all, that pass a common cell, each way taken in its own setting."""
    pairs = combinations(junction.ways if routes is None else routes, 2)
    return tuple(found for pair in pairs if (found := _crossing(junction, *pair)) is not None)


def crossings_of(junction: Junction, route: WantedRoute) -> tuple[Crossing, ...]:
    """The crossings of one wanted route with the others, itself the first of each."""
    if route not in junction.ways:
        return ()
    others = (other for other in junction.ways if other != route)
    return tuple(found for other in others if (found := _crossing(junction, route, other)) is not None)


def runnable_together(
    junction: Junction, routes: Iterable[WantedRoute]
) -> tuple[tuple[WantedRoute, ...], ...]:
    """The largest sets of these routes of which no two cross; each needs a way.

    There can be very many: with n pairs of crossing routes that do not touch one another 2^n.
    """
    import networkx as nx  # slow to import, and asked for by few

    routes = tuple(routes)
    free: nx.Graph[WantedRoute] = nx.complete_graph(routes)
    crossing = crossing_pairs(junction, routes)
    free.remove_edges_from((found.first, found.second) for found in crossing)
    return tuple(sorted(tuple(sorted(together)) for together in nx.find_cliques(free)))


def _crossing(junction: Junction, first: WantedRoute, second: WantedRoute) -> Crossing | None:
    passed = frozenset(junction.ways[second].path)
    cells = tuple(dict.fromkeys(cell for cell in junction.ways[first].path if cell in passed))
    if not cells:
        return None
    return Crossing(first, second, cells, _contested(junction, first, second, cells))


def _contested(
    junction: Junction, first: WantedRoute, second: WantedRoute, cells: tuple[Cell, ...]
) -> tuple[Cell, ...]:
    one, other = (
        junction.shapes(junction.settings[route.start if route.called else None]) for route in (first, second)
    )
    return tuple(c for c in cells if c in junction.switch_states and one.get(c) != other.get(c))
