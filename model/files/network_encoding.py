"""From a network to bytes: one network, one byte string; one station, junction, link or trip a line."""

from __future__ import annotations

from typing import Any, Final

import msgspec

from model.files.members import document_bytes, object_of, one_a_line
from model.files.network_document import FORMAT, VERSION
from model.network.network import (
    JunctionSpec,
    Link,
    Network,
    NetworkWaiver,
    ReaderPin,
    ReaderSpec,
    Spot,
    Station,
    Trip,
    WayPin,
)

_ENCODER: Final = msgspec.json.Encoder()


def network_bytes(network: Network) -> bytes:
    """The bytes of a network's file: UTF-8 JSON, the same for equal networks.

    A key is left out where its value is what the reader takes for it anyway; a reader's default never is.
    """
    members = {
        "format": _ENCODER.encode(FORMAT),
        "version": _ENCODER.encode(VERSION),
        "title": _ENCODER.encode(network.title) if network.title else b"",
        "stations": one_a_line([_station(each) for each in network.stations]) or b"[]",
        "junctions": one_a_line([_junction(each) for each in network.junctions]) or b"[]",
        "links": one_a_line([_link(each) for each in network.links]) or b"[]",
        "trips": one_a_line([_trip(each) for each in network.trips]) or b"[]",
        "pins": one_a_line([_pin(each) for each in network.pins]),
        "ways": one_a_line([_way(each) for each in network.ways]),
        "waivers": one_a_line([_waiver(each) for each in network.waivers]),
    }
    return document_bytes(members, network.kept)


def _station(station: Station) -> dict[str, Any]:
    return object_of({"name": station.name, "map": _map(station.at)}, station.kept)


def _junction(junction: JunctionSpec) -> dict[str, Any]:
    """With a plan its readers and its side are left to the plan."""
    name = {"name": junction.name}
    if junction.plan is not None:
        return object_of({**name, "plan": junction.plan, "map": _map(junction.at)}, junction.kept)
    own = {
        "readers": [_reader(reader) for reader in junction.readers],
        "running_side": junction.running_side,
        "map": _map(junction.at),
    }
    return object_of({**name, **own}, junction.kept)


def _reader(reader: ReaderSpec) -> dict[str, Any]:
    members = {"from": reader.start, "ways": reader.ways}
    return {**members, "default": reader.default, **object_of({}, reader.kept)}


def _waiver(waiver: NetworkWaiver) -> dict[str, Any]:
    members = {"rule": waiver.rule, "names": waiver.names or None, "reason": waiver.reason or None}
    return object_of(members, waiver.kept)


def _link(link: Link) -> dict[str, Any]:
    return object_of({"from": link.start, "to": link.end, "length": link.length}, link.kept)


def _trip(trip: Trip) -> dict[str, Any]:
    return object_of({"from": trip.start, "to": trip.end, "per_week": trip.per_week}, trip.kept)


def _pin(pin: ReaderPin) -> dict[str, Any]:
    return object_of({"reader": pin.reader, "default": pin.default, "name": pin.name}, pin.kept)


def _way(way: WayPin) -> dict[str, Any]:
    return object_of({"from": way.start, "to": way.end, "via": way.via}, way.kept)


def _map(at: Spot | None) -> list[int | float] | None:
    """Whole numbers without a point: a diff shows no more than what was moved."""
    return None if at is None else [int(part) if part.is_integer() else part for part in map(float, at)]
