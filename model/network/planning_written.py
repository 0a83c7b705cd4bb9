"""A plan as the network's user reads it, out of what was decided in whole numbers."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from model.network.names import words_for
from model.network.network import Network, Trip
from model.network.planning_homeward import homeward
from model.network.planning_naming import Named
from model.network.planning_solving import Solved
from model.network.planning_task import Task
from model.network.result import NetworkPlan, Planned, TripPlan
from model.network.ways import NO_TURN


def written(network: Network, solved: Solved) -> NetworkPlan:
    """The plan, without prices."""
    task, named = solved.task, solved.named
    defaults, readers = homeward(task, named.choice), task.tracks.readers
    words = _words(task, named)
    planned = {
        reader.key: Planned(reader.spec.ways[default], words.get(number))
        for number, (reader, default) in enumerate(zip(readers, defaults, strict=True))
    }
    first = {number: trip for trip, number in zip(network.trips[::-1], task.of_trip[::-1], strict=True)}
    trips = [_trip_of(task, named, words, number, first[number]) for number in range(len(task.journeys))]
    return NetworkPlan(
        plain(solved.waybills_per_week),
        names_bound=named.bound,
        proved=solved.proved,
        readers=planned,
        trips=tuple(
            TripPlan(trip.start, trip.end, length=None) if number is None else trips[number]
            for trip, number in zip(network.trips, task.of_trip, strict=True)
        ),
        waybills_bound=plain(solved.cost_bound * task.unit),
        unkept=solved.unkept,
    )


def plain(number: Fraction) -> int | float:
    """As a whole number where it is one."""
    return int(number) if number.denominator == 1 else float(number)


def _trip_of(task: Task, named: Named, words: Mapping[int, str], journey: int, trip: Trip) -> TripPlan:
    run = [task.tracks.stretches[number] for number in named.choice.runs[journey]]
    turns = [stretch.turn for stretch in run if stretch.turn != NO_TURN]
    called = [turn >> 1 for turn in turns if named.choice.defaults[turn >> 1] != turn & 1]
    return TripPlan(
        trip.start,
        trip.end,
        via=tuple(task.tracks.readers[turn >> 1].key for turn in turns),
        waybills=tuple(words[reader] for reader in called),
        length=sum(stretch.length for stretch in run),
        links=tuple(stretch.link for stretch in run),
    )


def _words(task: Task, named: Named) -> dict[int, str]:
    """The name of each reader that is called. The first words go to the names that are carried most."""
    carried: dict[int, int] = {}
    groups: dict[int, list[int]] = {}
    for journey, run in zip(task.journeys, named.choice.runs, strict=True):
        for number in run:
            turn = task.tracks.stretches[number].turn
            if turn != NO_TURN and named.choice.defaults[turn >> 1] != turn & 1:
                name = named.names[turn >> 1]
                if name is not None:
                    carried[name] = carried.get(name, 0) + journey.weight
    for reader, name in enumerate(named.names):
        if name is not None:
            groups.setdefault(name, []).append(reader)
    order = sorted(groups, key=lambda name: (-carried[name], groups[name][0]))
    words = words_for(
        [[task.tracks.readers[reader].spec.waybill for reader in groups[name]] for name in order],
        [task.words[name] if name < len(task.words) else None for name in order],
    )
    return {reader: word for name, word in zip(order, words, strict=True) for reader in groups[name]}
