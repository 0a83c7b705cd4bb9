"""What the dry run found: rows as among the findings; choosing one goes to its cells and its tick."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QItemSelection, QModelIndex, Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QStackedLayout, QVBoxLayout, QWidget

from app.document import Document
from app.dry_run import DryRunner
from app.panels.findings_list import findings_list
from app.panels.findings_model import FINDING_ROLE, PLACE_ROLE, SECOND_ROLE
from app.panels.kept_rows import KeptRows
from app.panels.look import fit_lines, label, panel
from app.panels.run_findings import RunRow, rows_of
from app.panels.table_model import Index
from app.panels.words import plain_tip
from app.translation import QT_TR_NOOP, tr

NEVER_RUN: Final = QT_TR_NOOP(
    "Where carts arrive, what is lost and why is listed here as the dry run goes on."
)
NOTHING_FOUND: Final = QT_TR_NOOP(
    "No cart has arrived or been lost, and no order within a tick decided anything."
)
NARROWEST: Final = 200
"""In pixels."""


class RunFindingsModel(KeptRows[RunRow]):
    """The rows in their order."""

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        row = self.at(index.row())
        if role == Qt.ItemDataRole.DisplayRole:
            return row.title
        if role == PLACE_ROLE:
            return row.place
        if role == SECOND_ROLE:
            return row.message
        if role == FINDING_ROLE:
            return row
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(f"{row.title}\n{row.message}")
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{tr(row.severity.value)}: {row.title}, {row.message} {row.place}"
        return None


class RunFindingsPanel(QWidget):
    """The list; it keeps what was found when the run is over, until the next one begins."""

    row_chosen = Signal(object, object)
    """The cells of the chosen row, and its tick or ``None``."""
    count_changed = Signal(int)

    def __init__(self, document: Document, runner: DryRunner, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self.setMinimumWidth(NARROWEST)
        self._runner = runner
        self._seen: tuple[object, ...] = ()
        self.model = RunFindingsModel(self)
        self.list = findings_list(self, self.model, tr("What the dry run found"))
        self.said = label("", "second")
        self.empty = label(tr(NEVER_RUN), "second")
        self._lay_out()
        self._is_taking_over = False
        self.list.selectionModel().selectionChanged.connect(self._choose)
        # A click on the row that is chosen already goes there once more.
        self.list.clicked.connect(self._tell)
        runner.ticked.connect(self.take_over)
        runner.started.connect(self.take_over)
        runner.rewound.connect(self.take_over)
        document.reset.connect(self._forget)

    @property
    def row(self) -> RunRow | None:
        """The chosen row."""
        indexes = self.list.selectedIndexes()
        return indexes[0].data(FINDING_ROLE) if indexes else None

    def take_over(self) -> None:
        """Show what the run has found by now; most ticks find nothing, and cost nothing."""
        run, watch = self._runner.engine, self._runner.watch
        if run is None or watch is None:
            return
        findings = watch.findings()
        seen = (run, findings, len(run.arrivals), len(run.lost), len(run.unsure), run.is_quiet)
        if seen != self._seen:
            self._seen = seen
            self._show(rows_of(run, findings))

    def _forget(self) -> None:
        self._seen = ()
        self._show([])
        self.empty.setText(tr(NEVER_RUN))

    def _show(self, rows: list[RunRow]) -> None:
        """A row that goes makes Qt choose the next one; nobody asked to go there."""
        before = self.row
        self._is_taking_over = True
        self.model.show_rows(rows)
        if self.row is not None and (before is None or self.row.key != before.key):
            self.list.clearSelection()
        self._is_taking_over = False
        self._say()
        self.empty.setText(tr(NOTHING_FOUND) if self._runner.tick else tr(NEVER_RUN))
        self._stack.setCurrentIndex(0 if rows else 1)
        self.count_changed.emit(len(rows))

    def _choose(self, _now: QItemSelection, _before: QItemSelection) -> None:
        self._say()
        row = self.row
        if row is not None and not self._is_taking_over:
            self.row_chosen.emit(row.cells, row.tick)
            # What is said below takes room from the list; the row itself must stay in sight.
            QTimer.singleShot(0, self.list, lambda: self.list.scrollTo(self.list.currentIndex()))

    def _say(self) -> None:
        """All words of the chosen row, of which its second line shows the first only."""
        words = "" if self.row is None else self.row.message
        self.said.setText(words)
        self.said.setVisible(bool(words))
        fit_lines(self.said, self.width())

    def _tell(self, index: QModelIndex) -> None:
        row = self.model.at(index.row())
        self.row_chosen.emit(row.cells, row.tick)

    def _lay_out(self) -> None:
        bare = QWidget()
        column = QVBoxLayout(bare)
        column.setContentsMargins(14, 12, 14, 12)
        self.empty.setWordWrap(True)
        column.addWidget(self.empty)
        column.addStretch(1)
        self._stack = QStackedLayout(self)
        listed = QWidget()
        rows = QVBoxLayout(listed)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        rows.addWidget(self.list, 1)
        self.said.setWordWrap(True)
        self.said.setContentsMargins(14, 6, 14, 8)
        self.said.hide()
        rows.addWidget(self.said)
        self._stack.addWidget(listed)
        self._stack.addWidget(bare)
        self._stack.setCurrentIndex(1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        fit_lines(self.said, event.size().width())
