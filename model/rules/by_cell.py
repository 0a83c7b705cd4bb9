"""Findings looked up by the cells that they concern, kept up to date edit by edit."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from model.grid import Cell
from model.pauses import with_pauses
from model.rules.local import Difference, standing
from model.rules.rule import Finding


class FindingsByCell:
    """Answers at once, however many findings there are."""

    def __init__(self, findings: Iterable[Finding] = ()) -> None:
        self._here: dict[Cell, list[Finding]] = {}
        self._put(findings)

    def at(self, cell: Cell) -> Sequence[Finding]:
        """The findings that concern a cell, in no particular order."""
        return self._here.get(cell, ())

    def follow(self, difference: Difference) -> None:
        """Takes over what an edit made of the findings."""
        for finding in difference.gone:
            for cell in set(finding.cells):
                here = self._here[cell]
                here.remove(next(other for other in here if standing(other) == finding))
        self._put(difference.come)

    def _put(self, findings: Iterable[Finding]) -> None:
        for finding in with_pauses(findings):
            for cell in set(finding.cells):
                self._here.setdefault(cell, []).append(finding)
