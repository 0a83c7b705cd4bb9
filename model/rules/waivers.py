"""Findings set aside with a reason, and waivers whose finding is gone."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import msgspec

from model.plan import Plan, Waiver
from model.routing.junction import Junction
from model.rules.rule import Finding, Key


def waiver_for(finding: Finding, reason: str) -> Waiver:
    """The waiver that sets a finding aside."""
    return Waiver(finding.rule, finding.cells, finding.arms, reason)


def with_waivers(plan: Plan, findings: Iterable[Finding]) -> Iterator[Finding]:
    """The findings, those marked as waived for which the plan has a waiver: the same rule, cells and arms."""
    reasons = {waiver_key(waiver): waiver.reason for waiver in plan.details.waivers}
    for finding in findings:
        reason = reasons.get(finding.key)
        aside = {} if reason is None else {"waived": True, "reason": reason}
        yield msgspec.structs.replace(finding, **aside)


def stale_waivers(junction: Junction, findings: Iterable[Finding]) -> tuple[Waiver, ...]:
    """The waivers of the plan that set none of its findings aside."""
    found = {finding.key for finding in findings}
    return tuple(w for w in junction.plan.details.waivers if waiver_key(w) not in found)


def waiver_key(waiver: Waiver) -> Key:
    """The key of the finding that a waiver sets aside."""
    return waiver.rule, frozenset(waiver.cells), frozenset(waiver.arms)
