"""A box that opens a list of choices, with the sign that it does."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QComboBox, QWidget

from app import theme as themes
from app.translation import tr

AROUND: Final = 6
"""Above and below the choices together, in pixels: a hairline, and the margin of the list that pops up."""


class ChoiceBox(QComboBox):
    """The style sheet of the window takes the system's arrow away; this draws a plain one."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.view().setAccessibleName(tr("Choices"))

    def showPopup(self) -> None:
        # With the wider frame of the focus Qt makes the list too low, and would hide the last choice.
        view, popup = self.view(), self.view().window()
        view.ensurePolished()
        shown = self.count() if self.count() <= self.maxVisibleItems() else 0
        popup.setMinimumHeight(shown * view.sizeHintForRow(0) + AROUND if shown else 0)
        super().showPopup()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        theme = themes.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme.ink if self.isEnabled() else theme.ink3, 1.5))
        x, y = self.width() - 12, self.height() / 2
        painter.drawPolyline([QPointF(x - 4, y - 2), QPointF(x, y + 2), QPointF(x + 4, y - 2)])
