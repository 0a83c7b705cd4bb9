"""The findings of a plan in their order, with all that is asked of them again and again."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from app.canvas.markers import Markers
from model.grid import Cell
from model.pauses import with_pauses
from model.plan import Plan
from model.rules import Finding
from model.rules.by_cell import FindingsByCell
from model.rules.local import Difference, follow_difference
from model.rules.registry import severity_then_place
from model.rules.waivers import with_waivers
from model.severity import Severity


class KnownFindings:
    """Looking at all of them takes longer than a frame where they are many; an edit changes few."""

    def __init__(self, findings: Iterable[Finding] = ()) -> None:
        """``findings``: in their order."""
        self.all = list(findings)
        self.open = Counter(_severities(with_pauses(self.all)))
        """How many are not set aside, by severity."""
        self.markers = Markers(self.all)
        self._by_cell = FindingsByCell(self.all)

    def at(self, cell: Cell) -> list[Finding]:
        """The findings that concern a cell, the gravest first."""
        return sorted(self._by_cell.at(cell), key=severity_then_place)

    def follow(self, plan: Plan, difference: Difference) -> None:
        """Takes over what an edit that made ``plan`` made of the findings, its waivers being those of before.

        The findings that come are marked as set aside or not already.
        """
        follow_difference(plan, self.all, difference)
        self.markers.follow(difference)
        self._by_cell.follow(difference)
        self.open.subtract(_severities(with_waivers(plan, difference.gone)))
        self.open.update(_severities(difference.come))


def _severities(findings: Iterable[Finding]) -> Iterable[Severity]:
    return (finding.severity for finding in findings if not finding.waived)
