"""The JSON of a network file as types, and what may stand at each place in words for people.

What hangs on two values at once (a default and the ways) is left to the reading of the network.
"""

from __future__ import annotations

from typing import Annotated, Final, Literal

from msgspec import UNSET, Meta, Struct, UnsetType, field

from model.files.document import Name, RuleId, Text
from model.files.places import NAME, SIDE, TEXT, said_at
from model.network.network import (
    JUNCTION_LIMIT,
    LENGTH_LIMIT,
    LINK_LIMIT,
    MAP_LIMIT,
    PER_WEEK_LIMIT,
    PIN_LIMIT,
    STATION_LIMIT,
    TRIP_LIMIT,
    WAIVER_LIMIT,
)
from model.plan import ARM_LIMIT, NAME_LIMIT, Side
from model.wording import QT_TR_NOOP

FORMAT: Final = "platelayer-network"
VERSION: Final = 1
PATH_LIMIT: Final = 1_000
"""Characters in the path of a plan file."""
VIA_LIMIT: Final = 1_000
"""Arms that one pinned way names."""

_PLAIN: Final = r"^(?![\s\S]*[,\u0000-\u001f\u007f-\u009f])"
END_PATTERN: Final = rf"{_PLAIN}[^/]{{1,{NAME_LIMIT}}}(/[^/]{{1,{NAME_LIMIT}}})?$"
READER_PATTERN: Final = rf"{_PLAIN}[^/]{{1,{NAME_LIMIT}}}/[^/]{{1,{NAME_LIMIT}}}$"
PATH_PATTERN: Final = r"^(?![\s\S]*[\u0000-\u001f\u007f-\u009f])"

End = Annotated[str, Meta(pattern=END_PATTERN)]
"""A station, or a junction with an arm."""
ReaderKey = Annotated[str, Meta(pattern=READER_PATTERN)]
"""A junction with an arm."""
Path = Annotated[str, Meta(min_length=1, max_length=PATH_LIMIT, pattern=PATH_PATTERN)]
OnMap = Annotated[float, Meta(ge=-MAP_LIMIT, le=MAP_LIMIT)]


class StationDoc(Struct):
    name: Name
    map: tuple[OnMap, OnMap] | UnsetType = UNSET


class ReaderDoc(Struct):
    start: Name = field(name="from")
    ways: Annotated[tuple[Name, ...], Meta(min_length=1, max_length=2)]
    default: Name | None = None


class JunctionDoc(Struct):
    name: Name
    plan: Path | UnsetType = UNSET
    readers: Annotated[tuple[ReaderDoc, ...], Meta(max_length=ARM_LIMIT)] | UnsetType = UNSET
    running_side: Side | UnsetType = UNSET
    map: tuple[OnMap, OnMap] | UnsetType = UNSET


class LinkDoc(Struct):
    start: End = field(name="from")
    end: End = field(name="to")
    length: Annotated[int, Meta(ge=1, le=LENGTH_LIMIT)]


class TripDoc(Struct):
    start: Name = field(name="from")
    end: Name = field(name="to")
    per_week: Annotated[float, Meta(ge=0, le=PER_WEEK_LIMIT)]


class PinDoc(Struct):
    reader: ReaderKey
    default: Name | UnsetType = UNSET
    name: Name | UnsetType = UNSET


class WayDoc(Struct):
    start: Name = field(name="from")
    end: Name = field(name="to")
    via: Annotated[tuple[ReaderKey, ...], Meta(max_length=VIA_LIMIT)]


class NetworkWaiverDoc(Struct):
    rule: RuleId
    names: Annotated[tuple[End, ...], Meta(max_length=VIA_LIMIT)] = ()
    reason: Text = ""


class NetworkDoc(Struct, kw_only=True):
    format: Literal["platelayer-network"]
    version: Literal[1]
    title: Text = ""
    stations: Annotated[tuple[StationDoc, ...], Meta(max_length=STATION_LIMIT)] = ()
    junctions: Annotated[tuple[JunctionDoc, ...], Meta(max_length=JUNCTION_LIMIT)] = ()
    links: Annotated[tuple[LinkDoc, ...], Meta(max_length=LINK_LIMIT)] = ()
    trips: Annotated[tuple[TripDoc, ...], Meta(max_length=TRIP_LIMIT)] = ()
    pins: Annotated[tuple[PinDoc, ...], Meta(max_length=PIN_LIMIT)] = ()
    ways: Annotated[tuple[WayDoc, ...], Meta(max_length=PIN_LIMIT)] = ()
    waivers: Annotated[tuple[NetworkWaiverDoc, ...], Meta(max_length=WAIVER_LIMIT)] = ()


