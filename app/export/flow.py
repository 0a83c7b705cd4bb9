"""Tables that run on over several pages, their head repeated on each. Lengths in mm."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from PySide6.QtCore import QRectF

from app.export.pencil import Pencil


class Strip(NamedTuple):
    """A row of a table: its height, and what draws it into its space."""

    height: float
    draw: Callable[[Pencil, QRectF], None]


@dataclass(frozen=True)
class Table:
    """A head that stands on every page on which rows follow."""

    head: tuple[Strip, ...]
    rows: tuple[Strip, ...]

    @property
    def head_height(self) -> float:
        """Of all strips of the head."""
        return sum(strip.height for strip in self.head)


class Placed(NamedTuple):
    """A strip and how far below the top of the page it stands."""

    top: float
    strip: Strip


TOGETHER = 3
"""Rows that a head must have below it where a table has as many."""


def paginate(tables: Iterable[Table], height: float) -> list[list[Placed]]:
    """The strips page by page; a table begins on a new page where its head and first rows have no room."""
    pages: list[list[Placed]] = [[]]
    used = 0.0
    for table in tables:
        first = table.head_height + sum(row.height for row in table.rows[:TOGETHER])
        if used and used + first > height:
            pages.append([])
            used = 0.0
        used = _place(pages[-1], table.head, used)
        for row in table.rows:
            if used + row.height > height:
                pages.append([])
                used = _place(pages[-1], table.head, 0.0)
            used = _place(pages[-1], (row,), used)
    return pages


def _place(page: list[Placed], strips: Iterable[Strip], top: float) -> float:
    for strip in strips:
        page.append(Placed(top, strip))
        top += strip.height
    return top


def fill(strips: Iterable[Strip], heights: Iterable[float]) -> list[list[Placed]]:
    """The strips in columns, one after another, each as high as is said for it; none is cut in two."""
    columns: list[list[Placed]] = []
    room, used, height = iter(heights), 0.0, 0.0
    for strip in strips:
        if not columns or used + strip.height > height:
            columns.append([])
            used, height = 0.0, next(room)
        used = _place(columns[-1], (strip,), used)
    return columns


def draw_strips(pencil: Pencil, page: Iterable[Placed], area: QRectF) -> None:
    """A page's strips, as broad as the area."""
    for top, strip in page:
        strip.draw(pencil, QRectF(area.left(), area.top() + top, area.width(), strip.height))


def cut(count: int, most: int) -> Iterator[slice]:
    """Slices of at most so many of ``count`` things, as even as can be; one empty slice for none."""
    parts = max(1, -(-count // most))
    ends = [round(part * count / parts) for part in range(parts + 1)]
    return (slice(start, end) for start, end in pairwise(ends))
