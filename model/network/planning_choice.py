"""Decided: the default of each reader and the way of each journey. And what they cost."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from model.network.planning_conflicts import Conflicts, conflicts
from model.network.planning_narrowing import Narrowed, turn_costs
from model.network.planning_task import Journey
from model.network.ways import NO_TURN, Stretch


class Choice(msgspec.Struct, frozen=True):
    """What a planner decided, but for the names."""

    defaults: tuple[int, ...]
    runs: tuple[tuple[int, ...], ...]
    """By journey the stretches of its way."""
    cost: int
    """Waybills a week, in units of the task."""

    def conflicts(self, stretches: Sequence[Stretch]) -> Conflicts:
        """Which readers are called, and which of them need different names."""
        runs = ([stretches[number].turn for number in run] for run in self.runs)
        return conflicts(self.defaults, ([turn for turn in run if turn != NO_TURN] for run in runs))


def choice_of(narrowed: Narrowed, defaults: Sequence[int], runs: Sequence[tuple[int, ...]]) -> Choice:
    """A choice with what it costs."""
    stretches = narrowed.task.tracks.stretches
    costs = turn_costs(defaults, unknown=0)
    cost = sum(
        journey.weight * sum(costs[stretches[number].turn] for number in run)
        for journey, run in zip(narrowed.journeys, runs, strict=True)
    )
    return Choice(tuple(defaults), tuple(runs), cost)


def with_best_ways(narrowed: Narrowed, defaults: Sequence[int]) -> Choice:
    """Each journey on the way on which the fewest readers must be called."""
    return choice_of(narrowed, defaults, best_runs(narrowed, defaults))


def best_runs(narrowed: Narrowed, defaults: Sequence[int]) -> list[tuple[int, ...]]:
    """By journey the way on which the fewest readers must be called."""
    costs = turn_costs(defaults, unknown=0)
    stretches = narrowed.task.tracks.stretches
    return [
        journey.stretches if journey.only else cheapest_run(stretches, journey, costs)
        for journey in narrowed.journeys
    ]


def greedy_choice(narrowed: Narrowed) -> Choice:
    """Defaults by where more ride, then ways by the defaults, and round again until nothing changes.

    No round makes it dearer, so there is an end.
    """
    tally = narrowed.tally
    defaults = [
        int(2 * tally.sure[turn] + tally.maybe[turn] < 2 * tally.sure[turn + 1] + tally.maybe[turn + 1])
        if default is None
        else default
        for turn, default in zip(range(0, 2 * len(narrowed.defaults), 2), narrowed.defaults, strict=True)
    ]
    while True:
        runs = best_runs(narrowed, defaults)
        better = _defaults_for(narrowed, defaults, runs)
        if better == defaults:
            return choice_of(narrowed, defaults, runs)
        defaults = better


def _defaults_for(narrowed: Narrowed, defaults: Sequence[int], runs: Sequence[tuple[int, ...]]) -> list[int]:
    """The defaults that fit where carts run; as they were where it is all the same."""
    stretches = narrowed.task.tracks.stretches
    rides = [0] * (2 * len(defaults) + 1)
    for journey, run in zip(narrowed.journeys, runs, strict=True):
        for number in run:
            rides[stretches[number].turn] += journey.weight
    result = list(defaults)
    for reader in narrowed.open_readers:
        now = 2 * reader + defaults[reader]
        if rides[now ^ 1] > rides[now]:
            result[reader] ^= 1
    return result


def cheapest_run(stretches: Sequence[Stretch], journey: Journey, costs: Sequence[int]) -> tuple[int, ...]:
    """The way that costs least, of several the one whose stretches come first."""
    ways = [stretches[number] for number in journey.stretches]
    cost = {ways[0].start: 0}
    by: dict[int, int] = {}
    for number, (start, end, _, _, turn) in zip(journey.stretches, ways, strict=True):
        here = cost[start] + costs[turn]
        if end not in cost or here < cost[end]:
            cost[end], by[end] = here, number
    run: list[int] = []
    place = ways[-1].end
    while place in by:
        run.append(by[place])
        place = stretches[run[-1]].start
    return tuple(reversed(run))
