"""Fixes are ordinary changes that mend the finding, and there is none where none can be computed."""

from __future__ import annotations

import pytest

from model.grid import Y_LOWEST, Cell
from model.parts import Part
from model.plan import Change, Plan
from model.routing.junction import Junction
from model.rules import RULES, Finding, find_all, fix
from model.text_drawing import plan_from_drawing
from tests.model.rules.cases import Case, cases_of


def findings_of(rule: str, plan: Plan) -> list[Finding]:
    return list(RULES[rule].findings(Junction(plan)))


def fixes_of(rule: str, plan: Plan) -> list[Change | None]:
    junction = Junction(plan)
    return [fix(junction, finding) for finding in RULES[rule].findings(junction)]


@pytest.mark.parametrize(
    "case", [c for c in cases_of("unsupported") if c.places], ids=lambda case: case.shows
)
def test_blocks_are_added_where_they_are_missing_and_no_rail_changes(case: Case) -> None:
    plan = plan_from_drawing(case.drawing)
    shapes = Junction(plan).layout.shapes
    for finding, change in zip(findings_of("unsupported", plan), fixes_of("unsupported", plan), strict=True):
        if change is not None:
            mended = change.applied(plan)
            assert finding.key not in {left.key for left in findings_of("unsupported", mended)}
            assert change.inverse().applied(mended) == plan
            assert Junction(mended).layout.shapes == shapes
            assert {entry.piece.part for entry in change.placed} == {Part.SOLID_BLOCK}


def test_one_fix_carries_all_that_hangs_together_and_nothing_else() -> None:
    plan = plan_from_drawing("level 64\n───··─\nlevel 65, from 3 0\n─")
    changes = fixes_of("unsupported", plan)
    blocks = [{entry.piece.at for entry in change.placed} for change in changes if change is not None]
    together = {Cell(0, 63, 0), Cell(1, 63, 0), Cell(2, 63, 0), Cell(3, 64, 0)}
    assert blocks == [together, together, together, {Cell(5, 63, 0)}, together]
    assert [change.label for change in changes if change is not None][2:4] == ["Add 4 blocks", "Add 1 block"]


def test_nothing_is_put_where_something_stands() -> None:
    plan = plan_from_drawing("level 62\n#\nlevel 63\nd\nlevel 64\n─")
    assert fixes_of("unsupported", plan) == [None]


def test_no_block_is_put_below_the_lowest_level() -> None:
    plan = plan_from_drawing(f"level {Y_LOWEST}\n─")
    assert fixes_of("unsupported", plan) == [None]


@pytest.mark.parametrize(
    "case", [c for c in cases_of("inverter-needed") if c.places], ids=lambda case: case.shows
)
def test_turning_leaves_no_inverter_or_is_not_offered(case: Case) -> None:
    plan = plan_from_drawing(case.drawing)
    for change in fixes_of("inverter-needed", plan):
        if change is not None:
            turned = change.applied(plan)
            assert findings_of("inverter-needed", turned) == []
            assert Junction(turned).control.serves
            assert change.inverse().applied(turned) == plan


def test_a_switch_to_the_branch_can_be_turned_free_of_its_inverter() -> None:
    """Turned by a quarter, the way straight on is one in which the switch rests."""
    plan = plan_from_drawing(cases_of("inverter-needed")[0].drawing)
    (change,) = fixes_of("inverter-needed", plan)
    assert change is not None
    assert change.label.startswith("Turn plan")


def test_no_turn_is_offered_where_every_orientation_needs_an_inverter() -> None:
    """Of two switches that lie alike, one must go straight on while no reader holds, and one must not."""
    plan = plan_from_drawing("""
        level 64 on blocks
        │···│·
        │─··│─
        │···│·
        order
        ······
        1···2·
        ······
        arm Quay: in 0 64 2 north
        arm Mill: out 0 64 0 north
        arm Fen: out 1 64 1 east
        arm Beacon: in 4 64 2 north
        arm Orchard: out 4 64 0 north
        arm Saltern: out 5 64 1 east
        route Quay: idle Mill, called Fen
        route Beacon: idle Saltern, called Orchard
        """)
    assert fixes_of("inverter-needed", plan) == [None]


def test_most_findings_have_no_fix() -> None:
    plan = plan_from_drawing("level 64 on blocks\n─\narm Quay: in 9 64 9 east\nroute Quay: idle Mill")
    junction = Junction(plan)
    assert [fix(junction, finding) for finding in find_all(junction)] == [None] * 4
