"""Small signs of tables and of the page: the inverter, the north arrow, the mark of a mirrored plan."""

from __future__ import annotations

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from app.canvas.symbols.lettering import draw_centred
from app.canvas.symbols.stage import Stage
from app.theme import Theme

FIGURE_FROM_PX = 20
"""From how many px a cell the inverter carries its "1"."""


def draw_inverter_gate(stage: Stage) -> None:
    """A buffer with a circle on its output, signal from left to right (IEC 60617-12, from memory)."""
    stage.painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    stage.circle((0.78, 0.5), 0.11, stage.theme.ink, stage.theme.paper)
    stage.box(0.12, 0.24, 0.64, 0.76, stage.theme.ink, stage.theme.paper)
    if stage.size.c >= FIGURE_FROM_PX * stage.size.unit:
        stage.text((0.38, 0.5), "1", 0.32, stage.theme.ink)


def draw_north(painter: QPainter, x: float, y: float, r: float, line: float, theme: Theme) -> None:
    """A needle in a circle about (x, y), half of it filled, with an N above."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setPen(QPen(theme.ink, line, j=Qt.PenJoinStyle.MiterJoin))
    painter.setBrush(theme.paper)
    painter.drawEllipse(QPointF(x, y), r, r)
    tip, notch = QPointF(x, y - 0.8 * r), QPointF(x, y + 0.3 * r)
    painter.drawPolygon(QPolygonF([tip, QPointF(x - 0.45 * r, y + 0.62 * r), notch]))
    painter.setBrush(theme.ink)
    painter.drawPolygon(QPolygonF([tip, QPointF(x + 0.45 * r, y + 0.62 * r), notch]))
    draw_centred(painter, QPointF(x, y - 1.5 * r), "N", 0.75 * r, theme.ink, bold=True)
    painter.restore()


def draw_mirror_mark(painter: QPainter, x: float, y: float, px: float, theme: Theme) -> None:
    """Two triangles about a line, one open and one filled, about (x, y)."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setPen(QPen(theme.ink2, max(1.0, px / 14)))
    painter.drawLine(QPointF(x, y - 0.42 * px), QPointF(x, y + 0.42 * px))
    for side, fill in ((-1, theme.raised), (1, theme.ink2)):
        painter.setBrush(fill)
        near, far = x + side * 0.14 * px, x + side * 0.46 * px
        painter.drawPolygon(
            QPolygonF([QPointF(near, y - 0.28 * px), QPointF(far, y), QPointF(near, y + 0.28 * px)])
        )
    painter.restore()