OBJECTS_BELOW: Final[dict[type[Struct], dict[str, type[Struct]]]] = {
    NetworkDoc: {
        "stations": StationDoc,
        "junctions": JunctionDoc,
        "links": LinkDoc,
        "trips": TripDoc,
        "pins": PinDoc,
        "ways": WayDoc,
        "waivers": NetworkWaiverDoc,
    },
    JunctionDoc: {"readers": ReaderDoc},
}
"""The keys under which lists of further objects stand."""

_END: Final = QT_TR_NOOP("a station, or a junction and its arm with a slash between")
_READER: Final = QT_TR_NOOP("a junction and its arm with a slash between")
_MAP: Final = QT_TR_NOOP("a place on the map: two numbers from -{map:,} to {map:,}")
_TRIP: Final = QT_TR_NOOP('an object with "from", "to" and "per_week"')

_BY_PLACE: Final[dict[str, str]] = {
    "": QT_TR_NOOP('an object with "format" and "version"'),
    "format": f'"{FORMAT}"',
    "version": str(VERSION),
    "title": TEXT,
    "stations": QT_TR_NOOP("a list of at most {stations:,} stations"),
    "stations[]": QT_TR_NOOP('an object with "name"'),
    "stations[].name": NAME,
    "stations[].map": _MAP,
    "stations[].map[]": _MAP,
    "junctions": QT_TR_NOOP("a list of at most {junctions:,} junctions"),
    "junctions[]": QT_TR_NOOP('an object with "name", and "plan" or "readers"'),
    "junctions[].name": NAME,
    "junctions[].plan": QT_TR_NOOP("the path of a plan file, 1 to {path:,} characters"),
    "junctions[].readers": QT_TR_NOOP("a list of at most {arms:,} readers"),
    "junctions[].readers[]": QT_TR_NOOP('an object with "from" and "ways"'),
    "junctions[].readers[].from": NAME,
    "junctions[].readers[].ways": QT_TR_NOOP("a list of one or two arms"),
    "junctions[].readers[].ways[]": NAME,
    "junctions[].readers[].default": QT_TR_NOOP("null or one of the ways"),
    "junctions[].running_side": SIDE,
    "junctions[].map": _MAP,
    "junctions[].map[]": _MAP,
    "links": QT_TR_NOOP("a list of at most {links:,} links"),
    "links[]": QT_TR_NOOP('an object with "from", "to" and "length"'),
    "links[].from": _END,
    "links[].to": _END,
    "links[].length": QT_TR_NOOP("a whole number from 1 to {length:,}"),
    "trips": QT_TR_NOOP("a list of at most {trips:,} trips"),
    "trips[]": _TRIP,
    "trips[].from": NAME,
    "trips[].to": NAME,
    "trips[].per_week": QT_TR_NOOP("a number from 0 to {per_week:,}"),
    "pins": QT_TR_NOOP("a list of at most {pins:,} pins"),
    "pins[]": QT_TR_NOOP('an object with "reader"'),
    "pins[].reader": _READER,
    "pins[].default": NAME,
    "pins[].name": NAME,
    "ways": QT_TR_NOOP("a list of at most {pins:,} ways"),
    "ways[]": QT_TR_NOOP('an object with "from", "to" and "via"'),
    "ways[].from": NAME,
    "ways[].to": NAME,
    "ways[].via": QT_TR_NOOP("a list of at most {via:,} arms"),
    "ways[].via[]": _READER,
    "waivers": QT_TR_NOOP("a list of at most {waivers:,} waivers"),
    "waivers[]": QT_TR_NOOP('an object with "rule"'),
    "waivers[].rule": QT_TR_NOOP("a word of 1 to {name} characters"),
    "waivers[].names": QT_TR_NOOP("a list of at most {via:,} names"),
    "waivers[].names[]": _END,
    "waivers[].reason": TEXT,
}
_LIMITS: Final[dict[str, object]] = {
    "stations": STATION_LIMIT,
    "junctions": JUNCTION_LIMIT,
    "links": LINK_LIMIT,
    "trips": TRIP_LIMIT,
    "pins": PIN_LIMIT,
    "waivers": WAIVER_LIMIT,
    "via": VIA_LIMIT,
    "path": PATH_LIMIT,
    "map": MAP_LIMIT,
    "length": LENGTH_LIMIT,
    "per_week": PER_WEEK_LIMIT,
}


def expected_at(place: str) -> str:
    """What may stand at a place such as ``links[3].length``."""
    return said_at(place, _BY_PLACE, _LIMITS)
