"""What a planner has to decide, in whole numbers: journeys over stretches, and what is settled of readers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from math import gcd, lcm
from typing import Final

import msgspec

from model.network.network import Network, ReaderPin, WayPin
from model.network.ways import NO_WAY, Tracks, Ways, shortest_ways, ways_through
from model.progress import Progress

Pin = ReaderPin | WayPin
TRIPS_A_STEP: Final = 500
"""Trips whose ways are found before the caller is asked again whether to go on."""


class Journey(msgspec.Struct, frozen=True, gc=False):
    """All trips from one station to another, as there is no reason to send them by different ways."""

    weight: int
    """How many ride it a week, in units of ``Task.unit``."""
    stretches: tuple[int, ...]
    """All that lie on a way that it may take."""
    only: bool
    """Whether they make one way."""
    complete: bool
    """Whether it may take no other way."""


class Task(msgspec.Struct, frozen=True):
    """What is settled, and what is to be decided."""

    tracks: Tracks
    given: tuple[int | None, ...]
    """For each reader which of its two ways is the default; ``None``: to be decided."""
    names: Mapping[int, int]
    """By reader the place in ``words`` of the name that is pinned to it."""
    words: tuple[str, ...]
    journeys: tuple[Journey, ...]
    of_trip: tuple[int | None, ...]
    """For each trip of the network its journey; ``None``: no way leads there."""
    unit: Fraction
    """What a weight of one means in trips a week."""
    unkept: tuple[Pin, ...]
    """Pins that say what cannot be."""

    @property
    def alike(self) -> frozenset[int]:
        """Readers that are pinned to a name which another one is pinned to as well."""
        words = list(self.names.values())
        return frozenset(reader for reader, word in self.names.items() if words.count(word) > 1)


class Survey:
    """All ways that trips of a network may take, found once for all the tasks that differ in their pins."""

    def __init__(self, network: Network) -> None:
        self.network = network
        self.tracks = Tracks(network)
        self._free: dict[tuple[str, str], Ways] = {}
        self._pinned: dict[WayPin, Ways] = {}

    def run(self) -> Iterator[Progress]:
        """Finds the ways."""
        pairs = dict.fromkeys((trip.start, trip.end) for trip in self.network.trips)
        for number, (pair, ways) in enumerate(shortest_ways(self.tracks, pairs)):
            if number % TRIPS_A_STEP == 0:
                yield Progress("ways", number, len(pairs))
            self._free[pair] = ways
        for pin in self.network.ways:
            self._pinned[pin] = ways_through(self.tracks, pin.start, pin.end, pin.via)
        yield Progress("ways", len(pairs), len(pairs))

    def longer(self, pin: WayPin) -> int:
        """How many cells more a pinned way has than the shortest, where any trip takes it."""
        pinned, free = self._pinned[pin].length, self._free.get((pin.start, pin.end), NO_WAY).length
        return pinned - free if pinned is not None and free is not None else 0

    def task(self, pins: Sequence[Pin]) -> Task:
        """The task with some of the pins."""
        unkept: list[Pin] = []
        given = self._given([pin for pin in pins if isinstance(pin, ReaderPin)], unkept)
        pinned = self._pinned_ways([pin for pin in pins if isinstance(pin, WayPin)], unkept)
        words: dict[str, int] = {}
        names: dict[int, int] = {}
        for number, reader in enumerate(self.tracks.readers):
            for pin in pins:
                if isinstance(pin, ReaderPin) and pin.reader == reader.key and pin.name is not None:
                    names[number] = words.setdefault(pin.name, len(words))
        journeys, of_trip, unit = self._journeys(pinned)
        return Task(self.tracks, given, names, tuple(words), journeys, of_trip, unit, tuple(unkept))

    def _given(self, pins: Sequence[ReaderPin], unkept: list[Pin]) -> tuple[int | None, ...]:
        """The defaults that are settled, by the file or by a pin."""
        wanted = {reader.key: reader.spec.default for reader in self.tracks.readers}
        ways = {reader.key: reader.spec.ways for reader in self.tracks.readers}
        for pin in pins:
            if pin.default is not None and pin.default in ways.get(pin.reader, ()):
                wanted[pin.reader] = pin.default
            elif pin.default is not None or pin.reader not in wanted:
                unkept.append(pin)
        return tuple(
            ways[key].index(default) if default is not None and default in ways[key] else None
            for key, default in wanted.items()
        )

    def _pinned_ways(self, pins: Sequence[WayPin], unkept: list[Pin]) -> dict[tuple[str, str], Ways]:
        unkept += [pin for pin in pins if self._pinned[pin].length is None]
        return {(pin.start, pin.end): self._pinned[pin] for pin in pins if pin not in unkept}

    def _journeys(
        self, pinned: Mapping[tuple[str, str], Ways]
    ) -> tuple[tuple[Journey, ...], tuple[int | None, ...], Fraction]:
        weights: dict[tuple[str, str], Fraction] = {}
        for trip in self.network.trips:
            # As it is written: 0.1 means a tenth.
            per_week = Fraction(str(trip.per_week))
            weights[trip.start, trip.end] = weights.get((trip.start, trip.end), Fraction(0)) + per_week
        known = {pair: pinned.get(pair, self._free[pair]) for pair in weights}
        reached = {
            pair: number for number, pair in enumerate(p for p in known if known[p].length is not None)
        }
        unit = _unit([weights[pair] for pair in reached])
        journeys = tuple(
            Journey(int(weights[pair] / unit), known[pair].stretches, known[pair].only, known[pair].complete)
            for pair in reached
        )
        return journeys, tuple(reached.get((trip.start, trip.end)) for trip in self.network.trips), unit


def _unit(weights: Sequence[Fraction]) -> Fraction:
    """The greatest of which all weights are multiples."""
    below = lcm(*(weight.denominator for weight in weights))
    return Fraction(gcd(*(int(weight * below) for weight in weights)) or 1, below)
