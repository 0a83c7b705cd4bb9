"""The symbols of the drawing where panels show them; there is no second set."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from app.theme import Theme
from model.rules import Severity


def paint_marker(painter: QPainter, rect: QRect, severity: Severity, waived: bool, theme: Theme) -> None:
    """STUB until app.canvas.symbols is there."""
