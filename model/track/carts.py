"""How a cart runs: the way out of each shape, and the trace of a cart over the rails.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Container, Mapping
from enum import StrEnum
from typing import Final

import msgspec

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
    beyond = key + STEP[end.heading] + end.rise
    if rails.get(beyond) is not None:
        return beyond
    return beyond - UP if rails.get(beyond - UP) is not None else None


def trace(rails: Rails, stoppers: Container[int], exits: Exits, start: Cell, heading: Heading) -> Way:
    """The way of a cart that enters the cell ``start``, where a rail must stand, with ``heading``."""
    key, going = pack(start), heading
    path: list[int] = []
    seen: set[int] = set()
    while (state := key * 4 + going) not in seen:
        seen.add(state)
        path.append(key)
        shape = rails.get(key)
        assert shape is not None
        end = WAY_OUT[shape][going]
        going = end.heading
        if key + STEP[going] + end.rise in stoppers:
            return _way(path, Outcome.STOPPED, None, going)
        arm = exits.get((key, going))
        if arm is not None:
            return _way(path, Outcome.ARM, arm, going)
        following = next_rail(rails, key, end)
        if following is None:
            return _way(path, Outcome.LEAVES_TRACK, None, going)
        key = following
    return _way(path, Outcome.LOOPS, None, going)


def _way(path: list[int], outcome: Outcome, arm: str | None, heading: Heading) -> Way:
    return Way(tuple(map(unpack, path)), outcome, arm, heading)
