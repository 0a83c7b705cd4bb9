"""A network, with its plan, as a few lines of text, for the tests of the finding rules::

    stations Quay, Fen
    Quay ↔ Mill/East 64                              two links of 64 cells; 10 where no length is given
    Mill/South → Fen
    Mill: East → South* or West takes Salt; South → East     * the default that the network gives
    Mill side left
    Mill unread                                      the junction has a plan that could not be read
    Mill plan East takes Reed, West in, South out right      the junction has a plan with these arms
    trip Quay → Fen 70 carries 2 Salt, Reed
    pin Mill/East default South name Salt unkept             unkept: the plan does not keep it
    way Quay → Fen via Mill/East

The plan is made of what is said here, without the planner: a reader's default is the one that the network
gives or else its first way, its name that after ``takes``. Trips run by a shortest way and carry what is said
or else what the called readers on it take.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import networkx as nx
from msgspec.structs import replace

from model.network.network import (
    EMPTY_NETWORK,
    ArmSpec,
    JunctionSpec,
    Link,
    Network,
    ReaderPin,
    ReaderSpec,
    Station,
    Trip,
    WayPin,
    end_of,
    junction_and_arm,
)
from model.network.result import NetworkPlan, Planned, TripPlan
from model.plan import Side


class Notation:
    """What a text says; ``network`` and ``plan`` are made of it."""

    def __init__(self, text: str) -> None:
        self.network = EMPTY_NETWORK
        self._names: dict[str, str] = {}
        self._carried: list[tuple[str, ...] | None] = []
        self._unkept: list[ReaderPin | WayPin] = []
        for line in filter(None, map(str.strip, text.splitlines())):
            self._take(line)

    @property
    def plan(self) -> NetworkPlan:
        """The plan, as the text has it."""
        readers = {
            key: Planned(reader.default or reader.ways[0], self._names.get(key))
            for key, reader in self.network.readers()
        }
        trips = tuple(
            self._trip(trip, carried, readers)
            for trip, carried in zip(self.network.trips, self._carried, strict=True)
        )
        return NetworkPlan(0, 0, False, readers, trips, unkept=tuple(self._unkept))

    def _take(self, line: str) -> None:
        network = self.network
        match line.partition(" ")[0]:
            case "stations":
                names = line.removeprefix("stations ").split(", ")
                self.network = network.replace(stations=(*network.stations, *map(Station, names)))
            case "trip":
                self._take_trip(line)
            case "pin":
                self._take_pin(line)
            case "way":
                self._take_way(line)
            case _:
                self._take_other(line)

    def _take_other(self, line: str) -> None:
        if link := re.fullmatch(r"([^:]+) ([→↔]) ([^:\d]+?)(?: (\d+))?", line):
            self._take_link(link[1], link[3], int(link[4] or 10), both=link[2] == "↔")
        elif side := re.fullmatch(r"(.+) side (left|right)", line):
            self._change(side[1], running_side=Side(side[2]))
        elif unread := re.fullmatch(r"(.+) unread", line):
            plan = f"{unread[1].lower()}.plan.json"
            why = f"{plan}: the file itself: expected a file that can be read (No such file or directory)"
            self._change(unread[1], plan=plan, unread=why)
        elif plan := re.fullmatch(r"(.+?) plan (.+)", line):
            self._take_plan(plan[1], plan[2])
        else:
            name, _, readers = line.partition(": ")
            specs = tuple(self._reader(name, text) for text in filter(None, readers.split("; ")))
            self.network = self.network.replace(
                junctions=(*self.network.junctions, JunctionSpec(name.rstrip(":"), None, specs))
            )

    def _take_link(self, start: str, end: str, length: int, *, both: bool) -> None:
        links = [Link(start, end, length), *([Link(end, start, length)] if both else [])]
        self.network = self.network.replace(links=(*self.network.links, *links))

    def _reader(self, junction: str, text: str) -> ReaderSpec:
        text, _, name = text.partition(" takes ")
        start, _, ways = text.partition(" → ")
        if name:
            self._names[end_of(junction, start)] = name
        default = next((way[:-1] for way in ways.split(" or ") if way.endswith("*")), None)
        return ReaderSpec(start, tuple(way.rstrip("*") for way in ways.split(" or ")), default)

    def _take_plan(self, name: str, text: str) -> None:
        junction = self.network.junction(name)
        assert junction is not None
        waybills: dict[str, str] = {}
        arms: list[ArmSpec] = []
        for arm in text.split(", "):
            arm, _, waybill = arm.partition(" takes ")
            first, *words = arm.split(" ")
            side = next((Side(word) for word in words if word in ("left", "right")), None)
            arms.append(ArmSpec(first, "out" not in words, "in" not in words, side))
            if waybill:
                waybills[first] = waybill
        readers = tuple(replace(each, waybill=waybills.get(each.start)) for each in junction.readers)
        self._change(name, plan=f"{name}.plan.json", arms=tuple(arms), readers=readers)

    def _change(self, name: str, **fields: object) -> None:
        junctions = (
            replace(junction, **fields) if junction.name == name else junction
            for junction in self.network.junctions
        )
        self.network = self.network.replace(junctions=tuple(junctions))

    def _take_trip(self, line: str) -> None:
        parts = re.fullmatch(r"trip (.+) → (\D+?)(?: (\d+))?(?: carries (.+))?", line)
        assert parts is not None, line
        self.network = self.network.replace(
            trips=(*self.network.trips, Trip(parts[1], parts[2], int(parts[3] or 1)))
        )
        self._carried.append(None if parts[4] is None else tuple(_counted(parts[4])))

    def _take_pin(self, line: str) -> None:
        parts = re.fullmatch(r"pin (\S+)(?: default (\S+))?(?: name (\S+))?(?: (unkept))?", line)
        assert parts is not None, line
        pin = ReaderPin(parts[1], parts[2], parts[3])
        self.network = self.network.replace(pins=(*self.network.pins, pin))
        self._unkept += [pin] if parts[4] else []

    def _take_way(self, line: str) -> None:
        parts = re.fullmatch(r"way (.+) → (.+) via (.+?)(?: (unkept))?", line)
        assert parts is not None, line
        way = WayPin(parts[1], parts[2], tuple(parts[3].split(", ")))
        self.network = self.network.replace(ways=(*self.network.ways, way))
        self._unkept += [way] if parts[4] else []

    def _trip(self, trip: Trip, carried: tuple[str, ...] | None, readers: dict[str, Planned]) -> TripPlan:
        links = shortest(self.network, trip.start, trip.end)
        if links is None:
            return TripPlan(trip.start, trip.end, length=None)
        entries = [self.network.links[link].end for link in links[:-1]]
        called = tuple(
            readers[entry].name or "?"
            for entry, link in zip(entries, links[1:], strict=True)
            if entry in readers and not self.network.links[link].start.endswith(f"/{readers[entry].default}")
        )
        length = sum(self.network.links[link].length for link in links)
        via = tuple(entry for entry in entries if entry in readers)
        return TripPlan(trip.start, trip.end, via, called if carried is None else carried, length, links)


def shortest(network: Network, start: str, end: str) -> tuple[int, ...] | None:
    """The places of the links of a shortest way that ends at the first station it comes to, or ``None``."""
    ways: nx.DiGraph[int] = nx.DiGraph()
    entries = {
        end_of(each.name, reader.start): reader for each in network.junctions for reader in each.readers
    }
    for place, link in enumerate(network.links):
        ways.add_node(place)
        junction = (junction_and_arm(link.end) or ("",))[0]
        goals = {end_of(junction, way) for way in entries[link.end].ways} if link.end in entries else set()
        for after, other in enumerate(network.links):
            if other.start in goals:
                ways.add_edge(place, after, weight=other.length)
    firsts = [place for place, link in enumerate(network.links) if link.start == start]
    lasts = [place for place, link in enumerate(network.links) if link.end == end]
    found: list[tuple[int, list[int]]] = []
    for first in firsts:
        lengths, paths = nx.single_source_dijkstra(ways, first)
        found += [
            (network.links[first].length + lengths[last], paths[last]) for last in lasts if last in paths
        ]
    return tuple(min(found)[1]) if found else None


def _counted(text: str) -> Iterator[str]:
    """``2 Salt, Reed``: Salt twice."""
    for words in text.split(", "):
        number, _, name = words.rpartition(" ")
        yield from [name] * int(number or 1)
