"""The parts tray: choosing a part takes it in hand."""

from __future__ import annotations

from textwrap import fill
from typing import Final

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import (
    QListWidget,
    QListWidgetItem,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from app import theme as themes
from app.canvas.symbols import draw_piece
from app.icons import icon, rest_look
from app.names import group_name, part_about, part_name
from app.panels.look import font
from app.panels.rows import is_chosen, is_under_pointer, paint_text, rect_of
from app.panels.table_model import Index
from app.panels.words import plain_tip
from app.shown_keys import follow_keys, in_brackets
from app.translation import QT_TR_NOOP, tr
from model.parts import TRAITS, Part

TIP: Final = 60
"""Letters in a line of a tooltip."""
ROW: Final = 30
HEADING: Final = 30
WIDE: Final = 204
NARROW: Final = 48
SYMBOL: Final = 24
PART_ROLE: Final = Qt.ItemDataRole.UserRole
READY_MADE: Final = QT_TR_NOOP("Ready made")
MODULES: Final = QT_TR_NOOP("Modules…")
MODULES_TIP: Final = QT_TR_NOOP("Readers, latches, inverters and other circuits to put down whole{key}")
MODULES_ROLE: Final = Qt.ItemDataRole.UserRole + 1
"""Whether a row stands for all modules."""
GROUPS: Final = tuple(dict.fromkeys(traits.group for traits in TRAITS.values()))


class Tray(QListWidget):
    """The parts by group, then a row that opens the modules; a heading cannot be chosen."""

    part_chosen = Signal(object)
    modules_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(tr("Parts"))
        self.setProperty("look", "tray")
        self.setItemDelegate(_TrayDelegate(self))
        self.setMouseTracking(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QListWidget.ScrollMode.ScrollPerPixel)
        self._fill()
        self.itemClicked.connect(self._choose)
        self.itemClicked.connect(self._ask)
        self.itemActivated.connect(self._ask)
        self.currentItemChanged.connect(self._choose)

    def show_part(self, part: Part) -> None:
        """Mark the part in hand, without choosing it anew."""
        blocked = self.blockSignals(True)
        for row in range(self.count()):
            if part_of(self.item(row)) is part:
                self.setCurrentRow(row)
        self.blockSignals(blocked)
        self.viewport().update()

    def set_narrow(self, narrow: bool) -> None:
        """Show symbols alone, or with their names; beside symbols alone there is no room for a scroll bar."""
        policy = Qt.ScrollBarPolicy
        self.setVerticalScrollBarPolicy(policy.ScrollBarAlwaysOff if narrow else policy.ScrollBarAsNeeded)
        self.setFixedWidth(NARROW if narrow else WIDE)

    def _fill(self) -> None:
        for group in GROUPS:
            self._head(group_name(group))
            for part, traits in TRAITS.items():
                if traits.group == group:
                    self._add(part)
        self._head(tr(READY_MADE))
        row = QListWidgetItem(tr(MODULES), self)
        row.setData(MODULES_ROLE, True)
        follow_keys(self, lambda: row.setToolTip(tr(MODULES_TIP, key=in_brackets("tool_module"))))

    def _head(self, text: str) -> None:
        heading = QListWidgetItem(text, self)
        heading.setFlags(Qt.ItemFlag.NoItemFlags)

    def _add(self, part: Part) -> None:
        item = QListWidgetItem(part_name(part), self)
        item.setData(PART_ROLE, part)
        item.setToolTip(plain_tip(f"{part_name(part)}\n{fill(part_about(part), TIP)}"))

    def _choose(self, item: QListWidgetItem | None, *_: object) -> None:
        part = None if item is None else part_of(item)
        if part is not None:
            self.part_chosen.emit(part)

    def _ask(self, item: QListWidgetItem) -> None:
        """Walking over the row with the arrow keys alone must not open the modules."""
        if item.data(MODULES_ROLE):
            self.modules_asked.emit()


def part_of(item: QListWidgetItem) -> Part | None:
    """The part in a row; ``None`` for a heading. Qt hands an enumeration of words back as a plain word."""
    word = item.data(PART_ROLE)
    return None if word is None else Part(word)


class _TrayDelegate(QStyledItemDelegate):
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        part = index.data(PART_ROLE)
        if _is_heading(index):
            self._paint_heading(painter, rect_of(option), str(index.data()))
        else:
            self._paint_row(painter, option, None if part is None else Part(part), str(index.data()))

    def _paint_heading(self, painter: QPainter, rect: QRect, text: str) -> None:
        theme = themes.current()
        if rect.width() < WIDE // 2:
            painter.fillRect(rect.left() + 8, rect.bottom() - 6, rect.width() - 16, 1, theme.edge)
            return
        line = rect.adjusted(16, 4, -16, 0)
        width = paint_text(painter, line, text, font(11, True), theme.ink2)
        painter.fillRect(line.left() + width + 8, line.center().y(), line.width() - width - 8, 1, theme.edge)

    def _paint_row(
        self, painter: QPainter, option: QStyleOptionViewItem, part: Part | None, text: str
    ) -> None:
        theme = themes.current()
        rect = rect_of(option)
        narrow = rect.width() < WIDE // 2
        if is_chosen(option):
            painter.fillRect(rect, theme.pickrow)
            painter.fillRect(rect.left(), rect.top(), 4, rect.height(), theme.pickbar)
        elif is_under_pointer(option):
            painter.fillRect(rect, theme.raised)
        left = rect.left() + ((rect.width() - SYMBOL) // 2 if narrow else 18)
        symbol = QRect(left, rect.top() + (ROW - SYMBOL) // 2, SYMBOL, SYMBOL)
        if part is None:
            icon("module").paint(painter, symbol)
        else:
            draw_piece(painter, symbol.left(), symbol.top(), SYMBOL, rest_look(part), theme)
        if not narrow:
            paint_text(painter, rect.adjusted(54, 0, -8, 0), text, font(13), theme.ink)

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        return QSize(NARROW, HEADING if _is_heading(index) else ROW)


def _is_heading(index: Index) -> bool:
    return index.data(PART_ROLE) is None and not index.data(MODULES_ROLE)
