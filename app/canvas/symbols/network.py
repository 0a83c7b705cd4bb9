"""The symbols of the line map: stations, junctions with the ways inside them, links, and ways along links.

Sizes are in fractions of a square of the map, ``c`` px wide; a line of a link is as wide as a rail.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import atan2, degrees, hypot
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPainterPathStroker, QPen, QPolygonF

from app.canvas.symbols.ways import CALLED_DASH, WayKind
from app.theme import Theme

STATION = 0.30
"""Half of a side."""
JUNCTION = 0.62
"""The radius."""
LEAST_STATION, LEAST_JUNCTION = 3.5, 4.0
"""px"""
SMALLEST_FROM = 4.0
"""px a square below which they may be half of that: so far out a network is a pattern."""
WIDE_FROM = 12.0
"""px a square below which links are narrow, as two side by side would run together."""
BEND = 0.5
"""The radius of a bend, at most."""
HALF_BAND = 0.20
INSIDE_FROM = 12.0
"""px a square from which the ways inside a junction are drawn."""
OTHER_DASH = (0.10, 0.07)
HEAD = 0.16
"""Half the width of the head that says which way a link runs."""
HEAD_LIMIT = 9.0
"""px of it, at most."""


class Passage(NamedTuple):
    """A way through a junction, between two places on its ring; its directions are those of the cart."""

    enter: QPointF
    enter_by: QPointF
    leave: QPointF
    leave_by: QPointF
    kind: str
    """``default``, ``other`` (a reader calls it), ``idle`` (no trip calls it) or ``unknown``."""


def wide_line(c: float) -> float:
    """The width of a link's line, in px."""
    return max(2.0, round(c / 12)) if c >= WIDE_FROM else 1.0


def station_half(c: float) -> float:
    """Half of a station's side, in px."""
    return max(LEAST_STATION if c >= SMALLEST_FROM else LEAST_STATION / 2, round(STATION * c))


def junction_radius(c: float) -> float:
    """The radius of a junction, in px."""
    return max(LEAST_JUNCTION if c >= SMALLEST_FROM else LEAST_JUNCTION / 2, JUNCTION * c)


def draw_station(
    painter: QPainter, x: float, y: float, c: float, theme: Theme, *, filled: bool = False
) -> None:
    """A square; filled where a trip that is shown begins or ends."""
    half, line = station_half(c), wide_line(c)
    inset = line / 2
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.fillRect(QRectF(x - half, y - half, 2 * half, 2 * half), theme.ink)
    if not filled:
        inner = half - max(line, 1.0)
        painter.fillRect(QRectF(x - inner, y - inner, 2 * inner, 2 * inner), theme.paper)
    elif half > 3 * line:
        inset = half - 2 * line
        painter.setPen(QPen(theme.paper, 1))
        painter.drawRect(QRectF(x - inset, y - inset, 2 * inset - 1, 2 * inset - 1))
    painter.restore()


def draw_junction(painter: QPainter, x: float, y: float, c: float, theme: Theme) -> None:
    """A ring of a narrow line; the ways through it are drawn inside."""
    radius, wide = junction_radius(c), wide_line(c)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setPen(QPen(theme.ink, wide / 2 if c >= INSIDE_FROM else wide))
    painter.setBrush(theme.paper)
    painter.drawEllipse(QPointF(x, y), radius, radius)
    painter.restore()


def draw_passages(painter: QPainter, c: float, theme: Theme, passages: Sequence[Passage]) -> None:
    """The ways inside a junction: the default ones wide, over those that readers call, which are dashed."""
    for kinds in (("idle", "unknown"), ("other",), ("default",)):
        for passage in passages:
            if passage.kind in kinds:
                painter.strokePath(passage_path(passage), _passage_pen(passage.kind, c, theme))


def passage_path(passage: Passage) -> QPainterPath:
    """The line of a passage, bent as track is."""
    reach = 0.5 * hypot(*(passage.leave - passage.enter).toTuple())
    path = QPainterPath(passage.enter)
    path.cubicTo(
        passage.enter + passage.enter_by * reach, passage.leave - passage.leave_by * reach, passage.leave
    )
    return path


def _passage_pen(kind: str, c: float, theme: Theme) -> QPen:
    wide = wide_line(c)
    if kind == "default":
        return QPen(theme.ink, wide, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap)
    pen = QPen(theme.dim if kind == "idle" else theme.ink2, wide / 2, c=Qt.PenCapStyle.FlatCap)
    if kind != "unknown" and c >= 20:
        pen.setDashPattern([max(part * c, 3.0) / pen.widthF() for part in OTHER_DASH])
    return pen


