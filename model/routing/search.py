"""The search for the choice that serves the wanted routes with the least wiring.

Each wanted route is followed move by move, stage by stage, the way that costs least first. By branch and
bound: a move more can only make the wiring dearer, and clusters do not bear on one another, so the bound is a
sum over clusters. Ways multiply; where there are too many for that, a SAT solver looks for the same wiring.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from contextlib import closing
from typing import TYPE_CHECKING, Final, NamedTuple

from immutables import Map

from model.routing.cheapest import IDLE, CheapestWiring, ClusterChoice
from model.routing.choice import Costs
from model.routing.clusters import Cluster
from model.routing.demand import Demand
from model.routing.paths import Stage
from model.routing.runs import Goal

if TYPE_CHECKING:
    from model.routing.least_wiring import LeastWiring

MOST_STANDS: Final = 5_000
"""Where the search has stood at so many states, a solver is quicker; to load it takes as long as these."""


class Found(NamedTuple):
    """A choice: the cost and the wiring of each cluster."""

    cost: int
    clusters: tuple[ClusterChoice, ...]


class _Step(NamedTuple):
    """One step of the search: whether to serve a demand, or which way to take through one of its stages."""

    demand: int
    """The number of the demand."""
    setting: int
    stage: Stage | None
    """``None`` where it is to be said whether the demand is served."""
    after: int
    """The step after the demand, where it can be left out."""


class _Wiring(NamedTuple):
    """What is allowed of each cluster, its cheapest wiring, and the cost with that of routes left out."""

    allowed: Map[int, Map[int, int]]
    chosen: Map[int, ClusterChoice]
    cost: int


_NOTHING: Final = _Wiring(Map(), Map(), 0)


class _Stand(NamedTuple):
    """Where the search stands: at a state on the way of a step."""

    wiring: _Wiring
    step: int
    at: Goal | None
    """``None`` at the start of the step."""
    barred: int
    """The later demands that cannot be served beside those that are, as a mask."""
    at_least: int
    """What comes of it costs as much, or more."""
    seen: frozenset[Goal] = frozenset()


class _TooManyWaysError(Exception):
    """There are more ways than can be followed."""


class Search:
    """Finds ways for the demands so that the wiring costs the least."""

    def __init__(self, clusters: Sequence[Cluster], costs: Costs, readers: int, *, stable: bool) -> None:
        self._costs = costs
        self._readers = readers
        self._cheapest = [CheapestWiring(cluster, costs, readers, stable=stable) for cluster in clusters]

    def serve_all(self, demands: Sequence[Demand]) -> Found | None:
        """The cheapest choice by which every demand is served; ``None`` where there is none."""
        return self._run(_stage_by_stage(demands), may_leave_out=False)

    def can_serve_all(self, demands: Sequence[Demand]) -> bool:
        """Whether there is a choice by which every demand is served."""
        return all(map(self._can_serve, _independent(_stage_by_stage(demands))))

    def serve_most(self, demands: Sequence[Demand]) -> Found:
        """The cheapest of the choices by which most demands are served."""
        found = self._run(demands, may_leave_out=True)
        assert found is not None, "leaving all unwired is always possible"
        return found

    def clashes(self, demands: Sequence[Demand]) -> list[int]:
        """For each demand the others that cannot be served beside it, as a mask, as far as that is plain.

        Plain is what a single cluster forbids. Readers are alike in what they can throw, so of all demands
        that need the same of a cluster, the idle ones and the called ones, one stands for the others.
        """
        clashing = [0] * len(demands)
        for cluster, needing in _by_need(demands).items():
            for need, mask in needing.items():
                against = sum(m for other, m in needing.items() if self._is_barred(cluster, need, other))
                for index in _bits(mask) if against else ():
                    clashing[index] |= against & ~(1 << index)
        return clashing

    def _is_barred(self, cluster: int, one: _Need, other: _Need) -> bool:
        if one.setting == other.setting == IDLE:
            allowed = Map({IDLE: one.states & other.states})
        else:
            second = 1 if other.setting == one.setting else other.setting
            allowed = Map({one.setting: one.states, second: other.states})
        return self._cheapest[cluster].best(allowed) is None

    def _run(self, demands: Sequence[Demand], *, may_leave_out: bool) -> Found | None:
        chosen: dict[int, ClusterChoice] = {}
        cost = 0
        for group in _independent(demands):
            best = self._best(group, may_leave_out=may_leave_out)
            if best is None:
                return None
            chosen.update(best.chosen)
            cost += best.cost
        return Found(cost, tuple(chosen.get(i, c.unwired) for i, c in enumerate(self._cheapest)))

    def _best(self, demands: Sequence[Demand], *, may_leave_out: bool) -> _Wiring | None:
        """The cheapest wiring that serves all of these demands, or most of them."""
        try:
            best: _Wiring | None = None
            for cheaper in self._serving_most(demands) if may_leave_out else self._serving_all(demands):
                best = cheaper
        except _TooManyWaysError:
            best = self._best_by_solver(demands, may_leave_out=may_leave_out)
        return best

    def _best_by_solver(self, demands: Sequence[Demand], *, may_leave_out: bool) -> _Wiring | None:
        with self._sentences(demands, must=not may_leave_out) as wiring:
            least = wiring.least()
        if least is None:
            return None
        cost = sum(choice.cost for choice in least.chosen.values()) + least.left_out * self._costs.not_reached
        return _Wiring(Map(), Map(least.chosen), cost)

    def _can_serve(self, demands: Sequence[Demand]) -> bool:
        try:
            return any(True for _ in self._serving_all(demands))
        except _TooManyWaysError:
            with self._sentences(demands, must=True) as wiring:
                return wiring.can_be()

    def _sentences(self, demands: Sequence[Demand], *, must: bool) -> closing[LeastWiring]:
        from model.routing.least_wiring import LeastWiring  # its solver is slow to load, and needed by few

        return closing(LeastWiring(self._cheapest, self._readers, demands, must=must))

    def _serving_all(self, demands: Sequence[Demand]) -> Iterator[_Wiring]:
        """What all demands need in any case is allowed from the start."""
        wiring: _Wiring | None = _NOTHING
        for demand in demands:
            wiring = None if wiring is None else self._with_needs(wiring, demand)
        ordered = sorted(demands, key=lambda demand: demand.size)
        return iter(()) if wiring is None else self._cheaper(wiring, ordered, _steps_of_all(ordered), ())

    def _serving_most(self, demands: Sequence[Demand]) -> Iterator[_Wiring]:
        ordered = sorted(demands, key=lambda demand: demand.size)
        return self._cheaper(_NOTHING, ordered, _steps_of_most(ordered), self.clashes(ordered))

    def _cheaper(
        self, start: _Wiring, demands: Sequence[Demand], steps: Sequence[_Step], clashes: Sequence[int]
    ) -> Iterator[_Wiring]:
        """Wirings that do it, each cheaper than the one before, the last one the cheapest.

        Depth first; leaves a branch as soon as it costs at least what the best so far costs.
        """
        best: _Wiring | None = None
        waiting = [_Stand(start, 0, None, 0, start.cost)]
        stood = 0
        while waiting:
            stand = waiting.pop()
            if best is not None and stand.at_least >= best.cost:
                continue
            if stand.step == len(steps):
                best = stand.wiring
                yield best
                continue
            stood += 1
            if stood > MOST_STANDS:
                raise _TooManyWaysError
            step = steps[stand.step]
            if step.stage is None:
                stands = list(self._begun(stand, step, demands[step.demand], clashes[step.demand]))
            else:
                stands = list(self._following(stand, step.setting, step.stage))
            stands.sort(key=_at_least, reverse=True)
            waiting += stands

    def _begun(self, stand: _Stand, step: _Step, demand: Demand, clashing: int) -> Iterator[_Stand]:
        """The stands when the next demand is left out, and when it is served."""
        later = -1 << step.demand + 1
        dearer = stand.wiring._replace(cost=stand.wiring.cost + self._costs.not_reached)
        yield self._stand(dearer, step.after, None, stand.barred & later)
        if not stand.barred >> step.demand & 1:
            wiring = self._with_needs(stand.wiring, demand)
            if wiring is not None:
                yield self._stand(wiring, stand.step + 1, None, (stand.barred | clashing) & later)

    def _stand(
        self, wiring: _Wiring, step: int, at: Goal | None, barred: int, seen: frozenset[Goal] = frozenset()
    ) -> _Stand:
        at_least = wiring.cost + barred.bit_count() * self._costs.not_reached
        return _Stand(wiring, step, at, barred, at_least, seen)

    def _with_needs(self, wiring: _Wiring, demand: Demand) -> _Wiring | None:
        """The wiring when a demand is served as well, whichever way; ``None`` where that cannot be."""
        narrowed: _Wiring | None = wiring
        for cluster, states in demand.needs.items():
            narrowed = None if narrowed is None else self._narrowed(narrowed, demand.setting, cluster, states)
        return narrowed

    def _following(self, stand: _Stand, setting: int, stage: Stage) -> Iterator[_Stand]:
        """The stands one move further; at the goal the next step begins."""
        at = stage.start if stand.at is None else stand.at
        if isinstance(at, str):
            return
        seen = stand.seen | {at}
        for move in stage.moves.get(at, ()):
            if move.following in seen:
                continue
            wiring = self._narrowed(stand.wiring, setting, move.cluster, move.states)
            if wiring is None:
                continue
            if move.following == stage.goal:
                yield self._stand(wiring, stand.step + 1, None, stand.barred)
            else:
                yield self._stand(wiring, stand.step, move.following, stand.barred, seen)

    def _narrowed(self, wiring: _Wiring, setting: int, cluster: int, states: int) -> _Wiring | None:
        """The wiring when a cluster may lie in these states only; ``None`` where that cannot be."""
        allowed = wiring.allowed.get(cluster, _ANY)
        before = allowed.get(setting)
        now = states if before is None else before & states
        if now == before:
            return wiring
        narrowed = allowed.set(setting, now)
        best = self._cheapest[cluster].best(narrowed)
        if best is None:
            return None
        chosen = wiring.chosen.get(cluster)
        return _Wiring(
            wiring.allowed.set(cluster, narrowed),
            wiring.chosen.set(cluster, best),
            wiring.cost + best.cost - (0 if chosen is None else chosen.cost),
        )


_ANY: Map[int, int] = Map()


def _at_least(stand: _Stand) -> int:
    return stand.at_least


def _stage_by_stage(demands: Sequence[Demand]) -> list[Demand]:
    """The same, where all of it must be served: what stages need is only asked of each alone."""
    return [Demand(demand.setting, (stage,)) for demand in demands for stage in demand.stages]


class _Need(NamedTuple):
    """What a demand needs of a cluster, whichever way it takes: the first reader stands for all."""

    setting: int
    states: int


def _by_need(demands: Sequence[Demand]) -> dict[int, dict[_Need, int]]:
    """By cluster and need: the demands with that need, as a mask."""
    found: dict[int, dict[_Need, int]] = {}
    for index, demand in enumerate(demands):
        for cluster, states in demand.needs.items():
            needing = found.setdefault(cluster, {})
            need = _Need(IDLE if demand.setting == IDLE else 0, states)
            needing[need] = needing.get(need, 0) | 1 << index
    return found


def _bits(mask: int) -> Iterator[int]:
    return (index for index in range(mask.bit_length()) if mask >> index & 1)


def _steps_of_all(demands: Sequence[Demand]) -> list[_Step]:
    """The stages of the demands that leave a choice, one after another."""
    return [step for step in _steps_of_most(demands) if step.stage is not None]


def _steps_of_most(demands: Sequence[Demand]) -> list[_Step]:
    """The same, with a step before each demand in which it can be left out as a whole."""
    steps: list[_Step] = []
    for index, demand in enumerate(demands):
        after = len(steps) + 1 + len(demand.stages_with_choice)
        steps += [_Step(index, demand.setting, stage, after) for stage in (None, *demand.stages_with_choice)]
    return steps


class _Group(NamedTuple):
    clusters: set[int]
    members: list[Demand]


def _independent(demands: Sequence[Demand]) -> list[list[Demand]]:
    """The demands in groups, so that no two groups have to do with the same cluster; each in their order."""
    place = {demand: index for index, demand in enumerate(demands)}
    group_at: dict[int, _Group] = {}
    alone: list[list[Demand]] = []
    for demand in demands:
        group = _Group(set(demand.clusters), [demand])
        if not group.clusters:
            alone.append(group.members)
        for other in _distinct(group_at[index] for index in group.clusters if index in group_at):
            group.clusters.update(other.clusters)
            group.members.extend(other.members)
        group_at.update(dict.fromkeys(group.clusters, group))
    groups = _distinct(group_at.values())
    return [*alone, *(sorted(group.members, key=place.__getitem__) for group in groups)]


def _distinct(groups: Iterable[_Group]) -> list[_Group]:
    return list({id(group): group for group in groups}.values())
