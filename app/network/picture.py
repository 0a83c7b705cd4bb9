"""What the map shows of a network, in squares: where nodes stand, how links run, what lies where."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property
from itertools import pairwise
from math import ceil, floor, hypot, sqrt
from typing import NamedTuple

from app.canvas.geometry import Area
from app.network.items import Ends, Item, Kind
from app.network.lines import Route, routes
from model.network.network import Network, Spot

Vector = tuple[float, float]
RING: float = 0.62
"""The radius of a junction, in squares."""


class Joint(NamedTuple):
    """Where a link meets the ring of a junction, and the direction in which carts cross it there."""

    at: Spot
    towards: Vector


class Picture:
    """A network with a place for each of its nodes."""

    def __init__(self, network: Network, spots: Mapping[Item, Spot]) -> None:
        self.network = network
        self.spots = spots
        self._ends = Ends(network)
        self.routes: dict[int, Route] = routes(network, spots)
        self._into: dict[str, int] = {}
        self._out_of: dict[str, int] = {}
        for index in self.routes:
            link = network.links[index]
            self._into.setdefault(link.end, index)
            self._out_of.setdefault(link.start, index)

    def link_into(self, end: str) -> int | None:
        """The first link by which carts come to an arm: ``Mill/East``."""
        return self._into.get(end)

    def link_out_of(self, end: str) -> int | None:
        """The first link by which carts leave an arm."""
        return self._out_of.get(end)

    def joint_in(self, item: Item, link: int) -> Joint:
        """Where a link comes to the ring of a junction."""
        return _joint(self.spots[item], self.routes[link][-1], self.routes[link][-2], inward=True)

    def joint_out(self, item: Item, link: int) -> Joint:
        """Where a link leaves the ring of a junction."""
        return _joint(self.spots[item], self.routes[link][0], self.routes[link][1], inward=False)

    @cached_property
    def one_way(self) -> frozenset[int]:
        """The links between nodes that no link joins the other way."""
        ends = {index: self.ends_of(index) for index in self.routes}
        pairs = set(ends.values())
        return frozenset(index for index, (start, end) in ends.items() if (end, start) not in pairs)

    @cached_property
    def extent(self) -> Area:
        """The squares that all nodes take."""
        if not self.spots:
            return Area(0, 0, 0, 0)
        xs = [x for x, _ in self.spots.values()]
        ys = [y for _, y in self.spots.values()]
        return Area(floor(min(xs)), floor(min(ys)), ceil(max(xs)), ceil(max(ys)))

    def node_at(self, x: float, y: float, reach: float = RING) -> Item | None:
        """The node whose symbol is under a place; the nearest where there are several."""
        near = [
            (hypot(sx - x, sy - y), item)
            for item, (sx, sy) in self.spots.items()
            if abs(sx - x) <= reach and abs(sy - y) <= reach
        ]
        return min(near)[1] if near else None

    def link_at(self, x: float, y: float, reach: float) -> Item | None:
        """The link whose line runs under a place, the nearest within so many squares."""
        best, found = reach, None
        for index, line in self.routes.items():
            far = distance_to(line, (x, y))
            if far < best:
                best, found = far, Item(Kind.LINK, index)
        return found

    def item_at(self, x: float, y: float, reach: float) -> Item | None:
        """A node, or else a link."""
        return self.node_at(x, y, max(reach, RING)) or self.link_at(x, y, reach)

    def ends_of(self, link: int) -> tuple[Item | None, Item | None]:
        """The two nodes of a link."""
        found = self.network.links[link]
        return self._ends.node(found.start), self._ends.node(found.end)


def _joint(middle: Spot, end: Spot, before: Spot, inward: bool) -> Joint:
    """Where the last piece of a line crosses the ring: ``end`` lies at the node, ``before`` outside."""
    length = hypot(end[0] - before[0], end[1] - before[1]) or 1.0
    dx, dy = (end[0] - before[0]) / length, (end[1] - before[1]) / length
    ox, oy = end[0] - middle[0], end[1] - middle[1]
    along = ox * dx + oy * dy
    back = along + sqrt(max(0.0, along * along - (ox * ox + oy * oy - RING * RING)))
    at = (end[0] - back * dx, end[1] - back * dy)
    return Joint(at, (dx, dy) if inward else (-dx, -dy))


def distance_to(line: Route, spot: Spot) -> float:
    """How far a place is from a line, in squares."""
    best = float("inf")
    for (ax, ay), (bx, by) in pairwise(line):
        dx, dy = bx - ax, by - ay
        length = dx * dx + dy * dy
        part = 0.0 if not length else max(0.0, min(1.0, ((spot[0] - ax) * dx + (spot[1] - ay) * dy) / length))
        best = min(best, hypot(ax + part * dx - spot[0], ay + part * dy - spot[1]))
    return best
