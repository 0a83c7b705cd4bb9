"""The window of the help: an index with a line to search in it, and the page of the chosen entry."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QIcon, QKeyEvent
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from app.help.entries import Entry, Page
from app.help.page_view import PageView
from app.help.pages import found, pages
from app.icons import icon
from app.panels.cross import add_cross
from app.panels.look import hairline, label, named
from app.shown_keys import follow_keys
from app.translation import tr

INDEX: Final = 272
ROW: Final = 28
SYMBOL: Final = 24
KEY_ROLE: Final = Qt.ItemDataRole.UserRole


class HelpDialog(QDialog):
    """Stays open beside the plan, and goes where it is asked to."""

    def __init__(self, parent: QWidget | None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Help"))
        self.resize(920, 640)
        self.setMinimumSize(640, 420)
        self.line = named(QLineEdit(), tr("What to look for"))
        self.line.setPlaceholderText(tr("Search: switch, arm, erase…"))
        add_cross(self.line, self.line.clear)
        self.index = named(QListWidget(), tr("Index of the help"))
        self.index.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.index.setIconSize(QSize(SYMBOL, SYMBOL))
        self.page = PageView()
        self.nothing = label(tr("Nothing in the help has all these words."), "second")
        self.nothing.setWordWrap(True)
        self._lay_out()
        self.line.textChanged.connect(self._find)
        self.index.currentItemChanged.connect(lambda item, _before: self._show_item(item))
        follow_keys(self, self._take_keys)

    @property
    def shown(self) -> str | None:
        """The key of the entry that is shown."""
        return self.page.shown

    def go_to(self, key: str) -> None:
        """Show an entry, whatever was searched for. Raises KeyError."""
        self.line.clear()
        self.index.setCurrentItem(self._items[key])
        self.index.scrollToItem(self._items[key], QListWidget.ScrollHint.PositionAtCenter)
        self._show_item(self._items[key])

    def _take_keys(self) -> None:
        """All pages anew, with the entry that was shown."""
        before = self.shown
        self._find(self.line.text())
        if before is not None and before in self._items:
            self.index.setCurrentItem(self._items[before])

    def _find(self, words: str) -> None:
        """The index of what has all the words; it begins with the first entry."""
        self.index.clear()
        self._items: dict[str, QListWidgetItem] = {}
        self._pages: dict[str, Page] = {}
        whole = {page.title: page for page in pages()}
        for part in found(words):
            self._add_heading(part.title)
            for entry in part.entries:
                self._items[entry.key] = self._add(entry)
                self._pages[entry.key] = whole[part.title]
        self.nothing.setVisible(not self._items)
        if self._items:
            self.index.setCurrentItem(next(iter(self._items.values())))

    def _add_heading(self, title: str) -> None:
        heading = QListWidgetItem(title, self.index)
        heading.setSizeHint(QSize(0, ROW))
        heading.setFlags(Qt.ItemFlag.NoItemFlags)
        bold = heading.font()
        bold.setBold(True)
        heading.setFont(bold)

    def _add(self, entry: Entry) -> QListWidgetItem:
        item = QListWidgetItem(entry.title, self.index)
        item.setData(KEY_ROLE, entry.key)
        item.setSizeHint(QSize(0, ROW))
        item.setToolTip(entry.title)
        if entry.icon:
            item.setIcon(_symbol(entry.icon))
        # A screen reader that walks the index tells at once what the page shows.
        said = " ".join(line.text for line in entry.lines)
        item.setData(Qt.ItemDataRole.AccessibleDescriptionRole, said)
        return item

    def _show_item(self, item: QListWidgetItem | None) -> None:
        key = None if item is None else item.data(KEY_ROLE)
        if key is not None:
            self.page.show_entry(self._pages[key], key)

    def _lay_out(self) -> None:
        left = QVBoxLayout()
        left.setSpacing(8)
        for widget in (self.line, self.nothing, self.index):
            left.addWidget(widget)
        side = QWidget()
        side.setLayout(left)
        side.setFixedWidth(INDEX)
        left.setContentsMargins(0, 0, 0, 0)
        row = QHBoxLayout()
        row.setSpacing(12)
        row.addWidget(side)
        row.addWidget(hairline("upright"))
        row.addWidget(self.page, 1)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.button(QDialogButtonBox.StandardButton.Close).setProperty("look", "quiet")
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 12, 12, 12)
        column.addLayout(row, 1)
        column.addWidget(buttons)

    # Qt

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up and down in the line walk the index; Enter closes nothing."""
        if event.key() in (Qt.Key.Key_Down, Qt.Key.Key_Up):
            self.index.setFocus()
            self.index.keyPressEvent(event)
        elif event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)


def _symbol(name: str) -> QIcon:
    """A symbol that keeps its ink in the chosen row."""
    made = QIcon()
    for mode in (QIcon.Mode.Normal, QIcon.Mode.Selected):
        made.addPixmap(icon(name).pixmap(SYMBOL, SYMBOL), mode)
    return made
