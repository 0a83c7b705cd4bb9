"""Lists and tables that can be used by the arrow keys from their first row on."""

from __future__ import annotations

from PySide6.QtCore import QItemSelectionModel, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QListView


def first_arrow_chooses(view: QAbstractItemView, event: QKeyEvent) -> bool:
    """While nothing is chosen, an arrow chooses the current row; whether it did.

    With the focus, Qt makes the first row current but does not choose it, and the first arrow would skip it.
    """
    arrow = event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down)
    current, chosen = view.currentIndex(), view.selectionModel()
    if not arrow or chosen.hasSelection() or not current.isValid():
        return False
    flags = QItemSelectionModel.SelectionFlag
    chosen.select(current, flags.ClearAndSelect | flags.Rows)
    return True


class ChoosingList(QListView):
    """A list whose first arrow chooses the first row."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not first_arrow_chooses(self, event):
            super().keyPressEvent(event)
