"""A list model that keeps what the user looks at in place while rows come and go."""

from __future__ import annotations

from collections.abc import Hashable
from typing import Generic, Protocol, TypeVar

from PySide6.QtCore import QAbstractListModel, QObject

from app.panels.table_model import ROOT, Index


class HasKey(Protocol):
    """What stands in a row; two rows with one key are the same row, whatever else it says by then."""

    @property
    def key(self) -> Hashable:
        """What tells it from other rows."""


Row = TypeVar("Row", bound=HasKey)


class KeptRows(QAbstractListModel, Generic[Row]):
    """Rows in their order; those that stay are never reset, so choice and scroll stay too."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._rows: list[Row] = []

    def show_rows(self, rows: list[Row]) -> None:
        """Take over new rows."""
        kept = {row.key for row in rows}
        self._remove_all_but(kept)
        held = [row.key for row in self._rows]
        wanted = set(held)
        if [key for row in rows if (key := row.key) in wanted] == held:
            self._insert_missing(rows)
        else:
            self.beginResetModel()
            self._rows = list(rows)
            self.endResetModel()

    def insert_row(self, row: int, value: Row) -> None:
        """Put one row before another."""
        self.beginInsertRows(ROOT, row, row)
        self._rows.insert(row, value)
        self.endInsertRows()

    def remove_row(self, row: int) -> None:
        """Take one row away."""
        self.beginRemoveRows(ROOT, row, row)
        del self._rows[row]
        self.endRemoveRows()

    def replace_row(self, row: int, value: Row) -> None:
        """Let the same row say something else."""
        self._rows[row] = value
        self.dataChanged.emit(self.index(row), self.index(row))

    def tell_all(self) -> None:
        """All rows may say something else."""
        if self._rows:
            self.dataChanged.emit(self.index(0), self.index(len(self._rows) - 1))

    def at(self, row: int) -> Row:
        """What stands in a row."""
        return self._rows[row]

    def _remove_all_but(self, kept: set[Hashable]) -> None:
        end = len(self._rows)
        while end:
            start = end
            while start and self._rows[start - 1].key not in kept:
                start -= 1
            if start < end:
                self.beginRemoveRows(ROOT, start, end - 1)
                del self._rows[start:end]
                self.endRemoveRows()
            end = max(0, start - 1) if start == end else start

    def _insert_missing(self, rows: list[Row]) -> None:
        row = 0
        while row < len(rows):
            end = row
            here = self._rows[row].key if row < len(self._rows) else None
            while end < len(rows) and rows[end].key != here:
                end += 1
            if end > row:
                self.beginInsertRows(ROOT, row, end - 1)
                self._rows[row:row] = rows[row:end]
                self.endInsertRows()
            row = end + 1
        self._rows = list(rows)
        self.tell_all()

    def rowCount(self, parent: Index = ROOT) -> int:
        return 0 if parent.isValid() else len(self._rows)
