"""The JSON of a network file as types, and what may stand at each place in words for people.

What hangs on two values at once (a default and the ways) is left to the reading of the network.
"""

from __future__ import annotations

import re
from typing import Annotated, Final, Literal

from msgspec import UNSET, Meta, Struct, UnsetType, field

from model.files.document import Name, Text
from model.network.network import (
    JUNCTION_LIMIT,
    LENGTH_LIMIT,
    LINK_LIMIT,
    MAP_LIMIT,
    PER_WEEK_LIMIT,
    PIN_LIMIT,
    STATION_LIMIT,
    TRIP_LIMIT,
)
from model.plan import ARM_LIMIT, NAME_LIMIT, TEXT_LIMIT, Side

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


OBJECTS_BELOW: Final[dict[type[Struct], dict[str, type[Struct]]]] = {
    NetworkDoc: {
        "stations": StationDoc,
        "junctions": JunctionDoc,
        "links": LinkDoc,
        "trips": TripDoc,
        "pins": PinDoc,
        "ways": WayDoc,
    },
    JunctionDoc: {"readers": ReaderDoc},
}
"""The keys under which lists of further objects stand."""

_NAME: Final = f"a name of 1 to {NAME_LIMIT} characters without control characters, comma or slash"
_END: Final = "a station, or a junction and its arm with a slash between"
_READER: Final = "a junction and its arm with a slash between"
_MAP: Final = f"a place on the map: two numbers from -{MAP_LIMIT:,} to {MAP_LIMIT:,}"
_TRIP: Final = 'an object with "from", "to" and "per_week"'

_BY_PLACE: Final[dict[str, str]] = {
    "": 'an object with "format" and "version"',
    "format": f'"{FORMAT}"',
    "version": str(VERSION),
    "title": f"a text of at most {TEXT_LIMIT:,} characters",
    "stations": f"a list of at most {STATION_LIMIT:,} stations",
    "stations[]": 'an object with "name"',
    "stations[].name": _NAME,
    "stations[].map": _MAP,
    "stations[].map[]": _MAP,
    "junctions": f"a list of at most {JUNCTION_LIMIT:,} junctions",
    "junctions[]": 'an object with "name", and "plan" or "readers"',
    "junctions[].name": _NAME,
    "junctions[].plan": f"the path of a plan file, 1 to {PATH_LIMIT:,} characters",
    "junctions[].readers": f"a list of at most {ARM_LIMIT:,} readers",
    "junctions[].readers[]": 'an object with "from" and "ways"',
    "junctions[].readers[].from": _NAME,
    "junctions[].readers[].ways": "a list of one or two arms",
    "junctions[].readers[].ways[]": _NAME,
    "junctions[].readers[].default": "null or one of the ways",
    "junctions[].running_side": "left or right",
    "junctions[].map": _MAP,
    "junctions[].map[]": _MAP,
    "links": f"a list of at most {LINK_LIMIT:,} links",
    "links[]": 'an object with "from", "to" and "length"',
    "links[].from": _END,
    "links[].to": _END,
    "links[].length": f"a whole number from 1 to {LENGTH_LIMIT:,}",
    "trips": f"a list of at most {TRIP_LIMIT:,} trips",
    "trips[]": _TRIP,
    "trips[].from": _NAME,
    "trips[].to": _NAME,
    "trips[].per_week": f"a number from 0 to {PER_WEEK_LIMIT:,}",
    "pins": f"a list of at most {PIN_LIMIT:,} pins",
    "pins[]": 'an object with "reader"',
    "pins[].reader": _READER,
    "pins[].default": _NAME,
    "pins[].name": _NAME,
    "ways": f"a list of at most {PIN_LIMIT:,} ways",
    "ways[]": 'an object with "from", "to" and "via"',
    "ways[].from": _NAME,
    "ways[].to": _NAME,
    "ways[].via": f"a list of at most {VIA_LIMIT:,} arms",
    "ways[].via[]": _READER,
}


def expected_at(place: str) -> str:
    """What may stand at a place such as ``links[3].length``."""
    return _BY_PLACE[re.sub(r"\[\d+\]", "[]", place)]
