"""A line of the log of the dry run, in the width that the chip has for it."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QSize
from PySide6.QtGui import QHelpEvent
from PySide6.QtWidgets import QAbstractItemView, QStyledItemDelegate, QStyleOptionViewItem, QToolTip

from app.panels.words import plain_tip

Index = QModelIndex | QPersistentModelIndex


class LogLine(QStyledItemDelegate):
    """A line that is too long ends in dots, and its tip says all of it."""

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """No wider than the list: a bar for the width would lie over the line."""
        return QSize(0, super().sizeHint(option, index).height())

    def helpEvent(
        self, event: QHelpEvent, view: QAbstractItemView, option: QStyleOptionViewItem, index: Index
    ) -> bool:
        QToolTip.showText(event.globalPos(), plain_tip(str(index.data())) if index.isValid() else "", view)
        return True
