"""A row of the findings: marker, title, what follows from it, place."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRect, QSize
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem

from app import theme as themes
from app.canvas.findings_layer import draw_kept_marker
from app.canvas.markers import Marker
from app.panels.findings_model import FINDING_ROLE, OLD_ROLE, PLACE_ROLE, SECOND_ROLE
from app.panels.look import font
from app.panels.rows import FRAME, MARGIN, paint_ground, paint_text, rect_of
from app.panels.table_model import Index

ROW: Final = 48
MARKER_MIDDLE: Final = 26 - FRAME
TEXT_LEFT: Final = 50 - FRAME


class FindingsDelegate(QStyledItemDelegate):
    """Draws a finding; one set aside is grey, its marker dashed; one of an older plan has a pale title."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        theme = themes.current()
        finding = index.data(FINDING_ROLE)
        rect = rect_of(option)
        paint_ground(painter, option, theme)
        middle = rect.top() + ROW / 2
        left = rect.left() + MARKER_MIDDLE
        draw_kept_marker(painter, left, middle, Marker(finding.severity, finding.waived), theme)
        right = rect.right() - MARGIN
        above = QRect(rect.left() + TEXT_LEFT, rect.top() + 6, right - rect.left() - TEXT_LEFT, 18)
        is_pale = finding.waived or bool(index.data(OLD_ROLE))
        ink = theme.ink2 if is_pale else theme.ink
        half = above.adjusted(above.width() // 2, 0, 0, 0)
        width = paint_text(painter, half, str(index.data(PLACE_ROLE)), font(11), theme.ink2, right=True)
        title = above.adjusted(0, 0, -width - 8, 0)
        paint_text(painter, title, str(index.data()), font(12, not is_pale), ink)
        paint_text(painter, above.translated(0, 18), str(index.data(SECOND_ROLE)), font(11), theme.ink2)

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        return QSize(200, ROW)
