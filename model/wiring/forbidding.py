"""What makes it senseless to wire a junction, before anything is tried."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from model.dry_run import DryRun
from model.parts import Part
from model.plan import Plan
from model.routing.junction import Junction
from model.wiring.laying.box import Box
from model.wiring.result import Unwired
from model.wording import tr

MOST_SEARCHED: Final = 4_000_000
"""Cells of a box in which lines are looked for; each of them is looked at for each line."""
READER_DEPTH: Final = 3
"""Levels below its rail that a reader takes."""


def forbidding(junction: Junction, depth: int) -> tuple[Unwired, ...]:
    """The reasons, for the user; none where wiring may be tried. ``depth``: levels below the lowest rail."""
    found = (*_unreached(junction), *_unsteady(junction))
    return found or (*_held(junction), *_shallow(junction, depth))


def too_large(plan: Plan, grow: int, depth: int) -> tuple[Unwired, ...]:
    """The reason where the box below the rails is too large to be searched: one rail far off makes it so."""
    cells = Box(plan, grow, depth).size
    if cells <= MOST_SEARCHED:
        return ()
    words = tr(
        "The rails lie so far apart that wiring could stand in {cells} cells; at most {most} are searched.",
        cells=f"{cells:,}",
        most=f"{MOST_SEARCHED:,}",
    )
    return (Unwired(None, None, words),)


def _unreached(junction: Junction) -> Iterator[Unwired]:
    for route in junction.wanted:
        if not junction.reaches(route):
            words = tr(
                "The route from {start} to {goal} is not reached, wired or not.",
                start=route.start,
                goal=route.goal,
            )
            yield Unwired(route.start, None, words)


def _unsteady(junction: Junction) -> Iterator[Unwired]:
    for at in junction.order_dependent:
        yield Unwired(
            None, at, tr("What the rail at {at} does depends on the order in which signals change.", at=at)
        )


def _held(junction: Junction) -> Iterator[Unwired]:
    """Boosters that have no signal when all is at rest hold every cart."""
    run = DryRun(junction.plan, junction.layout)
    seen = dict.fromkeys(cell for way in junction.ways.values() for cell in way.path)
    for cell in seen:
        if junction.plan.pieces.part_at(cell) is Part.BOOSTER_RAIL and run.output(cell) == 0:
            yield Unwired(
                None, cell, tr("The booster rail at {cell} has no signal and holds every cart.", cell=cell)
            )


def _shallow(junction: Junction, depth: int) -> Iterator[Unwired]:
    if depth < READER_DEPTH and any(junction.choice.thrown.values()):
        words = tr(
            "A reader takes {depth_needed} levels below its rail; only {depth} are allowed.",
            depth_needed=READER_DEPTH,
            depth=depth,
        )
        yield Unwired(None, None, words)
