"""A link or a trip that names what is not there."""

from __future__ import annotations

from collections.abc import Iterator

from model.network.network import junction_and_arm
from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.network.rules.words import trip_name
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """Both ends of a link are a station or an arm, both ends of a trip a station.

    Bad::

        stations Quay
        Quay → Fen

    Good::

        stations Quay, Fen
        Quay → Fen
    """
    for place, link in enumerate(sight.network.links):
        for end in (link.start, link.end):
            if end not in sight.stations and end not in sight.arms and not sight.is_unread(end):
                said = tr(
                    "The link {trip} names {missing}.",
                    trip=trip_name(link.start, link.end),
                    missing=_missing(sight, end),
                )
                yield Found(said, (end,), links=(place,))
    for place, trip in enumerate(sight.network.trips):
        for end in dict.fromkeys((trip.start, trip.end)):
            if end not in sight.stations:
                said = tr(
                    "The trip {trip} names {missing}.",
                    trip=trip_name(trip.start, trip.end),
                    missing=_missing(sight, end),
                )
                yield Found(said, (end,), trips=(place,))


def _missing(sight: Sight, end: str) -> str:
    place = junction_and_arm(end)
    if place is None:
        is_junction = end in sight.junctions
        return (
            tr("{end}, a junction without an arm", end=end)
            if is_junction
            else tr("{end}, and there is no such station", end=end)
        )
    junction, arm = place
    if junction not in sight.junctions:
        return tr("{end}, and there is no junction {junction}", end=end, junction=junction)
    return tr("{end}, and {junction} has no arm {arm}", end=end, junction=junction, arm=arm)


RULE = NetworkRule(
    id="unknown-end",
    severity=Severity.ERROR,
    title="A link or a trip leads to what is not there",
    why="No cart can run on such a link, or make such a trip.",
    remedy="Correct the name, or add what is missing.",
    find=find,
)
