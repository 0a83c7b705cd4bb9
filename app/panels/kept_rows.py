"""A list model that keeps what the user looks at in place while rows come and go.

Of very many rows a view is told of the first ones only, and of more as it comes near their end: it lays out
all that it knows of whenever one of them comes or goes.
"""

from __future__ import annotations

from collections.abc import Hashable
from typing import Final, Generic, Protocol, TypeVar

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject

from app.panels.table_model import ROOT, Index


class HasKey(Protocol):
    """What stands in a row; two rows with one key are the same row, whatever else it says by then."""

    @property
    def key(self) -> Hashable:
        """What tells it from other rows."""


Row = TypeVar("Row", bound=HasKey)
AT_ONCE: Final = 500
"""Rows of which a view is told at first, and again whenever it asks for more."""


class KeptRows(QAbstractListModel, Generic[Row]):
    """Rows in their order; those that stay are never reset, so choice and scroll stay too."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._rows: list[Row] = []
        self._told = 0
        """So many of them the views know of."""

    def show_rows(self, rows: list[Row]) -> bool:
        """Take over new rows; whether any of those that the views know of is another one."""
        more = AT_ONCE if self._told == len(self._rows) else 0
        told = min(len(rows), max(AT_ONCE, self._told + more))
        is_other = rows[:told] != self._rows[: self._told]
        if is_other:
            self._change_told(rows[:told])
        self._rows, self._told = list(rows), told
        if is_other:
            self.tell_all()
        return is_other

    def insert_row(self, row: int, value: Row) -> None:
        """Put one row before another."""
        if row >= self._told < len(self._rows):
            self._rows.insert(row, value)
            return
        self.beginInsertRows(ROOT, row, row)
        self._rows.insert(row, value)
        self._told += 1
        self.endInsertRows()

    def remove_row(self, row: int) -> None:
        """Take one row away."""
        if row >= self._told:
            del self._rows[row]
            return
        self.beginRemoveRows(ROOT, row, row)
        del self._rows[row]
        self._told -= 1
        self.endRemoveRows()

    def replace_row(self, row: int, value: Row) -> None:
        """Let the same row say something else."""
        self._rows[row] = value
        if row < self._told:
            self.dataChanged.emit(self.index(row), self.index(row))

    def tell_all(self) -> None:
        """All rows may say something else."""
        if self._told:
            self.dataChanged.emit(self.index(0), self.index(self._told - 1))

    @property
    def total(self) -> int:
        """How many rows there are, whether the views know of them or not."""
        return len(self._rows)

    def reach(self, row: int) -> QModelIndex:
        """The index of any row; the views know of it from then on."""
        while row >= self._told:
            self.fetchMore()
        return self.index(row)

    def at(self, row: int) -> Row:
        """What stands in a row."""
        return self._rows[row]

    def _change_told(self, rows: list[Row]) -> None:
        """Lets the views follow to these rows; what they know not of is of no matter."""
        del self._rows[self._told :]
        # A key may take long to compare, so that rows go by numbers: the same key, the same number.
        numbers: dict[Hashable, int] = {}
        wanted = [numbers.setdefault(row.key, len(numbers)) for row in rows]
        held = [numbers.setdefault(row.key, len(numbers)) for row in self._rows]
        self._remove_all_but(set(wanted), held)
        staying = set(held)
        if [number for number in wanted if number in staying] == held:
            self._insert_missing(rows, wanted, held)
        else:
            self.beginResetModel()
            self._rows, self._told = rows, len(rows)
            self.endResetModel()

    def _remove_all_but(self, kept: set[int], held: list[int]) -> None:
        """Takes out the rows, and of ``held`` the numbers, that are not kept."""
        end = len(held)
        while end:
            start = end
            while start and held[start - 1] not in kept:
                start -= 1
            if start < end:
                self.beginRemoveRows(ROOT, start, end - 1)
                del self._rows[start:end], held[start:end]
                self._told -= end - start
                self.endRemoveRows()
            end = max(0, start - 1) if start == end else start

    def _insert_missing(self, rows: list[Row], wanted: list[int], held: list[int]) -> None:
        row = 0
        while row < len(rows):
            end = row
            here = held[row] if row < len(held) else None
            while end < len(rows) and wanted[end] != here:
                end += 1
            if end > row:
                self.beginInsertRows(ROOT, row, end - 1)
                self._rows[row:row] = rows[row:end]
                held[row:row] = wanted[row:end]
                self._told += end - row
                self.endInsertRows()
            row = end + 1

    def rowCount(self, parent: Index = ROOT) -> int:
        return 0 if parent.isValid() else self._told

    def canFetchMore(self, parent: Index = ROOT) -> bool:
        return not parent.isValid() and self._told < len(self._rows)

    def fetchMore(self, parent: Index = ROOT) -> None:
        if not self.canFetchMore(parent):
            return
        told = min(self._told + AT_ONCE, len(self._rows))
        self.beginInsertRows(ROOT, self._told, told - 1)
        self._told = told
        self.endInsertRows()
