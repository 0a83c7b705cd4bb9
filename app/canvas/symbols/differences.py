"""The signs of what differs between two plans: plus, minus, a turn, an arrow to another thing, a bend."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from app.theme import Theme
from model.comparing import Kind

FIELD: Final = 0.5
"""Half a sign's patch, in widths of the sign."""
ARM: Final = 0.28
"""Half the length of its strokes."""


def draw_difference_sign(painter: QPainter, x: float, y: float, kind: Kind, theme: Theme, px: float) -> None:
    """The sign on a patch of paper, ``px`` wide, its middle at (x, y); filled where something is placed."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.translate(x, y)
    filled = kind is Kind.PLACED
    patch = QRectF(-FIELD * px, -FIELD * px, px, px).adjusted(0.5, 0.5, -0.5, -0.5)
    painter.setPen(QPen(theme.ink, 1, j=Qt.PenJoinStyle.MiterJoin))
    painter.setBrush(theme.ink if filled else theme.paper)
    painter.drawRect(patch)
    width = max(1.5, px / 8)
    painter.setPen(QPen(theme.paper if filled else theme.ink, width, c=Qt.PenCapStyle.FlatCap))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    SIGNS[kind](painter, ARM * px)
    painter.restore()


def _draw_minus(painter: QPainter, arm: float) -> None:
    painter.drawLine(QLineF(-arm, 0, arm, 0))


def _draw_plus(painter: QPainter, arm: float) -> None:
    _draw_minus(painter, arm)
    painter.drawLine(QLineF(0, -arm, 0, arm))


def _draw_turn(painter: QPainter, arm: float) -> None:
    """Three quarters of a circle, clockwise, with a head."""
    r = 0.9 * arm
    painter.drawArc(QRectF(-r, -r, 2 * r, 2 * r), 0, -270 * 16)
    _draw_strokes(painter, [(-0.05 * arm, -1.4 * arm), (0.55 * arm, -r), (-0.05 * arm, -0.4 * arm)])


def _draw_change(painter: QPainter, arm: float) -> None:
    """Two lines struck through: not the same."""
    for y in (-0.4 * arm, 0.4 * arm):
        painter.drawLine(QLineF(-arm, y, arm, y))
    painter.drawLine(QLineF(-0.6 * arm, arm, 0.6 * arm, -arm))


def _draw_bend(painter: QPainter, arm: float) -> None:
    """A curve out of a straight line, as a switch has it."""
    painter.drawLine(QLineF(-0.6 * arm, arm, -0.6 * arm, -arm))
    path = QPainterPath(QPointF(-0.6 * arm, arm))
    path.quadTo(QPointF(-0.6 * arm, -0.5 * arm), QPointF(arm, -0.5 * arm))
    painter.drawPath(path)


def _draw_strokes(painter: QPainter, points: list[tuple[float, float]]) -> None:
    painter.drawPolyline([QPointF(x, y) for x, y in points])


SIGNS: Final[dict[Kind, Callable[[QPainter, float], None]]] = {
    Kind.TAKEN: _draw_minus,
    Kind.PLACED: _draw_plus,
    Kind.TURNED: _draw_turn,
    Kind.CHANGED: _draw_change,
    Kind.RESHAPED: _draw_bend,
}