def line_path(points: Sequence[QPointF], c: float) -> QPainterPath:
    """The line of a link with its bends rounded; points in px."""
    path = QPainterPath(points[0])
    for before, here, after in zip(points, points[1:], points[2:], strict=False):
        reach = min(BEND * c, _distance(before, here) / 2, _distance(here, after) / 2)
        path.lineTo(here + _unit(before - here) * reach)
        path.quadTo(here, here + _unit(after - here) * reach)
    path.lineTo(points[-1])
    return path


def draw_link(painter: QPainter, path: QPainterPath, c: float, colour: QColor) -> None:
    """The line of a link."""
    painter.strokePath(
        path, QPen(colour, wide_line(c), c=Qt.PenCapStyle.FlatCap, j=Qt.PenJoinStyle.MiterJoin)
    )


def draw_head(painter: QPainter, at: QPointF, towards: QPointF, c: float, colour: QColor) -> None:
    """The head that says which way a link runs, its middle on the line."""
    half = min(max(2.5, HEAD * c), HEAD_LIMIT)
    side = QPointF(-towards.y(), towards.x())
    corners = [
        at + towards * half * 1.3,
        at - towards * half + side * half,
        at - towards * half - side * half,
    ]
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    painter.drawPolygon(QPolygonF(corners))


def middle_of(points: Sequence[QPointF]) -> tuple[QPointF, QPointF]:
    """The middle of the longest straight piece of a line, and its direction."""
    a, b = max(pairwise(points), key=lambda piece: _distance(*piece))
    return (a + b) / 2, _unit(b - a)


def draw_band(painter: QPainter, path: QPainterPath, c: float, kind: WayKind, theme: Theme) -> None:
    """The way of a cart along a path: a wash and two edges, dashed where the cart carries a waybill."""
    hue = theme.idle if kind is WayKind.IDLE else theme.called
    half = max(4.0, HALF_BAND * c)
    edge = max(1.0, 0.75 * wide_line(c) / 2)
    wash = QColor(hue)
    wash.setAlphaF(theme.wash)
    whole = _stroked(path, 2 * half)
    painter.fillPath(whole, theme.paper)
    painter.fillPath(whole, wash)
    pen = QPen(hue, edge, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap)
    if kind is WayKind.CALLED:
        pen.setDashPattern([max(part * c, 3.0) / edge for part in CALLED_DASH])
    for side in (-half, half):
        painter.strokePath(_beside(path, side), pen)


def draw_band_chevrons(
    painter: QPainter, at: QPointF, towards: QPointF, c: float, kind: WayKind, theme: Theme
) -> None:
    """One chevron for a cart without a waybill, two for one with; about a place on the line."""
    size, w = max(5.0, 0.32 * c), wide_line(c)
    painter.save()
    painter.translate(at)
    painter.rotate(degrees(atan2(towards.y(), towards.x())))
    places = (0.0,) if kind is WayKind.IDLE else (-0.36 * size, 0.36 * size)
    for colour, wide in ((theme.paper, 1.9 * w), (theme.ink, 0.8 * w)):
        painter.setPen(QPen(colour, wide, j=Qt.PenJoinStyle.MiterJoin, c=Qt.PenCapStyle.FlatCap))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for place in places:
            corners = ((place - 0.2 * size, -0.46 * size), (place + 0.2 * size, 0.0))
            tip = QPointF(*corners[1])
            painter.drawPolyline([QPointF(*corners[0]), tip, QPointF(corners[0][0], -corners[0][1])])
    painter.restore()


def _stroked(path: QPainterPath, width: float) -> QPainterPath:
    stroker = QPainterPathStroker()
    stroker.setWidth(width)
    stroker.setCapStyle(Qt.PenCapStyle.FlatCap)
    stroker.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    return stroker.createStroke(path)


def _beside(path: QPainterPath, aside: float) -> QPainterPath:
    """A line beside a path of smooth bends, so many px to the right of it."""
    points = [point for polygon in path.toSubpathPolygons() for point in polygon.toList()]
    moved = []
    for at, point in enumerate(points):
        along = _unit(points[min(at + 1, len(points) - 1)] - points[max(at - 1, 0)])
        moved.append(point + QPointF(-along.y(), along.x()) * aside)
    made = QPainterPath()
    made.addPolygon(QPolygonF(moved))
    return made


def _distance(a: QPointF, b: QPointF) -> float:
    return hypot(a.x() - b.x(), a.y() - b.y())


def _unit(vector: QPointF) -> QPointF:
    length = hypot(vector.x(), vector.y()) or 1.0
    return vector / length
