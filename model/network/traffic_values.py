"""Traffic as values: what is sent through a network, how readers hold carts up, and what was counted."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

import msgspec

from model.network.network import junction_and_arm
from model.network.times import HOUR, seconds_for

DAY: Final = 24
"""Hours."""
HOLD: Final = 3.3
"""Seconds for which the line of a reader of this program is on after the last cart has come: 66 ticks."""
PASSAGE: Final = 2.7
"""Seconds from coming in by the arm until the switches are behind. The three arms of the Saltern Junction, an
example, ask for 118 to 121 ticks in all when it is wired and run dry, and HOLD is 66 of them."""


class Leg(msgspec.Struct, frozen=True):
    """A stretch of a trip: cells to run, and the reader to which they lead, past arms without one."""

    cells: int
    reader: str | None
    """``None``: the station at the end."""
    calls: bool = False
    """Whether the reader takes a waybill from this cart, and so holds."""


class Journey(msgspec.Struct, frozen=True):
    """A trip as the traffic sees it."""

    start: str
    end: str
    per_week: int | float
    legs: tuple[Leg, ...]
    """None where no way leads there: then nobody sets out."""

    @property
    def seconds(self) -> float:
        """On the way, where nothing holds the cart up."""
        return seconds_for(sum(leg.cells for leg in self.legs))


class TrafficSettings(msgspec.Struct, frozen=True):
    """What to simulate.

    A reader lets the next cart in when the one before has passed the switches and its line is off again: that
    is passage and hold after a cart from which it took a waybill, and the passage alone after any other.
    """

    hours: float = DAY
    seed: int = 0
    evenly: bool = False
    """Carts of a trip set out at equal intervals from a moment drawn by chance, not one by one by chance."""
    hold: float = HOLD
    """Seconds."""
    passage: float = PASSAGE
    """Seconds."""
    holds: Mapping[str, float] = {}
    """Where the hold is another: by reader (``Mill/East``), else by junction (``Mill``)."""

    @property
    def seconds(self) -> float:
        """The length of the run."""
        return self.hours * HOUR

    def headway(self, reader: str, *, calls: bool) -> float:
        """Seconds from a cart that comes in until the next may."""
        if not calls:
            return self.passage
        junction = (junction_and_arm(reader) or (reader, ""))[0]
        hold = self.holds.get(reader, self.holds.get(junction, self.hold))
        return self.passage + hold


class QueueCount(msgspec.Struct, frozen=True):
    """What stood in a queue. By Little's law the mean length is arrivals a second times the mean wait."""

    arrivals: int
    mean_length: float
    """Carts that wait, over the whole run."""
    longest: int
    """The most that waited at once."""
    mean_wait: float
    """Seconds, over all arrivals; of those that still wait at the end, as far as they have waited."""


class ReaderTraffic(msgspec.Struct, frozen=True):
    """What came to a reader."""

    reader: str
    """``Mill/East``"""
    queue: QueueCount
    called: int
    """Of the arrivals those that the reader takes a waybill from."""
    utilisation: float
    """The share of the run in which it let nobody in."""
    load: float
    """The same share, were the run endless: from 1 on the queue grows for ever."""


class JunctionTraffic(msgspec.Struct, frozen=True):
    """What came to all readers of a junction together."""

    junction: str
    queue: QueueCount


class TripTraffic(msgspec.Struct, frozen=True):
    """How those fared who made a trip."""

    start: str
    end: str
    departed: int
    arrived: int
    """Of those that set out in the run; the others are under way at its end."""
    mean_seconds: float | None
    """From setting out to arriving; ``None``: nobody arrived."""
    longest_seconds: float | None
    free_seconds: float
    """Where nothing holds a cart up."""


class Traffic(msgspec.Struct, frozen=True):
    """What was counted in a run."""

    settings: TrafficSettings
    readers: tuple[ReaderTraffic, ...]
    """Those that any trip passes, in the order in which the trips come to them."""
    junctions: tuple[JunctionTraffic, ...]
    """Of these readers, in the same order."""
    trips: tuple[TripTraffic, ...]
    """In the order of the file."""

    @property
    def departed(self) -> int:
        """Carts that set out."""
        return sum(trip.departed for trip in self.trips)

    @property
    def arrived(self) -> int:
        """Carts that arrived."""
        return sum(trip.arrived for trip in self.trips)

    @property
    def overloaded(self) -> tuple[ReaderTraffic, ...]:
        """The readers that come to more carts than they can let in, however long the run."""
        return tuple(reader for reader in self.readers if reader.load >= 1)
