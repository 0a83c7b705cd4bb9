"""The cross that empties a line, drawn by the program as all its signs are."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QLineEdit, QWidget

from app import theme as themes
from app.panels.look import named
from app.translation import tr

SIDE: Final = 22
"""px, of the square in which the cross stands."""
ARM: Final = 3.5
"""px from the middle of the cross to its ends."""


class Cross(QAbstractButton):
    """For the pointer only: who types can empty the line by keys, so Tab passes it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        named(self, tr("Empty the line")).setToolTip(tr("Empty the line"))
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setCursor(Qt.CursorShape.ArrowCursor)
        self.resize(SIDE, SIDE)

    def paintEvent(self, event: QPaintEvent) -> None:
        theme, middle = themes.current(), SIDE / 2
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme.ink if self.underMouse() else theme.ink2, 1.5))
        painter.translate(middle, middle)
        painter.drawLine(QPointF(-ARM, -ARM), QPointF(ARM, ARM))
        painter.drawLine(QPointF(-ARM, ARM), QPointF(ARM, -ARM))

    def sizeHint(self) -> QSize:
        return QSize(SIDE, SIDE)


def add_cross(line: QLineEdit, empty: Callable[[], object]) -> None:
    """A cross at the end of a line while something stands in it; no letter moves when it comes."""
    line.setTextMargins(0, 0, SIDE - 4, 0)
    cross = Cross(line)
    row = QHBoxLayout(line)
    row.setContentsMargins(0, 0, 2, 0)
    row.addStretch(1)
    row.addWidget(cross)
    cross.hide()
    cross.clicked.connect(lambda: empty())
    line.textChanged.connect(lambda text: cross.setVisible(bool(text)))
