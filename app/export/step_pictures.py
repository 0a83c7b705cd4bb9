"""The picture of a step: what is new in ink, what stands already in grey, brackets about what it bends."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import lru_cache
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPen, QPolygonF

from app.canvas.symbols import Manner, paper
from app.canvas.symbols.lettering import draw_centred, em_for, width
from app.export.cutout import MARGIN, cutout
from app.export.pencil import NARROW, RULER, Pencil
from app.export.plan_picture import PiecePainter, Window, draw_grid
from app.theme import Theme
from model.grid import Cell
from model.pieces import is_seen_from_above
from model.sheet.drawn import DrawnPiece
from model.sheet.steps import StepPicture

SIDE_BAND, TOP_BAND = 5.5, 4.0
"""For the coordinates, to the west and to the north of the cells; the first is broader for long figures."""
TALLEST: Final = 62.0
"""Of the cells of one picture."""
FIGURE_GAP, LINE_ROOM = 1.5, 3.4
"""Between two coordinates side by side, and from one to the next one below it."""
BRACKET: Final = 0.22
"""Length of a bracket's arms, in cells."""
INSET: Final = 0.05
"""Of a bracket from the edge of its cell, in cells: clear of what stands beside it."""
BEYOND, ZIGZAG = 1.0, 0.8
"""How far outside of the cells a break line stands, and how far it swings to both sides."""


class Drawing:
    """The picture of a step, its size known before it is drawn."""

    def __init__(self, picture: StepPicture, room: float) -> None:
        bounds = picture.bounds
        figures = max(_figure_width(z) for z in (bounds.north - MARGIN, bounds.south + MARGIN))
        self._picture = picture
        self.band = max(SIDE_BAND, figures + FIGURE_GAP)
        self._cut = cutout(picture, room - self.band, TALLEST)
        self.height = TOP_BAND + self._cut.height

    def draw(self, pencil: Pencil, left: float, top: float) -> None:
        """The picture with the north-west corner of its bands at a place on the page."""
        west, north = left + self.band, top + TOP_BAND
        for window in self._cut.windows(west, north):
            _draw_window(pencil, window, self._picture)
            if window.top == north:
                _draw_columns(pencil, window, top + TOP_BAND / 2)
            if window.left == west:
                _draw_rows(pencil, window, left + self.band / 2)
            _draw_edges(pencil, window, QRectF(west, north, self._cut.width, self._cut.height))


@lru_cache(maxsize=4)
def grey(theme: Theme) -> Theme:
    """The theme in which what stands already is drawn: the same lines in grey."""
    return replace(theme, ink=theme.dim, ink2=theme.dim, ink3=theme.dim, live=theme.dim)


def _draw_window(pencil: Pencil, window: Window, picture: StepPicture) -> None:
    painter, level = pencil.painter, picture.step.level
    painter.save()
    painter.setClipRect(window.rect)
    draw_grid(pencil, window)
    ink = PiecePainter(pencil, picture.standing)
    fresh = {one.piece.at for one in (*picture.new, *picture.bent)}
    ink.draw(window, _below(window, picture), Manner.BELOW)
    PiecePainter(Pencil(painter, grey(pencil.theme)), picture.standing).draw(
        window, (one for one in _level(window, picture, level) if one.piece.at not in fresh)
    )
    new = [one for one in picture.new if window.holds(one.piece.at)]
    bent = [one for one in picture.bent if window.holds(one.piece.at)]
    ink.draw(window, (one for one in bent if one.piece.at.y == level))
    ink.draw(window, new)
    ink.draw(window, _level(window, picture, level + 1), Manner.ABOVE)
    ink.draw_marks(window, new)
    for one in bent:
        draw_brackets(pencil, window.space(one.piece.at))
    painter.restore()


def _below(window: Window, picture: StepPicture) -> Iterator[DrawnPiece]:
    below = _level(window, picture, picture.step.level - 1)
    return (one for one in below if is_seen_from_above(one.piece, picture.standing))


