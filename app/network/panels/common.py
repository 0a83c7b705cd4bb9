"""What the panels of the network window have in common."""

from __future__ import annotations

from typing import ClassVar, Final

from PySide6.QtCore import QRect, Qt, QTimer
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLayout, QPushButton, QVBoxLayout, QWidget

from app import theme as themes
from app.panels.editing_delegate import EditingDelegate
from app.panels.look import font, heads, label, panel
from app.panels.rows import paint_text
from app.panels.table_model import Index
from app.panels.tables import Table
from app.panels.wrapped_row import WrappedRow
from app.translation import tr

OLD_ROLE: Final = Qt.ItemDataRole.UserRole
"""Whether what a cell says is of an earlier network."""


class RowDelegate(EditingDelegate):
    """Text in a cell: names in bold, figures at the right, what is old in grey."""

    cut: ClassVar = Qt.TextElideMode.ElideRight
    """Where what is too long loses letters."""

    def __init__(self, parent: QWidget, bold: frozenset[int], figures: frozenset[int]) -> None:
        super().__init__(parent)
        self._bold, self._figures = bold, figures

    def paint_content(self, painter: QPainter, room: QRect, index: Index) -> None:
        theme = themes.current()
        colour = theme.ink2 if index.data(OLD_ROLE) else theme.ink
        is_figure = index.column() in self._figures
        words = str(index.data())
        size = font(11 if is_figure else 12, index.column() in self._bold)
        room = room.adjusted(0, 0, -2 if is_figure else 0, 0)
        paint_text(painter, room, words, size, colour, right=is_figure, cut=self.cut)


def keep_chosen_in_sight(table: Table) -> None:
    """What is said below takes room from the list; the chosen row must stay in sight."""
    QTimer.singleShot(0, table, lambda: table.scrollTo(table.currentIndex()))


def button_row(*buttons: QPushButton) -> QLayout:
    """Buttons side by side at the foot of a list."""
    row = WrappedRow()
    row.setContentsMargins(14, 8, 14, 8)
    for button in buttons:
        row.addWidget(button)
    return row


def stacked(owner: QWidget, table: Table, empty: QWidget, *below: QWidget | QLayout) -> None:
    """A table, what is said instead of it, and what stands below."""
    panel(owner)
    column = QVBoxLayout(owner)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(0)
    column.addWidget(empty)
    column.addWidget(table, 1)
    for part in below:
        column.addLayout(part) if isinstance(part, QLayout) else column.addWidget(part)
    column.addStretch(0)


def empty_words(words: str) -> QLabel:
    """What is said where a list would be empty."""
    made = label(words, "second")
    made.setWordWrap(True)
    made.setContentsMargins(14, 12, 14, 12)
    return made


class Facts(QWidget):
    """Lines of a word, looked up here, and a sentence about what is chosen in the list above."""

    def __init__(self, words: tuple[str, ...], word_width: int = 56) -> None:
        super().__init__()
        self._rows = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 8, 14, 8)
        column.setSpacing(6)
        said = [tr(word) for word in words]
        for word, head in zip(words, heads(said, word_width), strict=True):
            sentence = label()
            sentence.setWordWrap(True)
            sentence.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
            # The smaller letters of the word stand on the line of the sentence's.
            head.setContentsMargins(0, 1, 0, 0)
            sentence.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            row = QHBoxLayout()
            row.addWidget(head, 0, Qt.AlignmentFlag.AlignTop)
            row.addWidget(sentence, 1)
            column.addLayout(row)
            self._rows[word] = (head, sentence)

    def show_facts(self, facts: dict[str, str]) -> None:
        """The sentences by word; a word without one is left out."""
        for word, (head, sentence) in self._rows.items():
            text = facts.get(word, "")
            sentence.setText(text)
            head.setVisible(bool(text))
            sentence.setVisible(bool(text))

    @property
    def text(self) -> str:
        """All that is said."""
        return "\n".join(
            f"{tr(word)}: {told.text()}" for word, (_, told) in self._rows.items() if told.text()
        )
