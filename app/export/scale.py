"""How large a level is drawn, and on how many pages: 10, 8, 6 or 5 mm a cell, then several pages."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QRectF

from app.export.arm_tags import Tag, bounds_with_tags
from app.export.plan_picture import Window, window_about
from model.sheet.footprint import Bounds

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


def tiles(bounds: Bounds, tags: tuple[Tag, ...], area: QRectF) -> list[Tile]:
    """The pages of a level: one where the level fits at some scale, else several at the smallest."""
    inner = area.adjusted(BAND, BAND, -BAND, -BAND)
    for cell in SCALES:
        needed = bounds_with_tags(bounds, tags, cell)
        window = window_about(needed, inner, cell)
        if needed.width <= window.columns and needed.depth <= window.rows:
            return [Tile(window, 0, 0)]
    return list(_several(needed, window))


def _several(needed: Bounds, page: Window) -> Iterator[Tile]:
    """Pages with one cell of overlap between neighbours."""
    for row, north in enumerate(_starts(needed.north, needed.depth, page.rows)):
        for column, west in enumerate(_starts(needed.west, needed.width, page.columns)):
            yield Tile(
                Window(west, north, page.columns, page.rows, page.left, page.top, page.cell), column, row
            )


def _starts(first: int, length: int, shown: int) -> Iterator[int]:
    """The first cell of each page along one axis; the overhang is shared between both ends."""
    pages = max(1, -(-(length - 1) // (shown - 1)))
    overhang = pages * (shown - 1) + 1 - length
    return iter([first - overhang // 2 + page * (shown - 1) for page in range(pages)])
