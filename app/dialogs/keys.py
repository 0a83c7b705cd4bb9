"""All keys on one page, to read and to change; and an action found by a word."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAction, QKeyEvent, QPainter
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QHeaderView,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from app import theme as themes
from app import user_keys
from app.actions import ACTIONS, MENUS, UserAction
from app.announcing import announce
from app.dialogs.key_editor import Change, KeyEditor
from app.panels.look import font, label, named
from app.panels.rows import MARGIN, paint_ground, paint_text, rect_of
from app.panels.table_model import Index
from app.panels.words import listed
from app.shown_keys import shown
from app.translation import tr
from app.user_keys import Chosen, keys_of
from app.view_keys import PLAN_KEYS, KeyRows

ROW: Final = 26
KEYS_ROLE: Final = Qt.ItemDataRole.UserRole + 1
NAMED: Final = 3
"""Actions that are told by name where none of them can be done."""


def key_words(entry: UserAction) -> str:
    """The keys of an action as the system writes them."""
    return ", ".join(map(shown, keys_of(entry)))


def title_words(entry: UserAction) -> str:
    """What an action is called outside its menu: ``Theme: Dark``."""
    _, *group = entry.menu.split("/")
    return tr("{group}: {action}", group=tr(group[0]), action=tr(entry.text)) if group else tr(entry.text)


class KeysDialog(QDialog):
    """The shortcut sheet, made from the table of actions; the chosen action can be given other keys."""

    def __init__(
        self,
        parent: QWidget | None,
        change: Change,
        table: Sequence[UserAction] = ACTIONS,
        menus: Sequence[str] = MENUS,
        first: Mapping[str, KeyRows] = PLAN_KEYS,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Keys"))
        self.resize(800, 640)
        self._change = change
        self._rows: dict[str, QTreeWidgetItem] = {}
        self._entries = {entry.name: entry for entry in table}
        self.list = named(QTreeWidget(columnCount=2), tr("Keys"))
        self.list.setRootIsDecorated(False)
        self.list.setIndentation(0)
        self.list.setItemDelegate(_RowDelegate(self.list))
        self.list.setHeaderLabels([tr("what it does"), tr("keys")])
        self.list.header().setStretchLastSection(False)
        self.list.header().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        self.list.header().setSectionResizeMode(1, QHeaderView.ResizeMode.ResizeToContents)
        for title, rows in first.items():
            self._add(tr(title), [(tr(words), tr(keys), "") for keys, words in rows])
        for menu in menus:
            entries = [entry for entry in table if entry.menu.split("/")[0] == menu]
            self._add(tr(menu), [(title_words(entry).rstrip("…"), "", entry.name) for entry in entries])
        self.editor = KeyEditor(self._take_over, self)
        self.list.currentItemChanged.connect(lambda now, _before: self._show_action(now))
        self._lay_out()
        self._show_keys()

    def choose(self, name: str) -> None:
        """Go to the row of an action. Raises KeyError."""
        self.list.setCurrentItem(self._rows[name])

    def words_of(self, name: str) -> str:
        """The keys that the sheet shows for an action. Raises KeyError."""
        return self._rows[name].text(1)

    def reset_all(self) -> None:
        """Every action has the keys of the table again."""
        self._take_over({})
        self._show_action(self.list.currentItem())

    def _add(self, title: str, rows: Sequence[tuple[str, str, str]]) -> None:
        """A heading, and rows of words, keys and the action's name."""
        if not rows:
            return
        heading = QTreeWidgetItem(self.list, [title])
        heading.setFlags(Qt.ItemFlag.ItemIsEnabled)
        heading.setFont(0, font(12, True))
        heading.setFirstColumnSpanned(True)
        for words, keys, name in rows:
            row = QTreeWidgetItem(self.list, [words, keys])
            row.setToolTip(0, tr(self._entries[name].tip) if name else words)
            row.setData(0, Qt.ItemDataRole.UserRole, name)
            if name:
                self._rows[name] = row

    def _lay_out(self) -> None:
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        self.reset = buttons.addButton(tr("All as they were"), QDialogButtonBox.ButtonRole.ResetRole)
        for button in buttons.buttons():
            if isinstance(button, QPushButton):
                # Return belongs to the field, where it may be the key that is asked for.
                button.setAutoDefault(False)
        self.reset.clicked.connect(self.reset_all)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        column.addWidget(self.list, 1)
        column.addWidget(self.editor)
        column.addWidget(buttons)

    def _take_over(self, chosen: Chosen) -> None:
        self._change(chosen)
        self._show_keys()

    def _show_keys(self) -> None:
        for name, row in self._rows.items():
            row.setText(1, key_words(self._entries[name]))
        self.reset.setEnabled(bool(user_keys.chosen()))

    def _show_action(self, row: QTreeWidgetItem | None) -> None:
        name = "" if row is None else row.data(0, Qt.ItemDataRole.UserRole)
        self.editor.show_action(self._entries[name] if name else None)


