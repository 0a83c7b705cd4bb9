"""How a chosen row and the line under a row are painted, the same in every list and table."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter
from PySide6.QtWidgets import QStyle, QStyleOptionViewItem

from app.theme import Theme

FRAME: Final = 2
"""Width of the frame of lists and tables, which shows the focus, in pixels."""
BAR: Final = 4
"""Width of the bar at the left of the chosen row, in pixels."""
MARGIN: Final = 14 - FRAME
"""Left and right of what stands in a row, in pixels."""

# Put together once: that takes half as long as to draw a word.
AT_LEFT: Final = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextSingleLine
AT_RIGHT: Final = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextSingleLine


def is_chosen(option: QStyleOptionViewItem) -> bool:
    """Whether the row is the chosen one."""
    return bool(option.state & QStyle.StateFlag.State_Selected)


def is_under_pointer(option: QStyleOptionViewItem) -> bool:
    """Whether the pointer is over the cell."""
    return bool(option.state & QStyle.StateFlag.State_MouseOver)


def rect_of(option: QStyleOptionViewItem) -> QRect:
    """Where the cell stands."""
    return QRect(option.rect)


def paint_ground(
    painter: QPainter,
    option: QStyleOptionViewItem,
    theme: Theme,
    is_first: bool = True,
    is_last: bool = True,
) -> None:
    """The ground of a row's cell, its hairline between the margins, and the bar of the chosen row."""
    rect = rect_of(option)
    if is_chosen(option):
        painter.fillRect(rect, theme.pickrow)
        if is_first:
            painter.fillRect(rect.left(), rect.top(), BAR, rect.height(), theme.pickbar)
        return
    if is_under_pointer(option):
        painter.fillRect(rect, theme.raised)
    left = rect.left() + (MARGIN if is_first else 0)
    right = rect.right() - (MARGIN if is_last else 0)
    painter.fillRect(left, rect.bottom(), right - left + 1, 1, theme.edge)


def paint_text(
    painter: QPainter,
    rect: QRect,
    text: str,
    font: QFont,
    colour: QColor,
    right: bool = False,
    cut: Qt.TextElideMode = Qt.TextElideMode.ElideRight,
) -> int:
    """One line of text at half the height of a rectangle, cut with dots where too long; its width."""
    painter.setFont(font)
    painter.setPen(colour)
    metrics = QFontMetrics(font)
    wide = metrics.horizontalAdvance(text)
    if wide > rect.width():
        text = metrics.elidedText(text, cut, rect.width())
        wide = metrics.horizontalAdvance(text)
    painter.drawText(rect, AT_RIGHT if right else AT_LEFT, text)
    return wide


def middle(rect: QRect, size: int) -> QRect:
    """A square of that size in the middle of a rectangle."""
    centre = rect.center()
    return QRect(
        QPoint(centre.x() - size // 2 + 1, centre.y() - size // 2 + 1),
        QPoint(centre.x() + size // 2, centre.y() + size // 2),
    )
