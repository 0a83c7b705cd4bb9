"""What the table models of the side panel have in common: rows, and columns with a title and a tip."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar, Final

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt

from app.translation import tr

Index = QModelIndex | QPersistentModelIndex
ROOT: Final = QModelIndex()


class TableModel(QAbstractTableModel):
    """A flat table; who derives from it says which rows there are and what stands in them."""

    titles: ClassVar[tuple[str, ...]]
    """By column, in English."""
    tips: ClassVar[tuple[str, ...]]
    """By column, in English."""
    figures: ClassVar[frozenset[int]] = frozenset()
    """Columns whose figures stand at the right, under their titles."""

    def title(self, column: int) -> str:
        """The title of a column in the user's language."""
        return tr(self.titles[column])

    def rows(self) -> Sequence[object]:
        """What stands in the table, a row each."""
        raise NotImplementedError

    def rowCount(self, parent: Index = ROOT) -> int:
        return 0 if parent.isValid() else len(self.rows())

    def columnCount(self, parent: Index = ROOT) -> int:
        return 0 if parent.isValid() else len(self.titles)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        if orientation == Qt.Orientation.Horizontal:
            if role == Qt.ItemDataRole.DisplayRole:
                return self.title(section)
            if role == Qt.ItemDataRole.ToolTipRole:
                return tr(self.tips[section])
            if role == Qt.ItemDataRole.TextAlignmentRole and section in self.figures:
                return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        return None
