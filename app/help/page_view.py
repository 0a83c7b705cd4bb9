"""A page of the help on the screen: its entries one below the other, as plain text."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from app import theme as themes
from app.help.drawing import DrawingView
from app.help.entries import Drawing, Entry, Line, Page
from app.icons import icon
from app.panels.focus_frame import FocusFrame
from app.panels.look import hairline, label, named
from app.shown_keys import shown
from app.translation import tr

SYMBOL: Final = 24
INDENT: Final = SYMBOL + 12
HEAD: Final = 64
"""px for the word before a line."""
WIDE_HEAD: Final = 150
"""px for the keys before a line."""
SIDE_BY_SIDE: Final = 300
"""px that a drawing may be wide for two to stand beside each other."""


class PageView(QScrollArea):
    """Shows one page at a time, with one entry marked."""

    def __init__(self) -> None:
        super().__init__(widgetResizable=True)
        named(self, tr("Page of the help"))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._page: Page | None = None
        self._shown = QWidget()
        self._entries: dict[str, EntryView] = {}
        FocusFrame(self)

    @property
    def shown(self) -> str | None:
        """The key of the marked entry."""
        return next((key for key, view in self._entries.items() if view.is_marked), None)

    def show_entry(self, page: Page, key: str) -> None:
        """Show the page, with an entry at its top as far as that goes."""
        if page != self._page:
            self._page = page
            self._shown = self._made(page)
            self.setWidget(self._shown)
        for other, view in self._entries.items():
            view.mark(other == key)
        # Only what is laid out knows where it stands.
        self._shown.adjustSize()
        self.verticalScrollBar().setValue(self._entries[key].y() - 8)

    def _made(self, page: Page) -> QWidget:
        made = QWidget()
        made.setProperty("look", "panel")
        column = QVBoxLayout(made)
        column.setContentsMargins(16, 12, 16, 24)
        column.setSpacing(0)
        column.addWidget(label(page.title, "heading"))
        column.addWidget(_text(page.about, "second"))
        column.addSpacing(8)
        self._entries = {entry.key: EntryView(entry) for entry in page.entries}
        for view in self._entries.values():
            column.addWidget(hairline())
            column.addWidget(view)
        column.addStretch(1)
        return made


class EntryView(QWidget):
    """Symbol, title and keys; below them what there is to say."""

    def __init__(self, entry: Entry) -> None:
        super().__init__()
        self.is_marked = False
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 10, 8, 10)
        row.setSpacing(INDENT - SYMBOL)
        row.addWidget(Symbol(entry.icon), 0, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout()
        column.setSpacing(4)
        column.addLayout(_head(entry))
        head = WIDE_HEAD if all(line.head for line in entry.lines) else HEAD
        plain = "\n".join(line.text for line in entry.lines if not line.head)
        if plain:
            column.addWidget(_text(plain))
        for line in entry.lines:
            if line.head:
                column.addLayout(_line(line, head))
        if entry.drawings:
            column.addSpacing(4)
            column.addLayout(_drawings(entry.drawings))
        row.addLayout(column, 1)

    def mark(self, is_marked: bool) -> None:
        """Whether it is the entry that was asked for."""
        if is_marked != self.is_marked:
            self.is_marked = is_marked
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        if self.is_marked:
            painter, theme = QPainter(self), themes.current()
            painter.fillRect(0, 0, 4, self.height(), theme.pickbar)


class Symbol(QWidget):
    """A symbol at 24 px; nothing where there is none."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self._name = name
        self.setFixedSize(SYMBOL, SYMBOL)

    def paintEvent(self, event: QPaintEvent) -> None:
        if self._name:
            icon(self._name).paint(QPainter(self), self.rect())


def _head(entry: Entry) -> QHBoxLayout:
    row = QHBoxLayout()
    row.addWidget(label(entry.title, "strong"), 1)
    for keys in filter(None, entry.keys.split(", ")):
        row.addWidget(label(shown(keys), "key"))
    return row


def _line(line: Line, width: int) -> QHBoxLayout:
    row = QHBoxLayout()
    row.setSpacing(8)
    head = label(line.head, "section")
    head.setFixedWidth(width)
    head.setWordWrap(True)
    row.addWidget(head, 0, Qt.AlignmentFlag.AlignTop)
    row.addWidget(_text(line.text), 1)
    return row


def _drawings(drawings: tuple[Drawing, ...]) -> QBoxLayout:
    views = [DrawingView(drawing) for drawing in drawings]
    beside = all(view.width() <= SIDE_BY_SIDE for view in views)
    direction = QBoxLayout.Direction.LeftToRight if beside else QBoxLayout.Direction.TopToBottom
    both = QBoxLayout(direction)
    both.setSpacing(12)
    for drawing, view in zip(drawings, views, strict=True):
        column = QVBoxLayout()
        column.setSpacing(2)
        column.addWidget(label(drawing.caption, "section"))
        column.addWidget(view)
        column.addStretch(1)
        both.addLayout(column)
    both.addStretch(1)
    return both


def _text(text: str, look: str = "") -> QWidget:
    made = label(text, look)
    made.setWordWrap(True)
    made.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return made