class _RowDelegate(QStyledItemDelegate):
    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        return QSize(super().sizeHint(option, index).width() + 12, ROW)


class _FoundDelegate(QStyledItemDelegate):
    """What an action is called, and at the right its keys."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        theme = themes.current()
        paint_ground(painter, option, theme)
        room = rect_of(option).adjusted(MARGIN, 0, -MARGIN, 0)
        keys = paint_text(painter, room, index.data(KEYS_ROLE), font(11), theme.ink2, right=True)
        paint_text(painter, room.adjusted(0, 0, -keys - 8, 0), index.data(), font(12), theme.ink)

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        return QSize(200, ROW)


class ActionFinder(QDialog):
    """A line to type into, and the actions that have all its words."""

    def __init__(
        self, parent: QWidget, actions: Mapping[str, QAction], table: Sequence[UserAction] = ACTIONS
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Look for an action"))
        self.resize(460, 360)
        self._actions = actions
        self._table = table
        self.line = named(QLineEdit(placeholderText=tr("turn, export, level…")), tr("What to look for"))
        self.list = named(QListWidget(), tr("Actions found"))
        self.list.setItemDelegate(_FoundDelegate(self.list))
        self.nothing = label("", "second")
        self.nothing.setWordWrap(True)
        self.line.textChanged.connect(self._find)
        self.line.returnPressed.connect(self.accept)
        self.list.itemActivated.connect(self.accept)
        column = QVBoxLayout(self)
        for widget in (self.line, self.nothing, self.list):
            column.addWidget(widget)
        self._find("")

    @property
    def chosen(self) -> QAction | None:
        """The action of the row that is current."""
        item = self.list.currentItem()
        return None if item is None else self._actions[item.data(Qt.ItemDataRole.UserRole)]

    def _find(self, text: str) -> None:
        words = text.casefold().split()
        found = [entry for entry in self._table if _has_words(entry, words)]
        able = [entry for entry in found if self._actions[entry.name].isEnabled()]
        # What is called so comes before what only tells of it.
        able.sort(key=lambda entry: not _are_in(words, title_words(entry)))
        self.list.clear()
        for entry in able:
            self._add(entry)
        self.list.setCurrentRow(0)
        self._tell("" if able else _nothing_words(found))

    def _add(self, entry: UserAction) -> None:
        keys = key_words(entry)
        title = title_words(entry)
        item = QListWidgetItem(title, self.list)
        item.setData(Qt.ItemDataRole.UserRole, entry.name)
        item.setData(KEYS_ROLE, keys)
        item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{title}, {keys}" if keys else title)
        item.setToolTip(tr(entry.tip))

    def _tell(self, nothing: str) -> None:
        """Why the list is empty, where it is."""
        if nothing and nothing != self.nothing.text():
            announce(self.line, nothing)
        self.nothing.setText(nothing)
        self.nothing.setVisible(bool(nothing))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Down, Qt.Key.Key_Up):
            step = 1 if event.key() == Qt.Key.Key_Down else -1
            self.list.setCurrentRow(max(0, min(self.list.count() - 1, self.list.currentRow() + step)))
        else:
            super().keyPressEvent(event)


def _has_words(entry: UserAction, words: Sequence[str]) -> bool:
    return _are_in(words, " ".join(map(tr, (*entry.menu.split("/"), entry.text, entry.tip))))


def _are_in(words: Sequence[str], text: str) -> bool:
    said = text.casefold()
    return all(word in said for word in words)


def _nothing_words(found: Sequence[UserAction]) -> str:
    """A sentence for when no action that was found can be done."""
    if not found:
        return tr("No action has all these words.")
    names = listed([tr(entry.text).rstrip("…") for entry in found[:NAMED]])
    return tr("Cannot be done now: {names}.", names=names)
