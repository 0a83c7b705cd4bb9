"""The search for the choice that serves the wanted routes with the least wiring.

Along each wanted route the possible ways are listed, each with the states that it asks of the clusters it
passes. Then one way is taken for each route, by branch and bound: a way more can only make the wiring
dearer, and clusters do not bear on one another, so the bound is a sum over clusters.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from model.routing.cheapest import CheapestWiring, ClusterChoice
from model.routing.choice import Costs
from model.routing.clusters import Cluster
from model.routing.paths import Box


class Demand(NamedTuple):
    """A wanted route: in which setting it runs, and the ways that would serve it."""

    setting: int
    boxes: tuple[Box, ...]


class Found(NamedTuple):
    """A choice: the cost and the wiring of each cluster."""

    cost: int
    clusters: tuple[ClusterChoice, ...]


class Search:
    """Takes one way for each demand, so that the wiring costs the least."""

    def __init__(self, clusters: Sequence[Cluster], costs: Costs, readers: int, *, stable: bool) -> None:
        self._costs = costs
        self._cheapest = [CheapestWiring(cluster, costs, readers, stable=stable) for cluster in clusters]
        self._best: Found | None = None

    def serve_all(self, demands: Sequence[Demand]) -> Found | None:
        """The cheapest choice by which every demand is served; ``None`` where there is none."""
        return self._run(demands, may_leave_out=False)

    def serve_most(self, demands: Sequence[Demand]) -> Found:
        """The cheapest of the choices by which most demands are served."""
        found = self._run(demands, may_leave_out=True)
        assert found is not None
        return found

    def _run(self, demands: Sequence[Demand], *, may_leave_out: bool) -> Found | None:
        self._best = None
        if not may_leave_out and not all(demand.boxes for demand in demands):
            return None
        start = [cheapest.best({}) for cheapest in self._cheapest]
        assert all(choice is not None for choice in start), "leaving all unwired is always possible"
        chosen = [choice for choice in start if choice is not None]
        hardest_first = sorted(demands, key=lambda demand: len(demand.boxes))
        allowed: list[dict[int, int]] = [{} for _ in chosen]
        self._branch(hardest_first, allowed, chosen, 0, may_leave_out=may_leave_out)
        return self._best

    def _branch(
        self,
        demands: Sequence[Demand],
        allowed: list[dict[int, int]],
        chosen: list[ClusterChoice],
        left_out: int,
        *,
        may_leave_out: bool,
    ) -> None:
        cost = sum(choice.cost for choice in chosen) + left_out * self._costs.not_reached
        if self._best is not None and cost >= self._best.cost:
            return
        if not demands:
            self._best = Found(cost, tuple(chosen))
            return
        demand, rest = demands[0], demands[1:]
        for box in demand.boxes:
            narrowed = self._narrowed(demand.setting, box, allowed, chosen)
            if narrowed is not None:
                self._branch(rest, *narrowed, left_out, may_leave_out=may_leave_out)
        if may_leave_out:
            self._branch(rest, allowed, chosen, left_out + 1, may_leave_out=may_leave_out)

    def _narrowed(
        self, setting: int, box: Box, allowed: list[dict[int, int]], chosen: list[ClusterChoice]
    ) -> tuple[list[dict[int, int]], list[ClusterChoice]] | None:
        """What is allowed and chosen when a way is taken as well; ``None`` where that cannot be."""
        allowed, chosen = list(allowed), list(chosen)
        for index, mask in box.items():
            states = allowed[index]
            allowed[index] = {**states, setting: states.get(setting, mask) & mask}
            best = self._cheapest[index].best(allowed[index])
            if best is None:
                return None
            chosen[index] = best
        return allowed, chosen
