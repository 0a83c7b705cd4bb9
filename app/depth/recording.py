"""A stage that keeps what is drawn on it: the one set of symbols, to be laid on a tilted plane.

A pen on a tilted painter would be wider one way than the other. So the paths are kept, tilted, and only then
drawn, with pens of the same widths as on the plan.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Final, NamedTuple

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen, QPolygonF

from app.canvas.symbols import Look, Size, Stage
from app.canvas.symbols.pieces import paint
from app.canvas.symbols.rails import draw_fitting
from app.canvas.symbols.stage import SHARPEST, Point
from app.theme import Theme


class Style(NamedTuple):
    """How a path is drawn; the colours as numbers, so that styles can be compared."""

    line: int | None
    width: float
    dash: tuple[float, ...]
    fill: int | None

    def use(self, painter: QPainter) -> None:
        """Takes up pen and brush."""
        pen, brush = _pen_and_brush(self)
        painter.setPen(pen)
        painter.setBrush(brush)


@lru_cache(maxsize=256)
def _pen_and_brush(style: Style) -> tuple[QPen, QBrush]:
    pen = QPen(Qt.PenStyle.NoPen)
    if style.line is not None:
        pen = QPen(QColor.fromRgba(style.line), style.width, c=_FLAT, j=Qt.PenJoinStyle.MiterJoin)
        pen.setMiterLimit(SHARPEST)
    if style.dash:
        pen.setDashPattern(list(style.dash))
    return pen, QBrush() if style.fill is None else QBrush(QColor.fromRgba(style.fill))


_FLAT: Final = Qt.PenCapStyle.FlatCap


class Stroke(NamedTuple):
    """A path of a symbol, in the painter's units from the corner of its cell."""

    path: QPainterPath
    style: Style


class Letters(NamedTuple):
    """A text of a symbol, about a point from the corner of its cell."""

    at: QPointF
    text: str
    em: float
    colour: QColor
    bold: bool
    widest: float | None


@dataclass(frozen=True, slots=True)
class Recording(Stage):
    """Draws nothing; its marks are what would be drawn, the first the lowest."""

    strokes: list[Stroke] = field(default_factory=list)
    letters: list[Letters] = field(default_factory=list)

    def line(
        self,
        points: Iterable[Point],
        colour: QColor,
        width: float,
        *,
        dash: tuple[float, float] | None = None,
    ) -> None:
        """A stroke through the points."""
        path = QPainterPath()
        path.addPolygon(QPolygonF([self.at(point) for point in points]))
        self._keep(path, self.pen(colour, width, dash), None)

    def box(
        self,
        left: float,
        top: float,
        right: float,
        bottom: float,
        colour: QColor,
        fill: QColor | None,
        width: float | None = None,
    ) -> None:
        """A rectangle."""
        pen = self.pen(colour, self.size.narrow if width is None else width)
        self._keep(self._rect(left, top, right, bottom), pen, fill)

    def block(self, left: float, top: float, right: float, bottom: float, fill: QColor) -> None:
        """A filled rectangle without an outline."""
        self._keep(self._rect(left, top, right, bottom), None, fill)

    def circle(
        self, centre: Point, r: float, colour: QColor, fill: QColor | None, *, on_width: float | None = None
    ) -> None:
        """A circle with a narrow outline."""
        self._keep(self._round(centre, r), self.pen(colour, self.size.narrow), fill)

    def dot(self, centre: Point, r: float, colour: QColor, *, on_width: float | None = None) -> None:
        """A filled circle without an outline."""
        self._keep(self._round(centre, r), None, colour)

    def polygon(self, points: Iterable[Point], colour: QColor | None, fill: QColor | None) -> None:
        """A closed outline; without a colour only its inside."""
        path = QPainterPath()
        path.addPolygon(QPolygonF([self.at(point) for point in points]))
        path.closeSubpath()
        self._keep(path, None if colour is None else self.pen(colour, self.size.narrow), fill)

    def path(
        self,
        path: QPainterPath,
        colour: QColor,
        width: float,
        *,
        fill: QColor | None = None,
        dash: tuple[float, float] | None = None,
    ) -> None:
        """A path that is already in the painter's units."""
        self._keep(path, self.pen(colour, width, dash), fill)

    def text(
        self,
        centre: Point,
        text: str,
        em: float,
        colour: QColor,
        *,
        bold: bool = False,
        widest: float | None = None,
    ) -> None:
        """Upright letters about a point: they are never tilted."""
        limit = None if widest is None else widest * self.size.c
        self.letters.append(Letters(self.at(centre), text, em * self.size.c, colour, bold, limit))

    def hatch(self, lines: Iterable[QLineF], colour: QColor, width: float) -> None:
        """Every second line: a tilted square is half as high, and would come out grey."""
        path = QPainterPath()
        for line in list(lines)[::2]:
            path.moveTo(line.p1())
            path.lineTo(line.p2())
        self._keep(path, self.pen(colour, width), None)

    def smooth(self) -> None:
        """Who draws the marks smooths them."""

    def _rect(self, left: float, top: float, right: float, bottom: float) -> QPainterPath:
        path = QPainterPath()
        path.addRect(QRectF(self.at((left, top)), self.at((right, bottom))).normalized())
        return path

    def _round(self, centre: Point, r: float) -> QPainterPath:
        path = QPainterPath()
        path.addEllipse(self.at(centre), r * self.size.c, r * self.size.c)
        return path

    def _keep(self, path: QPainterPath, pen: QPen | None, fill: QColor | None) -> None:
        inside = None if fill is None else fill.rgba()
        if pen is None:
            style = Style(None, 0.0, (), inside)
        else:
            dash = tuple(pen.dashPattern()) if pen.style() is Qt.PenStyle.CustomDashLine else ()
            style = Style(pen.color().rgba(), pen.widthF(), dash, inside)
        self.strokes.append(Stroke(path, style))


def recorded(look: Look, size: Size, theme: Theme) -> Recording:
    """The symbol of a look."""
    stage = Recording(QPainter(), 0, 0, size, theme)
    paint(stage, look)
    return stage


def recorded_fitting(look: Look, size: Size, theme: Theme) -> Recording:
    """What a booster or a detector has on its line, without the line."""
    stage = Recording(QPainter(), 0, 0, size, theme)
    if look.shape is not None:
        draw_fitting(stage.facing(look.shape.ends[0].heading), look)
    return stage
