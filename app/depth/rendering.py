"""Puts together what the view in depth shows: the levels of a plan view, as far as they are in sight."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import chain
from typing import Final

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from app.canvas.geometry import Area
from app.canvas.index import BUCKET
from app.canvas.patience import Patience
from app.canvas.symbols.size import Detail
from app.canvas.symbols.ways import Ground, WayMark, band_marks, chevron_marks
from app.canvas.view import PlanView
from app.canvas.ways import ShownWay, shown_ways
from app.depth.chunks import Chunk, Chunks, chunks_in
from app.depth.lines import LevelLines
from app.depth.names import names_of
from app.depth.picture import Frame, Level
from app.depth.words import level_words, pieces_words
from model.grid import Cell

MOST_OUTLINED: Final = 2_000
"""Corners of chosen cells up to which their common outline is found."""


@dataclass
class Rendering:
    """One picture: what of the plan it shows, and whether all of it is there yet."""

    plan_view: PlanView
    chunks: Chunks
    frame: Frame
    room: QRectF
    """What of the widget is to be painted."""
    pieces: Counter[int]
    """By level."""
    patience: Patience
    is_complete: bool = True
    shows_ways: bool = True

    @cached_property
    def ways(self) -> list[ShownWay]:
        """The ways of carts that the plan view shows, as far as they are shown here."""
        if not self.shows_ways:
            return []
        return shown_ways(self.plan_view.previews.shown.runs, self.plan_view.scene.is_plain)

    def levels(self) -> Iterator[Level]:
        """The levels, the lowest first."""
        for number in self.frame.stack.levels:
            yield self._level(number)

    def _level(self, number: int) -> Level:
        frame, seen = self.frame, self._seen(number)
        far = frame.size.detail is Detail.DOT
        arms = self.plan_view.document.plan.arms
        return Level(
            number,
            level_words(number),
            pieces_words(self.pieces[number]),
            number == self.plan_view.level,
            [] if far or seen is None else list(self._lines(number, seen)),
            [] if frame.size.detail <= Detail.LINES else list(names_of(arms, number)),
            None if far or seen is None else self._chosen(number, seen),
            list(self.chunks.dots(seen, number)) if far and seen is not None else [],
            *(([], []) if far else self._ways(number)),
        )

    def _ways(self, level: int) -> tuple[list[WayMark], list[WayMark]]:
        """Of the ways on a level, what lies under the symbols and what over them."""
        frame = self.frame
        ground = Ground(QPainter(), 0, 0, frame.size, frame.theme, level)
        bands = (band_marks(ground, way.steps, way.kind, barred=way.is_barred) for way in self.ways)
        chevrons = (chevron_marks(ground, way.steps, way.kind) for way in self.ways)
        return [*chain.from_iterable(bands)], [*chain.from_iterable(chevrons)]

    def _seen(self, level: int) -> Area | None:
        """The cells of a level of which something may be in sight, slopes up from them too."""
        frame, room = self.frame, self.room.adjusted(0, 0, 0, self.frame.stack.gap * self.frame.size.c)
        height, c = frame.stack.height(level), frame.size.c
        places = [
            frame.view.place((point.x() - frame.left) / c, (point.y() - frame.top) / c, height)
            for point in (room.topLeft(), room.topRight(), room.bottomRight(), room.bottomLeft())
        ]
        xs, zs = zip(*places, strict=True)
        whole = frame.area
        west, north = max(whole.west, int(min(xs)) - 1), max(whole.north, int(min(zs)) - 1)
        east, south = min(whole.east, int(max(xs)) + 1), min(whole.south, int(max(zs)) + 1)
        return Area(west, north, east, south) if west <= east and north <= south else None

    def _lines(self, level: int, seen: Area) -> Iterator[LevelLines]:
        """Those of the chunks in sight, the furthest first; what patience leaves out comes later."""
        for chunk in sorted(chunks_in(seen, level), key=self._nearness):
            if not self._is_in_sight(chunk):
                continue
            lines = self.chunks.known(chunk)
            if lines is None and self.patience.is_over:
                self.is_complete = False
            else:
                yield lines or self.chunks.made(chunk)

    def _nearness(self, chunk: Chunk) -> float:
        return self.frame.view.point(chunk.column, 0, chunk.row)[1]

    def _is_in_sight(self, chunk: Chunk) -> bool:
        """Whether anything of it may be, a slope too: none of its cells lies further off than its side."""
        frame, room, side = self.frame, self.room, BUCKET * self.frame.size.c
        middle = frame.on(chunk.level, (chunk.column + 0.5) * BUCKET, (chunk.row + 0.5) * BUCKET)
        above = frame.stack.gap * frame.size.c
        return (
            room.left() - side <= middle.x() <= room.right() + side
            and room.top() - side <= middle.y() <= room.bottom() + side + above
        )

    def _chosen(self, level: int, seen: Area) -> QPainterPath | None:
        chosen = [c for c in self.plan_view.selection if c.y == level and seen.holds(c.x, c.z)]
        return squares(chosen) if chosen else None


def squares(cells: list[Cell]) -> QPainterPath:
    """The cells in one outline, as far as there are not too many to find it."""
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.WindingFill)
    for x, z, length in _runs(cells):
        path.addRect(QRectF(x, z, length, 1))
    return path.simplified() if path.elementCount() <= MOST_OUTLINED else path


def _runs(cells: list[Cell]) -> Iterator[tuple[int, int, int]]:
    """Runs from west to east: where they begin, and how many cells they are long."""
    start: Cell | None = None
    length = 0
    for cell in sorted(cells, key=lambda cell: (cell.z, cell.x)):
        if start is not None and cell == start.moved(dx=length):
            length += 1
            continue
        if start is not None:
            yield start.x, start.z, length
        start, length = cell, 1
    if start is not None:
        yield start.x, start.z, length
