"""In which order to lay the rails of a plan so that they come out as it has them.

Only few pairs of rails must keep the plan's order. So the rails are first laid in whole runs from the lowest
level up as if none had to, and looked at: around a rail that came out otherwise all rails keep the plan's
order, and it is tried again. Two placings that cannot see each other may change places, so that with all
rails bound in this way the plan's own shapes come out for certain.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from model.grid import Heading
from model.parts import RAILS
from model.plan import Plan
from model.steps.runs import Rail, Run, Yard
from model.track.layout import Layout
from model.track.rails import STEP, pack
from model.track.settling import place
from model.track.shapes import Shape

_LEVELS: Final = 6
_NEXT: Final = (0, *STEP)
_COLUMNS: Final = sorted({a + b + c for a in _NEXT for b in _NEXT for c in _NEXT})
IN_REACH: Final = tuple(column + level for column in _COLUMNS for level in range(-_LEVELS, _LEVELS + 1))
"""Added to a packed cell: where a placing may look at what one in this cell writes, or the other way round.

A placing looks two columns far and four levels up, and writes one column far and two levels up.
"""
TRIES: Final = 8
"""After so many tries all rails keep the plan's order."""


def laid_in_runs(plan: Plan, layout: Layout) -> list[Run]:
    """Runs of rails which, laid one after another, give every rail the shape that the plan has as built."""
    rails = [
        Rail(piece.at.y, rank, pack(piece.at), piece.part, piece.facing.heading or Heading.NORTH)
        for rank, piece in plan.pieces.in_order()
        if piece.part in RAILS
    ]
    strict: set[int] = set()
    for tries in range(TRIES + 1):
        if tries == TRIES:
            strict = set(layout.rails)
        runs = list(Yard(rails, layout.rails, _in_plan_order(rails, strict)).runs())
        wrong = _wrong(rails, runs, layout)
        if not wrong:
            return runs
        strict |= {near for key in wrong for off in IN_REACH if (near := key + off) in layout.rails}
    raise AssertionError("the plan's own order gives other shapes than the plan")


def _in_plan_order(rails: Iterable[Rail], strict: set[int]) -> Mapping[int, Sequence[int]]:
    """For each rail that has to keep the plan's order, those in its reach that come later."""
    rank = {rail.key: rail.rank for rail in rails if rail.key in strict}
    return {
        key: [other for off in IN_REACH if rank.get(other := key + off, -1) > own]
        for key, own in rank.items()
    }


def _wrong(rails: Iterable[Rail], runs: Iterable[Run], layout: Layout) -> list[int]:
    """The rails that have another shape than the plan when they are laid in these runs."""
    headings = {rail.key: rail.heading for rail in rails}
    shapes: dict[int, Shape] = {}
    for run in runs:
        for key in run.keys:
            place(shapes, layout.straight_only, key, headings[key])
    return [key for key, shape in layout.rails.items() if shapes.get(key) is not shape]
