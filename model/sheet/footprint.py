"""The plan seen from above: the cells that it covers, and their outline."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

import msgspec

from model.grid import Cell
from model.wording import tr

Point = tuple[int, int]
"""A corner of cells as (x, z): the cell at x, z has the corners x, z to x + 1, z + 1."""
Ring = tuple[Point, ...]
"""Corners in turn, the first not repeated, none in the middle of a straight side."""


class Bounds(NamedTuple):
    """The smallest box of whole cells around a plan, all four in it."""

    west: int
    north: int
    east: int
    south: int

    @property
    def width(self) -> int:
        """Cells from west to east."""
        return self.east - self.west + 1

    @property
    def depth(self) -> int:
        """Cells from north to south."""
        return self.south - self.north + 1


class Outline(msgspec.Struct, frozen=True):
    """One connected part of a footprint; parts that touch at a corner only are two."""

    shell: Ring
    holes: tuple[Ring, ...]


class Footprint(msgspec.Struct, frozen=True):
    """What a plan covers, seen from above."""

    bounds: Bounds
    covered: int
    """Area in cells."""
    outlines: tuple[Outline, ...]

    def __str__(self) -> str:
        """``footprint 15 × 11 cells, 96 covered``, as on the cover."""
        return tr(
            "footprint {width} × {depth} cells, {covered} covered",
            width=self.bounds.width,
            depth=self.bounds.depth,
            covered=self.covered,
        )


def bounds_of(cells: Iterable[Cell]) -> Bounds | None:
    """The box around cells; ``None`` around none."""
    columns = [(x, z) for x, _, z in cells]
    if not columns:
        return None
    xs, zs = zip(*columns, strict=True)
    return Bounds(min(xs), min(zs), max(xs), max(zs))


def footprint(cells: Iterable[Cell]) -> Footprint | None:
    """What cells cover, seen from above; ``None`` for none."""
    # shapely is slow to import, and the materials alone do without.
    from shapely import box, get_parts, unary_union

    cells = tuple(cells)
    bounds = bounds_of(cells)
    if bounds is None:
        return None
    columns = sorted({(x, z) for x, _, z in cells})
    whole = unary_union([box(x, z, x + 1, z + 1) for x, z in columns]).simplify(0)
    outlines = tuple(
        Outline(_ring(part.exterior.coords), tuple(_ring(hole.coords) for hole in part.interiors))
        for part in get_parts(whole)
    )
    return Footprint(bounds, round(whole.area), outlines)


def _ring(coords: Iterable[tuple[float, ...]]) -> Ring:
    corners = [(round(point[0]), round(point[1])) for point in coords]
    return tuple(corners[:-1])
