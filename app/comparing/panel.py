"""What differs from the other plan, as a list above the findings while two plans are compared."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QItemSelection, QModelIndex, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from app.comparing.comparing import Comparing
from app.comparing.rows import ROW, ComparedRow, DifferencesDelegate, DifferencesModel, rows_of
from app.panels.findings_list import findings_list
from app.panels.findings_model import FINDING_ROLE
from app.panels.look import fit_lines, label, named, panel
from app.panels.rows import FRAME
from app.shown_keys import keep_tip
from app.translation import tr

MARGIN: Final = 14
LEAST_ROWS: Final = 3
AT_ONCE: Final = 1_000
"""So many differences are listed before the next frame."""
SOON_MS: Final = 100
"""After the last edit; then more of them are listed."""


class ComparisonPanel(QWidget):
    """Choosing a row goes to its cell."""

    row_chosen = Signal(object)
    """A ``ComparedRow``."""

    def __init__(self, comparing: Comparing, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self._comparing = comparing
        self.model = DifferencesModel(self)
        self.list = findings_list(self, self.model, tr("Differences"))
        self.list.setItemDelegate(DifferencesDelegate(self.list))
        self.list.setMinimumHeight(LEAST_ROWS * ROW + 2 * FRAME)
        self.head = label("", "section")
        self.said = label("", "second")
        self.previous = _button(tr("Previous"), tr("The difference before this one"), "previous_difference")
        self.next = _button(tr("Next"), tr("The next difference"), "next_difference")
        self.swap = _button(tr("Swap"), tr("Let the earlier plan be the later one"))
        self.close_button = _button(tr("End"), tr("Compare no longer (Esc)"))
        self._lay_out()
        self._is_taking_over = False
        self.previous.clicked.connect(lambda: self.step(-1))
        self.next.clicked.connect(lambda: self.step(1))
        self.swap.clicked.connect(comparing.swap)
        self.close_button.clicked.connect(comparing.end)
        self.list.selectionModel().selectionChanged.connect(self._choose)
        # A click on the row that is chosen already goes there once more.
        self.list.clicked.connect(self._tell)
        self._soon = QTimer(self, singleShot=True, interval=SOON_MS)
        self._soon.timeout.connect(self.take_over)
        comparing.changed.connect(self._follow)
        self.hide()

    @property
    def row(self) -> ComparedRow | None:
        """The chosen row."""
        indexes = self.list.selectedIndexes()
        return indexes[0].data(FINDING_ROLE) if indexes else None

    def take_over(self) -> None:
        """Show what differs now; nothing at all where no plan is compared."""
        comparing = self._comparing
        self._show_rows(
            rows_of(comparing.differences.in_order(), comparing.beside) if comparing.is_on else []
        )
        if comparing.is_on:
            self._say()

    def _follow(self) -> None:
        """Where very many cells differ the picture of the edit comes first."""
        if self._comparing.is_on and len(self._comparing.differences) > AT_ONCE:
            self._soon.start()
        else:
            self.take_over()

    def step(self, steps: int) -> None:
        """Choose the row so many rows further down, from the last on to the first."""
        count = self.model.total
        if not count:
            return
        chosen = self.list.selectedIndexes()
        row = (chosen[0].row() + steps) % count if chosen else 0 if steps > 0 else count - 1
        self.list.setCurrentIndex(self.model.reach(row))

    def _show_rows(self, rows: list[ComparedRow]) -> None:
        """A row that goes makes Qt choose the next one; nobody asked to go there."""
        before = self.row
        self._is_taking_over = True
        self.model.show_rows(rows)
        chosen = None if before is None else self.model.row_of(before)
        if chosen is None:
            self.list.clearSelection()
        else:
            self.list.setCurrentIndex(self.model.reach(chosen))
        self._is_taking_over = False

    def _say(self) -> None:
        comparing = self._comparing
        here, there = tr("this plan"), comparing.name
        before, after = (here, there) if comparing.other_is_later else (there, here)
        counts = comparing.counts_words
        self.head.setText(tr("From {before} to {after}", before=before, after=after))
        self.said.setText(counts[0].upper() + counts[1:] + ".")
        for button in (self.previous, self.next):
            button.setEnabled(bool(self.model.total))
        self._fit()

    def _fit(self) -> None:
        for words in (self.head, self.said):
            fit_lines(words, self.width() - 2 * MARGIN)

    def _choose(self, _now: QItemSelection, _before: QItemSelection) -> None:
        if self.row is not None and not self._is_taking_over:
            self.row_chosen.emit(self.row)

    def _tell(self, index: QModelIndex) -> None:
        self.row_chosen.emit(self.model.at(index.row()))

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        above = QVBoxLayout()
        above.setContentsMargins(MARGIN, 10, MARGIN, 8)
        above.setSpacing(4)
        for words in (self.head, self.said):
            words.setWordWrap(True)
            above.addWidget(words)
        column.addLayout(above)
        column.addWidget(self.list, 1)
        row = QHBoxLayout()
        row.setContentsMargins(MARGIN, 8, MARGIN, 8)
        row.setSpacing(8)
        for button in (self.previous, self.next, self.swap):
            row.addWidget(button)
        row.addStretch(1)
        row.addWidget(self.close_button)
        column.addLayout(row)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self._comparing.end()
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()


def _button(text: str, tip: str, does: str = "") -> QPushButton:
    """``does`` is the action whose key the tip names."""
    made = named(QPushButton(text), tip)
    made.setToolTip(tip)
    made.setAutoDefault(True)
    made.setProperty("look", "quiet")
    if does:
        keep_tip(made, tip, does)
    return made
