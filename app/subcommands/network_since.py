"""What changes from an earlier network to a later one, on the command line."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from app.subcommands.network_text import in_a_row
from app.subcommands.streams import columns

if TYPE_CHECKING:
    from model.network.changes import PlanChanges, TripChange
    from model.network.result import Planned


def changes_json(changes: PlanChanges) -> dict[str, Any]:
    """Readers by key, each with its sign before and after, and trips."""
    return {
        "readers": {
            each.reader: {"before": _sign(each.before), "after": _sign(each.after)}
            for each in changes.readers
        },
        "trips": [
            {"from": each.start, "to": each.end, "before": each.before, "after": each.after}
            for each in changes.trips
        ],
    }


def _sign(planned: Planned | None) -> dict[str, str | None] | None:
    return None if planned is None else {"default": planned.default, "name": planned.name}


def changes_text(changes: PlanChanges) -> str:
    """The tables, and a line that counts."""
    sections = {
        "Readers that change": [
            [each.reader, _words(each.before), "→", _words(each.after)] for each in changes.readers
        ],
        "Trips that change": [_trip(each) for each in changes.trips],
    }
    tables = "".join(f"{heading}\n{columns(rows)}" for heading, rows in sections.items() if rows)
    return f"{tables}{changes.label}\n"


def _words(planned: Planned | None) -> str:
    if planned is None:
        return "not there"
    return f"empty by {planned.default}, takes {planned.name or 'nothing'}"


def _trip(trip: TripChange) -> list[str]:
    before, after = (
        "not there" if waybills is None else in_a_row(waybills) or "no waybill"
        for waybills in (trip.before, trip.after)
    )
    return [f"{trip.start} → {trip.end}", before, "→", after]