def _level(window: Window, picture: StepPicture, level: int) -> Iterator[DrawnPiece]:
    """What stands on a level, as far as the window shows it."""
    for z in range(window.north, window.north + window.rows):
        for x in range(window.west, window.west + window.columns):
            if (one := picture.at(Cell(x, level, z))) is not None:
                yield one


def draw_brackets(pencil: Pencil, space: QRectF) -> None:
    """Four corners in a cell: the rail in it was turned by what is new."""
    arm, inset, middle = BRACKET * space.width(), INSET * space.width(), space.center()
    space = space.adjusted(inset, inset, -inset, -inset)
    pen = QPen(pencil.theme.ink, paper(space.width()).narrow, c=Qt.PenCapStyle.FlatCap)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    pencil.painter.setPen(pen)
    for corner in (space.topLeft(), space.topRight(), space.bottomRight(), space.bottomLeft()):
        dx = arm if corner.x() < middle.x() else -arm
        dy = arm if corner.y() < middle.y() else -arm
        pencil.painter.drawPolyline(QPolygonF([corner + QPointF(dx, 0), corner, corner + QPointF(0, dy)]))


def _draw_columns(pencil: Pencil, window: Window, middle: float) -> None:
    """Coordinates to the north."""
    widest = max(_figure_width(x) for x in (window.west, window.west + window.columns - 1))
    for x in _every(window.west, window.columns, (widest + FIGURE_GAP) / window.cell):
        _figure(pencil, QPointF(window.corner(x + 0.5, 0).x(), middle), x)


def _draw_rows(pencil: Pencil, window: Window, middle: float) -> None:
    """Coordinates to the west."""
    for z in _every(window.north, window.rows, LINE_ROOM / window.cell):
        _figure(pencil, QPointF(middle, window.corner(0, z + 0.5).y()), z)


def _every(first: int, count: int, least: float) -> Iterable[int]:
    """The coordinates at the smallest whole step at which they have room."""
    step = next((step for step in (1, 2, 5, 10, 20, 50) if step >= least), 100)
    return (at for at in range(first, first + count) if at % step == 0)


def _figure(pencil: Pencil, middle: QPointF, value: int) -> None:
    draw_centred(pencil.painter, middle, _figure_text(value), em_for(RULER), pencil.theme.ink)


def _figure_width(value: int) -> float:
    return width(_figure_text(value), em_for(RULER))


def _figure_text(value: int) -> str:
    return str(value).replace("-", "\u2212")


def _draw_edges(pencil: Pencil, window: Window, whole: QRectF) -> None:
    """The outline; a little outside of where the picture is cut a break line."""
    cells, inner = window.rect, whole.adjusted(0.1, 0.1, -0.1, -0.1)
    west, north = cells.left() > inner.left(), cells.top() > inner.top()
    east, south = cells.right() < inner.right(), cells.bottom() < inner.bottom()
    rect = cells.adjusted(-BEYOND * west, -BEYOND * north, BEYOND * east, BEYOND * south)
    _edge(pencil, rect.topLeft(), rect.bottomLeft(), west)
    _edge(pencil, rect.topLeft(), rect.topRight(), north)
    _edge(pencil, rect.topRight(), rect.bottomRight(), east)
    _edge(pencil, rect.bottomLeft(), rect.bottomRight(), south)


def _edge(pencil: Pencil, start: QPointF, end: QPointF, cut: bool) -> None:
    """A side of the outline, to the east or to the south, or a break line in its place."""
    if not cut:
        pencil.line(start.x(), start.y(), end.x(), end.y())
        return
    along = end - start
    unit, middle = along / (along.x() + along.y()), start + along / 2
    across = QPointF(unit.y(), unit.x()) * ZIGZAG
    swings = (middle - unit * 1.2, middle - unit * 0.6 + across, middle + unit * 0.6 - across)
    pencil.painter.setPen(QPen(pencil.theme.ink, NARROW, c=Qt.PenCapStyle.FlatCap))
    pencil.painter.drawPolyline(QPolygonF([start, *swings, middle + unit * 1.2, end]))
