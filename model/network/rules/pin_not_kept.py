"""A pin that the plan does not keep."""

from __future__ import annotations

from collections.abc import Iterator

from model.network.network import ReaderPin, WayPin
from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.network.rules.words import trip_name
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """What is settled is there, and can be so.

    Bad::

        stations Quay, Fen, Orchard
        Mill: East → West or South
        pin Mill/East default North

    Good::

        stations Quay, Fen, Orchard
        Mill: East → West* or South
        pin Mill/East default West
    """
    unkept = () if sight.plan is None else sight.plan.unkept
    for pin in sight.network.pins:
        why = _why_no_reader(sight, pin) or (tr("no plan keeps it") if pin in unkept else None)
        if why is not None:
            said = tr("The pin on {reader} is not kept: {why}.", reader=pin.reader, why=why)
            yield Found(said, (pin.reader,), junctions=sight.places_of((pin.reader,))[1])
    for way in sight.network.ways:
        why = _why_no_trip(sight, way) or (
            tr("no way enters by these arms, in this order") if way in unkept else None
        )
        if why is not None:
            yield _found(sight, way, why)


def _why_no_reader(sight: Sight, pin: ReaderPin) -> str | None:
    reader = sight.readers.get(pin.reader)
    if reader is None or not reader.chooses:
        return tr("there is no such reader")
    if pin.default is not None and pin.default not in reader.ways:
        return tr("it has no way {default}", default=pin.default)
    return None


def _why_no_trip(sight: Sight, way: WayPin) -> str | None:
    missing = next((end for end in way.via if end not in sight.readers), None)
    if missing is not None:
        return tr("nothing is said of carts that enter by {missing}", missing=missing)
    if not any((trip.start, trip.end) == (way.start, way.end) for trip in sight.network.trips):
        return tr("there is no such trip")
    return None


def _found(sight: Sight, way: WayPin, why: str) -> Found:
    ends = (way.start, way.end)
    trips = [at for at, trip in enumerate(sight.network.trips) if (trip.start, trip.end) == ends]
    said = tr("The pinned way {trip} is not kept: {why}.", trip=trip_name(*ends), why=why)
    return Found(said, ends, sight.places_of(ends)[0], trips=tuple(trips))


RULE = NetworkRule(
    id="pin-not-kept",
    severity=Severity.WARNING,
    title="A pin is not kept",
    why="The plan is made as if the pin were not there.",
    remedy="Take the pin away, or change what stands against it.",
    find=find,
)
