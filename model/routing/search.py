"""The search for the choice that serves the wanted routes with the least wiring.

Along each wanted route the possible ways are listed stage by stage, each with the states that it asks of
the clusters it passes. Then one way is taken for each stage of each route, by branch and bound: a way more
can only make the wiring dearer, and clusters do not bear on one another, so the bound is a sum over clusters.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from model.routing.cheapest import CheapestWiring, ClusterChoice
from model.routing.choice import Costs
from model.routing.clusters import Cluster
from model.routing.paths import Box


class Demand(NamedTuple):
    """A wanted route: in which setting it runs, and stage by stage the ways that would serve it."""

    setting: int
    stages: tuple[tuple[Box, ...], ...]

    @property
    def ways(self) -> int:
        """Of all stages together."""
        return sum(map(len, self.stages))


class Found(NamedTuple):
    """A choice: the cost and the wiring of each cluster."""

    cost: int
    clusters: tuple[ClusterChoice, ...]


class _Step(NamedTuple):
    """One stage of a demand."""

    setting: int
    boxes: tuple[Box, ...]
    after_route: int | None
    """The step after the demand, where this is its first: there the search goes on when it is left out."""


class _Node(NamedTuple):
    """Where the search stands: what is allowed of each cluster, its cheapest wiring, routes left out."""

    allowed: dict[int, dict[int, int]]
    chosen: dict[int, ClusterChoice]
    left_out: int

    @property
    def wiring_cost(self) -> int:
        return sum(choice.cost for choice in self.chosen.values())


class Search:
    """Takes one way for each demand, so that the wiring costs the least."""

    def __init__(self, clusters: Sequence[Cluster], costs: Costs, readers: int, *, stable: bool) -> None:
        self._costs = costs
        self._cheapest = [CheapestWiring(cluster, costs, readers, stable=stable) for cluster in clusters]

    def serve_all(self, demands: Sequence[Demand]) -> Found | None:
        """The cheapest choice by which every demand is served; ``None`` where there is none."""
        stages = [Demand(demand.setting, (boxes,)) for demand in demands for boxes in demand.stages]
        return self._run(stages, may_leave_out=False)

    def serve_most(self, demands: Sequence[Demand]) -> Found:
        """The cheapest of the choices by which most demands are served."""
        found = self._run(demands, may_leave_out=True)
        assert found is not None, "leaving all unwired is always possible"
        return found

    def _run(self, demands: Sequence[Demand], *, may_leave_out: bool) -> Found | None:
        chosen: dict[int, ClusterChoice] = {}
        left_out = 0
        for group in _independent(demands):
            best = self._best_of_group(group, may_leave_out=may_leave_out)
            if best is None:
                return None
            chosen |= best.chosen
            left_out += best.left_out
        clusters = tuple(chosen.get(i, c.unwired) for i, c in enumerate(self._cheapest))
        cost = sum(choice.cost for choice in clusters) + left_out * self._costs.not_reached
        return Found(cost, clusters)

    def _best_of_group(self, demands: Sequence[Demand], *, may_leave_out: bool) -> _Node | None:
        """Depth first; leaves a branch as soon as it costs what the best so far costs."""
        steps = list(_steps(sorted(demands, key=lambda demand: demand.ways)))
        best: _Node | None = None
        waiting = [(0, _Node({}, {}, 0))]
        while waiting:
            depth, node = waiting.pop()
            if best is not None and self._cost(node) >= self._cost(best):
                continue
            if depth == len(steps):
                best = node
                continue
            step = steps[depth]
            nodes = [
                (depth + 1, n)
                for box in step.boxes
                if (n := self._narrowed(node, step.setting, box)) is not None
            ]
            if may_leave_out and step.after_route is not None:
                nodes.append((step.after_route, node._replace(left_out=node.left_out + 1)))
            nodes.sort(key=lambda entry: self._cost(entry[1]), reverse=True)
            waiting += nodes
        return best

    def _cost(self, node: _Node) -> int:
        return node.left_out * self._costs.not_reached + node.wiring_cost

    def _narrowed(self, node: _Node, setting: int, box: Box) -> _Node | None:
        """The node when a way is taken as well; ``None`` where that cannot be."""
        allowed, chosen = dict(node.allowed), dict(node.chosen)
        for index, mask in box.items():
            states = allowed.get(index, {})
            allowed[index] = {**states, setting: states.get(setting, mask) & mask}
            best = self._cheapest[index].best(allowed[index])
            if best is None:
                return None
            chosen[index] = best
        return _Node(allowed, chosen, node.left_out)


def _steps(demands: Iterable[Demand]) -> Iterator[_Step]:
    """The stages of the demands one after another; a demand can be left out as a whole only."""
    index = 0
    for demand in demands:
        after = index + len(demand.stages)
        for number, boxes in enumerate(demand.stages):
            yield _Step(demand.setting, boxes, None if number else after)
        index = after


def _independent(demands: Sequence[Demand]) -> list[list[Demand]]:
    """The demands in groups, so that no two groups have to do with the same cluster."""
    groups: list[tuple[set[int], list[Demand]]] = []
    for demand in demands:
        clusters = {index for boxes in demand.stages for box in boxes for index in box}
        touching = [group for group in groups if not group[0].isdisjoint(clusters)]
        merged = [demand for group in touching for demand in group[1]]
        groups = [group for group in groups if group not in touching]
        groups.append((clusters.union(*(group[0] for group in touching)), [*merged, demand]))
    return [members for _, members in groups]
