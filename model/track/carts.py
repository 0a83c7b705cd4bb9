"""How a cart runs: the way out of each shape, and the trace of a cart over the rails.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Container, Mapping
from enum import StrEnum
from typing import Final

import msgspec

from model.collector import collector_paused
from model.grid import VECTORS, Cell, Heading
from model.plan import Arm
from model.track.rails import STEP, UP, Rails, pack, unpack
from model.track.shapes import ENDS, End, Shape


class Outcome(StrEnum):
    """Why a cart's way ended."""

    ARM = "arm"
    LEAVES_TRACK = "leaves-track"
    STOPPED = "stopped"
    LOOPS = "loops"


class Way(msgspec.Struct, frozen=True):
    """The cells that a cart stood on, and why its way ended."""

    path: tuple[Cell, ...]
    outcome: Outcome
    arm: str | None
    heading: Heading
    """After the last cell."""


def way_out(shape: Shape, heading: Heading) -> End:
    """The end by which a cart with this heading leaves a rail.

    Along a straight it runs on; from one end of a curve to the other; into a curve from a side that is no
    end straight through; across a straight rail to the south or east, across a rising one to the lower end.
    """
    first, second = ENDS[shape]
    if shape.is_rising and heading not in shape.headings:
        return second if first.rise else first
    ax, az = VECTORS[first.heading]
    bx, bz = VECTORS[second.heading]
    hx, hz = VECTORS[heading]
    return first if (bx - ax) * hx + (bz - az) * hz < 0 else second


WAY_OUT: Final[tuple[tuple[End, ...], ...]] = tuple(
    tuple(way_out(shape, heading) for heading in Heading) for shape in Shape
)
"""By shape and heading."""

Exits = Mapping[tuple[int, int], str]
"""The arm by which a cart leaves, by packed cell and heading."""


def exits_of(arms: tuple[Arm, ...]) -> dict[tuple[int, int], str]:
    """Where the arms let carts out; the first arm counts where two share a place."""
    exits: dict[tuple[int, int], str] = {}
    for arm in arms:
        if arm.leave is not None:
            exits.setdefault((pack(arm.leave.at), arm.leave.heading), arm.name)
    return exits


def next_rail(rails: Rails, key: int, end: End) -> int | None:
    """The rail on which a cart stands after it left ``key`` by ``end``, or ``None``."""
    return _rail_at(rails, key + STEP[end.heading] + end.rise)


def _rail_at(rails: Rails, beyond: int) -> int | None:
    """The rail of a cart that rolled into a cell: there, or one level lower."""
    if rails.get(beyond) is not None:
        return beyond
    return beyond - UP if rails.get(beyond - UP) is not None else None


def trace(rails: Rails, stoppers: Container[int], exits: Exits, start: Cell, heading: Heading) -> Way:
    """The way of a cart that enters the cell ``start``, where a rail must stand, with ``heading``."""
    key, going = pack(start), heading
    path: list[int] = []
    doors = {at for at, _ in exits}
    stretch = 1
    while True:
        # Who goes round in a circle meets a state again that is marked ever more seldom (R. P. Brent, 1980).
        marked = key, going
        for _ in range(stretch):
            path.append(key)
            shape = rails.get(key)
            assert shape is not None
            going, rise = WAY_OUT[shape][going]
            beyond = key + STEP[going] + rise
            if beyond in stoppers:
                return _way(path, Outcome.STOPPED, None, going)
            if key in doors and (arm := exits.get((key, going))) is not None:
                return _way(path, Outcome.ARM, arm, going)
            following = _rail_at(rails, beyond)
            if following is None:
                return _way(path, Outcome.LEAVES_TRACK, None, going)
            key = following
            if key == marked[0] and going is marked[1]:
                return _round(rails, path, heading)
        stretch *= 2


def _round(rails: Rails, path: list[int], going: Heading) -> Way:
    """The way of a cart that loops, once round: the cells until the cart stands somewhere as before."""
    seen: set[tuple[int, Heading]] = set()
    for number, key in enumerate(path):
        if (key, going) in seen:
            return _way(path[:number], Outcome.LOOPS, None, going)
        seen.add((key, going))
        shape = rails.get(key)
        assert shape is not None
        going = WAY_OUT[shape][going].heading
    return _way(path, Outcome.LOOPS, None, going)


def _way(path: list[int], outcome: Outcome, arm: str | None, heading: Heading) -> Way:
    with collector_paused():
        return Way(tuple(map(unpack, path)), outcome, arm, heading)
