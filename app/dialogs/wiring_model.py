"""What came of wiring a junction: its lines as a table, and why it is not wired as a list."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

import msgspec
from PySide6.QtCore import QObject, Qt

from app.panels.findings_model import FINDING_ROLE, PLACE_ROLE, SECOND_ROLE
from app.panels.kept_rows import KeptRows
from app.panels.table_model import Index, TableModel
from app.panels.words import plain_tip
from app.translation import QT_TR_NOOP, tr
from app.wire_words import time_words
from model.grid import Cell
from model.rules import Severity
from model.wiring.result import LineReport, Unwired, Wiring

READER, THROWS, DUST, REPEATERS, HEADWAY = range(5)
TITLES: Final = (
    QT_TR_NOOP("reader"),
    QT_TR_NOOP("throws"),
    QT_TR_NOOP("dust"),
    QT_TR_NOOP("repeaters"),
    QT_TR_NOOP("next train after"),
)
TIPS: Final = (
    QT_TR_NOOP("The arm whose reader the line comes from"),
    QT_TR_NOOP("The switches that it throws"),
    QT_TR_NOOP("Cells of dust in the line"),
    QT_TR_NOOP("Repeaters in the line"),
    QT_TR_NOOP(
        "From the last cart of a called train until all is at rest, and another train may come in by any arm"
    ),
)
NONE: Final = "—"


class LinesModel(TableModel):
    """A row a line."""

    titles = TITLES
    tips = TIPS

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._lines: tuple[LineReport, ...] = ()
        self._headways: dict[str, int] = {}
        self._names: Mapping[Cell, str] = {}

    def rows(self) -> Sequence[LineReport]:
        """The lines, in the order of the wanted routes."""
        return self._lines

    def show(self, wiring: Wiring | None, switch_names: Mapping[Cell, str]) -> None:
        """Take over a wiring, or none; ``switch_names`` names the cells that are switches."""
        self.beginResetModel()
        self._lines = () if wiring is None else wiring.lines
        self._headways = {} if wiring is None else {each.arm: each.ticks for each in wiring.headways}
        self._names = switch_names
        self.endResetModel()

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        words = self._words(self._lines[index.row()])[index.column()]
        if role == Qt.ItemDataRole.DisplayRole:
            return words
        if role in (Qt.ItemDataRole.ToolTipRole, Qt.ItemDataRole.AccessibleTextRole):
            return plain_tip(f"{tr(TITLES[index.column()])}: {words}")
        return None

    def _words(self, line: LineReport) -> tuple[str, ...]:
        ticks = self._headways.get(line.arm)
        return (
            line.arm,
            ", ".join(self._names.get(switch) or str(switch) for switch in line.switches),
            f"{line.dust:,}",
            f"{line.repeaters:,}",
            NONE if ticks is None else time_words(ticks),
        )


class WhyNot(msgspec.Struct, frozen=True):
    """A reason why the junction is not wired; it is drawn as a finding is."""

    key: int
    unwired: Unwired
    severity: Severity = Severity.ERROR
    waived: bool = False
    """What cannot be built cannot be set aside."""

    @property
    def place(self) -> str:
        """The cell, and the arm where it is told."""
        return "  ".join(filter(None, (self.unwired.arm, self.unwired.at and str(self.unwired.at))))


class WhyNotModel(KeptRows[WhyNot]):
    """The reasons in their order."""

    def show(self, unwired: Sequence[Unwired]) -> None:
        """Take over new reasons."""
        self.show_rows([])  # no reason is one of those before
        self.show_rows([WhyNot(key, each) for key, each in enumerate(unwired)])

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        row = self.at(index.row())
        if role == Qt.ItemDataRole.DisplayRole:
            return tr("Not wired")
        if role == PLACE_ROLE:
            return row.place
        if role == SECOND_ROLE:
            return row.unwired.message
        if role == FINDING_ROLE:
            return row
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(row.unwired.message)
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return tr("error: not wired, {message} {place}", message=row.unwired.message, place=row.place)
        return None
