"""Findings that follow every edit equal those of a whole check, and rules that claim to be local are."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.edits import erase
from model.plan import Plan
from model.routing.junction import Junction
from model.rules import RULES, Finding, find_all
from model.rules.local import LocalFindings, marked_anew, with_difference
from model.text_drawing import plan_from_drawing
from model.track.layout import Layout
from tests import strategies
from tests.model.rules.cases import Case, cases_of

LOCAL = ("unsupported", "arm-off-track", "unknown-arm", "name-doubled", "detector-arm", "running-side")


def local_ones(findings: list[Finding]) -> list[Finding]:
    return [finding for finding in findings if RULES[finding.rule].is_local]


def test_what_hangs_on_no_route_is_local() -> None:
    assert {rule.id for rule in RULES.values() if rule.is_local} == {*LOCAL, "booster-unpowered"}


@settings(deadline=None, max_examples=60)
@given(st.data())
def test_following_edits_equals_the_whole_check(data: st.DataObject) -> None:
    plan: Plan = data.draw(strategies.plans())
    layout = Layout(plan)
    findings = find_all(Junction(plan))
    local = LocalFindings(layout, findings)
    shown = local_ones(findings)
    for _ in range(4):
        change = data.draw(strategies.changes(plan))
        reshaped = layout.follow(change)
        plan = layout.plan
        difference = local.follow(change.cells | reshaped)
        whole = local_ones(find_all(Junction(plan)))
        bare = local_ones([f for rule in RULES.values() for f in rule.findings(Junction(plan))])
        assert Counter(local) == Counter(bare)
        shown = marked_anew(plan, with_difference(plan, shown, difference))
        assert shown == whole


@pytest.mark.parametrize(
    "case", [case for rule in RULES.values() if rule.is_local for case in cases_of(rule.id)], ids=str
)
def test_taking_each_piece_away_and_back_equals_the_whole_check(case: Case) -> None:
    """Each rule's own plans, for what random ones seldom hold: runs of boosters, dust into blocks."""
    layout = Layout(plan_from_drawing(case.drawing))
    rule = RULES[case.rule]
    local = LocalFindings(layout, find_all(Junction(layout.plan)))
    for piece in layout.plan.pieces:
        change = erase(layout.plan, [piece.at])
        for one in (change, change.inverse()):
            local.follow(one.cells | layout.follow(one))
            found = Counter(finding for finding in local if finding.rule == rule.id)
            assert found == Counter(rule.findings(Junction(layout.plan)))
