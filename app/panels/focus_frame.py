"""Shows that a drawing or a page has the focus; all else that takes it is dressed by the style sheet."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QFocusEvent, QPainter, QPaintEvent, QRegion
from PySide6.QtWidgets import QWidget

from app import theme as themes

LINE: Final = 2
BY_KEY: Final = frozenset(
    {
        Qt.FocusReason.TabFocusReason,
        Qt.FocusReason.BacktabFocusReason,
        Qt.FocusReason.ShortcutFocusReason,
    }
)
AS_BEFORE: Final = frozenset({Qt.FocusReason.ActiveWindowFocusReason, Qt.FocusReason.PopupFocusReason})
"""The focus was there before another window or a menu came in between."""


class FocusFrame(QWidget):
    """A line of ink inside the edge, while the focus is there and came by a key: who points needs none."""

    def __init__(self, around: QWidget) -> None:
        super().__init__(around)
        self._around = around
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._came_by_key = False
        around.installEventFilter(self)
        self.hide()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        kind = event.type()
        if isinstance(event, QFocusEvent) and kind == QEvent.Type.FocusIn:
            if event.reason() not in AS_BEFORE:
                self._came_by_key = event.reason() in BY_KEY
            self._show()
        elif kind == QEvent.Type.FocusOut:
            self.hide()
        elif kind == QEvent.Type.MouseButtonPress:
            self._came_by_key = False
            self.hide()
        elif kind == QEvent.Type.Resize:
            self._fit()
        return False

    def paintEvent(self, event: QPaintEvent) -> None:
        QPainter(self).fillRect(self.rect(), themes.current().ink)

    def _show(self) -> None:
        self._fit()
        self.raise_()
        self.setVisible(self._came_by_key)

    def _fit(self) -> None:
        rect = self._around.rect()
        self.setGeometry(rect)
        # Without a mask the drawing below would be painted anew with each of its changes.
        self.setMask(QRegion(rect) - QRegion(rect.adjusted(LINE, LINE, -LINE, -LINE)))
