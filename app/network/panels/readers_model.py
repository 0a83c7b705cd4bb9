"""The readers as a table: default, name, how many pass and how many call."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from PySide6.QtCore import QObject, Qt

from app.network.arms import reader_words
from app.network.document import NetworkDocument
from app.network.panels.common import OLD_ROLE
from app.network.times import figure
from app.panels.table_model import Index, TableModel
from app.panels.words import plain_tip
from app.translation import QT_TR_NOOP, tr
from model.network.network import ReaderPin, ReaderSpec

READER, DEFAULT, NAME, PASS, CALL = range(5)
PINNED_ROLE = Qt.ItemDataRole.UserRole + 1


class ReaderRow(NamedTuple):
    """What is known of a reader."""

    key: str
    """``Mill/East``"""
    spec: ReaderSpec
    default: str | None
    name: str | None
    is_planned: bool
    passing: int | float = 0
    calling: int | float = 0
    pin: ReaderPin | None = None


class ReadersModel(TableModel):
    """A row a reader, in file order."""

    titles = (
        QT_TR_NOOP("reader"),
        QT_TR_NOOP("default"),
        QT_TR_NOOP("name"),
        QT_TR_NOOP("pass"),
        QT_TR_NOOP("call"),
    )
    tips = (
        QT_TR_NOOP("The junction, and the arm by which carts come in"),
        QT_TR_NOOP("The arm by which a cart leaves without its waybill"),
        QT_TR_NOOP("The waybill that it takes; a dot marks what is pinned"),
        QT_TR_NOOP("Carts a week that pass it by the default way"),
        QT_TR_NOOP("Carts a week that it takes a waybill from"),
    )

    figures = frozenset({PASS, CALL})

    def __init__(self, document: NetworkDocument, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self._rows = rows_of(document)
        document.changed.connect(lambda *_: self._take_over())
        document.reset.connect(self._take_over)
        document.plan_updated.connect(self._take_over)

    def rows(self) -> Sequence[ReaderRow]:
        """The readers."""
        return self._rows

    def row_of(self, key: str) -> int | None:
        """The row of a reader."""
        return next((at for at, row in enumerate(self._rows) if row.key == key), None)

    def _take_over(self) -> None:
        rows = rows_of(self._document)
        if [row.key for row in rows] == [row.key for row in self._rows]:
            self._rows = rows
            if rows:
                self.dataChanged.emit(self.index(0, 0), self.index(len(rows) - 1, CALL))
        else:
            self.beginResetModel()
            self._rows = rows
            self.endResetModel()

    def _said(self, row: ReaderRow, column: int) -> str:
        if column == READER:
            return row.key
        if column == DEFAULT:
            return row.default or "…"
        if column == NAME:
            return row.name or (tr("not called") if row.is_planned else "…")
        return figure(row.passing if column == PASS else row.calling) if row.is_planned else "…"

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        row = self._rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return self._said(row, index.column())
        if role == Qt.ItemDataRole.ToolTipRole and index.column() == READER:
            return plain_tip(reader_words(row.key))
        if role == OLD_ROLE:
            dim = index.column() == NAME and row.is_planned and row.name is None
            return dim or (self._document.is_old_for_long and index.column() > READER)
        if role == PINNED_ROLE:
            pin = row.pin
            settled = {DEFAULT: pin.default, NAME: pin.name}.get(index.column()) if pin is not None else None
            return settled is not None
        if role == Qt.ItemDataRole.AccessibleTextRole:
            if index.column() == READER:
                return f"{self.title(READER)}: {reader_words(row.key)}"
            said = f"{self.title(index.column())}: {self._said(row, index.column())}"
            return f"{said}, {tr('pinned')}" if self.data(index, PINNED_ROLE) else said
        return None


def rows_of(document: NetworkDocument) -> list[ReaderRow]:
    """The readers of the network as it is, with what the plan says of each."""
    network, plan = document.network, document.plan
    pins = {pin.reader: pin for pin in network.pins}
    passing, calling = document.loads
    rows = []
    for key, spec in network.readers():
        planned = plan.readers.get(key) if plan is not None else None
        default = planned.default if planned is not None else spec.default
        name = planned.name if planned is not None else None
        known = planned is not None
        loads = passing.get(key, 0), calling.get(key, 0)
        rows.append(ReaderRow(key, spec, default, name, known, *loads, pins.get(key)))
    return rows
