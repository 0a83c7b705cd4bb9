"""The plan from far out, a dot for each piece: what is shown at the smallest zoom steps.

At the others it stands in for tiles that are not painted yet.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Iterator
from typing import Final

from PySide6.QtCore import QRect, QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from app.canvas.geometry import Area
from app.canvas.index import DOTS, NO_DOT, OTHER_DOT, RAIL_DOT, PieceIndex
from model.grid import Cell

SIDE: Final = 512
"""Cells along the side of a sheet of dots, a whole number of buckets."""
KEPT: Final = 64
"""Sheets, 256 KiB each."""
REDRAW_FROM: Final = 2_000
"""Changed cells from which on it costs less to make the sheets again."""

_Key = tuple[int, int, int]


class Overview:
    """Paints dots, from sheets of 512 × 512 cells that follow the plan."""

    def __init__(self, index: PieceIndex) -> None:
        self._index = index
        self._sheets: OrderedDict[_Key, QImage] = OrderedDict()

    def follow(self, cells: frozenset[Cell]) -> None:
        """Takes over what the index says of changed cells."""
        if len(cells) >= REDRAW_FROM:
            self._sheets.clear()
            return
        for cell in cells:
            sheet = self._sheets.get((cell.y, cell.x // SIDE, cell.z // SIDE))
            if sheet is not None:
                sheet.setPixel(cell.x % SIDE, cell.z % SIDE, self._index.dot(cell))

    def paint(
        self, painter: QPainter, place: QRect, area: Area, level: int, rail: QColor, other: QColor
    ) -> None:
        """The dots of an area of a level, at a place in px; nothing where no piece is."""
        colours = {NO_DOT: 0, RAIL_DOT: rail.rgba(), OTHER_DOT: other.rgba()}
        scale = place.width() / area.width
        for key, part in _parts(area, level):
            sheet = self._sheet(key)
            sheet.setColorTable([colours[dot] for dot in DOTS])
            target = QRectF(
                place.x() + (part.west - area.west) * scale,
                place.y() + (part.north - area.north) * scale,
                part.width * scale,
                part.height * scale,
            )
            source = QRectF(part.west % SIDE, part.north % SIDE, part.width, part.height)
            painter.drawImage(target, sheet, source)

    def _sheet(self, key: _Key) -> QImage:
        sheet = self._sheets.get(key)
        if sheet is None:
            sheet = self._sheets[key] = self._made(key)
            while len(self._sheets) > KEPT:
                self._sheets.popitem(last=False)
        self._sheets.move_to_end(key)
        return sheet

    def _made(self, key: _Key) -> QImage:
        level, column, row = key
        west, north = column * SIDE, row * SIDE
        area = Area(west, north, west + SIDE - 1, north + SIDE - 1)
        dots = self._index.dots_in(area, level)
        # The copy owns its dots; the image made of them only borrows them.
        return QImage(dots, SIDE, SIDE, SIDE, QImage.Format.Format_Indexed8).copy()


def _parts(area: Area, level: int) -> Iterator[tuple[_Key, Area]]:
    """The parts of an area, a sheet each."""
    for row in range(area.north // SIDE, area.south // SIDE + 1):
        for column in range(area.west // SIDE, area.east // SIDE + 1):
            west, north = column * SIDE, row * SIDE
            sheet = Area(west, north, west + SIDE - 1, north + SIDE - 1)
            yield (level, column, row), area.within(sheet)
