"""The control table: what each reader throws, what is powered at idle, and what that serves."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import cached_property
from itertools import combinations

import msgspec

from model.grid import Cell
from model.plan import Arm, Plan, Route
from model.routing.cheapest import IDLE
from model.routing.choice import Choice, Costs
from model.routing.clusters import Cluster, clusters_that_bear_on
from model.routing.demand import Demand
from model.routing.influence import influence
from model.routing.paths import OUT_OF_REACH, PathFinder, Stage
from model.routing.runs import cells_on_some_way
from model.routing.search import Found, Search
from model.track.carts import exits_of
from model.track.layout import Layout
from model.track.rails import pack, unpack
from model.track.shapes import Shape


class WantedRoute(msgspec.Struct, frozen=True, order=True):
    """One wanted route: from an arm to an arm, idle or called."""

    start: str
    called: bool
    goal: str


def wanted_routes(routes: Iterable[Route]) -> tuple[WantedRoute, ...]:
    """The wanted routes in file order, the idle one of an arm before the called one."""
    wanted: list[WantedRoute] = []
    for route in routes:
        wanted.append(WantedRoute(route.start, False, route.idle))
        if route.called is not None:
            wanted.append(WantedRoute(route.start, True, route.called))
    return tuple(wanted)


class Conflict(msgspec.Struct, frozen=True):
    """Wanted routes of which each can be served, but not all together; no fewer of them conflict."""

    routes: tuple[WantedRoute, ...]
    switches: tuple[Cell, ...]
    """The switches that they need in different states, or on which they all depend."""


class Control:
    """The best choice for a plan: the fewest inverters, then throws, then wired switches."""

    def __init__(self, plan: Plan, layout: Layout, switches: Sequence[Cell]) -> None:
        self._layout = layout
        self._wanted = wanted_routes(plan.routes)
        self._readers = sorted({route.start for route in self._wanted if route.called})
        self._arms: dict[str, Arm] = {}
        for arm in plan.arms:
            self._arms.setdefault(arm.name, arm)
        self._exits = exits_of(plan.arms)
        self._clusters = self._find_clusters([pack(cell) for cell in switches])
        self._stages = {route: self._stages_of(route) for route in self._wanted}
        found = self._stable_search.serve_all(self._demands(self._wanted))
        self.serves = found is not None
        """Whether every wanted route arrives in its own setting, in whatever order the power changes."""
        if found is None:
            found = self._any_search.serve_most(self._demands(self._wanted))
        self.choice = self._choice(found)

    @cached_property
    def unreachable(self) -> tuple[WantedRoute, ...]:
        """The wanted routes that no choice serves, not even alone."""
        return tuple(route for route in self._wanted if not self._can_serve((route,)))

    @cached_property
    def conflicts(self) -> tuple[Conflict, ...]:
        """Smallest sets of routes that no choice serves together: all pairs, or else one larger set."""
        if self.serves:
            return ()
        single = [route for route in self._wanted if route not in self.unreachable]
        pairs = list(self._unserved_pairs(single))
        if not pairs and not self._can_serve(single):
            return (self._conflict(self._smallest_unserved(single)),)
        return tuple(self._conflict(pair) for pair in pairs)

    def _unserved_pairs(self, routes: Sequence[WantedRoute]) -> Iterator[tuple[WantedRoute, WantedRoute]]:
        demands = self._demands(routes)
        clashes = self._any_search.clashes(demands)
        clusters = [demand.clusters for demand in demands]
        for one, other in combinations(range(len(routes)), 2):
            has_choice = not (demands[one].has_one_way and demands[other].has_one_way)
            pair = (routes[one], routes[other])
            if clashes[one] >> other & 1 or (
                has_choice and not clusters[one].isdisjoint(clusters[other]) and not self._can_serve(pair)
            ):
                yield pair

    def _find_clusters(self, switches: list[int]) -> list[Cluster]:
        """The clusters that matter: those that bear on a rail on some way from arm to arm."""
        starts = [
            (arm.enter.at, arm.enter.heading)
            for name in dict.fromkeys(route.start for route in self._wanted)
            if (arm := self._arms.get(name)) is not None
            and self._can_be_entered(arm)
            and arm.enter is not None
        ]
        if not starts:
            return []
        effects = influence(self._layout, switches)
        cells = cells_on_some_way(self._layout, effects.possible, self._exits, starts)
        return clusters_that_bear_on(effects, self._layout.rails, switches, cells)

    def _can_be_entered(self, arm: Arm) -> bool:
        return arm.enter is not None and self._layout.shape(arm.enter.at) is not None

    def _stages_of(self, route: WantedRoute) -> tuple[Stage, ...]:
        arm = self._arms.get(route.start)
        if arm is None or arm.enter is None or not self._can_be_entered(arm):
            return (OUT_OF_REACH,)
        return self._finder.stages(arm.enter.at, arm.enter.heading, route.goal)

    def _shapes_needed(self, route: WantedRoute) -> dict[int, frozenset[Shape]]:
        """The shapes in which the rails on the ways of a route may lie, by packed cell."""
        needed: dict[int, frozenset[Shape]] = {}
        for stage in self._stages[route]:
            for (key, _), moves in stage.moves.items():
                needed[key] = needed.get(key, frozenset()).union(*(move.shapes for move in moves))
        return needed

    @cached_property
    def _finder(self) -> PathFinder:
        return PathFinder(self._layout, self._exits, self._clusters)

    def _demands(self, routes: Iterable[WantedRoute]) -> list[Demand]:
        return [
            Demand(self._readers.index(route.start) if route.called else IDLE, self._stages[route])
            for route in routes
        ]

    @cached_property
    def _stable_search(self) -> Search:
        return self._search(stable=True)

    @cached_property
    def _any_search(self) -> Search:
        return self._search(stable=False)

    def _search(self, *, stable: bool) -> Search:
        switches = [switch for cluster in self._clusters for switch in cluster.switches]
        costs = Costs(switches, self._readers)
        return Search(self._clusters, costs, len(self._readers), stable=stable)

    def _can_serve(self, routes: Sequence[WantedRoute]) -> bool:
        return self._any_search.can_serve_all(self._demands(routes))

    def _smallest_unserved(self, routes: Sequence[WantedRoute]) -> tuple[WantedRoute, ...]:
        """Leaves out routes as long as the rest still cannot be served together."""
        kept = list(routes)
        for route in routes:
            rest = [other for other in kept if other != route]
            if not self._can_serve(rest):
                kept = rest
        return tuple(kept)

    def _conflict(self, routes: tuple[WantedRoute, ...]) -> Conflict:
        """Names the switches that the routes need to lie differently; else all switches that they pass."""
        needs: dict[int, set[frozenset[Shape]]] = {}
        for route in routes:
            for key, shapes in self._shapes_needed(route).items():
                needs.setdefault(key, set()).add(shapes)
        passed = [key for cluster in self._clusters for key in cluster.switches if key in needs]
        contested = [key for key in passed if not frozenset.intersection(*needs[key])]
        return Conflict(routes, tuple(unpack(key) for key in contested or passed))

    def _choice(self, found: Found) -> Choice:
        idle: set[Cell] = set()
        thrown: dict[str, set[Cell]] = {reader: set() for reader in self._readers}
        for cluster, chosen in zip(self._clusters, found.clusters, strict=True):
            idle |= _cells(cluster, chosen.idle)
            for reader, mask in zip(self._readers, chosen.thrown, strict=True):
                thrown[reader] |= _cells(cluster, mask)
        return Choice(frozenset(idle), {reader: frozenset(cells) for reader, cells in thrown.items()})


def _cells(cluster: Cluster, mask: int) -> set[Cell]:
    return {unpack(key) for index, key in enumerate(cluster.switches) if mask >> index & 1}
