"""A reader that takes a waybill meant for a later one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from model.network.network import ReaderPin, end_of, junction_and_arm
from model.network.result import NetworkPlan, Planned, TripPlan
from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.network.rules.words import trip_name
from model.severity import Severity
from model.wording import QT_TR_NOOP, tr

Call = tuple[str, bool]
"""A reader on the way of a trip, and whether the cart must leave by the way that is not the default."""


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
    calls = _Calls(sight, _as_pinned(sight, sight.plan))
    names = _names(calls, sight.plan)
    trips: dict[tuple[str, str], list[int]] = {}
    for place, trip in enumerate(sight.plan.trips):
        wrong = _first_wrong(list(calls.on(trip)), names)
        if wrong is not None:
            trips.setdefault(wrong, []).append(place)
    for (reader, later), places in trips.items():
        yield _found(sight, reader, later, names[reader], places)


class _Calls:
    """Which readers are on the ways of trips, told by what lies at the end of each link."""

    def __init__(self, sight: Sight, planned: Mapping[str, Planned]) -> None:
        self.planned = planned
        self._starts = [link.start for link in sight.network.links]
        self._readers = [self._reader(link.end) for link in sight.network.links]

    def on(self, trip: TripPlan) -> Iterator[Call]:
        """In order."""
        for link, following in pairwise(trip.links):
            reader = self._readers[link]
            if reader is not None:
                yield reader[0], self._starts[following] != reader[1]

    def _reader(self, end: str) -> tuple[str, str] | None:
        """The reader there, and where its default leads: the start of a link."""
        place, planned = junction_and_arm(end), self.planned.get(end)
        return None if place is None or planned is None else (end, end_of(place[0], planned.default))


def _names(calls: _Calls, plan: NetworkPlan) -> dict[str, str]:
    """By reader, what it takes; a name pinned on a reader that no trip calls is not given to it."""
    names = {key: planned.name for key, planned in calls.planned.items() if planned.name is not None}
    doubtful = {key for key in names if plan.readers[key].name is None}
    if doubtful:
        doubtful -= {reader for trip in plan.trips for reader, is_called in calls.on(trip) if is_called}
    return {key: name for key, name in names.items() if key not in doubtful}


def _as_pinned(sight: Sight, plan: NetworkPlan) -> dict[str, Planned]:
    """What each reader does, and does by its pin where the plan could not keep it."""
    pins = {pin.reader: pin for pin in plan.unkept if isinstance(pin, ReaderPin)}
    planned = dict(plan.readers)
    for key in planned.keys() & pins.keys() & sight.readers.keys():
        pin, before = pins[key], planned[key]
        default = pin.default if pin.default in sight.readers[key].ways else None
        planned[key] = Planned(default or before.default, pin.name or before.name)
    return planned


def _first_wrong(way: list[Call], names: Mapping[str, str]) -> tuple[str, str] | None:
    """The first reader that takes what it should not, and the later one that it was meant for."""
    wrong: tuple[str, str] | None = None
    later: dict[str, str] = {}
    for reader, is_called in reversed(way):
        name = names.get(reader)
        if name is None:
            continue
        if is_called:
            later[name] = reader
        elif name in later:
            wrong = reader, later[name]
    return wrong


def _found(sight: Sight, reader: str, later: str, name: str, trips: list[int]) -> Found:
    first = sight.network.trips[trips[0]]
    text = (
        QT_TR_NOOP(
            "The reader {reader} takes the {name} that is meant for {later}, on the trip {trip}, "
            "and on {more:,} more."
        )
        if len(trips) > 1
        else QT_TR_NOOP("The reader {reader} takes the {name} that is meant for {later}, on the trip {trip}.")
    )
    said = tr(
        text,
        reader=reader,
        name=name,
        later=later,
        trip=trip_name(first.start, first.end),
        more=len(trips) - 1,
    )
    return Found(said, (reader, later), (), sight.places_of((reader, later))[1], trips=tuple(trips))


RULE = NetworkRule(
    id="takes-anothers",
    severity=Severity.ERROR,
    title="A reader takes a waybill meant for a later one",
    why="The cart leaves by the wrong way, and its waybill is missing further on.",
    remedy="Settle another name for one of the two readers, or none.",
    find=find,
)
