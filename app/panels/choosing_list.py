"""A list that can be used by the arrow keys from its first row on."""

from __future__ import annotations

from PySide6.QtCore import QItemSelectionModel, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QListView


class ChoosingList(QListView):
    """With the focus, Qt makes the first row current but does not choose it, and the first arrow skips it."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """While nothing is chosen, an arrow chooses the current row."""
        arrow = event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down)
        if arrow and not self.selectedIndexes() and self.currentIndex().isValid():
            choose = QItemSelectionModel.SelectionFlag.ClearAndSelect
            self.selectionModel().select(self.currentIndex(), choose)
        else:
            super().keyPressEvent(event)
