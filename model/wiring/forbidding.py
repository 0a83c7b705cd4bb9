"""What makes it senseless to wire a junction, before anything is tried."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from model.dry_run import DryRun
from model.parts import Part
from model.routing.junction import Junction
from model.wiring.result import Unwired

READER_DEPTH: Final = 3
"""Levels below its rail that a reader takes."""


def forbidding(junction: Junction, depth: int) -> tuple[Unwired, ...]:
    """The reasons, for the user; none where wiring may be tried. ``depth``: levels below the lowest rail."""
    found = (*_unreached(junction), *_unsteady(junction))
    return found or (*_held(junction), *_shallow(junction, depth))


def _unreached(junction: Junction) -> Iterator[Unwired]:
    for route in junction.wanted:
        if not junction.reaches(route):
            words = f"The route from {route.start} to {route.goal} is not reached, wired or not."
            yield Unwired(route.start, None, words)


def _unsteady(junction: Junction) -> Iterator[Unwired]:
    for at in junction.order_dependent:
        yield Unwired(None, at, f"What the rail at {at} does depends on the order in which signals change.")


def _held(junction: Junction) -> Iterator[Unwired]:
    """Boosters that have no signal when all is at rest hold every cart."""
    run = DryRun(junction.plan, junction.layout)
    seen = dict.fromkeys(cell for way in junction.ways.values() for cell in way.path)
    for cell in seen:
        if junction.plan.pieces.part_at(cell) is Part.BOOSTER_RAIL and run.output(cell) == 0:
            yield Unwired(None, cell, f"The booster rail at {cell} has no signal and holds every cart.")


def _shallow(junction: Junction, depth: int) -> Iterator[Unwired]:
    if depth < READER_DEPTH and any(junction.choice.thrown.values()):
        words = f"A reader takes {READER_DEPTH} levels below its rail; only {depth} are allowed."
        yield Unwired(None, None, words)
