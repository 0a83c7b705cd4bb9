"""The test runs as a table: from where, with what, where the cart must come out, and where it did."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QObject, Qt

from app.panels.commissioning_book import RunBook
from app.panels.commissioning_words import load_words
from app.panels.table_model import Index, TableModel
from app.panels.words import plain_tip
from app.translation import QT_TR_NOOP, tr
from model.commissioning import STAYS, Run

NUMBER, FROM, WAYBILL, MUST, SAW = range(5)
TITLES: Final = (
    QT_TR_NOOP("run"),
    QT_TR_NOOP("from"),
    QT_TR_NOOP("waybill"),
    QT_TR_NOOP("must leave"),
    QT_TR_NOOP("came out"),
)
TIPS: Final = (
    QT_TR_NOOP("Tick a run when its cart came out as it must, by a click or with Space"),
    QT_TR_NOOP("The arm by which the cart comes in"),
    QT_TR_NOOP("What the cart carries"),
    QT_TR_NOOP("The arm by which the cart must leave"),
    QT_TR_NOOP("The arm by which the cart came out, or that it stays; a click or Enter offers them"),
)
NOT_RUN: Final = QT_TR_NOOP("not run")
AS_IT_MUST: Final = QT_TR_NOOP("as it must")
SAW_ROLE: Final = Qt.ItemDataRole.UserRole
"""Whether the cart did as it must; ``None`` while the run has not been made."""


class RunsModel(TableModel):
    """A row a run; what is set in the last column is what the cart did."""

    titles = TITLES
    tips = TIPS

    def __init__(self, book: RunBook, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._book = book
        self._rows = book.rows

    def rows(self) -> Sequence[Run]:
        """What stands in the table, a row each."""
        return self._rows

    def run(self, row: int) -> Run:
        """The run in a row."""
        return self._rows[row]

    def row_of(self, run: Run) -> int | None:
        """The row of a run, or ``None``."""
        return self._rows.index(run) if run in self._rows else None

    def take_over(self) -> None:
        """Show the runs and the answers that the book has now; rows that stay are not reset."""
        rows = self._book.rows
        if rows != self._rows:
            self.beginResetModel()
            self._rows = rows
            self.endResetModel()
        elif rows:
            self.dataChanged.emit(self.index(0, 0), self.index(len(rows) - 1, SAW))

    def tick(self, row: int) -> None:
        """The cart came out as it must; a second time: the run has not been made."""
        run = self._rows[row]
        must = self._book.must(run)
        self._book.answer(run, None if self._book.saw(run) == must else must)

    def choices(self, row: int) -> list[tuple[str, str | None]]:
        """What the cart of a run may have done, in words and as an answer."""
        run = self._rows[row]
        must = self._book.must(run)
        others = [(name, name) for name in (*self._book.outlets, STAYS) if name != must]
        return [(tr(NOT_RUN), None), (f"{must}, {tr(AS_IT_MUST)}", must), *others]

    def _did_as_it_must(self, run: Run) -> bool | None:
        saw = self._book.saw(run)
        return None if saw is None else saw == self._book.must(run)

    def _saw_words(self, run: Run) -> str:
        saw = self._book.saw(run)
        if saw is None:
            return tr(NOT_RUN)
        if saw == self._book.must(run):
            return tr(AS_IT_MUST)
        return saw

    def _words(self, index: Index) -> str:
        run = self._rows[index.row()]
        return (
            str(index.row() + 1),
            run.start,
            load_words(run),
            self._book.must(run),
            self._saw_words(run),
        )[index.column()]

    def _sentence(self, index: Index) -> str:
        run = self._rows[index.row()]
        load = tr("empty") if run.waybill is None else tr("with {waybill}", waybill=run.waybill)
        must = self._book.must(run)
        wanted = tr("must leave by {must}", must=must) if must != STAYS else tr("stays as the plan stands")
        saw = self._saw_words(run)
        did = saw if saw in (tr(NOT_RUN), tr(AS_IT_MUST), STAYS) else tr("came out by {saw}", saw=saw)
        return tr(
            "run {row}: from {start}, {load}, {wanted}; {did}",
            row=index.row() + 1,
            start=run.start,
            load=load,
            wanted=wanted,
            did=did,
        )

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        if role == Qt.ItemDataRole.DisplayRole:
            return self._words(index)
        if role == Qt.ItemDataRole.EditRole:
            return self._book.saw(self._rows[index.row()])
        if role == SAW_ROLE:
            return self._did_as_it_must(self._rows[index.row()])
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(self._sentence(index))
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return self._sentence(index)
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        return flags | Qt.ItemFlag.ItemIsEditable if index.column() == SAW else flags

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        if role != Qt.ItemDataRole.EditRole:
            return False
        self._book.answer(self._rows[index.row()], value if isinstance(value, str) else None)
        return True
