"""In which order to lay the rails of a plan so that they come out as it has them.

Only few pairs of rails must keep the plan's order. So the rails are first laid in whole runs from the lowest
level up as if none had to, and looked at: around a rail that came out otherwise the rails of each level keep
the plan's order, and where that is not enough those of different levels do. Two placings that cannot see each
other may change places, so that with all rails bound in this way the plan's own shapes come out for certain.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Mapping, Sequence
from typing import Final

from model.grid import Heading
from model.parts import RAILS
from model.plan import Plan
from model.steps.runs import Rail, Run, Yard
from model.track.layout import Layout
from model.track.rails import STEP, pack
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
IN_REACH: Final = _within(3, 6)
"""Where rails keep the plan's order that are bound twice: where one may look at what the other writes.

A placing looks two columns far and four levels up, and writes one column far and two levels up.
"""
TRIES: Final = 16
"""After so many tries all rails are bound twice."""
FIRMLY: Final = 2


def laid_in_runs(plan: Plan, layout: Layout) -> list[Run]:
    """Runs of rails which, laid one after another, give every rail the shape that the plan has as built."""
    rails = [
        Rail(piece.at.y, rank, pack(piece.at), piece.part, piece.facing.heading or Heading.NORTH)
        for rank, piece in plan.pieces.in_order()
        if piece.part in RAILS
    ]
    bound: dict[int, int] = {}
    for tries in range(TRIES + 1):
        if tries == TRIES:
            bound = dict.fromkeys(layout.rails, FIRMLY)
        runs = list(Yard(rails, layout.rails, _in_plan_order(rails, bound)).runs())
        wrong = _wrong(rails, runs, layout)
        if not wrong:
            return runs
        for key in _around(wrong, layout.rails, tries + 1):
            bound[key] = min(bound.get(key, 0) + 1, FIRMLY)
    raise AssertionError("the plan's own order gives other shapes than the plan")


def _around(keys: Iterable[int], rails: Container[int], far: int) -> set[int]:
    """Some rails and those from which they can be reached in so many steps over rails."""
    found = set(keys)
    edge = found
    for _ in range(far):
        edge = {near for key in edge for off in BESIDE if (near := key + off) in rails} - found
        found |= edge
    return found


def _in_plan_order(rails: Iterable[Rail], bound: Mapping[int, int]) -> Mapping[int, Sequence[int]]:
    """For each rail that has to keep the plan's order, the later ones among which it has to.

    Of two rails that are not bound alike the looser one tells how far.
    """
    rank = {rail.key: rail.rank for rail in rails if rail.key in bound}
    firm = {key: own for key, own in rank.items() if bound[key] == FIRMLY}
    followers: dict[int, list[int]] = {}
    for key, own in rank.items():
        later = [other for off in ON_LEVEL if rank.get(other := key + off, -1) > own]
        if key in firm:
            later += [other for off in _FURTHER if firm.get(other := key + off, -1) > own]
        followers[key] = later
    return followers


_FURTHER: Final = tuple(set(IN_REACH) - set(ON_LEVEL))


def _wrong(rails: Iterable[Rail], runs: Iterable[Run], layout: Layout) -> list[int]:
    """The rails that have another shape than the plan when they are laid in these runs."""
    headings = {rail.key: rail.heading for rail in rails}
    shapes: dict[int, Shape] = {}
    for run in runs:
        for key in run.keys:
            place(shapes, layout.straight_only, key, headings[key])
    return [key for key, shape in layout.rails.items() if shapes.get(key) is not shape]
