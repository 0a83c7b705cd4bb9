"""The fewest sets that together cover all that any of them holds: minimum set cover, solved exactly."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Sequence, Set
from itertools import chain
from typing import Any


def fewest_that_cover(sets: Sequence[Set[Hashable]]) -> tuple[int, ...]:
    """Which of the sets to take, by their places: the fewest whose union is the union of all.

    Of several such choices it is the one that comes first in the order of places: the set at the lowest
    place that any of them takes is in it, of those that take it the next lowest, and so on.
    """
    demands = _demands(sets)
    best = _fewest(len(sets), demands, taken=[], left_out=[])
    assert best is not None
    taken: list[int] = []
    left_out: list[int] = []
    for place in range(len(sets)):
        if len(taken) == len(best):
            break
        if place not in best:
            other = _fewest(len(sets), demands, [*taken, place], left_out)
            if other is None or len(other) > len(best):
                left_out.append(place)
                continue
            best = other
        taken.append(place)
    return tuple(taken)


def _demands(sets: Sequence[Set[Hashable]]) -> list[frozenset[int]]:
    """For each element the places of the sets that hold it, but only those that demand most."""
    holders: dict[Hashable, list[int]] = {}
    for place, members in enumerate(sets):
        for member in members:
            holders.setdefault(member, []).append(place)
    smallest_first = sorted({frozenset(places) for places in holders.values()}, key=len)
    kept: list[frozenset[int]] = []
    for demand in smallest_first:
        if not any(harder <= demand for harder in kept):
            kept.append(demand)
    return kept


def _fewest(
    count: int, demands: Sequence[frozenset[int]], taken: Iterable[int], left_out: Iterable[int]
) -> frozenset[int] | None:
    """The fewest places of which every demand has one, with those taken and without those left out."""
    if not demands:
        return frozenset(taken)
    # scipy is slow to import, and only this needs it.
    import numpy as np
    from scipy.optimize import Bounds, LinearConstraint, milp
    from scipy.sparse import csr_array

    lower, upper = np.zeros(count), np.ones(count)
    lower[list(taken)] = 1
    upper[list(left_out)] = 0
    columns = list(chain.from_iterable(demands))
    ends = np.cumsum([0, *map(len, demands)])
    meets: Any = csr_array((np.ones(len(columns)), columns, ends), shape=(len(demands), count))
    solved = milp(
        np.ones(count),
        integrality=np.ones(count),
        bounds=Bounds(lower, upper),
        constraints=LinearConstraint(meets, lb=1),
        options={"mip_rel_gap": 0},
    )
    if solved.x is None:
        return None
    chosen = frozenset(place for place in range(count) if solved.x[place] > 0.5)
    assert all(demand & chosen for demand in demands)
    return chosen
