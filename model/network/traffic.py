"""Carts on their way through a network over some hours: events in the order of time, queues before readers.

A cart runs at the highest speed. At a reader it waits, first come, first served, until that lets it in, and
takes no room while it waits: a long queue blocks nobody else. What carts from two arms of a junction do to
each other is left out: the headway of the reader is all that keeps carts apart.
"""

from __future__ import annotations

from collections.abc import Generator, Iterator, Sequence
from heapq import heappop, heappush
from typing import Final, NamedTuple

from model.network.network import junction_and_arm
from model.network.times import CELLS_A_SECOND, WEEK
from model.network.traffic_clock import moments
from model.network.traffic_queue import Queue
from model.network.traffic_values import (
    Journey,
    JunctionTraffic,
    ReaderTraffic,
    Traffic,
    TrafficSettings,
    TripTraffic,
)
from model.progress import Progress

EVENTS_A_STEP: Final = 5_000
"""Between two looks at whether to go on."""


class _Gate:
    """A reader: whom it lets in when."""

    __slots__ = ("busy", "called", "free_at", "headways", "junction", "queue")

    def __init__(self, headways: tuple[float, float], junction: Queue) -> None:
        self.headways = headways
        """After a cart that does not call, and after one that does."""
        self.junction = junction
        self.queue = Queue()
        self.free_at = self.busy = 0.0
        self.called = 0

    def come(self, now: float, calls: bool, end: float) -> float:
        """A cart comes; gives the moment at which it is let in."""
        start = max(now, self.free_at)
        self.free_at = start + self.headways[calls]
        self.busy += max(0.0, min(self.free_at, end) - start)
        self.called += calls
        for queue in (self.queue, self.junction):
            queue.arrivals += 1
            queue.waited += min(start, end) - now
            if start > now:
                queue.join(now)
        return start

    def let_in(self, now: float) -> None:
        """The first that waits goes in."""
        self.queue.leave(now)
        self.junction.leave(now)


class _Trip:
    """A journey under way, and what is counted of it."""

    __slots__ = ("arrived", "clock", "departed", "journey", "legs", "longest", "seconds")

    def __init__(self, journey: Journey, clock: Iterator[float], legs: list[_Stretch]) -> None:
        self.journey, self.clock, self.legs = journey, clock, legs
        self.departed = self.arrived = 0
        self.seconds = self.longest = 0.0

    def arrive(self, seconds: float) -> None:
        self.arrived += 1
        self.seconds += seconds
        self.longest = max(self.longest, seconds)

    def counted(self) -> TripTraffic:
        journey, came = self.journey, self.arrived
        mean, longest = (self.seconds / came, self.longest) if came else (None, None)
        return TripTraffic(journey.start, journey.end, self.departed, came, mean, longest, journey.seconds)


class _Stretch(NamedTuple):
    """A leg as the run needs it."""

    seconds: float
    gate: _Gate | None
    calls: bool


_Event = tuple[float, int, "_Gate | None", "_Trip | None", int, float]
"""When; how many events were known before; the gate that lets its first cart in, or else the trip; the leg to
whose end its cart comes, or SETS_OUT; and when that cart set out."""
SETS_OUT: Final = -1


def simulate(journeys: Sequence[Journey], settings: TrafficSettings) -> Iterator[Progress | Traffic]:
    """Run the traffic; the last value is what was counted, and between any two the run may be given up.

    The network is empty at the start, and the run ends on time: some carts are then still under way. The same
    journeys and settings give the same counts.
    """
    run = _Run(journeys, settings)
    yield from run.steps()
    yield run.counted()


class _Run:
    """The state of a run."""

    def __init__(self, journeys: Sequence[Journey], settings: TrafficSettings) -> None:
        self._settings, self._end = settings, settings.seconds
        self._gates: dict[str, _Gate] = {}
        self._junctions: dict[str, Queue] = {}
        self._loads: dict[str, float] = {}
        self._trips = [self._trip(place, journey) for place, journey in enumerate(journeys)]
        self._number = 0
        self._events: list[_Event] = []
        for trip in self._trips:
            self._next_cart(trip)

    def _trip(self, place: int, journey: Journey) -> _Trip:
        per_week = journey.per_week if journey.legs else 0
        legs = list[_Stretch]()
        for leg in journey.legs:
            gate = None if leg.reader is None else self._gate(leg.reader)
            legs.append(_Stretch(leg.cells / CELLS_A_SECOND, gate, leg.calls))
            if leg.reader is not None:
                headway = self._settings.headway(leg.reader, calls=leg.calls)
                self._loads[leg.reader] += headway * per_week / WEEK
        return _Trip(journey, moments(per_week, place, self._settings), legs)

    def _gate(self, reader: str) -> _Gate:
        if reader not in self._gates:
            junction = (junction_and_arm(reader) or (reader, ""))[0]
            queue = self._junctions.setdefault(junction, Queue())
            headway = self._settings.headway
            both = (headway(reader, calls=False), headway(reader, calls=True))
            self._gates[reader] = _Gate(both, queue)
            self._loads[reader] = 0.0
        return self._gates[reader]

    def steps(self) -> Generator[Progress]:
        """All events before the end."""
        events, done = self._events, 0
        while events:
            now, _, gate, trip, leg, since = heappop(events)
            if gate is not None:
                gate.let_in(now)
            elif trip is not None:
                self._move(trip, leg, since, now)
            done += 1
            if done % EVENTS_A_STEP == 0:
                yield Progress("traffic", int(now), int(self._end))

    def _move(self, trip: _Trip, leg: int, since: float, now: float) -> None:
        """A cart sets out, comes to a reader, or arrives."""
        if leg == SETS_OUT:
            trip.departed += 1
            self._next_cart(trip)
        elif (gate := trip.legs[leg].gate) is None:
            trip.arrive(now - since)
            return
        else:
            start = gate.come(now, trip.legs[leg].calls, self._end)
            if start > now:
                self._push(start, gate, None, 0, 0.0)
            now = start
        self._push(now + trip.legs[leg + 1].seconds, None, trip, leg + 1, since)

    def _next_cart(self, trip: _Trip) -> None:
        at = next(trip.clock, self._end)
        self._push(at, None, trip, SETS_OUT, at)

    def _push(self, at: float, gate: _Gate | None, trip: _Trip | None, leg: int, since: float) -> None:
        """Something will happen; what lies beyond the end of the run will not."""
        if at < self._end:
            self._number += 1
            heappush(self._events, (at, self._number, gate, trip, leg, since))

    def counted(self) -> Traffic:
        """What was counted."""
        junctions = (JunctionTraffic(name, queue.count(self._end)) for name, queue in self._junctions.items())
        readers = tuple(self._reader(reader, gate) for reader, gate in self._gates.items())
        return Traffic(
            self._settings, readers, tuple(junctions), tuple(trip.counted() for trip in self._trips)
        )

    def _reader(self, reader: str, gate: _Gate) -> ReaderTraffic:
        share = gate.busy / self._end if self._end else 0.0
        return ReaderTraffic(reader, gate.queue.count(self._end), gate.called, share, self._loads[reader])
