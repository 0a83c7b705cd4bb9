"""The fewest sets that together cover all that any of them holds: minimum set cover, solved exactly."""

from __future__ import annotations

from collections.abc import Hashable, Sequence, Set
from itertools import chain
from typing import Any


def fewest_that_cover(sets: Sequence[Set[Hashable]]) -> tuple[int, ...]:
    """Which of the sets to take, by their places: the fewest whose union is the union of all.

    Of several such choices it is the one that comes first in the order of places: the set at the lowest
    place that any of them takes is in it, of those that take it the next lowest, and so on.
    """
    demands = _demands(sets)
    needed = {place for demand in demands if len(demand) == 1 for place in demand}
    return tuple(sorted(needed | _first_of_the_fewest([demand for demand in demands if len(demand) > 1])))


def _demands(sets: Sequence[Set[Hashable]]) -> list[frozenset[int]]:
    """For each element the places of the sets that hold it; those left out that others imply."""
    holders: dict[Hashable, set[int]] = {}
    for place, members in enumerate(sets):
        for member in members:
            holders.setdefault(member, set()).add(place)
    hardest_first = sorted(map(frozenset, holders.values()), key=len)
    kept: list[frozenset[int]] = []
    for demand in dict.fromkeys(hardest_first):
        if not any(harder <= demand for harder in kept):
            kept.append(demand)
    return kept


def _first_of_the_fewest(demands: Sequence[frozenset[int]]) -> set[int]:
    """The first of the smallest choices that have a place of each demand, none of which implies another."""
    places = sorted(frozenset[int]().union(*demands))
    best = _fewest(demands, dict.fromkeys(places)) or set()
    settled: dict[int, bool | None] = dict.fromkeys(places)
    for place in places:
        if place not in best:
            other = _fewest(demands, settled | {place: True})
            if other is not None and len(other) == len(best):
                best = other
        settled[place] = place in best
    return best


def _fewest(demands: Sequence[frozenset[int]], settled: dict[int, bool | None]) -> set[int] | None:
    """The fewest places of which every demand has one, where some are settled: taken, or left out."""
    if not demands:
        return set()
    # scipy is slow to import, and only this needs it.
    import numpy as np
    from scipy.optimize import Bounds, LinearConstraint, milp
    from scipy.sparse import csr_array

    column = {place: number for number, place in enumerate(settled)}
    columns = [column[place] for place in chain.from_iterable(demands)]
    ends = np.cumsum([0, *map(len, demands)])
    meets: Any = csr_array((np.ones(len(columns)), columns, ends), shape=(len(demands), len(column)))
    solved = milp(
        np.ones(len(column)),
        integrality=np.ones(len(column)),
        bounds=Bounds(
            [1 if taken else 0 for taken in settled.values()],
            [0 if taken is False else 1 for taken in settled.values()],
        ),
        constraints=LinearConstraint(meets, lb=1),
        options={"mip_rel_gap": 0},
    )
    if solved.x is None:
        return None
    chosen = {place for place, number in column.items() if solved.x[number] > 0.5}
    assert all(demand & chosen for demand in demands)
    return chosen
