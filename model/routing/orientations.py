"""The junction in its eight orientations: the bias rule is tied to the world's axes, so each differs."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from model.collector import collector_paused
from model.edits import turn_plan
from model.grid import ALL_TURNS, Turn
from model.plan import Plan
from model.routing.junction import Junction


class Orientation(msgspec.Struct, frozen=True):
    """What a turned plan would need, with the same order of placing."""

    turn: Turn
    inverters: int | None
    """``None`` where not buildable."""
    buildable: bool
    """Whether some choice serves all wanted routes."""


def orientation(plan: Plan, turn: Turn, junction: Junction | None = None) -> Orientation:
    """Works out one orientation; ``junction`` is the plan as it stands, where that is known already.

    Where no route is wanted all is served however the plan lies, so it is not turned.
    """
    if not plan.routes:
        return Orientation(turn, 0, True)
    if junction is None or turn != Turn():
        with collector_paused():
            junction = Junction(turn_plan(plan, turn).applied(plan))
    serves = junction.control.serves
    return Orientation(turn, len(junction.choice.idle) if serves else None, serves)


def each_orientation(junction: Junction) -> Iterator[Orientation]:
    """The eight orientations one after another, so that a caller can stop between two."""
    return (orientation(junction.plan, turn, junction) for turn in ALL_TURNS)


def orientations(junction: Junction) -> tuple[Orientation, ...]:
    """All eight orientations in the order of their numbers."""
    return tuple(each_orientation(junction))
