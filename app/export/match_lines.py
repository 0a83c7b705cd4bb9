"""Where a level goes on from page to page: the row or column of cells that both show, and the match line."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPen

from app.canvas.symbols.lettering import em_for, width
from app.export.pencil import NARROW, RULER, Align, Pencil
from app.export.plan_picture import Window
from app.export.scale import Tile
from app.translation import tr

Numbers = dict[tuple[int, int], int]
"""The sheets on which the parts of a level stand, by column and row."""
DASHES: Final = [16.0, 3.0, 3.0, 3.0]
"""Of a match line, in widths of the line."""


def overlaps(part: Tile, numbers: Numbers) -> list[QRectF]:
    """What pages beside this one show too."""
    return [_overlap(part.window, dx, dz) for dx, dz, _ in _neighbours(part, numbers)]


def draw_match_lines(pencil: Pencil, part: Tile, numbers: Numbers, taken: list[QRectF]) -> None:
    """The inner edge of each overlap, with the sheet on which the level goes on."""
    pen = QPen(pencil.theme.ink, NARROW, c=Qt.PenCapStyle.FlatCap)
    pen.setDashPattern(DASHES)
    for dx, dz, number in _neighbours(part, numbers):
        shared = _overlap(part.window, dx, dz)
        pencil.painter.setPen(pen)
        if dx:
            x = shared.right() if dx < 0 else shared.left()
            pencil.painter.drawLine(QPointF(x, shared.top()), QPointF(x, shared.bottom()))
        else:
            y = shared.bottom() if dz < 0 else shared.top()
            pencil.painter.drawLine(QPointF(shared.left(), y), QPointF(shared.right(), y))
        _draw_label(pencil, shared, part.window.cell, tr("match line, sheet {number}", number=number), taken)


def _neighbours(part: Tile, numbers: Numbers) -> Iterator[tuple[int, int, int]]:
    """(dx, dz, sheet) for each part beside this one that has a page."""
    for dx, dz in ((0, -1), (1, 0), (0, 1), (-1, 0)):
        number = numbers.get((part.column + dx, part.row + dz))
        if number is not None:
            yield dx, dz, number


def _overlap(window: Window, dx: int, dz: int) -> QRectF:
    rect, cell = window.rect, window.cell
    if dx:
        left = rect.left() if dx < 0 else rect.right() - cell
        return QRectF(left, rect.top(), cell, rect.height())
    top = rect.top() if dz < 0 else rect.bottom() - cell
    return QRectF(rect.left(), top, rect.width(), cell)


def _draw_label(pencil: Pencil, shared: QRectF, cell: float, text: str, taken: list[QRectF]) -> None:
    """The words along the overlap, where no piece stands if there is such a place."""
    long = width(text, em_for(RULER)) + 2
    upright = shared.height() > shared.width()
    first = QRectF(shared.left(), shared.top(), *((cell, long) if upright else (long, cell)))
    first.translate(*((0, cell) if upright else (cell, 0)))
    steps = int((max(shared.height(), shared.width()) - long) / cell) - 1
    places = [first.translated(*((0, step * cell) if upright else (step * cell, 0))) for step in range(steps)]
    free = (place for place in places if not any(place.intersects(space) for space in taken))
    pencil.painter.save()
    pencil.painter.translate(next(free, first).center())
    if upright:
        pencil.painter.rotate(-90)
    pencil.painter.fillRect(QRectF(-long / 2, -RULER, long, 2 * RULER), pencil.theme.fill)
    pencil.text(0, RULER / 2, text, RULER, align=Align.MIDDLE)
    pencil.painter.restore()
