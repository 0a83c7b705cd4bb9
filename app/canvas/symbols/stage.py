"""The drawing surface of one cell: strokes, boxes, circles and figures in fractions of the cell.

(0, 0) is the north-west corner, x runs to the east, y to the south. A stage may be turned by quarters, so
that a directed part is written down once, facing north; letters stay upright. Straight lines along an axis
and boxes keep to whole pixels.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import Enum

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen, QPolygonF

from app.canvas.symbols.lettering import draw_centred
from app.canvas.symbols.size import Size
from app.theme import Theme
from model.grid import Heading

Point = tuple[float, float]

OTHER_DASH = (0.10, 0.07)
ABOVE_DASH = (0.16, 0.12)
UNSURE_DASH = (0.08, 0.06)
"""On and off, in cells."""


SHARPEST = 1.2
"""How far a corner may stand out, in widths of its line: the point of a slope wedge would leave its cell."""


class Manner(Enum):
    """Whether a symbol is drawn as itself or as a pale hint of it."""

    OWN = "own"
    BELOW = "below"
    ABOVE = "above"
    GHOST = "ghost"


@dataclass(frozen=True, slots=True)
class Stage:
    """One cell on a painter, with its corner at (x, y) in the painter's units."""

    painter: QPainter
    x: float
    y: float
    size: Size
    theme: Theme
    manner: Manner = Manner.OWN
    quarter: int = 0
    dashed: bool = False
    """Whether unbroken lines are drawn dashed: what the symbol shows is not sure."""

    @property
    def is_hint(self) -> bool:
        """Whether only narrow outlines in one colour are drawn: neighbour levels and ghosts."""
        return self.manner is not Manner.OWN

    def facing(self, heading: Heading) -> Stage:
        """The stage turned so that what is written facing north faces ``heading``."""
        return replace(self, quarter=int(heading))

    def at(self, point: Point, snap_width: float | None = None) -> QPointF:
        """A point in the painter's units; with a width, moved to where a line of that width may lie."""
        x, y = point[0] - 0.5, point[1] - 0.5
        for _ in range(self.quarter):
            x, y = -y, x
        px, py = (x + 0.5) * self.size.c, (y + 0.5) * self.size.c
        if snap_width is not None:
            px, py = self.size.line(px, snap_width), self.size.line(py, snap_width)
        return QPointF(self.x + px, self.y + py)

    def pen(self, colour: QColor, width: float, dash: tuple[float, float] | None = None) -> QPen:
        """A flat, mitred pen; ``dash`` in cells. Hints have one colour, one width and their own dash."""
        if self.is_hint:
            colour, width, dash = self._hint_colour(), min(width, self.size.narrow), self._hint_dash()
        elif self.dashed and dash is None:
            dash = UNSURE_DASH
        pen = QPen(colour, width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap, Qt.PenJoinStyle.MiterJoin)
        pen.setMiterLimit(SHARPEST)
        if dash is not None:
            least = 3 * self.size.unit
            pen.setDashPattern([max(part * self.size.c, least) / width for part in dash])
        return pen

    def line(
        self,
        points: Iterable[Point],
        colour: QColor,
        width: float,
        *,
        dash: tuple[float, float] | None = None,
    ) -> None:
        """A stroke through the points; straight along an axis it lies on whole pixels."""
        given = list(points)
        straight = len(given) == 2 and (given[0][0] == given[1][0] or given[0][1] == given[1][1])
        pen = self.pen(colour, width, dash)
        if straight:
            self._axis_line(given[0], given[1], pen)
            return
        self._stroke(pen, None)
        self.painter.drawPolyline(QPolygonF([self.at(point) for point in given]))

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
        """A rectangle with a narrow outline (or of the width given), its middle line on the four edges."""
        width = self.size.narrow if width is None else width
        rect = QRectF(self.at((left, top), width), self.at((right, bottom), width)).normalized()
        self._stroke(self.pen(colour, width), fill)
        self._crisp(True)
        self.painter.drawRect(rect)
        self._crisp(False)

    def block(self, left: float, top: float, right: float, bottom: float, fill: QColor) -> None:
        """A filled rectangle without an outline, its edges on whole pixels."""
        rect = QRectF(self.at((left, top), 0), self.at((right, bottom), 0)).normalized()
        self.painter.fillRect(rect, self._hint_colour() if self.is_hint else fill)

    def circle(
        self, centre: Point, r: float, colour: QColor, fill: QColor | None, *, on_width: float | None = None
    ) -> None:
        """A circle with a narrow outline; its middle on a line of ``on_width`` where one is given."""
        self._stroke(self.pen(colour, self.size.narrow), fill)
        self.painter.drawEllipse(self.at(centre, on_width), r * self.size.c, r * self.size.c)

    def dot(self, centre: Point, r: float, colour: QColor, *, on_width: float | None = None) -> None:
        """A filled circle without an outline."""
        self.painter.setPen(Qt.PenStyle.NoPen)
        self.painter.setBrush(QBrush(self._hint_colour() if self.is_hint else colour))
        self.painter.drawEllipse(self.at(centre, on_width), r * self.size.c, r * self.size.c)

    def polygon(self, points: Iterable[Point], colour: QColor | None, fill: QColor | None) -> None:
        """A closed outline; without a colour only its inside."""
        if colour is None:
            self.painter.setPen(Qt.PenStyle.NoPen)
            self.painter.setBrush(QBrush(self._hint_colour() if self.is_hint else fill or QColor()))
        else:
            self._stroke(self.pen(colour, self.size.narrow), fill)
        self.painter.drawPolygon(QPolygonF([self.at(point) for point in points]))

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
        self._stroke(self.pen(colour, width, dash), fill)
        self.painter.drawPath(path)

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
        """Upright letters about a point, ``em`` in cells, shrunk to be no wider than ``widest`` cells."""
        if self.is_hint:
            return
        limit = None if widest is None else widest * self.size.c
        draw_centred(self.painter, self.at(centre), text, em * self.size.c, colour, bold=bold, widest=limit)

    def hatch(self, lines: Iterable[QLineF], colour: QColor, width: float) -> None:
        """Lines that are already in the painter's units."""
        self.painter.setPen(self.pen(colour, width))
        for line in lines:
            self.painter.drawLine(line)

    def smooth(self) -> None:
        """Slanting edges are smoothed from now on."""
        self.painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)

    def _axis_line(self, start: Point, end: Point, pen: QPen) -> None:
        """A line along an axis: crosswise on whole pixels for its width, lengthwise between whole pixels."""
        a, b = self.at(start), self.at(end)
        across, along = self.at(start, pen.widthF()), (self.at(start, 0), self.at(end, 0))
        level = abs(a.y() - b.y()) < abs(a.x() - b.x())
        if level:
            a, b = QPointF(along[0].x(), across.y()), QPointF(along[1].x(), across.y())
        else:
            a, b = QPointF(across.x(), along[0].y()), QPointF(across.x(), along[1].y())
        self.painter.setPen(pen)
        self._crisp(pen.style() is Qt.PenStyle.SolidLine)
        self.painter.drawLine(a, b)
        self._crisp(False)

    def _crisp(self, on: bool) -> None:
        """Lines on whole pixels need no smoothing; odd widths under fractional scaling do."""
        whole = self.size.narrow == int(self.size.narrow)
        self.painter.setRenderHint(QPainter.RenderHint.Antialiasing, not (on and self.size.snaps and whole))

    def _stroke(self, pen: QPen, fill: QColor | None) -> None:
        self.painter.setPen(pen)
        self.painter.setBrush(Qt.BrushStyle.NoBrush if fill is None or self.is_hint else QBrush(fill))

    def _hint_colour(self) -> QColor:
        return self.theme.ink2 if self.manner is Manner.GHOST else self.theme.dim

    def _hint_dash(self) -> tuple[float, float] | None:
        if self.manner is Manner.ABOVE:
            return ABOVE_DASH
        return OTHER_DASH if self.manner is Manner.GHOST else None
