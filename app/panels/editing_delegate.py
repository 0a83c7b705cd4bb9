"""What the cells that are edited in place have in common: Return ends an edit at once."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QStyleOptionViewItem, QWidget

from app.panels.table_model import Index
from app.panels.tables import CellDelegate


class EditingDelegate(CellDelegate):
    """Text in a cell, and an editor that gives its value over as soon as it is ended."""

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        editor = super().createEditor(parent, option, index)
        editor.setAccessibleName(str(index.model().headerData(index.column(), Qt.Orientation.Horizontal)))
        return editor

    def end(self, editor: QWidget) -> None:
        """Take over what the editor holds, and close it."""
        # The table hides an editor whose row went, yet its list of choices may still be open.
        if editor.isVisible():
            self.commitData.emit(editor)
            self.closeEditor.emit(editor)

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        # Left to itself the delegate commits a turn of the event loop later, when the row may be gone.
        if isinstance(editor, QWidget) and isinstance(event, QKeyEvent) and _ends_edit(event):
            self.end(editor)
            return True
        return super().eventFilter(editor, event)


def _ends_edit(event: QKeyEvent) -> bool:
    return event.type() == QEvent.Type.KeyPress and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
