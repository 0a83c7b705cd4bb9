"""Which rails are linked in the end, told by which of them came before which.

Common practice of the trade, written from memory, no published source; the rules are those of
``model.track.settling``, said anew as sentences about one placing:

- a placed neighbour is *open* to a new rail while it has fewer than two links;
- the new rail *takes* those open neighbours to which it then lies: all on one axis where the other axis has
  none, else the two of the curve that the bias rule picks; a booster or detector rail those on its axis;
- two rails are linked when the later one took the earlier one, and mostly stay so, because a rail with two
  links is open to nobody.

A booster or detector rail with neighbours on both axes is the exception. Lying north-south with one link it
*turns* for a newcomer from the east or west, and loses that link; once linked to the east or west it is taken
from the north or south in vain. The rail beyond then keeps a *dead* end, until another newcomer takes it.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import TYPE_CHECKING

from model.clauses import Clauses, Statement
from model.grid import Heading
from model.ordering.ground import Ground
from model.track.rails import BIT, EAST_WEST, MASK, NORTH_SOUTH
from model.track.settling import biased_curve

if TYPE_CHECKING:
    import networkx as nx

Pair = tuple[int, int]


class Linking:
    """The sentences about the order of the relevant rails and the links that it makes."""

    def __init__(self, clauses: Clauses, ground: Ground) -> None:
        self._clauses = clauses
        self._ground = ground
        self._before: dict[Pair, Statement] = {}
        self.lies_north_south = {key: clauses.new() for key in ground.relevant}
        """How a rail lies when no neighbour is open to it: north-south, else east-west."""
        pairs = ((key, other) for key in ground.relevant for other in ground.beside[key].values())
        bound = ground.bound
        self._made = {_pair(*pair): clauses.new() for pair in pairs if not bound.isdisjoint(pair)}
        """The later of two neighbours linked itself to the earlier one; two free ones always do."""
        self._turning = {
            (key, newcomer): clauses.new()
            for key in ground.turning
            for newcomer in self._on_axis(key, EAST_WEST)
        }
        """A rail is taken by a newcomer from the east or west, which turns it."""
        self._taken = {key: self._says_taken(key) for key in ground.relevant}
        for (key, newcomer), turns in self._turning.items():
            clauses.same(turns, self._took(newcomer, key))
        for (one, other), made in self._made.items():
            clauses.same(made, clauses.any_of([self._makes(one, other), self._makes(other, one)]))
        self._linked = {pair: self._stays_linked(*pair) for pair in self._made}

    def before(self, one: int, other: int) -> Statement:
        """One rail is placed before the other."""
        pair = _pair(one, other)
        if pair not in self._before:
            self._before[pair] = self._clauses.new()
        return self._before[pair] if pair[0] == one else -self._before[pair]

    def link(self, one: int, other: int) -> Statement:
        """Two neighbours are linked as built."""
        return self._linked.get(_pair(one, other), self._clauses.true)

    def links(self, key: int) -> dict[Heading, Statement]:
        """By heading: the rail is linked to its neighbour there as built."""
        return {h: self.link(key, other) for h, other in self._ground.beside[key].items()}

    def reaches(self, key: int) -> dict[Heading, Statement]:
        """By heading: the rail has an end there as built because it is linked, or was."""
        return {
            heading: self._clauses.any_of([link, self._dead_end(key, self._ground.beside[key][heading])])
            for heading, link in self.links(key).items()
        }

    def orders_known(self) -> Iterator[Pair]:
        """The pairs of which is said who comes first, as found last."""
        for (low, high), statement in self._before.items():
            yield (low, high) if self._clauses.holds(statement) else (high, low)

    def forbid_rings(self) -> bool:
        """Says of each ring of "before" that was found that it cannot be; whether there was one."""
        import networkx as nx  # slow to import, and who draws plans need not wait for it

        graph: nx.DiGraph[int] = nx.DiGraph()
        # Handed over at its making, the graph would swallow a Ctrl-C and go on with half of the pairs.
        graph.add_edges_from(self.orders_known())
        rings = [ring for part in nx.strongly_connected_components(graph) for ring in _rings(graph, part)]
        for ring in rings:
            pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
            self._clauses.say(*(-self.before(one, other) for one, other in pairs))
        return bool(rings)

    def _took(self, newcomer: int, key: int) -> Statement:
        """The newcomer took a rail that was there; of two free ones the later always does."""
        if _pair(newcomer, key) not in self._made:
            return self.before(key, newcomer)
        return self._taken[newcomer].get(key, self._clauses.false)

    def _says_taken(self, key: int) -> dict[int, Statement]:
        """By neighbour: it is there before the rail, and the rail takes it."""
        clauses = self._clauses
        near = {h: o for h, o in self._ground.beside[key].items() if _pair(key, o) in self._made}
        takes = {heading: clauses.new() for heading in near}
        opens = [clauses.all_of([self.before(o, key), self._has_room(o, key)]) for o in near.values()]
        choose = _along_axis if key in self._ground.turning else _by_bias
        for values, row in clauses.rows([self.lies_north_south[key], *opens]):
            mask = sum(BIT[heading] for heading, is_open in zip(near, values[1:], strict=True) if is_open)
            taken = choose(mask, values[0])
            for heading, statement in takes.items():
                clauses.say_if(row, statement if taken & BIT[heading] else -statement)
        return {near[heading]: takes[heading] for heading in near}

    def _has_room(self, key: int, newcomer: int) -> Statement:
        """The rail has fewer than two links when the newcomer is placed."""
        if key not in self._ground.bound:
            return self._clauses.true
        others = [other for other in self._ground.beside[key].values() if other != newcomer]
        linked = [self._linked_before(key, other, newcomer) for other in others]
        pairs = [self._clauses.all_of(pair) for pair in combinations(linked, 2)]
        return -self._clauses.any_of(pairs)

    def _linked_before(self, key: int, other: int, newcomer: int) -> Statement:
        """The rail is linked to the other one when the newcomer is placed, given that itself is there."""
        made = self._made.get(_pair(key, other), self._clauses.true)
        turned = [
            -self._clauses.all_of([self._turning[rail, for_], self.before(for_, newcomer)])
            for rail, for_ in self._breakers(key, other)
            if for_ != newcomer
        ]
        return self._clauses.all_of([made, self.before(other, newcomer), *turned])

    def _makes(self, newcomer: int, key: int) -> Statement:
        """The newcomer takes a rail, and not in vain."""
        took = self._took(newcomer, key)
        return self._clauses.all_of([took, -self._is_vain(newcomer, key)])

    def _is_vain(self, newcomer: int, key: int) -> Statement:
        """A rail that can turn has a link to the east or west when it is taken from the north or south."""
        if key not in self._ground.turning or newcomer not in self._on_axis(key, NORTH_SOUTH):
            return self._clauses.false
        across = self._on_axis(key, EAST_WEST)
        return self._clauses.any_of([self._linked_before(key, other, newcomer) for other in across])

    def _stays_linked(self, one: int, other: int) -> Statement:
        turned = [-self._turning[rail, newcomer] for rail, newcomer in self._breakers(one, other)]
        return self._clauses.all_of([self._made[one, other], *turned])

    def _breakers(self, one: int, other: int) -> Iterator[Pair]:
        """The rails that can turn away from this link between north and south, and for which newcomers."""
        for key, beyond in ((one, other), (other, one)):
            if key in self._ground.turning and beyond in self._on_axis(key, NORTH_SOUTH):
                yield from ((key, newcomer) for newcomer in self._on_axis(key, EAST_WEST))

    def _on_axis(self, key: int, axis: int) -> list[int]:
        return [other for heading, other in self._ground.beside[key].items() if BIT[heading] & axis]

    def _dead_end(self, key: int, beyond: int) -> Statement:
        """The rail has an end to one that can turn, to which it is not linked, because it once took it or was
        linked to it, and nothing took itself since."""
        if beyond not in self._ground.turning or key not in self._on_axis(beyond, NORTH_SOUTH):
            return self._clauses.false
        clauses = self._clauses
        takers = [(other, self._took(other, key)) for other in self._ground.beside[key].values()]
        untaken = [-took for _, took in takers]
        never = clauses.all_of([self._took(key, beyond), self._is_vain(key, beyond), *untaken])
        turns = [(other, self._turning[beyond, other]) for other in self._on_axis(beyond, EAST_WEST)]
        taken_since = [
            clauses.all_of([took, turned, self.before(newcomer, other)])
            for other, took in takers
            for newcomer, turned in turns
            if newcomer != other
        ]
        lost = clauses.all_of(
            [
                self._made[_pair(key, beyond)],
                clauses.any_of([turned for _, turned in turns]),
                -clauses.any_of(taken_since),
            ]
        )
        across = self._on_axis(key, EAST_WEST) if key in self._ground.turning else ()
        turned_itself = clauses.any_of([self._made[_pair(key, other)] for other in across])
        return clauses.all_of([clauses.any_of([never, lost]), -turned_itself])


def _pair(one: int, other: int) -> Pair:
    return (one, other) if one < other else (other, one)


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
    import networkx as nx

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
