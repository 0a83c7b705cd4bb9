"""A box that opens a list of choices, with the sign that it does."""

from __future__ import annotations

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QComboBox, QWidget

from app import theme as themes


class ChoiceBox(QComboBox):
    """The style sheet of the window takes the system's arrow away; this draws a plain one."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.view().setAccessibleName("Choices")

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        theme = themes.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme.ink if self.isEnabled() else theme.ink3, 1.5))
        x, y = self.width() - 12, self.height() / 2
        painter.drawPolyline([QPointF(x - 4, y - 2), QPointF(x, y + 2), QPointF(x + 4, y - 2)])
