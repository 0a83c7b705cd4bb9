"""Which rails are linked in the end, told by which of them came before which.

Common practice of the trade, written from memory, no published source; the rules are those of
``model.track.settling``, said anew as sentences about one placing:

- a placed neighbour is *open* to a new rail while it has fewer than two links;
- the new rail *takes* those open neighbours to which it then lies: all on one axis where the other axis has
  none, else the two of the curve that the bias rule picks; a booster or detector rail those on its axis;
- two rails are linked when the later one took the earlier one, and stay so: a link is never lost, because a
  rail with two links is open to nobody. (A booster or detector rail could lose one by turning its side;
  orders in which that happens are left out.)
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

import networkx as nx

from model.grid import Heading
from model.ordering.clauses import Clauses, Statement
from model.ordering.ground import Ground
from model.track.rails import BIT, EAST_WEST, MASK, NORTH_SOUTH
from model.track.settling import biased_curve


class Linking:
    """The sentences about the order of the relevant rails and the links that it makes."""

    def __init__(self, clauses: Clauses, ground: Ground) -> None:
        self._clauses = clauses
        self._ground = ground
        self._before: dict[tuple[int, int], Statement] = {}
        self._link: dict[tuple[int, int], Statement] = {}
        self.lies_north_south = {key: clauses.new() for key in ground.relevant}
        """How a rail lies when no neighbour is open to it: north-south, else east-west."""
        for key in ground.relevant:
            for other in ground.beside[key].values():
                self._make_link(key, other)
        self._taken = {key: self._takes(key) for key in ground.relevant}
        self._say_what_links()

    def before(self, one: int, other: int) -> Statement:
        """One rail is placed before the other."""
        low, high = min(one, other), max(one, other)
        known = self._before.get((low, high))
        if known is None:
            known = self._before[low, high] = self._clauses.new()
        return known if one == low else -known

    def links(self, key: int) -> dict[Heading, Statement]:
        """By heading: the rail is linked to its neighbour there, as built."""
        return {h: self.link(key, other) for h, other in self._ground.beside[key].items()}

    def link(self, one: int, other: int) -> Statement:
        """Two neighbours are linked; two free ones always are."""
        return self._link.get((min(one, other), max(one, other)), self._clauses.true)

    def orders_known(self) -> Iterator[tuple[int, int]]:
        """The pairs of which is said who comes first, as found last."""
        for (low, high), statement in self._before.items():
            yield (low, high) if self._clauses.holds(statement) else (high, low)

    def forbid_rings(self) -> bool:
        """Says of each ring of "before" that was found that it cannot be; whether there was one."""
        graph = nx.DiGraph(self.orders_known())
        rings = [ring for part in nx.strongly_connected_components(graph) for ring in _rings(graph, part)]
        for ring in rings:
            pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
            self._clauses.say(*(-self.before(one, other) for one, other in pairs))
        return bool(rings)

    def _make_link(self, one: int, other: int) -> None:
        pair = min(one, other), max(one, other)
        if pair not in self._link and (one in self._ground.bound or other in self._ground.bound):
            self._link[pair] = self._clauses.new()

    def _takes(self, key: int) -> dict[int, Statement]:
        """By neighbour: it is there before the rail, and the rail takes it."""
        clauses = self._clauses
        near = {h: other for h, other in self._ground.beside[key].items() if self._is_said(key, other)}
        opens = [clauses.all_of([self.before(o, key), self.has_room(o, key)]) for o in near.values()]
        takes = {heading: clauses.new() for heading in near}
        choose = _along_axis if key in self._ground.turning else _by_bias
        for values, row in clauses.rows([self.lies_north_south[key], *opens]):
            mask = sum(BIT[heading] for heading, is_open in zip(near, values[1:], strict=True) if is_open)
            taken = choose(mask, values[0])
            for heading, statement in takes.items():
                clauses.say_if(row, statement if taken & BIT[heading] else -statement)
        return {near[heading]: takes[heading] for heading in near}

    def _is_said(self, one: int, other: int) -> bool:
        return (min(one, other), max(one, other)) in self._link

    def has_room(self, key: int, newcomer: int) -> Statement:
        """The rail has fewer than two links when the newcomer is placed."""
        if key not in self._ground.bound:
            return self._clauses.true
        others = [other for other in self._ground.beside[key].values() if other != newcomer]
        linked = [self.linked_before(key, other, newcomer) for other in others]
        pairs = [self._clauses.all_of(pair) for pair in combinations(linked, 2)]
        return -self._clauses.any_of(pairs)

    def linked_before(self, key: int, other: int, newcomer: int) -> Statement:
        """The rail is linked to the other one when the newcomer is placed, given that itself is there."""
        return self._clauses.all_of([self.link(key, other), self.before(other, newcomer)])

    def _say_what_links(self) -> None:
        clauses = self._clauses
        for (one, other), link in self._link.items():
            took = clauses.any_of([self._took(one, other), self._took(other, one)])
            clauses.say(-link, took)
            clauses.say(link, -took)
        for key in self._ground.turning:
            self._forbid_turning(key)

    def _forbid_turning(self, key: int) -> None:
        """No later rail takes one that has a link on the other axis."""
        near = self._ground.beside[key]
        for heading, newcomer in near.items():
            across = [o for h, o in near.items() if h.lies_north_south != heading.lies_north_south]
            for other in across:
                self._clauses.say(-self._took(newcomer, key), -self.linked_before(key, other, newcomer))

    def _took(self, newcomer: int, key: int) -> Statement:
        return self._taken[newcomer].get(key, self._clauses.false)


def _by_bias(mask: int, _: bool) -> int:
    """The directions that a new plain rail takes of those that are open."""
    if mask & NORTH_SOUTH and mask & EAST_WEST:
        return MASK[biased_curve(mask, powered=False)]
    return mask


def _along_axis(mask: int, lies_north_south: bool) -> int:
    """The same for a booster or detector rail, which stays as it is faced when both axes are open."""
    if mask & NORTH_SOUTH and mask & EAST_WEST:
        return mask & (NORTH_SOUTH if lies_north_south else EAST_WEST)
    return mask


def _rings(graph: nx.DiGraph[int], part: set[int]) -> Iterator[list[int]]:
    """The shortest ring through each rail of a part in which all come before one another."""
    if len(part) < 2:
        return
    inner = graph.subgraph(part)
    seen: set[frozenset[int]] = set()
    for start in part:
        paths = nx.single_source_shortest_path(inner, start)
        rings = [path for end, path in paths.items() if inner.has_edge(end, start)]
        ring = min(rings, key=len)
        if frozenset(ring) not in seen:
            seen.add(frozenset(ring))
            yield ring
