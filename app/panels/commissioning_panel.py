"""Commissioning: the runs to make, what each cart did, and what is wrong when one did not do as it must."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetrics, QHideEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QStackedLayout, QVBoxLayout, QWidget

from app.dialogs.another_run import ask_run
from app.document import Document
from app.panels.commissioning_book import RunBook
from app.panels.commissioning_list import SentencesList
from app.panels.commissioning_model import RunsModel
from app.panels.commissioning_table import RunsTable
from app.panels.commissioning_words import (
    ANEW,
    LIMITS,
    LOOKING,
    NO_ROUTES,
    NO_RUNS,
    WORKING,
    Said,
    coverage_words,
    explained_words,
    explanations_of,
    limits_of,
    next_words,
    progress_words,
)
from app.panels.look import fit_lines, font, label, named, panel
from app.panels.row_menu import RowMenu
from app.panels.side_panel import WIDTH
from app.panels.words import plain_tip
from app.translation import tr
from model.commissioning import Run

MARGIN: Final = 14
PADDING: Final = 14
"""Inside a button at both ends, its frame included, in pixels."""


class CommissioningPanel(QWidget):
    """The table of the runs, and under it what they tell."""

    run_chosen = Signal(object)
    """The run whose way is to be shown."""
    count_changed = Signal(object)
    """How many runs are listed; ``None`` while that is not known."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self._document = document
        self.book = RunBook(document, self)
        self.model = RunsModel(self.book, self)
        self.coverage = _sentence()
        self.table = RunsTable(self.model, self)
        self.another_button = QPushButton(tr("Another run…"), self)
        self.clear_button = QPushButton(tr("Clear"), self)
        self.limits_button = QPushButton(tr("What they miss"), self)
        self.limits_button.setCheckable(True)
        self.limits_button.setToolTip(tr("Faults that no run shows, and faults that no run tells apart"))
        self.verdict = _sentence()
        self.list = named(SentencesList(self), tr("What may be wrong"))
        self.next_button = QPushButton(tr("Next"), self)
        self.next_button.setProperty("look", "main")
        self.empty = _sentence("second")
        self._lay_out()
        self._connect()
        RowMenu(self.table, (self.another_button, self.clear_button, self.limits_button))
        RowMenu(self.list, (self.next_button,))
        self.take_over()

    def _lay_out(self) -> None:
        buttons = QHBoxLayout()
        buttons.setContentsMargins(MARGIN, 8, MARGIN, 8)
        buttons.setSpacing(8)
        for button in (self.another_button, self.clear_button, self.limits_button):
            buttons.addWidget(button)
        buttons.addStretch(1)
        next_row = QHBoxLayout()
        next_row.setContentsMargins(MARGIN, 8, MARGIN, 8)
        next_row.addWidget(self.next_button)
        full = QWidget()
        column = _bare(full)
        column.addWidget(self.coverage)
        column.addWidget(self.table, 3)
        column.addLayout(buttons)
        column.addWidget(self.verdict)
        column.addWidget(self.list, 2)
        column.addLayout(next_row)
        column.addStretch(0)
        bare = QWidget()
        column = _bare(bare)
        column.addWidget(self.empty)
        column.addStretch(1)
        self._stack = QStackedLayout(self)
        self._stack.addWidget(full)
        self._stack.addWidget(bare)

    def _connect(self) -> None:
        self.table.run_chosen.connect(self.run_chosen)
        self.another_button.clicked.connect(self._ask_run)
        self.clear_button.clicked.connect(self._clear_or_restore)
        self.limits_button.toggled.connect(self.take_over)
        self.next_button.clicked.connect(self._go_to_next)
        self.book.changed.connect(self.take_over)

    def take_over(self) -> None:
        """Show what the book holds now."""
        worked = self.book.worked
        self._say_nothing_yet()
        self.table.take_over()
        if worked is not None:
            said = coverage_words(worked)
            _say(self.coverage, f"{said} {tr(ANEW)}" if self.book.runs_look_old else said)
            self._offer()
            self._show_faults()
        has_rows = bool(self.book.rows)
        self.table.setVisible(has_rows)
        self.count_changed.emit(len(self.book.rows) if has_rows and not self.book.runs_look_old else None)

    def _say_nothing_yet(self) -> None:
        worked = self.book.worked
        if not self._document.plan.routes:
            said = tr(NO_ROUTES)
        elif worked is None:
            said = tr(WORKING)
        else:
            said = "" if worked.runs else tr(NO_RUNS)
        _say(self.empty, said)
        self._stack.setCurrentIndex(1 if said else 0)

    def _offer(self) -> None:
        """The buttons that can do something."""
        self.another_button.setEnabled(bool(self.book.others) and not self.book.is_old)
        can_restore = self.book.can_restore
        self.clear_button.setText(tr("Restore") if can_restore else tr("Clear"))
        named(
            self.clear_button,
            tr("Bring the cleared answers back") if can_restore else tr("Clear the answers"),
        )
        self.clear_button.setEnabled(can_restore or self.book.can_clear)
        worked = self.book.worked
        has_limits = worked is not None and bool(worked.hidden or worked.alike)
        self.limits_button.setVisible(has_limits)
        if not has_limits:
            self.limits_button.setChecked(False)

    def _show_faults(self) -> None:
        book = self.book
        self._show_next()
        if self.limits_button.isChecked() and book.worked is not None:
            self._show_list(tr(LIMITS), limits_of(book.worked))
        elif not book.differs:
            ticked = len(book.observed)
            self._show_list(progress_words(ticked, len(book.rows)) if book.rows else "", [])
        elif book.explained is None:
            self._show_list(tr(LOOKING), [])
        else:
            diagnosis = book.explained.diagnosis
            heading = tr(LOOKING) if book.looks_old else explained_words(diagnosis)
            self._show_list(heading, explanations_of(diagnosis))

    def _show_list(self, heading: str, rows: list[Said]) -> None:
        _say(self.verdict, heading)
        self.list.setVisible(bool(rows))
        self.list.setAccessibleName(heading.rstrip(":"))
        self.list.show_sentences(rows, self.book.looks_old)

    @property
    def next_run(self) -> Run | None:
        """The run that would tell most of what may be wrong."""
        known = self.book.explained
        if known is None or not self.book.is_explained or not self.book.differs:
            return None
        return known.diagnosis.next_run

    def _show_next(self) -> None:
        run = self.next_run
        self.next_button.setVisible(run is not None)
        if run is not None:
            said = next_words(run)
            room = WIDTH - 2 * MARGIN - 2 * PADDING
            shown = QFontMetrics(font(12, True)).elidedText(said, Qt.TextElideMode.ElideMiddle, room)
            # An ampersand in a name is a letter of the name, not a key.
            self.next_button.setText(shown.replace("&", "&&"))
            self.next_button.setToolTip(plain_tip(said))
            named(self.next_button, said)

    def _go_to_next(self) -> None:
        if self.next_run is not None:
            self._list_run(self.next_run)

    def _ask_run(self) -> None:
        run = ask_run(self, self.book.others)
        if run is not None:
            self._list_run(run)

    def _list_run(self, run: Run) -> None:
        """Choose a run, added where it is not listed yet."""
        if run not in self.book.rows:
            self.book.add(run)
        row = self.model.row_of(run)
        if row is not None:
            self.table.choose_row(row)
            self.table.setFocus()

    def _clear_or_restore(self) -> None:
        if self.book.can_restore:
            self.book.restore()
        else:
            self.book.clear()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.book.watch(True)

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self.book.watch(False)


def _bare(widget: QWidget) -> QVBoxLayout:
    column = QVBoxLayout(widget)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(0)
    return column


def _sentence(look: str = "") -> QLabel:
    made = label("", look)
    made.setWordWrap(True)
    made.setContentsMargins(MARGIN, 8, MARGIN, 4)
    return made


def _say(shown: QLabel, words: str) -> None:
    shown.setText(words)
    shown.setVisible(bool(words))
    fit_lines(shown, WIDTH)
    shown.setMaximumHeight(shown.minimumHeight())
