"""In which order to lay the rails of a plan so that they come out as it has them.

Only few pairs of rails must keep the plan's order. So the rails are first laid in whole runs from the lowest
level up as if none had to, and looked at: around a rail that came out otherwise the rails of each level keep
the plan's order, and where that is not enough those of different levels do. Two placings that cannot see each
other may change places, so that with all rails bound in this way the plan's own shapes come out for certain.
In the end each rail that still has to wait for a higher one is tried without, and where rails are few all
orders are searched for one that goes level by level.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from model.grid import Heading
from model.parts import RAILS
from model.plan import Plan
from model.steps.from_below import order_from_below
from model.steps.reach import ON_LEVEL, around, column_of, groups_apart, later_in_reach
from model.steps.runs import Followers, Rail, Run, Yard
from model.track.layout import Layout
from model.track.rails import pack
from model.track.settling import place
from model.track.shapes import Shape

TWICE: Final = 2
TRIES: Final = 16
"""After so many tries all rails are bound twice."""
PLACINGS: Final = 60_000
"""Rails of a plan that are placed again to find waits that it can do without, at most."""
FEW: Final = 10
"""Rails for which all orders are searched; of more there are too many."""
SEARCHED: Final = 4_000
"""Rails of a plan that are placed in search of an order without waits, at most."""


def laid_in_runs(plan: Plan, layout: Layout) -> list[Run]:
    """Runs of rails which, laid one after another, give every rail the shape that the plan has as built."""
    rails = [
        Rail(piece.at.y, rank, pack(piece.at), piece.part, piece.facing.heading or Heading.NORTH)
        for rank, piece in plan.pieces.in_order()
        if piece.part in RAILS
    ]
    stages: dict[int, list[Run]] = {}
    for apart in groups_apart(rails):
        for run in _Laying(apart, layout).runs():
            stages.setdefault(run.stage, []).append(run)
    return [run for stage in sorted(stages) for run in stages[stage]]


class _Laying:
    """Rails that may see one another, and the search for an order in which to lay them."""

    def __init__(self, rails: Sequence[Rail], layout: Layout) -> None:
        self._rails = rails
        self._by_key = {rail.key: rail for rail in rails}
        self._layout = layout

    def runs(self) -> list[Run]:
        """Runs that give the plan's shapes, from the lowest level up as far as it was found to go."""
        bound: dict[int, int] = {}
        for tries in range(TRIES):
            followers = self._in_plan_order(bound)
            runs = self._laid(followers)
            wrong = self._wrong(runs)
            if not wrong:
                return self._from_below(self._without_waits(followers, runs))
            for key in around(wrong, self._by_key, tries + 1):
                bound[key] = min(bound.get(key, 0) + 1, TWICE)
        return self._laid(self._in_plan_order(dict.fromkeys(self._by_key, TWICE)))

    def _laid(self, followers: Followers) -> list[Run]:
        return list(Yard(self._rails, self._layout.rails, followers).runs())

    def _wrong(self, runs: Iterable[Run]) -> list[int]:
        """The rails that have another shape than the plan when they are laid in these runs."""
        shapes: dict[int, Shape] = {}
        for run in runs:
            for key in run.keys:
                place(shapes, self._layout.straight_only, key, self._by_key[key].heading)
        return [key for key, shape in shapes.items() if self._layout.rails[key] is not shape]

    def _in_plan_order(self, bound: Mapping[int, int]) -> Followers:
        """For each rail that has to keep the plan's order, the later ones among which it has to.

        Of two rails that are not bound alike the looser one tells how far.
        """
        rank = {rail.key: rail.rank for rail in self._rails if rail.key in bound}
        twice = {key for key in rank if bound[key] == TWICE}
        columns: dict[int, list[Rail]] = {}
        for key in twice:
            columns.setdefault(column_of(self._by_key[key]), []).append(self._by_key[key])
        followers: dict[int, list[int]] = {}
        for key, own in rank.items():
            later = [other for off in ON_LEVEL if rank.get(other := key + off, -1) > own]
            if key in twice:
                later = [other for other in later if other not in twice]
                later += later_in_reach(self._by_key[key], columns)
            followers[key] = later
        return followers

    def _without_waits(self, followers: Followers, runs: list[Run]) -> list[Run]:
        """Does without each wait for a higher rail with which the shapes come out as well."""
        tries = PLACINGS // len(self._layout.rails)
        tried: set[int] = set()
        while tries and (waiting := self._waiting_for_higher(followers, runs, tried)) is not None:
            tries -= 1
            tried.add(waiting)
            looser = self._without_higher(followers, waiting)
            shorter = self._laid(looser)
            if not self._wrong(shorter) and _waits(shorter) <= _waits(runs):
                followers, runs = looser, shorter
        return runs

    def _from_below(self, runs: list[Run]) -> list[Run]:
        """Runs in which no rail waits for a higher one, where an order for them is found."""
        if len(self._rails) > FEW or not _waits(runs):
            return runs
        placings = SEARCHED * len(self._rails) // len(self._layout.rails)
        shapes, straight_only = self._layout.rails, self._layout.straight_only
        order = order_from_below(self._rails, straight_only, shapes, placings)
        if order is None:
            return runs
        return _Laying([rail._replace(rank=rank) for rank, rail in enumerate(order)], self._layout).runs()

    def _waiting_for_higher(self, followers: Followers, runs: list[Run], tried: set[int]) -> int | None:
        first = {run.keys[0] for run in runs if run.after is not None} - tried
        for key, later in followers.items():
            for other in later:
                if other in first and self._is_higher(key, other):
                    return other
        return None

    def _without_higher(self, followers: Followers, waiting: int) -> Followers:
        return {
            key: [other for other in later if other != waiting or not self._is_higher(key, waiting)]
            for key, later in followers.items()
        }

    def _is_higher(self, key: int, other: int) -> bool:
        return self._by_key[key].level > self._by_key[other].level


def _waits(runs: Iterable[Run]) -> int:
    return sum(run.after is not None for run in runs)
