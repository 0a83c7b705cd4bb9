"""The network: what lies where and who rides, as a value. And the change of a network.

Names of stations and of junctions are two worlds: a station Mill and a junction Mill may stand side by side,
since an end of a link is a station, or a junction with an arm: ``Mill/East``.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

import msgspec

from model.plan import Kept, Side

STATION_LIMIT: Final = 100_000
JUNCTION_LIMIT: Final = 100_000
LINK_LIMIT: Final = 1_000_000
TRIP_LIMIT: Final = 1_000_000
PIN_LIMIT: Final = 100_000
WAIVER_LIMIT: Final = 100_000
LENGTH_LIMIT: Final = 100_000_000
"""Cells of a link, at most."""
PER_WEEK_LIMIT: Final = 1_000_000_000
"""Trips a week between two stations, at most."""
MAP_LIMIT: Final = 1_000_000
"""How far from the middle of the map a thing may be drawn, in its units."""
BETWEEN: Final = "/"
"""Between the junction and the arm in the end of a link."""

Spot = tuple[float, float]
"""A place on the map, x to the right and y down, in units of the map; no place in the world."""


class Station(msgspec.Struct, frozen=True):
    """Where carts start and end."""

    name: str
    at: Spot | None = None
    """``map`` in files."""
    kept: Kept = ()


class ReaderSpec(msgspec.Struct, frozen=True):
    """What becomes of carts that enter a junction by an arm: they leave by one way, or by one of two.

    With two ways there is a reader: a cart leaves by the default, or by the other when the reader finds its
    waybill in the cart; it takes one.
    """

    start: str
    """The arm by which carts enter; ``from`` in files."""
    ways: tuple[str, ...]
    """One or two arms by which they leave."""
    default: str | None = None
    """One of the ways; ``None``: to be chosen."""
    waybill: str | None = None
    """What the junction's plan calls it, a proposal only; never in files of networks."""
    kept: Kept = ()

    @property
    def chooses(self) -> bool:
        """Whether there is a reader, which takes two ways."""
        return len(self.ways) > 1

    def other(self, way: str) -> str:
        """The way that is not this one. Raises StopIteration where there is no other."""
        return next(each for each in self.ways if each != way)


class ArmSpec(msgspec.Struct, frozen=True):
    """An arm as the plan of a junction has it."""

    name: str
    enters: bool
    """Whether carts come in by it."""
    leaves: bool
    side: Side | None = None
    """The side on which carts run on it; ``None``: not known."""


class JunctionSpec(msgspec.Struct, frozen=True):
    """A junction: from a plan file, or as its readers only."""

    name: str
    plan: str | None = None
    """The plan file, as the network file names it: relative to itself."""
    readers: tuple[ReaderSpec, ...] = ()
    """One an arm by which carts enter. With a plan they are the wanted routes, the idle one the default."""
    arms: tuple[ArmSpec, ...] = ()
    """With a plan: its arms, in file order. Never in files of networks."""
    running_side: Side | None = None
    """Without a plan: the side on which carts run on all of its arms; ``None``: not known."""
    at: Spot | None = None
    """``map`` in files."""
    kept: Kept = ()
    unread: str = ""
    """Why the plan could not be read, in words for the user; never in files of networks."""

    def reader(self, arm: str) -> ReaderSpec | None:
        """What becomes of carts that enter by an arm, or ``None``: nothing is said of it."""
        return next((reader for reader in self.readers if reader.start == arm), None)


class Link(msgspec.Struct, frozen=True):
    """A one-way track from a station or an arm to one."""

    start: str
    """A station, or ``Mill/South``: carts leave the junction Mill by its arm South; ``from`` in files."""
    end: str
    """A station, or the arm by which carts enter a junction; ``to`` in files."""
    length: int
    """Cells, 1 at least."""
    kept: Kept = ()


class Trip(msgspec.Struct, frozen=True):
    """How many ride from one station to another."""

    start: str
    """``from`` in files."""
    end: str
    """``to`` in files."""
    per_week: int | float
    """Carts a week, 0 at least."""
    kept: Kept = ()


class ReaderPin(msgspec.Struct, frozen=True):
    """What the user has settled of a reader, whatever it costs."""

    reader: str
    """``Mill/East``"""
    default: str | None = None
    """``None``: not settled. Takes the place of the default that the junction gives."""
    name: str | None = None
    """The waybill that it takes where any trip calls it; ``None``: not settled."""
    kept: Kept = ()


class WayPin(msgspec.Struct, frozen=True):
    """Where a trip is to run: by a shortest of the ways that enter by these arms, in this order."""

    start: str
    """``from`` in files."""
    end: str
    """``to`` in files."""
    via: tuple[str, ...]
    """``Mill/East``, …"""
    kept: Kept = ()


class NetworkWaiver(msgspec.Struct, frozen=True):
    """A finding that is set aside, with the reason."""

    rule: str
    names: tuple[str, ...] = ()
    """The stations, junctions and arms that it is about, in its order: a trip has a way back."""
    reason: str = ""
    kept: Kept = ()

    @property
    def key(self) -> tuple[str, tuple[str, ...]]:
        """What tells the finding from others."""
        return self.rule, self.names


class Network(msgspec.Struct, frozen=True):
    """The document, as a value."""

    title: str = ""
    stations: tuple[Station, ...] = ()
    junctions: tuple[JunctionSpec, ...] = ()
    links: tuple[Link, ...] = ()
    trips: tuple[Trip, ...] = ()
    pins: tuple[ReaderPin, ...] = ()
    """At most one a reader."""
    ways: tuple[WayPin, ...] = ()
    """At most one for two stations."""
    waivers: tuple[NetworkWaiver, ...] = ()
    kept: Kept = ()

    def station(self, name: str) -> Station | None:
        """The first station of that name, or ``None``."""
        return next((station for station in self.stations if station.name == name), None)

    def junction(self, name: str) -> JunctionSpec | None:
        """The first junction of that name, or ``None``."""
        return next((junction for junction in self.junctions if junction.name == name), None)

    def readers(self) -> Iterator[tuple[str, ReaderSpec]]:
        """All that have two ways, under their keys such as ``Mill/East``, in file order."""
        for junction in self.junctions:
            for reader in junction.readers:
                if reader.chooses:
                    yield end_of(junction.name, reader.start), reader

    def replace(self, **fields: Any) -> Network:
        """A copy with other fields."""
        return msgspec.structs.replace(self, **fields)


EMPTY_NETWORK: Final = Network()


class NetworkChange(msgspec.Struct, frozen=True):
    """An edit as a value: a network is small, so it holds all of it before and after."""

    label: str
    """In the user's words: "Add station Quay"."""
    before: Network
    after: Network

    @property
    def is_empty(self) -> bool:
        """Whether applying it leaves the network as it was."""
        return self.before == self.after

    def inverse(self) -> NetworkChange:
        """The change that undoes this one, under the same label."""
        return NetworkChange(self.label, self.after, self.before)


def end_of(junction: str, arm: str) -> str:
    """The end of a link at an arm, which is also the key of the reader there: ``Mill/East``."""
    return f"{junction}{BETWEEN}{arm}"


def junction_and_arm(end: str) -> tuple[str, str] | None:
    """``("Mill", "East")`` for ``Mill/East``; ``None`` for a station."""
    junction, between, arm = end.partition(BETWEEN)
    return (junction, arm) if between else None
