"""The cautions of the cover, and what else stands on it."""

from __future__ import annotations

import msgspec
import pytest

from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import EMPTY_PLAN, Plan, plan_of
from model.routing.junction import Junction
from model.rules import Severity, find_all
from model.sheet import build_sheet
from model.sheet.cautions import ARROWS, FROM_MEMORY, NUMBERS, ONE_ORIENTATION, STEPS, TEST_FIRST, Caution
from model.text_drawing import plan_from_drawing
from tests.model.sheet.test_routes import WYE


def cautions_of(plan: Plan) -> tuple[Caution, ...]:
    junction = Junction(plan)
    return build_sheet(junction, find_all(junction)).cautions


@pytest.mark.parametrize("plan", [EMPTY_PLAN, plan_from_drawing(WYE)], ids=["empty", "wye"])
def test_every_sheet_says_where_the_rules_are_from_and_to_test_first(plan: Plan) -> None:
    assert cautions_of(plan)[-2:] == (FROM_MEMORY, TEST_FIRST)


def test_the_orientation_matters_where_switches_are() -> None:
    assert ONE_ORIENTATION in cautions_of(plan_from_drawing(WYE))
    assert ONE_ORIENTATION not in cautions_of(plan_from_drawing("level 64\n───"))


def test_a_switch_built_otherwise_is_powered_once() -> None:
    """The wye was built straight through; its three-way rail rests on a curve."""
    said = [caution.title for caution in cautions_of(plan_from_drawing(WYE))]
    assert "Power S1 once." in said
    curved = plan_from_drawing(
        WYE.replace("arm Quay: in", "order\n2···3\n··1··\n··4··\narm Quay: in").replace("2···3", "2·5·3")
    )
    junction = Junction(curved)
    assert junction.layout.shape(Cell(2, 64, 0)) is junction.switches[0].resting
    assert not [caution for caution in cautions_of(curved) if caution.title.startswith("Power")]


def test_numbers_and_arrows_are_named_where_there_are_any() -> None:
    wye = cautions_of(plan_from_drawing(WYE))
    assert NUMBERS in wye
    assert ARROWS not in wye
    alone = cautions_of(plan_of([Piece(Part.RAIL, Cell(0, 64, 0))]))
    assert NUMBERS not in alone
    assert ARROWS in alone


@pytest.mark.parametrize(
    ("levels", "title"),
    [
        ([63], None),
        ([63, 64], "Level 63 before level 64."),
        ([64, -1, 62], "The levels in order, from −1 up to 64."),
    ],
)
def test_levels_come_in_order(levels: list[int], title: str | None) -> None:
    said = [c.title for c in cautions_of(plan_of([Piece(Part.LAMP, Cell(0, y, 0)) for y in levels]))]
    assert [words for words in said if "evel" in words] == ([] if title is None else [title])


def test_errors_come_first_and_those_set_aside_do_not() -> None:
    junction = Junction(plan_from_drawing(WYE))
    findings = find_all(junction)
    errors = [finding for finding in findings if finding.severity is Severity.ERROR]
    assert errors, "nothing carries these rails"
    first = build_sheet(junction, findings).cautions[0]
    assert first.severity == "error"
    assert first.title == errors[0].message
    assert f"{len([e for e in errors if e.rule == errors[0].rule]) - 1} more of this kind" in first.text
    aside = [msgspec.structs.replace(finding, waived=True) for finding in findings]
    assert not [c for c in build_sheet(junction, aside).cautions if c.severity == "error"]


def test_an_empty_plan_has_a_sheet() -> None:
    sheet = build_sheet(Junction(EMPTY_PLAN), ())
    assert sheet.summary == "0 levels, 0 switches"
    assert sheet.footprint is None
    assert not sheet.levels
    assert not sheet.control.rows
    assert not sheet.steps
    assert not sheet.checklist.runs


def test_the_summary_counts_in_plain_english() -> None:
    junction = Junction(plan_from_drawing(WYE))
    sheet = build_sheet(junction, ())
    assert sheet.summary == "1 level, 1 switch"
    assert str(sheet.footprint) == "footprint 5 × 3 cells, 7 covered"


def test_where_a_part_waits_for_a_higher_level_the_steps_are_followed() -> None:
    """A torch gives its signal to the block above it, on which a rail lies: it must come after the rail."""
    track = [Piece(Part.SOLID_BLOCK, Cell(x, 63, 0)) for x in range(3)]
    track += [Piece(Part.RAIL, Cell(x, 64, 0), Facing.EAST) for x in range(3)]
    foot = Piece(Part.SOLID_BLOCK, Cell(1, 61, 0))
    torch = Piece(Part.TORCH, Cell(1, 62, 0), Facing.UP)
    assert STEPS in cautions_of(plan_of([foot, torch, *track]))
    assert not [
        said for said in cautions_of(plan_of([foot, torch, *track])) if "levels in order" in said.title
    ]
    plain = cautions_of(plan_of([foot, *track]))
    assert STEPS not in plain
    assert [said for said in plain if "levels in order" in said.title]
