"""The findings as a list model that keeps what the user looks at in place."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QAbstractListModel, QObject, Qt

from app.panels.table_model import ROOT, Index
from app.panels.words import listed, plain_tip
from model.grid import Cell
from model.rules import RULES, Finding
from model.rules.rule import Key

FINDING_ROLE: Final = Qt.ItemDataRole.UserRole
PLACE_ROLE: Final = Qt.ItemDataRole.UserRole + 1
SECOND_ROLE: Final = Qt.ItemDataRole.UserRole + 2


class FindingsModel(QAbstractListModel):
    """The findings in their order; rows that stay are never reset, so choice and scroll stay too."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._findings: list[Finding] = []
        self._names: dict[Cell, str] = {}

    def show(self, findings: list[Finding], switch_names: dict[Cell, str]) -> None:
        """Take over new findings; ``switch_names`` names the cells that are switches."""
        if findings == self._findings and switch_names == self._names:
            return
        self._names = switch_names
        kept = {finding.key for finding in findings}
        self._remove_all_but(kept)
        held = [finding.key for finding in self._findings]
        wanted = set(held)
        if [key for finding in findings if (key := finding.key) in wanted] == held:
            self._insert_missing(findings)
        else:
            self.beginResetModel()
            self._findings = list(findings)
            self.endResetModel()

    def finding(self, row: int) -> Finding:
        """The finding in a row."""
        return self._findings[row]

    def row_of(self, finding: Finding) -> int | None:
        """The row of a finding, or ``None``."""
        key = finding.key
        return next((row for row, other in enumerate(self._findings) if other.key == key), None)

    def _remove_all_but(self, kept: set[Key]) -> None:
        end = len(self._findings)
        while end:
            start = end
            while start and self._findings[start - 1].key not in kept:
                start -= 1
            if start < end:
                self.beginRemoveRows(ROOT, start, end - 1)
                del self._findings[start:end]
                self.endRemoveRows()
            end = max(0, start - 1) if start == end else start

    def _insert_missing(self, findings: list[Finding]) -> None:
        row = 0
        while row < len(findings):
            end = row
            here = self._findings[row].key if row < len(self._findings) else None
            while end < len(findings) and findings[end].key != here:
                end += 1
            if end > row:
                self.beginInsertRows(ROOT, row, end - 1)
                self._findings[row:row] = findings[row:end]
                self.endInsertRows()
            row = end + 1
        self._findings = list(findings)
        if findings:
            self.dataChanged.emit(self.index(0), self.index(len(findings) - 1))

    def _place(self, finding: Finding) -> str:
        if finding.at is None:
            return listed(finding.arms) if finding.arms else ""
        name = self._names.get(finding.at)
        return f"{name}  {finding.at}" if name else str(finding.at)

    def rowCount(self, parent: Index = ROOT) -> int:
        return 0 if parent.isValid() else len(self._findings)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        finding = self._findings[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return RULES[finding.rule].title
        if role == PLACE_ROLE:
            return self._place(finding)
        if role == SECOND_ROLE:
            return f"Set aside: “{finding.reason}”" if finding.waived else finding.message
        if role == FINDING_ROLE:
            return finding
        if role == Qt.ItemDataRole.ToolTipRole:
            # The words that a reason puts aside in the row, and those that are cut there.
            return plain_tip(f"{RULES[finding.rule].title}\n{finding.message}")
        if role == Qt.ItemDataRole.AccessibleTextRole:
            severity = "set aside" if finding.waived else finding.severity.value
            return f"{severity}: {RULES[finding.rule].title}, {finding.message} {self._place(finding)}"
        return None
