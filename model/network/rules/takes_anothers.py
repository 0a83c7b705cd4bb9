"""A reader that takes a waybill meant for a later one."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

import msgspec

from model.network.network import ReaderPin, end_of, junction_and_arm
from model.network.result import NetworkPlan, Planned, TripPlan
from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.network.rules.words import trip_name
from model.severity import Severity


class Call(msgspec.Struct, frozen=True):
    """A reader on the way of a trip."""

    reader: str
    is_called: bool
    """Whether the cart must leave by the way that is not the default."""


def find(sight: Sight) -> Iterator[Found]:
    """A cart passes a reader by its default only while it carries nothing of the name that the reader takes.

    Looked at as pins have it, also where the plan could not keep to them.

    Bad::

        stations Quay, Fen, Orchard
        Mill: East → West* or South takes Salt
        Beacon: East → West* or South takes Salt
        Quay → Mill/East
        Mill/West → Beacon/East
        Beacon/South → Fen
        Mill/South → Orchard
        Beacon/West → Orchard
        trip Quay → Fen carries Salt

    Good::

        stations Quay, Fen, Orchard
        Mill: East → West* or South takes Salt
        Beacon: East → West* or South takes Reed
        Quay → Mill/East
        Mill/West → Beacon/East
        Beacon/South → Fen
        Mill/South → Orchard
        Beacon/West → Orchard
        trip Quay → Fen carries Reed
    """
    if sight.plan is None:
        return
    planned = _as_pinned(sight, sight.plan)
    ways = [list(_calls(sight, trip, planned)) for trip in sight.plan.trips]
    called = {call.reader for way in ways for call in way if call.is_called}
    taking = called | {key for key, each in sight.plan.readers.items() if each.name is not None}
    names = {key: name for key in taking if (name := planned[key].name) is not None}
    trips: dict[tuple[str, str], list[int]] = {}
    for place, way in enumerate(ways):
        wrong = _first_wrong(way, names)
        if wrong is not None:
            trips.setdefault(wrong, []).append(place)
    for (reader, later), places in trips.items():
        yield _found(sight, reader, later, names[reader], places)


def _as_pinned(sight: Sight, plan: NetworkPlan) -> dict[str, Planned]:
    """What each reader does, and does by its pin where the plan could not keep it."""
    pins = {pin.reader: pin for pin in plan.unkept if isinstance(pin, ReaderPin)}
    planned = dict(plan.readers)
    for key in planned.keys() & pins.keys() & sight.readers.keys():
        pin, before = pins[key], planned[key]
        default = pin.default if pin.default in sight.readers[key].ways else None
        planned[key] = Planned(default or before.default, pin.name or before.name)
    return planned


def _calls(sight: Sight, trip: TripPlan, planned: Mapping[str, Planned]) -> Iterator[Call]:
    """The readers on the way of a trip, in order."""
    links = sight.network.links
    for link, following in zip(trip.links, trip.links[1:], strict=False):
        entry, place = links[link].end, junction_and_arm(links[link].end)
        if entry in planned and place is not None:
            yield Call(entry, links[following].start != end_of(place[0], planned[entry].default))


def _first_wrong(way: list[Call], names: dict[str, str]) -> tuple[str, str] | None:
    """The first reader that takes what it should not, and the later one that it was meant for."""
    carried = Counter(names.get(call.reader) for call in way if call.is_called)
    for at, call in enumerate(way):
        name = names.get(call.reader)
        if name is None:
            continue
        if call.is_called:
            carried[name] -= 1
        elif carried[name]:
            later = next(each for each in way[at:] if each.is_called and names.get(each.reader) == name)
            return call.reader, later.reader
    return None


def _found(sight: Sight, reader: str, later: str, name: str, trips: list[int]) -> Found:
    first = sight.network.trips[trips[0]]
    more = f", and on {len(trips) - 1:,} more" if len(trips) > 1 else ""
    on = f"on the trip {trip_name(first.start, first.end)}{more}"
    said = f"The reader {reader} takes the {name} that is meant for {later}, {on}."
    return Found(said, (reader, later), (), sight.places_of((reader, later))[1], trips=tuple(trips))


RULE = NetworkRule(
    id="takes-anothers",
    severity=Severity.ERROR,
    title="A reader takes a waybill meant for a later one",
    why="The cart leaves by the wrong way, and its waybill is missing further on.",
    remedy="Settle another name for one of the two readers, or none.",
    find=find,
)
