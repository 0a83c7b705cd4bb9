"""All keys on one page, and an action found by a word."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from app.actions import ACTIONS, MENUS, UserAction
from app.panels.look import label, named
from app.view_keys import PLAN_KEYS, KeyRows


def key_words(entry: UserAction) -> str:
    """The keys of an action as the system writes them."""
    return ", ".join(QKeySequence(key).toString(QKeySequence.SequenceFormat.NativeText) for key in entry.keys)


class KeysDialog(QDialog):
    """The shortcut sheet, made from the table of actions."""

    def __init__(
        self,
        parent: QWidget | None = None,
        table: Sequence[UserAction] = ACTIONS,
        menus: Sequence[str] = MENUS,
        first: Mapping[str, KeyRows] = PLAN_KEYS,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Keys")
        self.resize(520, 560)
        page = QWidget()
        page.setProperty("look", "panel")
        grid = QGridLayout(page)
        grid.setHorizontalSpacing(24)
        grid.setColumnStretch(1, 1)
        for title, rows in first.items():
            self._add(grid, title, rows)
        for menu in menus:
            entries = [entry for entry in table if entry.menu.split("/")[0] == menu and entry.keys]
            self._add(grid, menu, tuple((key_words(entry), entry.text.rstrip("…")) for entry in entries))
        area = named(QScrollArea(widgetResizable=True), "Keys")
        area.setWidget(page)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.addWidget(area)
        column.addWidget(buttons)

    def _add(self, grid: QGridLayout, title: str, rows: KeyRows) -> None:
        if not rows:
            return
        grid.addWidget(label(title, "section"), grid.rowCount(), 0, 1, 2)
        for keys, words in rows:
            row = grid.rowCount()
            grid.addWidget(label(keys, "key"), row, 0, Qt.AlignmentFlag.AlignLeft)
            told = label(words)
            told.setWordWrap(True)
            grid.addWidget(told, row, 1)


class ActionFinder(QDialog):
    """A line to type into, and the actions that have all its words."""

    def __init__(
        self, parent: QWidget, actions: Mapping[str, QAction], table: Sequence[UserAction] = ACTIONS
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Find an action")
        self.resize(460, 360)
        self._actions = actions
        self._table = table
        self.line = named(QLineEdit(placeholderText="turn, export, level…"), "What to look for")
        self.list = named(QListWidget(), "Actions found")
        self.line.textChanged.connect(self._find)
        self.line.returnPressed.connect(self.accept)
        self.list.itemActivated.connect(self.accept)
        column = QVBoxLayout(self)
        column.addWidget(self.line)
        column.addWidget(self.list)
        self._find("")

    @property
    def chosen(self) -> QAction | None:
        """The action of the row that is current."""
        item = self.list.currentItem()
        return None if item is None else self._actions[item.data(Qt.ItemDataRole.UserRole)]

    def _find(self, text: str) -> None:
        words = text.casefold().split()
        self.list.clear()
        for entry in self._table:
            said = f"{entry.menu.replace('/', ' ')} {entry.text} {entry.tip}".casefold()
            if all(word in said for word in words) and self._actions[entry.name].isEnabled():
                keys = key_words(entry)
                item = QListWidgetItem(f"{entry.text}   {keys}" if keys else entry.text, self.list)
                item.setData(Qt.ItemDataRole.UserRole, entry.name)
                item.setToolTip(entry.tip)
        self.list.setCurrentRow(0)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Down, Qt.Key.Key_Up):
            step = 1 if event.key() == Qt.Key.Key_Down else -1
            self.list.setCurrentRow(max(0, min(self.list.count() - 1, self.list.currentRow() + step)))
        else:
            super().keyPressEvent(event)
