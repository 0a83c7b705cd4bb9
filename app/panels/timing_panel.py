"""The timing diagram with what can be done to it, and beside it what the dry run found."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QPushButton,
    QSplitter,
    QStackedLayout,
    QVBoxLayout,
    QWidget,
)

from app.document import Document
from app.dry_run import DryRunner
from app.panels.cut_label import CutLabel
from app.panels.look import hairline, label, named, panel
from app.panels.run_findings_panel import RunFindingsPanel
from app.panels.timing_book import ProbeBook
from app.panels.timing_keys import keys_in_words
from app.panels.timing_trace import seconds
from app.panels.timing_view import TimingView
from app.panels.words import plain_tip
from app.panels.wrapped_row import WrappedRow
from app.shown_keys import in_brackets
from app.translation import QT_TR_NOOP, tr

TALL: Final = 236
"""The height where nobody chose another one, in pixels; so are all lengths here."""
LEAST: Final = 150
LIST_WIDTH: Final = 300
NO_TITLE_BELOW: Final = 800
NO_LIST_BELOW: Final = 720
"""Where nobody asked for the list."""
NO_PROBES: Final = QT_TR_NOOP(
    "What each probed part reads stands here tick by tick: choose parts on the plan and press Probe."
)
NOTHING_RUN: Final = QT_TR_NOOP("Nothing has been read yet: start the dry run{key}.")

UNSURE: Final = QT_TR_NOOP("Unsure: the order within this tick decides.")


class TimingPanel(QWidget):
    """Under the plan; it shows what the book of the probes holds."""

    probe_asked = Signal()
    """What is chosen on the plan is to be probed."""
    cell_asked = Signal(object)
    """The cell that is to be shown on the plan."""
    cells_asked = Signal(object)
    """The cells of a chosen row of what the run found."""
    svg_asked = Signal()
    vcd_asked = Signal()

    def __init__(self, document: Document, runner: DryRunner, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self.setMinimumHeight(LEAST)
        self._runner = runner
        self.book = ProbeBook(document, runner, self)
        self.view = TimingView()
        self.view.setWhatsThis(keys_in_words())
        self.found = RunFindingsPanel(document, runner)
        self.title = label(tr("Timing diagram"), "section")
        self.words = CutLabel("", "second")
        self.empty = label(tr(NO_PROBES), "second")
        self.probe_button = _button(tr("Probe"), tr("Watch what the chosen cells read"))
        self.remove_button = _button(tr("Take away"), tr("Watch the cell of the chosen row no more"))
        self.closer_button = _button("+", tr("Zoom in along time"))
        self.wider_button = _button("\u2212", tr("Zoom out along time"))
        self.whole_button = _button(tr("Whole run"), tr("Show all ticks that were run"))
        self.svg_button = _button(
            tr("SVG…"), tr("Write the ticks that are seen, of all probes, as a drawing")
        )
        self.vcd_button = _button(tr("VCD…"), tr("Write the whole run for a waveform viewer (IEEE 1364)"))
        self.found_button = _button(tr("Found"), tr("Show what the dry run found beside the diagram"))
        self.found_button.setCheckable(True)
        self._list_was_asked = False
        self._lay_out()
        self._connect()
        self._take_over_rows()
        self._show_found_count(0)

    @property
    def has_readings(self) -> bool:
        """Whether there is anything to write."""
        return bool(self.book.traces) and self.book.now > 0

    def take_focus(self) -> None:
        """To the diagram, or where there is none yet to the button that begins one."""
        (self.view if self.book.traces else self.probe_button).setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _lay_out(self) -> None:
        head = WrappedRow(gap=6)
        head.setContentsMargins(14, 6, 14, 2)
        head.addWidget(self.title)
        head.addWidget(self.probe_button)
        head.addWidget(self.remove_button)
        head.add_gap(2)
        for button in (self.wider_button, self.closer_button):
            button.setFixedWidth(28)
            button.setProperty("look", "sign")
            head.addWidget(button)
        head.addWidget(self.whole_button)
        head.add_right(self.svg_button)
        head.addWidget(self.vcd_button)
        head.addWidget(self.found_button)
        said = QHBoxLayout()
        said.setContentsMargins(14, 2, 14, 4)
        said.addWidget(self.words)
        self.diagram = QWidget()
        self._stack = QStackedLayout(self.diagram)
        self._stack.addWidget(self.view)
        self._stack.addWidget(self._lay_out_empty())
        self.splitter = QSplitter(Qt.Orientation.Horizontal)
        self.splitter.setHandleWidth(1)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.addWidget(self.diagram)
        self.splitter.addWidget(self.found)
        self.splitter.setStretchFactor(0, 1)
        self.splitter.setStretchFactor(1, 0)
        self.splitter.setSizes((10_000, LIST_WIDTH))
        self.found.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addLayout(said)
        column.addWidget(hairline())
        column.addWidget(self.splitter, 1)

    def _lay_out_empty(self) -> QWidget:
        bare = QWidget()
        column = QVBoxLayout(bare)
        column.setContentsMargins(14, 12, 14, 12)
        self.empty.setWordWrap(True)
        column.addWidget(self.empty)
        column.addStretch(1)
        return bare

    def _connect(self) -> None:
        view, book = self.view, self.book
        book.rows_changed.connect(self._take_over_rows)
        book.emptied.connect(self._begin_anew)
        book.read.connect(self._go_on)
        view.cursor_moved.connect(self._say)
        view.removal_asked.connect(self._runner.remove_probe)
        view.cell_asked.connect(self.cell_asked)
        self.probe_button.clicked.connect(self.probe_asked)
        self.remove_button.clicked.connect(view.ask_removal)
        self.closer_button.clicked.connect(lambda: view.zoom(closer=True))
        self.wider_button.clicked.connect(lambda: view.zoom(closer=False))
        self.whole_button.clicked.connect(view.show_whole_run)
        self.svg_button.clicked.connect(self.svg_asked)
        self.vcd_button.clicked.connect(self.vcd_asked)
        self.found_button.toggled.connect(self.found.setVisible)
        self.found_button.clicked.connect(self._keep_list)
        self.found.count_changed.connect(self._show_found_count)
        self.found.row_chosen.connect(self._go_to_found)

    def _take_over_rows(self) -> None:
        self.view.unsure = self.book.unsure
        self.view.show_traces(self.book.traces)
        self._stack.setCurrentIndex(0 if self.book.traces else 1)
        self._offer()

    def _begin_anew(self) -> None:
        self.view.begin_anew()
        self._offer()

    def _go_on(self) -> None:
        if not self.view.now:
            self._offer()
        self.view.unsure = self.book.unsure
        self.view.go_on(self.book.now)

    def _offer(self) -> None:
        """The buttons that can do something."""
        has_rows = bool(self.book.traces)
        self.remove_button.setEnabled(has_rows)
        for button in (self.closer_button, self.wider_button, self.whole_button):
            button.setEnabled(has_rows)
        for button in (self.svg_button, self.vcd_button):
            button.setEnabled(self.has_readings)

    def _say(self) -> None:
        """What the chosen row reads at the cursor, for those who see the words and those who hear them."""
        view, trace = self.view, self.view.chosen
        if trace is None:
            said = ""
        elif not view.now:
            said = tr(NOTHING_RUN, key=in_brackets("dry_run"))
        else:
            text = (
                QT_TR_NOOP("Tick {tick}, {seconds}, with the run. {sentence}.")
                if view.follows
                else QT_TR_NOOP("Tick {tick}, {seconds}. {sentence}.")
            )
            said = tr(text, tick=view.tick, seconds=seconds(view.tick), sentence=trace.sentence(view.tick))
            if view.tick in view.unsure.get(trace.cell, ()):
                said += f" {tr(UNSURE)}"
        if said != self.words.text():
            self.words.setText(said)
            self.words.setToolTip(plain_tip(f"{said}\n{keys_in_words()}" if said else ""))
            view.setAccessibleDescription(said)

    def _keep_list(self) -> None:
        """From now on the list is shown and hidden by the button alone."""
        self._list_was_asked = True

    def _show_found_count(self, count: int) -> None:
        self.found_button.setText(tr("Found  {count}", count=count))

    def _go_to_found(self, cells: object, tick: object) -> None:
        self.cells_asked.emit(cells)
        if isinstance(tick, int):
            self.view.put_cursor(tick)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        width = event.size().width()
        self.title.setVisible(width >= NO_TITLE_BELOW)
        if not self._list_was_asked:
            self.found_button.setChecked(width >= NO_LIST_BELOW)


def _button(text: str, tip: str) -> QPushButton:
    made = named(QPushButton(text), tip)
    made.setToolTip(tip)
    made.setAutoDefault(False)
    return made
