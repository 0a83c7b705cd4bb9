"""Broken plans are normal: whatever a plan holds, it is drawn and checked, and findings can be acted on."""

from __future__ import annotations

from hypothesis import given, settings

from model import edits
from model.plan import Plan
from model.routing.junction import Junction
from model.rules import RULES, Severity, find_all, fix, stale_waivers, waiver_for
from model.text_drawing import draw
from tests import strategies


@settings(deadline=None)
@given(strategies.plans())
def test_any_plan_is_drawn_and_checked_the_same_way_twice(plan: Plan) -> None:
    junction = Junction(plan)
    findings = find_all(junction)
    assert find_all(Junction(plan)) == findings
    ranks = [list(Severity).index(finding.severity) for finding in findings]
    assert ranks == sorted(ranks)
    assert all(len(set(finding.cells)) == len(finding.cells) for finding in findings)
    assert len(draw(junction.layout).splitlines()) >= 1


@settings(deadline=None)
@given(strategies.plans())
def test_every_fix_is_a_change_that_can_be_undone(plan: Plan) -> None:
    junction = Junction(plan)
    for finding in find_all(junction):
        change = fix(junction, finding)
        if change is not None:
            mended = change.applied(plan)
            assert mended != plan
            assert change.inverse().applied(mended) == plan
            assert finding.key not in {left.key for left in RULES[finding.rule].findings(Junction(mended))}


@settings(deadline=None)
@given(strategies.plans())
def test_all_findings_of_any_plan_can_be_set_aside(plan: Plan) -> None:
    findings = find_all(Junction(plan))
    for finding in findings:
        plan = edits.set_aside(plan, waiver_for(finding, "known")).applied(plan)
    after = find_all(Junction(plan))
    assert [finding.key for finding in after] == [finding.key for finding in findings]
    assert all(finding.waived for finding in after)
    known = {finding.key for finding in after}
    stale = stale_waivers(Junction(plan), after)
    assert len(plan.details.waivers) >= len(known)
    assert not any(waiver.reason == "known" for waiver in stale)
