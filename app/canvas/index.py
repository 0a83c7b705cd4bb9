"""Which pieces lie where on a level, in buckets, so that painting looks only at what is seen."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from app.canvas.geometry import Area
from model.grid import Cell
from model.pieces import Piece
from model.plan import Change

BUCKET: Final = 16
"""Cells along the side of a bucket."""

_Key = tuple[int, int, int]


class PieceIndex:
    """The pieces of a plan in buckets of 16 × 16 cells a level. Follows the plan change by change."""

    def __init__(self, pieces: Iterable[Piece] = ()) -> None:
        self._buckets: dict[_Key, dict[Cell, Piece]] = {}
        for piece in pieces:
            self._add(piece)

    def follow(self, change: Change) -> None:
        """Applies a change of the plan."""
        for entry in change.taken:
            self._remove(entry.piece.at)
        for entry in change.placed:
            self._add(entry.piece)

    def pieces_in(self, area: Area, level: int) -> Iterator[Piece]:
        """The pieces inside an area of a level."""
        for bucket in self._buckets_in(area, level):
            for cell, piece in bucket.items():
                if area.holds(cell.x, cell.z):
                    yield piece

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

    def levels(self) -> frozenset[int]:
        """The levels that hold a piece."""
        return frozenset(key[0] for key in self._buckets)

    def _cells(self, keys: list[_Key], axis: int, at: int) -> Iterator[Cell]:
        """The cells of one row or column of buckets."""
        return (cell for key in keys if key[axis] == at for cell in self._buckets[key])

    def _buckets_in(self, area: Area, level: int) -> Iterator[dict[Cell, Piece]]:
        columns = range(area.west // BUCKET, area.east // BUCKET + 1)
        rows = range(area.north // BUCKET, area.south // BUCKET + 1)
        if len(columns) * len(rows) > len(self._buckets):
            yield from (
                bucket
                for (y, column, row), bucket in self._buckets.items()
                if y == level and column in columns and row in rows
            )
            return
        for column in columns:
            for row in rows:
                bucket = self._buckets.get((level, column, row))
                if bucket is not None:
                    yield bucket

    def _add(self, piece: Piece) -> None:
        cell = piece.at
        self._buckets.setdefault(_key(cell), {})[cell] = piece

    def _remove(self, cell: Cell) -> None:
        key = _key(cell)
        bucket = self._buckets[key]
        del bucket[cell]
        if not bucket:
            del self._buckets[key]


def _key(cell: Cell) -> _Key:
    return cell.y, cell.x // BUCKET, cell.z // BUCKET
