"""What can be chosen on the map: a station, a junction, a link; and where a change leaves it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from enum import StrEnum
from typing import Final, NamedTuple

from msgspec import structs

from app.translation import from_to
from model.network.network import JunctionSpec, Link, Network, Spot, Station, junction_and_arm

SQUARE: Final = 20.0
"""Units of the map in a file that make a square of the map."""


class Kind(StrEnum):
    """The kinds of things on the map."""

    STATION = "station"
    JUNCTION = "junction"
    LINK = "link"


class Item(NamedTuple):
    """One of them, by its place in the network: names may be doubled."""

    kind: Kind
    place: int

    @property
    def is_node(self) -> bool:
        """Whether links end at it."""
        return self.kind is not Kind.LINK


Thing = Station | JunctionSpec | Link


def things(network: Network, kind: Kind) -> tuple[Thing, ...]:
    """All of a kind, in file order."""
    if kind is Kind.STATION:
        return network.stations
    return network.junctions if kind is Kind.JUNCTION else network.links


def thing(network: Network, item: Item) -> Thing:
    """What the item stands for. Raises IndexError when made for another network."""
    return things(network, item.kind)[item.place]


def nodes(network: Network) -> list[Item]:
    """The stations, then the junctions."""
    stations = [Item(Kind.STATION, index) for index in range(len(network.stations))]
    return stations + [Item(Kind.JUNCTION, index) for index in range(len(network.junctions))]


def name_of(network: Network, item: Item) -> str:
    """What to call it: ``Quay``, or ``Quay → Mill/East`` for a link."""
    found = thing(network, item)
    return from_to(found.start, found.end) if isinstance(found, Link) else found.name


def key_of(found: Thing) -> tuple[str, ...]:
    """What stays the same of a thing when others come and go."""
    return (found.start, found.end) if isinstance(found, Link) else (found.name,)


def followed(chosen: Iterable[Item], before: Network, after: Network) -> frozenset[Item]:
    """The same things after a change: by name, else in the same place where none came or went."""
    kept = set()
    asked = list(chosen)
    for kind in {item.kind for item in asked}:
        old, new = things(before, kind), things(after, kind)
        places: dict[tuple[str, ...], list[int]] = {}
        for place, each in enumerate(new):
            places.setdefault(key_of(each), []).append(place)
        for item in asked:
            if item.kind is kind and item.place < len(old):
                at = places.get(key_of(old[item.place]), [])
                if item.place in at or (not at and len(old) == len(new)):
                    kept.add(item)
                elif at:
                    kept.add(Item(kind, at[0]))
    return frozenset(kept)


def spot_in(network: Network, item: Item) -> Spot | None:
    """Where the network itself says that a node stands, in squares."""
    found = thing(network, item)
    at = None if isinstance(found, Link) else found.at
    return None if at is None else (at[0] / SQUARE, at[1] / SQUARE)


def in_units(spot: Spot) -> Spot:
    """A place in squares as the file counts it."""
    return spot[0] * SQUARE, spot[1] * SQUARE


def with_spots(network: Network, spots: Mapping[Item, Spot]) -> Network:
    """The network with nodes at these places, in squares; the others stay where they are."""
    at = {item: in_units(spot) for item, spot in spots.items()}
    return network.replace(
        stations=tuple(
            structs.replace(station, at=at.get(Item(Kind.STATION, index), station.at))
            for index, station in enumerate(network.stations)
        ),
        junctions=tuple(
            structs.replace(junction, at=at.get(Item(Kind.JUNCTION, index), junction.at))
            for index, junction in enumerate(network.junctions)
        ),
    )


class Ends:
    """Which node an end of a link is at; the first of a name where it is doubled."""

    def __init__(self, network: Network) -> None:
        self._stations: dict[str, int] = {}
        self._junctions: dict[str, int] = {}
        for index, station in enumerate(network.stations):
            self._stations.setdefault(station.name, index)
        for index, junction in enumerate(network.junctions):
            self._junctions.setdefault(junction.name, index)

    def node(self, end: str) -> Item | None:
        """The station, or the junction of ``Mill/East``; ``None`` where there is none of that name."""
        at = junction_and_arm(end)
        if at is None:
            index = self._stations.get(end)
            return None if index is None else Item(Kind.STATION, index)
        index = self._junctions.get(at[0])
        return None if index is None else Item(Kind.JUNCTION, index)
