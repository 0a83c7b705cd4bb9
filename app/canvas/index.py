"""Which pieces lie where on a level, in buckets, so that painting looks only at what is seen."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from typing import Final

from app.canvas.geometry import Area
from model.grid import Cell
from model.parts import RAILS
from model.pieces import Piece
from model.plan import Change

BUCKET: Final = 16
"""Cells along the side of a bucket."""
NO_DOT: Final = 0
RAIL_DOT: Final = 1
OTHER_DOT: Final = 2
DOTS: Final = (NO_DOT, RAIL_DOT, OTHER_DOT)
_NO_DOTS: Final = bytearray(BUCKET * BUCKET)

_Key = tuple[int, int, int]


class _Bucket:
    """Its pieces, and a dot for each, so that a picture from far out asks no piece what it is."""

    __slots__ = ("dots", "pieces")

    def __init__(self) -> None:
        self.pieces: dict[Cell, Piece] = {}
        self.dots = bytearray(BUCKET * BUCKET)

    def copy(self) -> _Bucket:
        """One that is changed on its own."""
        other = _Bucket()
        other.pieces, other.dots = self.pieces.copy(), self.dots[:]
        return other


class PieceIndex:
    """The pieces of a plan in buckets of 16 × 16 cells a level. Follows the plan change by change."""

    def __init__(self, pieces: Iterable[Piece] = ()) -> None:
        self._buckets: dict[_Key, _Bucket] = {}
        for piece in pieces:
            self._add(piece)

    def copy(self) -> PieceIndex:
        """One that follows on its own; costs far less than looking at all pieces."""
        other = PieceIndex()
        other._buckets = {key: bucket.copy() for key, bucket in self._buckets.items()}
        return other

    def become(self, other: PieceIndex) -> None:
        """Takes all over from another one, which must not be used any more."""
        self._buckets = other._buckets

    def follow(self, change: Change) -> None:
        """Applies a change of the plan."""
        for entry in change.taken:
            self._remove(entry.piece.at)
        for entry in change.placed:
            self._add(entry.piece)

    def pieces_in(self, area: Area, level: int) -> Iterator[Piece]:
        """The pieces inside an area of a level."""
        for (_, column, row), bucket in self._buckets_in(area, level):
            if _is_inside(column, row, area):
                yield from bucket.pieces.values()
            else:
                yield from (p for cell, p in bucket.pieces.items() if area.holds(cell.x, cell.z))

    def squares_in(self, area: Area, level: int, side: int) -> Iterator[tuple[int, int]]:
        """Columns and rows of the squares, so many cells wide, that may show a piece in an area, by rows.

        Where there are far more squares than buckets it is asked where the buckets are.
        """
        columns = range(area.west // side, area.east // side + 1)
        rows = range(area.north // side, area.south // side + 1)
        if len(columns) * len(rows) <= len(self._buckets):
            yield from ((column, row) for row in rows for column in columns)
            return
        scale = side // BUCKET
        found = {(key[2] // scale, key[1] // scale) for key, _ in self._buckets_in(area, level)}
        yield from ((column, row) for row, column in sorted(found))

    def dot(self, cell: Cell) -> int:
        """What is seen of a cell from far out."""
        bucket = self._buckets.get(_key(cell))
        return NO_DOT if bucket is None else bucket.dots[_place(cell)]

    def dots_in(self, area: Area, level: int) -> bytes:
        """A dot for each cell of an area of whole buckets, row by row from its north-west corner."""
        found = {(column, row): bucket.dots for (_, column, row), bucket in self._buckets_in(area, level)}
        columns = range(area.west // BUCKET, area.east // BUCKET + 1)
        bands = []
        for row in range(area.north // BUCKET, area.south // BUCKET + 1):
            band = [found.get((column, row), _NO_DOTS) for column in columns]
            bands += [
                b"".join([dots[line : line + BUCKET] for dots in band])
                for line in range(0, BUCKET * BUCKET, BUCKET)
            ]
        return b"".join(bands)

    def extent(self, level: int | None = None) -> Area | None:
        """The smallest area that holds every piece of a level, or of all; ``None`` where there is none."""
        keys = [key for key in self._buckets if level is None or key[0] == level]
        if not keys:
            return None
        return Area(
            min(cell.x for cell in self._cells(keys, 1, min(key[1] for key in keys))),
            min(cell.z for cell in self._cells(keys, 2, min(key[2] for key in keys))),
            max(cell.x for cell in self._cells(keys, 1, max(key[1] for key in keys))),
            max(cell.z for cell in self._cells(keys, 2, max(key[2] for key in keys))),
        )

    def pieces_by_level(self) -> Counter[int]:
        """How many pieces lie on each level; looks at buckets, not at pieces."""
        counts: Counter[int] = Counter()
        for (level, _, _), bucket in self._buckets.items():
            counts[level] += len(bucket.pieces)
        return counts

    def levels(self) -> frozenset[int]:
        """The levels that hold a piece."""
        return frozenset(key[0] for key in self._buckets)

    def _cells(self, keys: list[_Key], axis: int, at: int) -> Iterator[Cell]:
        """The cells of one row or column of buckets."""
        return (cell for key in keys if key[axis] == at for cell in self._buckets[key].pieces)

    def _buckets_in(self, area: Area, level: int) -> Iterator[tuple[_Key, _Bucket]]:
        columns = range(area.west // BUCKET, area.east // BUCKET + 1)
        rows = range(area.north // BUCKET, area.south // BUCKET + 1)
        if len(columns) * len(rows) > len(self._buckets):
            yield from (
                (key, bucket)
                for key, bucket in self._buckets.items()
                if key[0] == level and key[1] in columns and key[2] in rows
            )
            return
        for column in columns:
            for row in rows:
                key = level, column, row
                bucket = self._buckets.get(key)
                if bucket is not None:
                    yield key, bucket

    def _add(self, piece: Piece) -> None:
        cell = piece.at
        bucket = self._buckets.get(_key(cell))
        if bucket is None:
            bucket = self._buckets[_key(cell)] = _Bucket()
        bucket.pieces[cell] = piece
        bucket.dots[_place(cell)] = RAIL_DOT if piece.part in RAILS else OTHER_DOT

    def _remove(self, cell: Cell) -> None:
        key = _key(cell)
        bucket = self._buckets[key]
        del bucket.pieces[cell]
        bucket.dots[_place(cell)] = NO_DOT
        if not bucket.pieces:
            del self._buckets[key]


def _key(cell: Cell) -> _Key:
    return cell.y, cell.x // BUCKET, cell.z // BUCKET


def _place(cell: Cell) -> int:
    """Of a cell's dot among those of its bucket."""
    return cell.z % BUCKET * BUCKET + cell.x % BUCKET


def _is_inside(column: int, row: int, area: Area) -> bool:
    west, north = column * BUCKET, row * BUCKET
    return area.holds(west, north) and area.holds(west + BUCKET - 1, north + BUCKET - 1)
