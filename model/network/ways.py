"""Shortest ways through a network: for two stations all that are equally short.

A place on a way is a station where a cart sets out, one where it arrives, or an arm by which it enters a
junction; what it does next depends on nothing else. A cart that arrives at a station stops there, so no way
runs on through one. Of several links out of one arm carts take the first in file order; out of a station the
traveller chooses.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Any, Final, NamedTuple

import msgspec

from model.network.network import Network, ReaderSpec, end_of, junction_and_arm
from model.network.riding import first_links, specs_by_end

NO_TURN: Final = -1
"""Where a cart has no choice."""
STARTS_AT_ONCE: Final = 64
"""Stations whose distances are held at one time."""
TIED_LIMIT: Final = 2_000_000
"""Stretches that are kept of ways equally short, over all trips; beyond, one way a trip is kept."""


class Reader(NamedTuple):
    """Where a cart is sent one of two ways."""

    key: str
    """``Mill/East``"""
    spec: ReaderSpec


class Stretch(NamedTuple):
    """A link as a part of a way. Turn 2·r + w: reader r sends the cart its w-th way (0 or 1)."""

    start: int
    end: int
    length: int
    link: int
    turn: int


class Ways(msgspec.Struct, frozen=True, gc=False):
    """All shortest ways between two stations: the stretches that lie on any of them."""

    length: int | None
    """Cells; ``None``: no way leads there."""
    stretches: tuple[int, ...]
    """Places in ``Tracks.stretches``; none comes before one that leads to it."""
    only: bool = True
    """Whether they make one way."""
    complete: bool = True
    """Whether none was left out for want of room."""


NO_WAY: Final = Ways(None, ())


class Tracks:
    """The network in whole numbers: places, and stretches between them."""

    def __init__(self, network: Network) -> None:
        names = dict.fromkeys(station.name for station in network.stations)
        self.departure = {name: number for number, name in enumerate(names)}
        self._arrival = {name: len(names) + number for number, name in enumerate(names)}
        self._entry: dict[str, int] = {}
        self.readers: list[Reader] = []
        self.stretches: list[Stretch] = []
        entered = specs_by_end(network)
        for key in entered:
            self._entry[key] = 2 * len(names) + len(self._entry)
        self.places = 2 * len(names) + len(self._entry)
        for number, link in enumerate(network.links):
            if link.start in self.departure:
                self._add(network, self.departure[link.start], number, NO_TURN)
        onward = first_links(network)
        for key, spec in entered.items():
            self._leave(network, onward, key, spec)
        self.into: list[list[int]] = [[] for _ in range(self.places)]
        for number, stretch in enumerate(self.stretches):
            self.into[stretch.end].append(number)

    def arrival(self, station: str) -> int | None:
        """The place where carts arrive, or ``None``: there is no such station."""
        return self._arrival.get(station)

    def arrivals(self) -> list[int]:
        """All places where carts arrive."""
        return list(self._arrival.values())

    def entry(self, key: str) -> int | None:
        """The place where carts enter by an arm, or ``None``: nothing is said of such carts."""
        return self._entry.get(key)

    def distances(self, starts: Sequence[int]) -> Iterator[list[float]]:
        """For each place to start from the cells to every place; infinite where no way leads.

        Whole numbers are exact in them, since no way is longer than 2⁵³ cells.
        """
        if not self.stretches:
            nowhere = [float("inf")] * self.places
            yield from ([*nowhere[:start], 0.0, *nowhere[start + 1 :]] for start in starts)
            return
        # scipy is slow to import, and only this needs it.
        from scipy.sparse.csgraph import dijkstra

        graph = self._graph()
        for first in range(0, len(starts), STARTS_AT_ONCE):
            several = list(starts[first : first + STARTS_AT_ONCE])
            yield from (row.tolist() for row in dijkstra(graph, indices=several))

    def ways(self, distance: Sequence[float], end: int, room: int) -> Ways:
        """All ways that are as short as the distances to an end say, or one of them where room is short."""
        if distance[end] == float("inf"):
            return NO_WAY
        found, seen = self._lying_on(distance, end)
        length, only = int(distance[end]), len(found) == len(seen) - 1
        if not only and len(found) > room:
            return Ways(length, self.one_way(found, end), complete=False)
        return Ways(length, tuple(found), only)

    def one_way(self, stretches: Iterable[int], end: int) -> tuple[int, ...]:
        """Of several ways to an end the one whose stretches come first in the file, seen from the end."""
        before: dict[int, int] = {}
        for number in stretches:
            place = self.stretches[number].end
            before[place] = min(number, before.get(place, number))
        way: list[int] = []
        while end in before:
            way.append(before[end])
            end = self.stretches[way[-1]].start
        return tuple(reversed(way))

    def _lying_on(self, distance: Sequence[float], end: int) -> tuple[list[int], set[int]]:
        """The stretches of all shortest ways, nearest to the start first, and the places on them."""
        found: list[int] = []
        seen, waiting = {end}, [end]
        for place in waiting:
            for number in self.into[place]:
                start, _, length, _, _ = self.stretches[number]
                if distance[start] + length == distance[place]:
                    found.append(number)
                    if start not in seen:
                        seen.add(start)
                        waiting.append(start)
        found.sort(key=lambda number: (distance[self.stretches[number].start], number))
        return found, seen

    def _graph(self) -> Any:
        """For scipy, with the shortest of parallel stretches only: it would add them up."""
        from scipy.sparse import csr_array

        shortest: dict[tuple[int, int], int] = {}
        for start, end, length, _, _ in self.stretches:
            shortest[start, end] = min(length, shortest.get((start, end), length))
        rows, columns = zip(*shortest, strict=True)
        return csr_array((list(map(float, shortest.values())), (rows, columns)), shape=(self.places,) * 2)

    def _leave(self, network: Network, onward: Mapping[str, int], key: str, spec: ReaderSpec) -> None:
        """The stretches by which carts leave that entered by an arm."""
        junction = key[: -len(spec.start) - 1]
        reader = len(self.readers)
        if spec.chooses:
            self.readers.append(Reader(key, spec))
        for way, arm in enumerate(spec.ways[:2]):
            link = onward.get(end_of(junction, arm))
            if link is not None:
                self._add(network, self._entry[key], link, 2 * reader + way if spec.chooses else NO_TURN)

    def _add(self, network: Network, start: int, number: int, turn: int) -> None:
        """A stretch along a link, where the link leads anywhere."""
        link = network.links[number]
        ends = self._arrival if junction_and_arm(link.end) is None else self._entry
        if link.end in ends:
            self.stretches.append(Stretch(start, ends[link.end], link.length, number, turn))


def shortest_ways(tracks: Tracks, trips: Iterable[tuple[str, str]]) -> Iterator[tuple[tuple[str, str], Ways]]:
    """For each two stations all shortest ways from the one to the other, grouped by where they start."""
    by_start: dict[int, list[tuple[str, str]]] = {}
    for trip in dict.fromkeys(trips):
        if trip[0] in tracks.departure and tracks.arrival(trip[1]) is not None:
            by_start.setdefault(tracks.departure[trip[0]], []).append(trip)
        else:
            yield trip, NO_WAY
    room = TIED_LIMIT
    for several, distance in zip(by_start.values(), tracks.distances(list(by_start)), strict=True):
        for start, end in several:
            arrival = tracks.arrival(end)
            ways = Ways(0, ()) if start == end or arrival is None else tracks.ways(distance, arrival, room)
            room -= 0 if ways.only else len(ways.stretches)
            yield (start, end), ways


def ways_through(tracks: Tracks, start: str, end: str, via: Sequence[str]) -> Ways:
    """The shortest ways that enter by these arms in this order, none by one arm twice.

    Where ways equally short could meet a place in two of their parts, one way is given.
    """
    places = [tracks.departure.get(start), *map(tracks.entry, via), tracks.arrival(end)]
    known = [place for place in places if place is not None]
    if len(set(known)) < len(places):
        return NO_WAY
    parts = [
        tracks.ways(distance, to, TIED_LIMIT)
        for distance, (_, to) in zip(tracks.distances(known[:-1]), pairwise(known), strict=True)
    ]
    if _meets_itself(tracks, parts):
        parts = [
            msgspec.structs.replace(part, stretches=tracks.one_way(part.stretches, to), only=True)
            for part, to in zip(parts, known[1:], strict=True)
        ]
    if any(part.length is None for part in parts) or _meets_itself(tracks, parts):
        return NO_WAY
    stretches = tuple(number for part in parts for number in part.stretches)
    length = sum(part.length or 0 for part in parts)
    return Ways(length, stretches, all(part.only for part in parts), all(part.complete for part in parts))


def _meets_itself(tracks: Tracks, parts: Iterable[Ways]) -> bool:
    """Whether a place is reached in more than one part."""
    reached = [{tracks.stretches[number].end for number in part.stretches} for part in parts]
    return len(set().union(*reached)) < sum(map(len, reached))
