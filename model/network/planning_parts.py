"""A task taken apart: readers and journeys that bear on one another, and what is paid whatever is decided."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from model.network.planning_choice import cheapest_run
from model.network.planning_narrowing import Narrowed, turn_costs
from model.network.ways import NO_TURN


class Part(msgspec.Struct, frozen=True):
    """Readers with an open default and journeys with open ways past them; nothing outside bears on them."""

    readers: tuple[int, ...]
    journeys: tuple[int, ...]


def parts_of(narrowed: Narrowed) -> list[Part]:
    """All parts that have journeys with open ways; by themselves, readers need no search.

    Where two readers are pinned to one name everything may bear on everything.
    """
    open_readers = set(narrowed.open_readers)
    if narrowed.task.alike:
        return [Part(tuple(sorted(open_readers)), tuple(narrowed.open_journeys))]
    readers_past = {
        number: {turn >> 1 for turn in free_turns(narrowed, number)} & open_readers
        for number in narrowed.open_journeys
        if narrowed.journeys[number].weight
    }
    return [
        Part(tuple(sorted(readers)), tuple(journeys))
        for readers, journeys in _joined(readers_past)
        if readers
    ]


def free_turns(narrowed: Narrowed, journey: int) -> set[int]:
    """The turns that lie on some of the ways left to a journey but not on all."""
    stretches = narrowed.task.tracks.stretches
    turns = {stretches[number].turn for number in narrowed.journeys[journey].stretches}
    return turns - {*narrowed.sure[journey], NO_TURN}


def paid_anyway(narrowed: Narrowed, parts: list[Part]) -> int:
    """What is paid outside of the parts, at the least: exact where all ways of all journeys are known."""
    sure = narrowed.tally.sure
    inside = {reader for part in parts for reader in part.readers}
    paid = 0
    for reader, default in enumerate(narrowed.defaults):
        if default is not None:
            paid += sure[2 * reader + 1 - default]
        elif reader not in inside:
            paid += min(sure[2 * reader], sure[2 * reader + 1])
    return paid + sum(paid_for_ways(narrowed, number) for number in _outside(narrowed, parts))


def paid_at_least(narrowed: Narrowed, part: Part) -> int:
    """What is paid in a part at the least, seen without a search."""
    sure = narrowed.tally.sure
    return sum(min(sure[2 * reader], sure[2 * reader + 1]) for reader in part.readers) + sum(
        paid_for_ways(narrowed, number) for number in part.journeys
    )


def paid_for_ways(narrowed: Narrowed, journey: int) -> int:
    """What a journey pays at the least for turns that do not lie on all of its ways."""
    costs = turn_costs(narrowed.defaults, unknown=0)
    for turn in narrowed.sure[journey]:
        costs[turn] = 0
    stretches = narrowed.task.tracks.stretches
    run = cheapest_run(stretches, narrowed.journeys[journey], costs)
    return narrowed.journeys[journey].weight * sum(costs[stretches[number].turn] for number in run)


def _outside(narrowed: Narrowed, parts: list[Part]) -> Iterator[int]:
    inside = {number for part in parts for number in part.journeys}
    return (number for number in narrowed.open_journeys if number not in inside)


def _joined(readers_past: dict[int, set[int]]) -> list[tuple[set[int], list[int]]]:
    """Journeys that share readers, directly or by others between them."""
    groups: list[tuple[set[int], list[int]]] = []
    for journey, readers in readers_past.items():
        met = [group for group in groups if group[0] & readers]
        joined = (
            readers.union(*(group[0] for group in met)),
            sorted([journey, *(each for group in met for each in group[1])]),
        )
        groups = [group for group in groups if not group[0] & readers] + [joined]
    return groups
