"""Test runs: one cart each, sent in by an arm, empty or with the waybill of the arm's reader."""

from __future__ import annotations

from typing import Any, Final

import msgspec

from model.routing.junction import Junction
from model.routing.waybills import waybill_of

STAYS: Final = "stays"
"""What is seen of a cart that reaches no arm: it left the track, ran into something, or goes round."""


class Run(msgspec.Struct, frozen=True):
    """A cart to send in."""

    start: str
    """The arm; ``from`` in files."""
    waybill: str | None = None
    """What the cart carries; ``None`` for an empty one."""

    def as_json(self) -> dict[str, Any]:
        """The run as it stands in files."""
        return {"from": self.start, "waybill": self.waybill}


def possible_runs(junction: Junction) -> tuple[Run, ...]:
    """A run for each wanted route by whose arm a cart can enter, in file order."""
    return tuple(
        Run(route.start, waybill_of(junction, route))
        for route in junction.wanted
        if junction.can_enter(route.start)
    )


class Observed(msgspec.Struct, frozen=True):
    """A run that was made, and what was seen of its cart."""

    run: Run
    saw: str
    """The arm by which it left, or ``STAYS``."""
