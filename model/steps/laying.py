"""In which order to lay the rails of a plan so that they come out as it has them.

Only few pairs of rails must keep the plan's order. So the rails are first laid in whole runs from the lowest
level up as if none had to, and looked at: around a rail that came out otherwise the rails of each level keep
the plan's order, and where that is not enough those of different levels do. Two placings that cannot see each
other may change places, so that with all rails bound in this way the plan's own shapes come out for certain.
In the end each rail that still has to wait for a higher one is tried without.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from typing import Final

from model.grid import Heading
from model.parts import RAILS
from model.plan import Plan
from model.steps.runs import Followers, Rail, Run, Yard
from model.track.layout import Layout
from model.track.rails import STEP, UP, pack
from model.track.settling import place
from model.track.shapes import Shape


def _within(columns: int, levels: int) -> tuple[int, ...]:
    """Added to a packed cell: the cells in columns so many steps off at the most, and so many levels."""
    found = {0}
    for _ in range(columns):
        found = {column + step for column in found for step in (0, *STEP)}
    return tuple(column + level for column in sorted(found) for level in range(-levels, levels + 1))


BESIDE: Final = _within(1, 2)
"""From a rail that came out otherwise to those that are bound with it; with every try further."""
ON_LEVEL: Final = _within(2, 0)
"""Where rails keep the plan's order that are bound once."""
COLUMNS: Final = _within(3, 0)
LEVELS: Final = 6
"""Where rails keep the plan's order that are bound twice: wherever one may look at what the other writes.

A placing looks two columns far and four levels up, and writes one column far and two levels up.
"""
TWICE: Final = 2
TRIES: Final = 16
"""After so many tries all rails are bound twice."""
PLACINGS: Final = 60_000
"""Rails of a plan that are placed again to find waits that it can do without, at most."""


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


def groups_apart(rails: Iterable[Rail]) -> Iterator[list[Rail]]:
    """Rails in groups too far apart for the one to see the other, each in the order of the plan."""
    columns: dict[int, list[Rail]] = {}
    for rail in rails:
        columns.setdefault(_column(rail), []).append(rail)
    left = dict.fromkeys(columns)
    while left:
        edge = [next(iter(left))]
        del left[edge[0]]
        for column in edge:
            for near in (column + offset for offset in COLUMNS):
                if near in left:
                    del left[near]
                    edge.append(near)
        yield sorted((rail for column in edge for rail in columns[column]), key=lambda rail: rail.rank)


def _column(rail: Rail) -> int:
    """The column of a rail: its packed cell at level 0."""
    return rail.key - rail.level * UP


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
                return self._without_waits(followers, runs)
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
            columns.setdefault(_column(self._by_key[key]), []).append(self._by_key[key])
        followers: dict[int, list[int]] = {}
        for key, own in rank.items():
            later = [other for off in ON_LEVEL if rank.get(other := key + off, -1) > own]
            if key in twice:
                later = [other for other in later if other not in twice]
                later += _later_in_reach(self._by_key[key], columns)
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


def _later_in_reach(rail: Rail, columns: Mapping[int, Sequence[Rail]]) -> Iterator[int]:
    column = _column(rail)
    for offset in COLUMNS:
        for other in columns.get(column + offset, ()):
            if other.rank > rail.rank and abs(other.level - rail.level) <= LEVELS:
                yield other.key


def _waits(runs: Iterable[Run]) -> int:
    return sum(run.after is not None for run in runs)


def around(keys: Iterable[int], rails: Container[int], far: int) -> set[int]:
    """Some rails and those from which they can be reached in so many steps over rails."""
    found = set(keys)
    edge = found
    for _ in range(far):
        edge = {near for key in edge for off in BESIDE if (near := key + off) in rails} - found
        found |= edge
    return found
