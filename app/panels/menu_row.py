"""The menu bar with the plan's name in the middle of the window."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QMenuBar, QWidget

from app.panels.look import label, panel

HEIGHT: Final = 30
GAP: Final = 16


class MenuRow(QWidget):
    """The title stays in the middle and gives way to the menus where the window is narrow."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self.setFixedHeight(HEIGHT)
        self.bar = QMenuBar(self)
        self.bar.setNativeMenuBar(False)
        self._title = ""
        self._shown = label("", "title", self)
        self._shown.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        row = QHBoxLayout(self)
        row.setContentsMargins(4, 0, 0, 0)
        row.addWidget(self.bar, 0, Qt.AlignmentFlag.AlignVCenter)

    @property
    def title(self) -> str:
        """What stands in the middle, uncut."""
        return self._title

    def set_title(self, title: str) -> None:
        """Show a name, and in words whether the plan has changed."""
        self._title = title
        self._place()

    def _place(self) -> None:
        metrics = QFontMetrics(self._shown.font())
        free = self.bar.actionGeometry(self.bar.actions()[-1]).right() + GAP if self.bar.actions() else 0
        wanted = metrics.horizontalAdvance(self._title) + 2
        left = max(free, (self.width() - wanted) // 2)
        room = self.width() - left - GAP
        self._shown.setText(metrics.elidedText(self._title, Qt.TextElideMode.ElideMiddle, room))
        self._shown.setGeometry(left, 0, max(0, min(wanted, room)), HEIGHT)
        self._shown.raise_()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place()
