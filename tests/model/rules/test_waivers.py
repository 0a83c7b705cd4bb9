"""Waivers set aside just their finding, survive saving, moving and turning, and are listed when stale."""

from __future__ import annotations

import msgspec
import pytest

from model import edits
from model.files.plan_file import parse_plan, plan_bytes
from model.grid import ALL_TURNS, Cell, Turn
from model.plan import Plan, Waiver
from model.routing.junction import Junction
from model.rules import RULES, Finding, find_all, stale_waivers, waiver_for
from model.text_drawing import plan_from_drawing
from tests.model.rules.cases import Case, cases_of

FREE_OF_DIRECTIONS = ("arm-off-track", "unknown-arm", "name-doubled", "running-side", "detector-arm")
"""Rules that no shape and no signal comes into, so that their findings follow every turn."""

BAD = [case for rule in RULES for case in cases_of(rule) if case.places]

SINGLE_TRACK = plan_from_drawing("""
    level 64 on blocks
    ───
    arm Quay: in 0 64 0 east, out 0 64 0 west
    arm Mill: in 2 64 0 west, out 2 64 0 east
    route Quay: idle Mill
    route Mill: idle Quay
    """)


def name_of(case: Case) -> str:
    return f"{case.rule}: {case.shows}"


def findings_in(plan: Plan) -> list[Finding]:
    return find_all(Junction(plan))


def stale_in(plan: Plan) -> tuple[Waiver, ...]:
    junction = Junction(plan)
    return stale_waivers(junction, find_all(junction))


def with_all_set_aside(plan: Plan) -> Plan:
    for finding in findings_in(plan):
        plan = edits.set_aside(plan, waiver_for(finding, f"known: {finding.rule}")).applied(plan)
    return plan


def assert_all_set_aside(plan: Plan) -> None:
    findings = findings_in(plan)
    assert findings
    assert all(finding.waived and finding.reason == f"known: {finding.rule}" for finding in findings)
    assert stale_in(plan) == ()


def turned(plan: Plan, turn: Turn) -> Plan:
    return edits.turn_plan(plan, turn).applied(plan)


@pytest.mark.parametrize("case", BAD, ids=name_of)
def test_waivers_survive_ten_reopenings_and_a_move(case: Case) -> None:
    plan = with_all_set_aside(plan_from_drawing(case.drawing))
    for _ in range(10):
        plan = parse_plan(plan_bytes(plan), "plan")
    assert_all_set_aside(edits.move_plan(plan, 40, -9, -7).applied(plan))


@pytest.mark.parametrize("case", BAD, ids=name_of)
def test_waivers_survive_a_turn_and_back(case: Case) -> None:
    plan = with_all_set_aside(plan_from_drawing(case.drawing))
    for turn in ALL_TURNS:
        assert_all_set_aside(turned(turned(plan, turn), turn.inverse))


@pytest.mark.parametrize("case", [case for case in BAD if case.rule in FREE_OF_DIRECTIONS], ids=name_of)
def test_findings_free_of_directions_and_their_waivers_follow_every_turn(case: Case) -> None:
    plan = with_all_set_aside(plan_from_drawing(case.drawing))
    before = [finding for finding in findings_in(plan) if finding.rule == case.rule]
    for turn in ALL_TURNS:
        after = [finding for finding in findings_in(turned(plan, turn)) if finding.rule == case.rule]
        expected = {(case.rule, frozenset(map(turn.cell, f.cells)), frozenset(f.arms)) for f in before}
        assert {finding.key for finding in after} == expected
        assert all(finding.waived for finding in after)


def test_a_waiver_follows_the_new_name_of_an_arm() -> None:
    plan = with_all_set_aside(SINGLE_TRACK)
    mill = plan.details.arm("Mill")
    assert mill is not None
    assert_all_set_aside(edits.set_arm(plan, "Mill", msgspec.structs.replace(mill, name="Fen")).applied(plan))


def test_cells_and_arms_may_come_in_any_order() -> None:
    (finding,) = findings_in(SINGLE_TRACK)
    waiver = Waiver(finding.rule, finding.cells[::-1], finding.arms[::-1], "one cart only")
    plan = edits.set_aside(SINGLE_TRACK, waiver).applied(SINGLE_TRACK)
    assert [(found.waived, found.reason) for found in findings_in(plan)] == [(True, "one cart only")]


@pytest.mark.parametrize(
    "other",
    [
        {"rule": "loose-end"},
        {"cells": (Cell(0, 64, 0), Cell(1, 64, 0))},
        {"cells": (Cell(0, 64, 0), Cell(1, 64, 0), Cell(2, 64, 0), Cell(3, 64, 0))},
        {"arms": ("Mill",)},
        {"arms": ("Mill", "Quay", "Fen")},
        {"cells": (), "arms": ()},
    ],
    ids=str,
)
def test_a_waiver_for_something_else_sets_nothing_aside_and_is_stale(other: dict[str, object]) -> None:
    (finding,) = findings_in(SINGLE_TRACK)
    waiver = msgspec.structs.replace(waiver_for(finding, ""), **other)
    plan = edits.set_aside(SINGLE_TRACK, waiver).applied(SINGLE_TRACK)
    assert not any(found.waived for found in findings_in(plan))
    assert stale_in(plan) == (waiver,)


def test_a_waiver_is_stale_once_the_finding_is_mended() -> None:
    plan = with_all_set_aside(SINGLE_TRACK)
    mended = edits.remove_route(plan, "Mill").applied(plan)
    assert [waiver.rule for waiver in stale_in(mended)] == ["head-on"]


def test_taking_up_a_waiver_brings_the_finding_back() -> None:
    plan = with_all_set_aside(SINGLE_TRACK)
    (finding,) = findings_in(plan)
    taken_up = edits.take_up(plan, waiver_for(finding, "")).applied(plan)
    assert findings_in(taken_up) == findings_in(SINGLE_TRACK)
