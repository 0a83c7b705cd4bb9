"""The menu of a list, by right click or by key: what the buttons beside it do with the chosen row."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QModelIndex, QObject, QPersistentModelIndex, QPoint
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtWidgets import QAbstractButton, QAbstractItemView, QMenu

from app.commands.letters import letter_menu


class RowMenu(QObject):
    """Has an entry for each of the buttons that is shown; a click beside the rows changes no choice."""

    def __init__(self, view: QAbstractItemView, buttons: Sequence[QAbstractButton]) -> None:
        super().__init__(view)
        self._view, self._buttons = view, buttons
        view.installEventFilter(self)
        view.viewport().installEventFilter(self)

    def menu(self) -> QMenu:
        """The menu for the row that is chosen now."""
        made = QMenu(self._view)
        made.setToolTipsVisible(True)
        for button in self._buttons:
            if button.isVisibleTo(self._view.window()):
                entry = made.addAction(button.text())
                entry.setToolTip(button.toolTip())
                entry.setEnabled(button.isEnabled())
                entry.triggered.connect(lambda _=False, button=button: button.click())
        letter_menu(made)
        return made

    def _open(self, index: QModelIndex | QPersistentModelIndex, at: QPoint) -> None:
        """Open at a place of the rows, for a row, if one lies there."""
        if index.isValid():
            self._view.setCurrentIndex(index)
        menu = self.menu()
        menu.aboutToHide.connect(menu.deleteLater)
        menu.popup(self._view.viewport().mapToGlobal(at))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if not isinstance(event, QContextMenuEvent):
            return False
        if event.reason() is QContextMenuEvent.Reason.Keyboard:
            index = self._view.currentIndex()
            self._open(index, self._view.visualRect(index).center())
        else:
            at = self._view.viewport().mapFromGlobal(event.globalPos())
            self._open(self._view.indexAt(at), at)
        return True
