"""A cart seen from above, at any place and in any direction."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from app.canvas.symbols.size import Size
from app.theme import Theme

ACROSS, ALONG, CORNER = 0.44, 0.70, 0.10


def draw_cart(
    painter: QPainter, x: float, y: float, size: Size, clockwise: float, theme: Theme, *, loaded: bool
) -> None:
    """A cart with its middle at (x, y), turned from north by ``clockwise`` degrees; filled with a waybill."""
    c, ink, paper = size.c, theme.ink, theme.paper
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.translate(x, y)
    painter.rotate(clockwise)
    painter.setPen(QPen(ink, size.narrow))
    painter.setBrush(ink if loaded else paper)
    box = QRectF(-ACROSS / 2 * c, -ALONG / 2 * c, ACROSS * c, ALONG * c)
    painter.drawRoundedRect(box, CORNER * c, CORNER * c)
    _draw_front(painter, size, paper if loaded else ink)
    painter.restore()


def _draw_front(painter: QPainter, size: Size, colour: QColor) -> None:
    tip = [(-0.11, -0.06), (0.0, -0.19), (0.11, -0.06)]
    pen = QPen(colour, size.narrow * 1.3)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    points = QPolygonF([QPointF(x * size.c, y * size.c) for x, y in tip])
    painter.drawPolyline(points)
