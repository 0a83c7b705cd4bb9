"""The search for the choice that serves the wanted routes with the least wiring.

Each wanted route is followed move by move, stage by stage, the way that costs least first. By branch and
bound: a move more can only make the wiring dearer, and clusters do not bear on one another, so the bound is a
sum over clusters.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from immutables import Map

from model.routing.cheapest import CheapestWiring, ClusterChoice
from model.routing.choice import Costs
from model.routing.clusters import Cluster
from model.routing.paths import Goal, Move, Stage


class Demand(NamedTuple):
    """A wanted route: in which setting it runs, and the ways that would serve it, stage by stage."""

    setting: int
    stages: tuple[Stage, ...]

    @property
    def size(self) -> int:
        """The moves of all stages together."""
        return sum(len(moves) for stage in self.stages for moves in stage.moves.values())


class Found(NamedTuple):
    """A choice: the cost and the wiring of each cluster."""

    cost: int
    clusters: tuple[ClusterChoice, ...]


class _Step(NamedTuple):
    """One stage of a demand."""

    setting: int
    stage: Stage
    after_route: int | None
    """The step after the demand, where this is its first: there the search goes on when it is left out."""


class _Wiring(NamedTuple):
    """What is allowed of each cluster, its cheapest wiring, and the cost with that of routes left out."""

    allowed: Map[int, Map[int, int]]
    chosen: Map[int, ClusterChoice]
    cost: int


class _Stand(NamedTuple):
    """Where the search stands: at a state on the way of a step."""

    wiring: _Wiring
    step: int
    at: Goal | None
    """``None`` at the start of the step."""
    seen: frozenset[Goal] = frozenset()


class Search:
    """Finds ways for the demands so that the wiring costs the least."""

    def __init__(self, clusters: Sequence[Cluster], costs: Costs, readers: int, *, stable: bool) -> None:
        self._costs = costs
        self._cheapest = [CheapestWiring(cluster, costs, readers, stable=stable) for cluster in clusters]

    def serve_all(self, demands: Sequence[Demand]) -> Found | None:
        """The cheapest choice by which every demand is served; ``None`` where there is none."""
        stages = [Demand(demand.setting, (stage,)) for demand in demands for stage in demand.stages]
        return self._run(stages, may_leave_out=False)

    def serve_most(self, demands: Sequence[Demand]) -> Found:
        """The cheapest of the choices by which most demands are served."""
        found = self._run(demands, may_leave_out=True)
        assert found is not None, "leaving all unwired is always possible"
        return found

    def _run(self, demands: Sequence[Demand], *, may_leave_out: bool) -> Found | None:
        chosen: dict[int, ClusterChoice] = {}
        cost = 0
        for group in _independent(demands):
            best = self._best_of_group(group, may_leave_out=may_leave_out)
            if best is None:
                return None
            chosen.update(best.chosen)
            cost += best.cost
        return Found(cost, tuple(chosen.get(i, c.unwired) for i, c in enumerate(self._cheapest)))

    def _best_of_group(self, demands: Sequence[Demand], *, may_leave_out: bool) -> _Wiring | None:
        """Depth first; leaves a branch as soon as it costs what the best so far costs."""
        steps = list(_steps(sorted(demands, key=lambda demand: demand.size)))
        best: _Wiring | None = None
        waiting = [_Stand(_Wiring(Map(), Map(), 0), 0, None)]
        while waiting:
            stand = waiting.pop()
            if best is not None and stand.wiring.cost >= best.cost:
                continue
            if stand.step == len(steps):
                best = stand.wiring
                continue
            step = steps[stand.step]
            stands = list(self._following(stand, step))
            if may_leave_out and stand.at is None and step.after_route is not None:
                dearer = stand.wiring._replace(cost=stand.wiring.cost + self._costs.not_reached)
                stands.append(_Stand(dearer, step.after_route, None))
            stands.sort(key=_cost, reverse=True)
            waiting += stands
        return best

    def _following(self, stand: _Stand, step: _Step) -> Iterator[_Stand]:
        """The stands one move further; at the goal the next step begins."""
        at = step.stage.start if stand.at is None else stand.at
        if isinstance(at, str):
            return
        seen = stand.seen | {at}
        for move in step.stage.moves.get(at, ()):
            if move.following in seen:
                continue
            wiring = self._narrowed(stand.wiring, step.setting, move)
            if wiring is None:
                continue
            if move.following == step.stage.goal:
                yield _Stand(wiring, stand.step + 1, None)
            else:
                yield _Stand(wiring, stand.step, move.following, seen)

    def _narrowed(self, wiring: _Wiring, setting: int, move: Move) -> _Wiring | None:
        """The wiring when a move is taken as well; ``None`` where that cannot be."""
        allowed = wiring.allowed.get(move.cluster, _ANY)
        narrowed = allowed.set(setting, allowed.get(setting, move.states) & move.states)
        best = self._cheapest[move.cluster].best(narrowed)
        if best is None:
            return None
        before = wiring.chosen.get(move.cluster)
        return _Wiring(
            wiring.allowed.set(move.cluster, narrowed),
            wiring.chosen.set(move.cluster, best),
            wiring.cost + best.cost - (0 if before is None else before.cost),
        )


_ANY: Map[int, int] = Map()


def _cost(stand: _Stand) -> int:
    return stand.wiring.cost


def _steps(demands: Iterable[Demand]) -> Iterator[_Step]:
    """The stages of the demands one after another; a demand can be left out as a whole only."""
    index = 0
    for demand in demands:
        after = index + len(demand.stages)
        for number, stage in enumerate(demand.stages):
            yield _Step(demand.setting, stage, None if number else after)
        index = after


def _independent(demands: Sequence[Demand]) -> list[list[Demand]]:
    """The demands in groups, so that no two groups have to do with the same cluster."""
    groups: list[tuple[set[int], list[Demand]]] = []
    for demand in demands:
        clusters = {index for stage in demand.stages for index in stage.clusters}
        touching = [group for group in groups if not group[0].isdisjoint(clusters)]
        merged = [demand for group in touching for demand in group[1]]
        groups = [group for group in groups if group not in touching]
        groups.append((clusters.union(*(group[0] for group in touching)), [*merged, demand]))
    return [members for _, members in groups]
