"""The cheapest wiring of one cluster that puts every setting into one of its allowed states."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import reduce
from operator import or_
from typing import NamedTuple

from model.routing.choice import Costs
from model.routing.clusters import Cluster, Wiring

IDLE = -1
"""The setting in which no reader holds; reader k's own setting is k."""

Allowed = Mapping[int, int]
"""For a setting the states in which the cluster may lie, as a mask; settings left out: any state."""


class ClusterChoice(NamedTuple):
    """How one cluster is wired: masks over its switches, and the cost."""

    cost: int
    idle: int
    thrown: tuple[int, ...]
    """By reader."""


class _Throws(NamedTuple):
    """What some readers throw, as far as they throw anything, and the cost so far."""

    cost: int
    thrown: tuple[tuple[int, int], ...]


class CheapestWiring:
    """Finds the cheapest wiring of a cluster; remembers what it was asked."""

    def __init__(self, cluster: Cluster, costs: Costs, readers: int, *, stable: bool) -> None:
        self.cluster = cluster
        self._costs = costs
        self._readers = readers
        usable = sorted(cluster.stable) if stable else sorted(cluster.states)
        self.usable = frozenset(usable)
        """The wirings that may be chosen."""
        self._powered_with: dict[int, list[int]] = {}
        for wired, powered in usable:
            self._powered_with.setdefault(wired, []).append(powered)
        self._known: dict[frozenset[tuple[int, int]], ClusterChoice | None] = {}
        self._idle_costs = [costs.of_idle(switch) for switch in cluster.switches]
        self._throw_costs = [
            [costs.of_throw(switch, reader) for switch in cluster.switches] for reader in range(readers)
        ]

    @property
    def unwired(self) -> ClusterChoice:
        """The cluster with nothing wired: always possible, and cheaper than all else."""
        return ClusterChoice(0, 0, (0,) * self._readers)

    def choice(self, idle: int, thrown: Sequence[int]) -> ClusterChoice:
        """The cluster wired like that: masks over its switches, what is thrown by reader."""
        wired = reduce(or_, thrown, idle)
        cost = wired.bit_count() * self._costs.wired + _sum_of(self._idle_costs, idle)
        cost += sum(map(_sum_of, self._throw_costs, thrown))
        return ClusterChoice(cost, idle, tuple(thrown))

    def best(self, allowed: Allowed) -> ClusterChoice | None:
        """The cheapest wiring, or ``None`` where there is none."""
        question = frozenset(allowed.items())
        if question not in self._known:
            self._known[question] = self._search(allowed)
        return self._known[question]

    def _search(self, allowed: Allowed) -> ClusterChoice | None:
        best: ClusterChoice | None = None
        for idle, wired in sorted(self._starts(allowed), key=_fewest_first):
            cost = _sum_of(self._idle_costs, idle) + wired.bit_count() * self._costs.wired
            at_least = cost + (wired & ~idle).bit_count() * self._costs.throw
            if best is not None and at_least >= best.cost:
                continue
            found = self._throws(allowed, idle, wired, cost, None if best is None else best.cost)
            best = best if found is None else found
        return best

    def _starts(self, allowed: Allowed) -> list[tuple[int, int]]:
        return [
            (idle, wired)
            for wired, powered in self._powered_with.items()
            for idle in powered
            if self._lies_as(allowed, IDLE, wired, idle)
        ]

    def _throws(
        self, allowed: Allowed, idle: int, wired: int, cost: int, below: int | None
    ) -> ClusterChoice | None:
        """The cheapest throws that wire just these switches, if they cost less than ``below`` in all."""
        by_cover: dict[int, _Throws] = {idle: _Throws(cost, ())}
        free = [reader for reader in range(self._readers) if reader not in allowed]
        bound = [reader for reader in range(self._readers) if reader in allowed]
        for reader in bound + free:
            better: dict[int, _Throws] = {}
            for cover, so_far in by_cover.items():
                if reader not in allowed and cover == wired:
                    # A reader that may do as it likes throws nothing when all is wired already.
                    better[cover] = min(so_far, better.get(cover, so_far), key=_cost)
                    continue
                for thrown, price in self._options(allowed, reader, idle, wired):
                    total = so_far.cost + price
                    other = better.get(cover | thrown)
                    if (below is None or total < below) and (other is None or total < other.cost):
                        more = ((reader, thrown),) if thrown else ()
                        better[cover | thrown] = _Throws(total, so_far.thrown + more)
            by_cover = better
        found = by_cover.get(wired)
        return None if found is None else self._chosen(idle, found)

    def _options(self, allowed: Allowed, reader: int, idle: int, wired: int) -> Iterator[tuple[int, int]]:
        """What a reader may throw, each with its price."""
        prices = self._throw_costs[reader]
        for powered in self._powered_with[wired]:
            if self._lies_as(allowed, reader, wired, powered):
                yield idle ^ powered, _sum_of(prices, idle ^ powered)

    def _chosen(self, idle: int, found: _Throws) -> ClusterChoice:
        thrown = dict(found.thrown)
        return ClusterChoice(
            found.cost, idle, tuple(thrown.get(reader, 0) for reader in range(self._readers))
        )

    def _lies_as(self, allowed: Allowed, setting: int, wired: int, powered: int) -> bool:
        mask = allowed.get(setting)
        return mask is None or bool(mask >> self.cluster.states[Wiring(wired, powered)] & 1)


def _cost(throws: _Throws) -> int:
    return throws.cost


def _fewest_first(start: tuple[int, int]) -> tuple[int, int]:
    idle, wired = start
    return idle.bit_count(), wired.bit_count()


def _sum_of(prices: list[int], mask: int) -> int:
    return sum(price for index, price in enumerate(prices) if mask >> index & 1)
