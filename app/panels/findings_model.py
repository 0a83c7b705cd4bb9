"""The findings as a list model that keeps what the user looks at in place."""

from __future__ import annotations

from bisect import bisect_left
from itertools import chain
from typing import Final

from PySide6.QtCore import QObject, Qt

from app.panels.kept_rows import KeptRows
from app.panels.table_model import Index
from app.panels.words import listed, plain_tip
from app.translation import tr
from model.grid import Cell
from model.rules import RULES, Finding
from model.rules.local import Difference, standing
from model.rules.registry import severity_then_place
from model.rules.rule import Key

FINDING_ROLE: Final = Qt.ItemDataRole.UserRole
PLACE_ROLE: Final = Qt.ItemDataRole.UserRole + 1
SECOND_ROLE: Final = Qt.ItemDataRole.UserRole + 2
OLD_ROLE: Final = Qt.ItemDataRole.UserRole + 3
"""Whether it was found in an older plan and may be gone in the present one."""


class FindingsModel(KeptRows[Finding]):
    """The findings in their order."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._names: dict[Cell, str] = {}
        self._are_old = False

    def show(self, findings: list[Finding], switch_names: dict[Cell, str], are_old: bool) -> None:
        """Take over new findings; ``switch_names`` names the cells that are switches.

        ``are_old``: those that hang on routes are of an older plan.
        """
        looks_otherwise = (switch_names, are_old) != (self._names, self._are_old)
        self._names, self._are_old = switch_names, are_old
        if not self.show_rows(findings) and looks_otherwise:
            self.tell_all()

    def follow(self, difference: Difference) -> None:
        """Take over what an edit made of the findings; costs what it changed, however many there are."""
        waiting: dict[Key, list[Finding]] = {}
        for finding in difference.come:
            waiting.setdefault(finding.key, []).append(finding)
        for finding in difference.gone:
            row = self._place_of(finding)
            while standing(self._rows[row]) != finding:
                row += 1
            same = waiting.get(finding.key)
            if same and same[-1].at == finding.at:
                self.replace_row(row, same.pop())
            else:
                self.remove_row(row)
        for finding in chain.from_iterable(waiting.values()):
            self.insert_row(self._place_of(finding), finding)

    def _place_of(self, finding: Finding) -> int:
        return bisect_left(self._rows, severity_then_place(finding), key=severity_then_place)

    def finding(self, row: int) -> Finding:
        """The finding in a row."""
        return self.at(row)

    def _place(self, finding: Finding) -> str:
        if finding.at is None:
            return listed(finding.arms) if finding.arms else ""
        name = self._names.get(finding.at)
        return f"{name}  {finding.at}" if name else str(finding.at)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        finding = self._rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return tr(RULES[finding.rule].title)
        if role == PLACE_ROLE:
            return self._place(finding)
        if role == SECOND_ROLE:
            return tr("Set aside: “{reason}”", reason=finding.reason) if finding.waived else finding.message
        if role == FINDING_ROLE:
            return finding
        if role == OLD_ROLE:
            return self._are_old and not RULES[finding.rule].is_local
        if role == Qt.ItemDataRole.ToolTipRole:
            # The words that a reason puts aside in the row, and those that are cut there.
            return plain_tip(f"{tr(RULES[finding.rule].title)}\n{finding.message}")
        if role == Qt.ItemDataRole.AccessibleTextRole:
            severity = tr("set aside") if finding.waived else tr(finding.severity.value)
            return f"{severity}: {tr(RULES[finding.rule].title)}, {finding.message} {self._place(finding)}"
        return None
