"""The levels pulled apart: how high each lies over the lowest one. No Qt here. Lengths are in cells."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from math import ceil
from typing import Final, NamedTuple

from app.canvas.geometry import Area
from app.depth.projection import Isometric

EDGE: Final = 0.5
"""From the outermost cells to the outline of a level."""
CLOSEST: Final = 0.45
"""Of the gap that pulls levels clear: closer, they hide each other."""
AIR: Final = 1.5
"""Between two levels that are pulled clear of each other."""
WIDEST: Final = 1_000
"""No gap is wider, however far apart the pieces of a plan lie."""


class Extent(NamedTuple):
    """The box on the drawing that something takes, in cells."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """In cells."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """In cells."""
        return self.bottom - self.top


@dataclass(frozen=True)
class Stack:
    """Which levels are shown, and how far apart. Levels in between on which nothing stands take no room."""

    levels: tuple[int, ...]
    """The lowest first."""
    gap: float

    def height(self, level: int) -> float:
        """How high a level lies; one that is not shown lies where the next one above it does."""
        return bisect_left(self.levels, level) * self.gap


def clear_gap(area: Area) -> float:
    """The least gap with which no level covers any of the one below it.

    An upright line meets most of a level where it runs from corner to corner of a square: as many cells as
    the level's shorter side has.
    """
    return min(area.width, area.height) + 2 * EDGE + AIR


def gaps(area: Area) -> range:
    """From the gap that pulls levels clear down to the least that is of use, in whole cells."""
    clear = clear_gap(area)
    widest, closest = ceil(clear), max(1, round(CLOSEST * clear))
    return range(min(widest, WIDEST), min(closest, WIDEST) - 1, -1)


def widest_gap(area: Area, is_readable: Callable[[float], bool]) -> float:
    """The widest gap with which the levels can be read; the closest where none is wide enough for that.

    Closer levels leave each other more room, so it is found by halving: there may be very many gaps.
    """
    tried = gaps(area)
    found = bisect_left(tried, True, key=is_readable)
    return float(tried[min(found, len(tried) - 1)])


def corners(area: Area) -> tuple[tuple[float, float], ...]:
    """The corners of the outline of each level, as (x, z), clockwise from the north-west."""
    west, north = area.west - EDGE, area.north - EDGE
    east, south = area.east + 1 + EDGE, area.south + 1 + EDGE
    return (west, north), (east, north), (east, south), (west, south)


def extent(view: Isometric, area: Area, heights: Iterable[float]) -> Extent:
    """The box around the outlines of levels at these heights."""
    points = [view.point(x, height, z) for height in heights for x, z in corners(area)]
    rights, downs = zip(*points, strict=True)
    return Extent(min(rights), min(downs), max(rights), max(downs))
