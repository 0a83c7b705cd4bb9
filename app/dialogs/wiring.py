"""The search for a wiring beside the window: readers, inverters, lines under the track, and their proof."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from typing import Final

from PySide6.QtCore import QItemSelection, QModelIndex, Signal
from PySide6.QtWidgets import (
    QDialog,
    QFormLayout,
    QLabel,
    QPushButton,
    QStackedLayout,
    QVBoxLayout,
    QWidget,
)

from app.dialogs.buttons import search_buttons
from app.dialogs.wiring_model import NONE, LinesModel, WhyNotModel
from app.dialogs.wiring_room import RoomFields
from app.document import Document
from app.panels.findings_list import findings_list
from app.panels.look import label, named
from app.panels.tables import CellDelegate, Table
from app.search import Search
from app.translation import QT_TR_NOOP, tr
from app.wire_words import BARRELS, CAUTIONS, ROOM, lines_words, proof_words, room_words, stage_words
from model.grid import Cell
from model.plan import Plan
from model.progress import Progress
from model.wiring.result import Wiring

WIDTHS: Final = (150, 0, 64, 80, 140)
SIZE: Final = (720, 520)
SMALLEST: Final = (640, 420)
STOP, AGAIN, PLACE = QT_TR_NOOP("Stop"), QT_TR_NOOP("Search again"), QT_TR_NOOP("Place the wiring")
WAITS: Final = "…"
ROWS: Final = ("attempt", "lines", "proof", "room")
"""What is told of; the first three while the search works at them, all when it is over."""


class WiringDialog(QDialog):
    """Searches from when it is begun, on the plan as it is then. The plan can be worked on meanwhile."""

    placed = Signal(object)
    """The Wiring that is to be placed."""
    asked = Signal(object)
    """The cells that the user wants to see."""

    def __init__(self, parent: QWidget | None, document: Document) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Wire junction"))
        self.resize(*SIZE)
        self.setMinimumSize(*SMALLEST)
        self._document = document
        self._plan: Plan = document.plan
        self._searched = (0, 0, 0)
        self._is_old = False
        self._wiring: Wiring | None = None
        self.search = Search(self)
        self.state = label("", "strong")
        self.fields = RoomFields(self)
        self.told = {name: label() for name in ROWS}
        self.lines = LinesModel(self)
        self.table = Table(tr("Lines"), self.lines, self)
        self.table.setItemDelegate(CellDelegate(self.table))
        self.table.set_widths(WIDTHS)
        self.why_not = WhyNotModel(self)
        self.list = findings_list(self, self.why_not, tr("Why it is not wired"))
        self.said = label("", "second")
        self.again = QPushButton(tr(STOP))
        self.close_button = QPushButton(tr("Close"))
        self.place = QPushButton(tr(PLACE))
        self._lay_out()
        self._connect()

    def begin(self) -> None:
        """Forget what was found, and search the plan as it is now."""
        plan, numbers = self._document.plan, self.fields.numbers
        self._plan, self._searched = plan, numbers
        self._is_old = False
        self._show(None)
        for told in self.told.values():
            told.setText(WAITS)
        self.search.start(lambda: _steps(plan, *numbers))
        self.take_over()

    def take_over(self) -> None:
        """Show how far the search is, and what can be done now."""
        is_running = self.search.is_running
        self.state.setText(self._state_words())
        self.again.setText(tr(STOP) if self._can_stop else tr(AGAIN))
        named(self.again, tr("Stop the search") if self._can_stop else tr("Search the plan as it is now"))
        for told in self.told.values():
            if not is_running and told.text() == WAITS:
                told.setText(NONE)
        self.place.setEnabled(self._can_place())
        # Enter in a field whose number is not the one searched with must not place what was found before.
        (self.again if self._is_other else self.place).setDefault(True)

    def done(self, result: int) -> None:
        """Whatever closes it ends the search."""
        self.search.stop()
        super().done(result)

    def _take(self, step: object) -> None:
        if isinstance(step, Progress):
            self._tell(step)
        elif isinstance(step, Wiring):
            self._show(step)
        self.take_over()

    def _tell(self, progress: Progress) -> None:
        name, words = stage_words(progress)
        if name == "attempt":
            for other in ("lines", "proof"):
                self.told[other].setText(WAITS)
        if name in self.told:
            self.told[name].setText(words)

    def _show(self, wiring: Wiring | None) -> None:
        self._wiring = wiring
        junction = self._document.junction
        names = {} if junction is None else {switch.at: switch.name for switch in junction.switches}
        self.lines.show(wiring, names)
        self.why_not.show(() if wiring is None else wiring.findings)
        self.said.setText("")
        is_wired = wiring is None or wiring.wired
        self._stack.setCurrentIndex(0 if is_wired else 1)
        if wiring is not None and wiring.wired:
            lines = lines_words(wiring).removeprefix("wired: ")
            is_any = wiring.runs > 0
            for name, words in zip(ROWS[1:], (lines, proof_words(wiring), room_words(wiring)), strict=True):
                self.told[name].setText(words if is_any else NONE)

    def _lay_out(self) -> None:
        form = QFormLayout()
        form.setHorizontalSpacing(16)
        for name, told in self.told.items():
            form.addRow(label(tr(name.capitalize())), told)
        self._stack = QStackedLayout()
        self._stack.addWidget(self.table)
        self._stack.addWidget(self.list)
        self.said.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 16, 16, 16)
        column.setSpacing(12)
        column.addWidget(self.state)
        column.addWidget(self.fields)
        column.addLayout(form)
        column.addLayout(self._stack, 1)
        column.addWidget(self.said)
        column.addWidget(_note())
        column.addLayout(search_buttons(self.again, tr(AGAIN), self.close_button, self.place))

    def _connect(self) -> None:
        self.search.found.connect(self._take)
        self.search.ended.connect(self.take_over)
        self.search.ticked.connect(self.take_over)
        self.fields.changed.connect(self.take_over)
        self.again.clicked.connect(self._stop_or_begin)
        self.close_button.clicked.connect(self.reject)
        self.place.clicked.connect(self._place)
        # A click on the row that is chosen already goes there once more.
        for shown, ask in ((self.table, self._ask_line), (self.list, self._ask_finding)):
            shown.selectionModel().selectionChanged.connect(partial(_tell_chosen, ask))
            shown.clicked.connect(ask)
        self._document.changed.connect(self._look_at_plan)
        self._document.reset.connect(self.reject)

    def _stop_or_begin(self) -> None:
        if self._can_stop:
            self.search.stop()
            self.take_over()
        else:
            self.begin()

    @property
    def _is_other(self) -> bool:
        """Whether a number was changed since the search began."""
        return self.fields.numbers != self._searched

    @property
    def _can_stop(self) -> bool:
        """A search with numbers that hold no longer is not stopped but begun anew with those that do."""
        return self.search.is_running and not self._is_other

    def _ask_line(self, index: QModelIndex) -> None:
        """Show the switches of a line."""
        self.asked.emit(self.lines.rows()[index.row()].switches)

    def _ask_finding(self, index: QModelIndex) -> None:
        """Show where a reason is, and all of its words."""
        unwired = self.why_not.at(index.row()).unwired
        self.said.setText(unwired.message)
        self.asked.emit(self._ends_of(unwired.arm) if unwired.at is None else (unwired.at,))

    def _ends_of(self, name: str | None) -> tuple[Cell, ...]:
        """Where an arm comes in and goes out."""
        arm = None if name is None else self._plan.details.arm(name)
        ends = () if arm is None else (arm.enter, arm.leave)
        return tuple(end.at for end in ends if end is not None)

    def _look_at_plan(self) -> None:
        """What was found holds as long as the pieces, the arms and the routes are the same."""
        now, then = self._document.plan, self._plan
        if now.pieces is not then.pieces or (now.arms, now.routes) != (then.arms, then.routes):
            self._is_old = True
            self.search.stop()
            self.take_over()

    def _place(self) -> None:
        if self._can_place():
            wiring = self._wiring
            self.accept()
            self.placed.emit(wiring)

    def _can_place(self) -> bool:
        change = None if self._wiring is None else self._wiring.change
        return not self._is_old and change is not None and not change.is_empty

    def _state_words(self) -> str:
        seconds = self.search.seconds
        if self._is_old:
            return tr("The plan has changed since: what stands here is of the plan before.")
        if not self._plan.routes:
            return tr("No routes are wanted yet, so there is nothing to wire.")
        if self._wiring is not None:
            return self._found_words(self._wiring)
        if self.search.is_running:
            return tr("Searching, {seconds} s", seconds=seconds)
        return tr("Stopped after {seconds} s.", seconds=seconds)

    def _found_words(self, wiring: Wiring) -> str:
        if not wiring.wired:
            return tr("Not wired, after {seconds} s.", seconds=self.search.seconds)
        if not self._can_place():
            return tr("All wanted routes are served as the plan is: there is nothing to place.")
        return tr("Wired and proved in {seconds} s.", seconds=self.search.seconds)


def _tell_chosen(ask: Callable[[QModelIndex], None], now: QItemSelection, _before: QItemSelection) -> None:
    for index in now.indexes()[:1]:
        ask(index)


def _steps(plan: Plan, seed: int, grow: int, depth: int) -> Iterator[Progress | Wiring]:
    from model.wiring.wire import wire  # opening the window must not wait for it

    return wire(plan, seed, grow, depth)


def _note() -> QLabel:
    made = label(" ".join((tr(BARRELS, room=ROOM), *map(tr, CAUTIONS))), "second")
    made.setWordWrap(True)
    return made
