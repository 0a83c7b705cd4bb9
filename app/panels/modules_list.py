"""The modules by their titles; choosing one takes it in hand."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from app import theme as themes
from app.panels.look import font
from app.panels.modules_signs import paint_sign
from app.panels.rows import FRAME, is_chosen, is_under_pointer, paint_text, rect_of
from app.panels.table_model import Index
from app.panels.tray import ROW, SYMBOL, WIDE
from app.translation import tr
from model.wiring.modules.modules import load_module, module_names

NAME_ROLE: Final = Qt.ItemDataRole.UserRole


class ModulesList(QListWidget):
    """A row a module, in the order of the titles."""

    module_chosen = Signal(str)
    picked = Signal()
    """One was clicked, or Enter pressed: what comes next is done in the plan view."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(tr("Modules"))
        self.setProperty("look", "tray")
        self.setItemDelegate(_ModuleDelegate(self))
        self.setMouseTracking(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        for module in sorted(map(load_module, module_names()), key=lambda module: module.title):
            item = QListWidgetItem(tr(module.title), self)
            item.setData(NAME_ROLE, module.name)
            item.setToolTip(tr(module.title))
        self.setFixedHeight(ROW * self.count() + 2 * FRAME)
        self.currentItemChanged.connect(self._choose)
        self.itemClicked.connect(lambda _item: self.picked.emit())
        self.itemActivated.connect(lambda _item: self.picked.emit())

    @property
    def module(self) -> str | None:
        """The name of the module that is chosen."""
        item = self.currentItem()
        return None if item is None else str(item.data(NAME_ROLE))

    def show_module(self, name: str) -> None:
        """Mark the module in hand, without choosing it anew."""
        blocked = self.blockSignals(True)
        for row in range(self.count()):
            if self.item(row).data(NAME_ROLE) == name:
                self.setCurrentRow(row)
        self.blockSignals(blocked)
        self.viewport().update()

    def _choose(self, item: QListWidgetItem | None, *_: object) -> None:
        if item is not None:
            self.module_chosen.emit(item.data(NAME_ROLE))


class _ModuleDelegate(QStyledItemDelegate):
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        theme, rect = themes.current(), rect_of(option)
        if is_chosen(option):
            painter.fillRect(rect, theme.pickrow)
            painter.fillRect(rect.left(), rect.top(), 4, rect.height(), theme.pickbar)
        elif is_under_pointer(option):
            painter.fillRect(rect, theme.raised)
        sign = QRect(rect.left() + 18, rect.top() + (ROW - SYMBOL) // 2, SYMBOL, SYMBOL)
        paint_sign(painter, sign, index.data(NAME_ROLE), theme)
        paint_text(painter, rect.adjusted(54, 0, -8, 0), str(index.data()), font(13), theme.ink)

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        return QSize(WIDE, ROW)
