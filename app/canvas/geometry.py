"""Between pixels and cells: the only place that converts one into the other.

Widget pixels grow to the right and downward; so do x (to the east) and z (to the south), north is up.
A cell (x, z) fills the square from its corner, x·scale right and z·scale below the origin, up to the next
corner. Scale and origin are whole pixels, so that grid lines and straight track fall on whole pixels.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import floor
from typing import Final, NamedTuple

from model.grid import XZ_LIMIT, Cell

ZOOM_STEPS: Final = (1, 2, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96)
"""Pixels a cell."""
FULL_SIZE: Final = 48
"""Pixels a cell at 100 %."""


class Area(NamedTuple):
    """A rectangle of whole cells on a level, both ends included."""

    west: int
    north: int
    east: int
    south: int

    @property
    def width(self) -> int:
        """In cells."""
        return self.east - self.west + 1

    @property
    def height(self) -> int:
        """In cells, from north to south."""
        return self.south - self.north + 1

    def holds(self, x: int, z: int) -> bool:
        """Whether the cell lies inside."""
        return self.west <= x <= self.east and self.north <= z <= self.south

    def with_area(self, other: Area) -> Area:
        """The smallest area that holds both."""
        return Area(
            min(self.west, other.west),
            min(self.north, other.north),
            max(self.east, other.east),
            max(self.south, other.south),
        )

    def within(self, other: Area) -> Area:
        """What both have in common; they must meet."""
        return Area(
            max(self.west, other.west),
            max(self.north, other.north),
            min(self.east, other.east),
            min(self.south, other.south),
        )

    def grown(self, cells: int) -> Area:
        """The area with a margin on all sides."""
        return Area(self.west - cells, self.north - cells, self.east + cells, self.south + cells)


def area_between(a: Cell, b: Cell) -> Area:
    """The area with the two cells in opposite corners."""
    return Area(min(a.x, b.x), min(a.z, b.z), max(a.x, b.x), max(a.z, b.z))


@dataclass(frozen=True)
class Viewport:
    """Which part of a level the widget shows, and how large."""

    scale: int = FULL_SIZE
    """Pixels a cell, one of the zoom steps."""
    origin_x: int = 0
    """Where the west edge of x = 0 lies, in widget pixels."""
    origin_y: int = 0
    """Where the north edge of z = 0 lies, in widget pixels."""

    def place(self, px: float, py: float) -> tuple[float, float]:
        """The point (x, z) under a pixel, in cells."""
        return (px - self.origin_x) / self.scale, (py - self.origin_y) / self.scale

    def cell_at(self, px: float, py: float, level: int) -> Cell:
        """The cell under a pixel, kept within the limits of a plan."""
        x, z = self.place(px, py)
        return Cell(_limited(floor(x)), level, _limited(floor(z)))

    def fraction_at(self, px: float, py: float) -> tuple[float, float]:
        """Where in its cell a pixel lies: (0, 0) is the north-west corner."""
        x, z = self.place(px, py)
        return x - floor(x), z - floor(z)

    def corner(self, x: float, z: float) -> tuple[int, int]:
        """The pixel of the north-west corner of a cell, or of a point in cells."""
        return self.origin_x + round(x * self.scale), self.origin_y + round(z * self.scale)

    def area(self, left: float, top: float, right: float, bottom: float) -> Area:
        """The cells that a rectangle of pixels touches; ``right`` and ``bottom`` are not part of it."""
        west, north = self.place(left, top)
        east, south = self.place(right - 1, bottom - 1)
        return Area(floor(west), floor(north), floor(east), floor(south))

    def panned(self, dx: int, dy: int) -> Viewport:
        """The picture moved by that many pixels."""
        return replace(self, origin_x=self.origin_x + dx, origin_y=self.origin_y + dy)

    def zoomed(self, scale: int, px: float, py: float) -> Viewport:
        """Another scale with the same cell under the pixel (px, py)."""
        px, py = floor(px) + 0.5, floor(py) + 0.5
        x, z = self.place(px, py)
        return Viewport(scale, _origin(px, x, scale), _origin(py, z, scale))

    def centred(self, x: float, z: float, px: float, py: float) -> Viewport:
        """The same scale with the point (x, z), in cells, at a pixel."""
        return replace(self, origin_x=round(px - x * self.scale), origin_y=round(py - z * self.scale))


def _origin(pixel: float, place: float, scale: int) -> int:
    """The whole pixel that keeps a pixel's middle in the cell in which it was."""
    whole = floor(place)
    inside = min(max(round((place - whole) * scale - 0.5), 0), scale - 1) + 0.5
    return round(pixel - inside) - whole * scale


def _limited(place: int) -> int:
    return max(-XZ_LIMIT, min(XZ_LIMIT, place))


def next_step(scale: int, steps: int) -> int:
    """The zoom step so many steps further in (or out, where negative), as far as there are any."""
    at = ZOOM_STEPS.index(scale) + steps
    return ZOOM_STEPS[max(0, min(len(ZOOM_STEPS) - 1, at))]


def fitting_step(area: Area, width: int, height: int, largest: int = FULL_SIZE) -> int:
    """The largest zoom step, up to ``largest``, at which the area has room in so many pixels."""
    fits = [s for s in ZOOM_STEPS if s <= largest and area.width * s <= width and area.height * s <= height]
    return fits[-1] if fits else ZOOM_STEPS[0]
