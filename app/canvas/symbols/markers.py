"""The markers of findings: told apart by their outline before their hue."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from app.canvas.symbols.lettering import draw_text, width
from app.theme import Theme

LARGE, SMALL = 16.0, 10.0
"""px, from and below 20 px a cell."""
COUNT_LEFT, COUNT_EM = 0.55, 0.56
"""Where the count begins, from the middle, and its height; in widths of the marker."""
ASIDE_DASH = (2.0, 1.5)
"""In widths of its own line."""


def draw_marker(
    painter: QPainter,
    x: float,
    y: float,
    severity: str,
    theme: Theme,
    px: float = LARGE,
    *,
    aside: bool = False,
    count: int = 1,
) -> None:
    """The marker of an ``error``, ``warning`` or ``note`` with its middle at (x, y), ``px`` wide.

    ``aside``: the finding is set aside, the outline is dashed and empty. A count above one stands beside it.
    """
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.translate(x, y)
    pen = QPen(theme.ink3 if aside else theme.ink, px / 16, j=Qt.PenJoinStyle.MiterJoin)
    if aside:
        pen.setDashPattern(ASIDE_DASH)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    {"error": _draw_error, "warning": _draw_warning, "note": _draw_note}[severity](painter, px, theme, aside)
    if count > 1:
        draw_text(painter, px * COUNT_LEFT, px * 0.2, str(count), px * COUNT_EM, theme.ink, bold=True)
    painter.restore()


def marker_rect(px: float, count: int = 1) -> QRectF:
    """All that a marker with its count may cover, its middle at (0, 0)."""
    half = px / 2 + 1
    right = px * COUNT_LEFT + width(str(count), px * COUNT_EM, bold=True) if count > 1 else 0.0
    return QRectF(QPointF(-half, -half), QPointF(max(half, right + 1), half))


def _draw_error(painter: QPainter, px: float, theme: Theme, aside: bool) -> None:
    r = px * 0.47
    painter.setBrush(Qt.BrushStyle.NoBrush if aside else theme.error)
    painter.drawPolygon(QPolygonF([QPointF(0, -r), QPointF(r, 0), QPointF(0, r), QPointF(-r, 0)]))
    painter.setPen(_inner(theme.ink3 if aside else theme.on_error, px * 0.11))
    arm = px * 0.16
    painter.drawLine(QPointF(-arm, -arm), QPointF(arm, arm))
    painter.drawLine(QPointF(-arm, arm), QPointF(arm, -arm))


def _draw_warning(painter: QPainter, px: float, theme: Theme, aside: bool) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush if aside else theme.warning)
    corners = [QPointF(0, -0.44 * px), QPointF(0.48 * px, 0.40 * px), QPointF(-0.48 * px, 0.40 * px)]
    painter.drawPolygon(QPolygonF(corners))
    painter.setPen(_inner(theme.ink3 if aside else theme.on_warning, px * 0.11))
    painter.drawLine(QPointF(0, -0.18 * px), QPointF(0, 0.12 * px))
    painter.drawLine(QPointF(0, 0.20 * px), QPointF(0, 0.31 * px))


def _draw_note(painter: QPainter, px: float, theme: Theme, aside: bool) -> None:
    colour = theme.ink3 if aside else theme.ink
    painter.setBrush(Qt.BrushStyle.NoBrush if aside else theme.paper)
    painter.drawEllipse(QPointF(0, 0), 0.43 * px, 0.43 * px)
    painter.setPen(_inner(colour, px * 0.10))
    painter.drawLine(QPointF(0, -0.05 * px), QPointF(0, 0.24 * px))
    painter.drawLine(QPointF(0, -0.24 * px), QPointF(0, -0.13 * px))


def _inner(colour: QColor, width: float) -> QPen:
    return QPen(colour, width, c=Qt.PenCapStyle.FlatCap)
