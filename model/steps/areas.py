"""Pieces that are no rails, grouped: equal parts that fill a rectangle, and the few that stand alone."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final, NamedTuple

from model.parts import FACED, Part
from model.pieces import Piece

AT_ONCE: Final = 4
"""Equal parts that stand alone in one step, at most: each is named by its cell."""


class Area(NamedTuple):
    """Equal pieces on one level that are placed in one step."""

    pieces: tuple[Piece, ...]
    """Row by row from the north-west corner; or each somewhere else, where there are no lengths."""
    across: int = 0
    """Cells to the east."""
    deep: int = 0
    """Cells to the south."""

    @property
    def is_broad(self) -> bool:
        """Whether it is more than a line."""
        return self.across > 1 and self.deep > 1


class Rectangle(NamedTuple):
    """Filled cells of one level, both corners within."""

    north: int
    west: int
    south: int
    east: int

    @property
    def flipped(self) -> Rectangle:
        """With x and z changed about."""
        return Rectangle(self.west, self.north, self.east, self.south)


Spot = tuple[int, int]
"""z and x."""


def areas(pieces: Iterable[Piece]) -> Iterator[Area]:
    """The pieces of one level in groups of equal ones, in the order of the catalogue, then from the north."""
    alike: dict[object, dict[Spot, Piece]] = {}
    for piece in pieces:
        alike.setdefault(_kind(piece), {})[piece.at.z, piece.at.x] = piece
    catalogue = list(Part)
    groups = sorted(alike.values(), key=min)
    groups.sort(key=lambda group: catalogue.index(next(iter(group.values())).part))
    for group in groups:
        yield from _areas(group)


def _kind(piece: Piece) -> object:
    """What equal pieces have in common: all but the cell, and a facing that means nothing."""
    facing = piece.facing if piece.part in FACED else None
    return piece.part, facing, piece.delay, piece.mode, piece.wooden, piece.holds


def _areas(group: dict[Spot, Piece]) -> Iterator[Area]:
    alone: list[Piece] = []
    for north, west, south, east in sorted(_fewest_rectangles(set(group))):
        found = tuple(group[z, x] for z in range(north, south + 1) for x in range(west, east + 1))
        if len(found) == 1:
            alone += found
        else:
            yield Area(found, east - west + 1, south - north + 1)
    for first in range(0, len(alone), AT_ONCE):
        yield Area(tuple(alone[first : first + AT_ONCE]))


def _fewest_rectangles(filled: set[Spot]) -> list[Rectangle]:
    """Of three ways to cut an area up the one with the fewest parts: by rows, by columns, by the longer."""
    wide, high = _lengths(filled), _lengths(_flipped(filled))
    along_rows = {(z, x) for z, x in filled if wide[z, x] >= high[x, z]}
    return min((_cut(filled, rows) for rows in (filled, set[Spot](), along_rows)), key=len)


def _cut(filled: set[Spot], along_rows: set[Spot]) -> list[Rectangle]:
    """The one part of an area cut by rows, the rest by columns."""
    by_columns = _rectangles(_flipped(filled - along_rows))
    return [*_rectangles(along_rows), *(rectangle.flipped for rectangle in by_columns)]


def _flipped(spots: Iterable[Spot]) -> set[Spot]:
    return {(x, z) for z, x in spots}


def _lengths(filled: Iterable[Spot]) -> dict[Spot, int]:
    """For each spot the length of the unbroken row that it is in."""
    return {(z, x): east - west + 1 for z, west, east in _rows(filled) for x in range(west, east + 1)}


def _rectangles(filled: Iterable[Spot]) -> list[Rectangle]:
    """Rows, those put together that lie below one another and are of one length."""
    grown: list[Rectangle] = []
    last: dict[Spot, int] = {}
    for z, west, east in _rows(filled):
        index = last.get((west, east))
        if index is not None and grown[index].south == z - 1:
            grown[index] = grown[index]._replace(south=z)
        else:
            last[west, east] = len(grown)
            grown.append(Rectangle(z, west, z, east))
    return grown


def _rows(filled: Iterable[Spot]) -> Iterator[tuple[int, int, int]]:
    """Unbroken rows from the north: z, the first x and the last."""
    row: list[Spot] = []
    for spot in sorted(filled):
        if row and spot != (row[-1][0], row[-1][1] + 1):
            yield row[0][0], row[0][1], row[-1][1]
            row = []
        row.append(spot)
    if row:
        yield row[0][0], row[0][1], row[-1][1]
