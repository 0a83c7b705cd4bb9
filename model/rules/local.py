"""The findings that hang on no route, kept up to date edit by edit."""

from __future__ import annotations

from bisect import bisect_left, insort
from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import chain
from typing import Final, NamedTuple

import msgspec

from model.grid import Cell
from model.pauses import with_pauses
from model.plan import Plan
from model.routing.junction import Junction
from model.rules.registry import RULES, severity_then_place
from model.rules.rule import Finding
from model.rules.waivers import with_waivers
from model.track.layout import Layout

_NEARBY: Final = tuple((rule, rule.nearby) for rule in RULES.values() if rule.nearby is not None)
_DETAILS: Final = tuple(rule for rule in RULES.values() if rule.asks_details)


class Difference(NamedTuple):
    """What an edit made of the local findings, none of them set aside yet."""

    gone: tuple[Finding, ...]
    come: tuple[Finding, ...]


class LocalFindings:
    """Follows a layout, as the layout follows its plan: it must equal the whole check after every edit."""

    def __init__(self, layout: Layout, findings: Iterable[Finding]) -> None:
        """``findings``: what a whole check of that plan found, local or not."""
        self._layout = layout
        local = [standing(finding) for finding in with_pauses(findings) if RULES[finding.rule].is_local]
        self._details = [finding for finding in local if RULES[finding.rule].asks_details]
        self._nearby: dict[str, dict[Cell, list[Finding]]] = {rule.id: {} for rule, _ in _NEARBY}
        for finding in with_pauses(local):
            if finding.rule in self._nearby:
                self._nearby[finding.rule].setdefault(finding.cells[0], []).append(finding)

    def __iter__(self) -> Iterator[Finding]:
        here = (findings for by_cell in self._nearby.values() for findings in by_cell.values())
        return chain(self._details, *here)

    def follow(self, changed: frozenset[Cell]) -> Difference:
        """Looks again around the cells whose pieces or shapes have changed; the layout has followed already.

        Costs what the change costs, however large the plan.
        """
        before = self._details
        junction = Junction(self._layout.plan, self._layout)
        after = self._details = [finding for rule in _DETAILS for finding in rule.findings(junction)]
        old, new = Counter(before), Counter(after)
        for rule, nearby in _NEARBY:
            touched = nearby.touched(self._layout, changed)
            by_cell = self._nearby[rule.id]
            old.update(finding for cell in touched for finding in by_cell.pop(cell, ()))
            for found in nearby.at(self._layout, touched):
                by_cell.setdefault(found.cells[0], []).append(rule.finding(found))
                new[rule.finding(found)] += 1
        return Difference(tuple((old - new).elements()), tuple((new - old).elements()))


def with_difference(plan: Plan, findings: list[Finding], difference: Difference) -> list[Finding]:
    """Findings in their order after an edit that made ``plan``, those that come marked as its waivers say.

    Raises IndexError where one that is gone was not there.
    """
    after = list(findings)
    follow_difference(plan, after, difference)
    return after


def follow_difference(plan: Plan, after: list[Finding], difference: Difference) -> None:
    """The same with the list itself."""
    for finding in difference.gone:
        place = bisect_left(after, severity_then_place(finding), key=severity_then_place)
        while standing(after[place]) != finding:
            place += 1
        del after[place]
    for finding in with_waivers(plan, difference.come):
        insort(after, finding, key=severity_then_place)


def marked_anew(plan: Plan, findings: Iterable[Finding]) -> list[Finding]:
    """The findings, set aside or not as the waivers of the plan say now."""
    return list(with_waivers(plan, map(standing, findings)))


def standing(finding: Finding) -> Finding:
    """The finding as its rule found it, not set aside."""
    return msgspec.structs.replace(finding, waived=False, reason="") if finding.waived else finding
