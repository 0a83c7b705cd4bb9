"""The start screen: each choice closes it and is carried out by the window."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QMargins, QSize, Qt, QTimer, Signal, SignalInstance
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from app.actions import action
from app.dropping import take_file
from app.panels.look import hairline, label, panel
from app.recovery import LeftOver
from app.settings import Recent
from app.shown_keys import key_of
from app.start.buttons import wide_button
from app.start.examples import ExampleCard, example_paths, network_paths
from app.start.left_over import LeftOverList
from app.start.left_over_row import LeftOverRow
from app.start.recent import RecentRow
from app.translation import tr

SIZE: Final = QSize(992, 544)
LEFT: Final = 260
MARGIN: Final = 28
RECENT_SHOWN: Final = 5
"""The menu File has all of them."""


class StartScreen(QDialog):
    """On the left what to begin with, on the right what there is already."""

    new_asked = Signal()
    network_asked = Signal()
    open_asked = Signal()
    sketch_asked = Signal()
    file_chosen = Signal(object)
    """A recent one, or one that was dropped."""
    example_chosen = Signal(object)
    take_up_asked = Signal(object)
    thrown_away = Signal(object)
    """What was left over and is wanted no more; the screen has closed, and the choice stands."""

    def __init__(
        self,
        parent: QWidget | None,
        recent: Sequence[Recent],
        left_over: Sequence[LeftOver],
        *,
        sketch_first: bool,
    ) -> None:
        """``sketch_first``: whether the user is new here, and the first sketch is what serves best."""
        super().__init__(parent)
        self.setWindowTitle("Platelayer")
        self.setAcceptDrops(True)
        self.left_over_rows: list[LeftOverRow] = []
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        left = self._left(left_over, sketch_first)
        # Where the words of the buttons are longer, their column is wider, and the whole with it.
        wide = max(LEFT, left.sizeHint().width())
        left.setFixedWidth(wide)
        self.setFixedSize(SIZE.grownBy(QMargins(0, 0, wide - LEFT, 0)))
        row.addWidget(left)
        row.addWidget(hairline("upright"))
        row.addWidget(self._right(recent), 1)

    def _left(self, left_over: Sequence[LeftOver], sketch_first: bool) -> QWidget:
        side = QWidget()
        side.setProperty("look", "paper")
        side.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        column = QVBoxLayout(side)
        column.setContentsMargins(MARGIN, MARGIN, MARGIN, 20)
        column.setSpacing(8)
        column.addWidget(label("Platelayer", "name"))
        column.addWidget(label(tr("Plan a junction before\nyou place a block."), "second"))
        column.addSpacing(12)
        self._add_buttons(column, sketch_first)
        if left_over:
            column.addSpacing(8)
            self._add_left_over(column, left_over)
        else:
            column.addStretch(1)
        return side

    def _add_buttons(self, column: QVBoxLayout, sketch_first: bool) -> None:
        """The likeliest first, and dark."""
        looks = ("dark", "") if sketch_first else ("", "dark")
        self.sketch_button = wide_button(tr("First sketch"), "", looks[0], tr("six hints"))
        self.sketch_button.setToolTip(tr(action("first_sketch").tip))
        self.new_button = wide_button(tr("New plan"), key_of("new"), looks[1])
        self.network_button = wide_button(tr("New network"), key_of("new_network"), "")
        self.open_button = wide_button(tr("Open…"), key_of("open"), "")
        buttons = [
            (self.new_button, self.new_asked),
            (self.network_button, self.network_asked),
            (self.open_button, self.open_asked),
        ]
        buttons.insert(0 if sketch_first else len(buttons), (self.sketch_button, self.sketch_asked))
        for button, asked in buttons:
            column.addWidget(button)
            button.clicked.connect(lambda _=False, asked=asked: self._end(asked))

    def _add_left_over(self, column: QVBoxLayout, left_over: Sequence[LeftOver]) -> None:
        listed = LeftOverList(left_over)
        listed.take_up_asked.connect(lambda entry: self._end(self.take_up_asked, entry))
        listed.keep_asked.connect(self.reject)
        self.left_over_rows = listed.rows
        column.addWidget(listed, 1)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """A file may be dropped, as on the window behind."""
        take_file(event)

    def dropEvent(self, event: QDropEvent) -> None:
        """Closes, and has it opened once the program knows of it from which the file comes."""
        path = take_file(event)
        if path is not None:
            QTimer.singleShot(0, self, lambda: self._end(self.file_chosen, path))

    def done(self, result: int) -> None:
        """It closes, in whatever way: what was thrown away stays so."""
        for row in self.left_over_rows:
            if row.is_thrown_away:
                self.thrown_away.emit(row.entry)
        super().done(result)

    def _right(self, recent: Sequence[Recent]) -> QWidget:
        side = QWidget()
        panel(side)
        column = QVBoxLayout(side)
        column.setContentsMargins(MARGIN, 24, MARGIN, 20)
        column.setSpacing(0)
        _add_heading(column, tr("Recent"))
        self.recent_rows = [RecentRow(entry) for entry in recent[:RECENT_SHOWN]]
        for row in self.recent_rows:
            row.clicked.connect(lambda _=False, row=row: self._end(self.file_chosen, row.entry.path))
            column.addWidget(row)
        if not recent:
            column.addSpacing(10)
            told = tr("Plans and networks that you open or save are listed here.")
            column.addWidget(label(told, "second"))
        column.addStretch(1)
        _add_heading(column, tr("Examples of the Brinepan Tramway — an invented company"))
        column.addSpacing(12)
        column.addLayout(self._examples())
        return side

    def _examples(self) -> QHBoxLayout:
        cards = QHBoxLayout()
        cards.setSpacing(12)
        self.example_cards = [ExampleCard(path) for path in (*example_paths(), *network_paths())]
        for card in self.example_cards:
            card.clicked.connect(lambda _=False, card=card: self._end(self.example_chosen, card.path))
            cards.addWidget(card)
        return cards

    def _end(self, asked: SignalInstance, *args: object) -> None:
        self.accept()
        asked.emit(*args)


def _add_heading(column: QVBoxLayout, text: str) -> None:
    column.addWidget(label(text, "section"))
    column.addSpacing(6)
    column.addWidget(hairline())
