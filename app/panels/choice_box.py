"""A box that opens a list of choices, with the sign that it does."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QHelpEvent, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QComboBox, QToolTip, QWidget

from app import theme as themes
from app.panels.words import plain_tip
from app.translation import tr

AROUND: Final = 6
"""Above and below the choices together, in pixels: a hairline, and the margin of the list that pops up."""


BESIDE: Final = 34
"""Px beside the words of the choice: the margins, and the sign that opens the list."""


class ChoiceBox(QComboBox):
    """The style sheet of the window takes the system's arrow away; this draws a plain one."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.view().setAccessibleName(tr("Choices"))

    def setAccessibleName(self, name: str) -> None:
        """On Unix Qt tells screen readers the choice in place of the name: so the name is told besides."""
        super().setAccessibleName(name)
        self.setAccessibleDescription(name)

    def showPopup(self) -> None:
        # With the wider frame of the focus Qt makes the list too low, and would hide the last choice.
        view, popup = self.view(), self.view().window()
        view.ensurePolished()
        shown = self.count() if self.count() <= self.maxVisibleItems() else 0
        popup.setMinimumHeight(shown * view.sizeHintForRow(0) + AROUND if shown else 0)
        super().showPopup()

    def event(self, event: QEvent) -> bool:
        """A choice that is cut is told whole, where no other tip is given."""
        if isinstance(event, QHelpEvent) and event.type() is QEvent.Type.ToolTip and not self.toolTip():
            text = self.currentText()
            cut = self.fontMetrics().horizontalAdvance(text) > self.width() - BESIDE
            QToolTip.showText(event.globalPos(), plain_tip(text) if cut else "", self)
            return True
        return super().event(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        theme = themes.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme.ink if self.isEnabled() else theme.ink3, 1.5))
        x, y = self.width() - 12, self.height() / 2
        painter.drawPolyline([QPointF(x - 4, y - 2), QPointF(x, y + 2), QPointF(x + 4, y - 2)])


class CellChoice(ChoiceBox):
    """In a cell, where a choice ends the edit: arrows look through the list, Enter or a click chooses."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}.get(Qt.Key(event.key()))
        if step is None or event.modifiers() != Qt.KeyboardModifier.NoModifier:
            super().keyPressEvent(event)
        else:
            self.setCurrentIndex(min(max(0, self.currentIndex() + step), self.count() - 1))
