"""A trip that cannot be made."""

from __future__ import annotations

from collections.abc import Iterator

from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """From the first station of a trip a way leads to the last, without changing carts on the way.

    Bad::

        stations Quay, Fen
        Fen → Quay
        trip Quay → Fen

    Good::

        stations Quay, Fen
        Quay → Fen
        trip Quay → Fen
    """
    for place, trip in enumerate(() if sight.plan is None else sight.plan.trips):
        ends = (trip.start, trip.end)
        if trip.length is None and all(end in sight.stations for end in ends):
            stations = tuple(sight.stations[end] for end in ends)
            yield Found(
                tr("No way leads from {start} to {end}.", start=trip.start, end=trip.end),
                ends,
                stations,
                trips=(place,),
            )


RULE = NetworkRule(
    id="trip-without-way",
    severity=Severity.ERROR,
    title="A trip cannot be made",
    why="Whatever waybills a traveller takes along, no cart arrives there.",
    remedy="Add the missing links, or take the trip away.",
    find=find,
)
