"""How large a level is drawn, and on how many pages: 10, 8, 6 or 5 mm a cell, then several pages."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Final

from PySide6.QtCore import QRectF

from app.export.arm_tags import Tag, bounds_with_tags
from app.export.plan_picture import Window, window_about
from model.sheet.footprint import Bounds

Square = tuple[int, int]
"""x and z."""
SCALES: Final = (10.0, 8.0, 6.0, 5.0)
"""mm a cell."""
BAND: Final = 5.0
"""The least breadth of the coordinates' band on each side of the plan, in mm."""


@dataclass(frozen=True)
class Tile:
    """One page's part of a level: its window, and its column and row among the pages."""

    window: Window
    column: int
    row: int


def tiles(bounds: Bounds, tags: tuple[Tag, ...], area: QRectF, squares: Iterable[Square]) -> list[Tile]:
    """The pages of a level: one where the level fits at some scale, else several at the smallest.

    Of several only those on which one of the squares, which are the places of pieces, lies.
    """
    inner = area.adjusted(BAND, BAND, -BAND, -BAND)
    for cell in SCALES:
        needed = bounds_with_tags(bounds, tags, cell)
        window = window_about(needed, inner, cell)
        if needed.width <= window.columns and needed.depth <= window.rows:
            return [Tile(window, 0, 0)]
    return list(_several(needed, window, squares))


def _several(needed: Bounds, page: Window, squares: Iterable[Square]) -> Iterator[Tile]:
    """Pages with one cell of overlap between neighbours, row by row."""
    columns = _Cut(needed.west, needed.width, page.columns)
    rows = _Cut(needed.north, needed.depth, page.rows)
    used = {(row, column) for x, z in squares for row in rows.showing(z) for column in columns.showing(x)}
    for row, column in sorted(used):
        yield Tile(replace(page, west=columns.start(column), north=rows.start(row)), column, row)


class _Cut:
    """One axis cut into pages; what the pages show beyond the level is shared between both ends."""

    def __init__(self, first: int, length: int, shown: int) -> None:
        self._step = shown - 1
        self._pages = max(1, -(-(length - 1) // self._step))
        self._first = first - (self._pages * self._step + 1 - length) // 2

    def start(self, page: int) -> int:
        """The first cell of a page."""
        return self._first + page * self._step

    def showing(self, cell: int) -> Iterator[int]:
        """The pages that show a cell: two where they overlap."""
        page, within = divmod(cell - self._first, self._step)
        if page < self._pages:
            yield page
        if page and not within:
            yield page - 1
