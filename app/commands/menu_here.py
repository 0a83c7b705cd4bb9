"""Opens the menu of what has the focus: not every keyboard has a key of its own for that."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtWidgets import QApplication, QWidget


def open_menu_here() -> None:
    """As the menu key does."""
    focus = QApplication.focusWidget()
    if focus is not None:
        at = _place(focus)
        reason = QContextMenuEvent.Reason.Keyboard
        QApplication.sendEvent(focus, QContextMenuEvent(reason, at, focus.mapToGlobal(at)))


def _place(widget: QWidget) -> QPoint:
    """Where Qt lets the menu key open it: at what is edited or chosen."""
    at = widget.inputMethodQuery(Qt.InputMethodQuery.ImCursorRectangle)
    return at.center() if isinstance(at, QRect) else widget.rect().center()
