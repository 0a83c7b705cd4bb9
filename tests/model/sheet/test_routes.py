"""Whoever sets the switches as a row of the control table says sends the cart where the row says."""

from __future__ import annotations

from pathlib import Path

import pytest

from model.edits import set_route
from model.files.plan_file import read_plan
from model.plan import Plan, Route
from model.routing.junction import Junction
from model.routing.waybills import waybill_of
from model.sheet.routes import State, control_table
from model.text_drawing import plan_from_drawing

EXAMPLES = sorted((Path(__file__).parents[3] / "resources" / "examples").glob("*.plan.json"))

WYE = """
level 64
─────
··│··
··│··
arm Quay: in 0 64 0 east, out 0 64 0 west
arm Mill: in 4 64 0 west, out 4 64 0 east
arm Fen: in 2 64 2 north, out 2 64 2 south
route Fen: idle Mill, called Quay, waybill Salt
route Quay: idle Mill
"""


@pytest.fixture(params=[*EXAMPLES, WYE], ids=lambda given: getattr(given, "stem", "wye"))
def junction(request: pytest.FixtureRequest) -> Junction:
    drawn: Path | str = request.param
    return Junction(plan_from_drawing(drawn) if isinstance(drawn, str) else read_plan(drawn))


def test_there_are_examples() -> None:
    assert len(EXAMPLES) == 3


def test_the_states_of_a_row_send_the_cart_to_its_goal(junction: Junction) -> None:
    table = control_table(junction)
    wired = junction.choice.wired
    for row in table.rows:
        arm = junction.plan.details.arm(row.start)
        assert arm is not None
        powered = {
            switch.at
            for switch, lie in zip(table.switches, row.lies, strict=True)
            if lie is not None and lie.state is State.POWERED
        }
        way = junction.way_of(arm, frozenset(powered), wired)
        assert row.reached
        assert way.arm == row.goal
        for switch, lie in zip(table.switches, row.lies, strict=True):
            assert (lie is not None) is (switch.at in way.path)


def test_letters_agree_with_the_columns(junction: Junction) -> None:
    """R where the switch rests, P where it lies powered, B where no line goes; idle rows follow inverters."""
    table = control_table(junction)
    for row in table.rows:
        for switch, lie in zip(table.switches, row.lies, strict=True):
            if lie is None:
                continue
            assert (lie.state is State.AS_BUILT) is (switch.idle is None)
            if lie.state is State.RESTS:
                assert lie.shape is switch.resting
            if lie.state is State.POWERED:
                assert lie.shape is switch.powered
            if row.waybill is None and switch.idle is not None:
                assert (lie.state is State.POWERED) is switch.inverter


def test_every_column_is_wired_or_passed(junction: Junction) -> None:
    table = control_table(junction)
    for index, switch in enumerate(table.switches):
        assert switch.idle is not None or any(row.lies[index] for row in table.rows)


def wye() -> Plan:
    return plan_from_drawing(WYE)


def test_the_wye_row_by_row() -> None:
    """The three-way rail pulls to the south and east at rest: common practice, no source."""
    table = control_table(Junction(wye()))
    assert [switch.name for switch in table.switches] == ["S1"]
    lies = [row.lies[0] for row in table.rows]
    assert [lie and (lie.state.value, lie.shape.word) for lie in lies] == [
        ("R", "south-east"),
        ("P", "south-west"),
        ("R", "south-east"),
    ]
    assert [(row.start, row.goal, row.waybill) for row in table.rows] == [
        ("Fen", "Mill", None),
        ("Fen", "Quay", "Salt"),
        ("Quay", "Mill", None),
    ]


def test_a_called_route_without_a_waybill_is_called_after_its_arm() -> None:
    plan = set_route(wye(), Route("Fen", "Mill", "Quay")).applied(wye())
    junction = Junction(plan)
    assert [waybill_of(junction, route) for route in junction.wanted] == [None, "Fen", None]


def test_a_route_that_is_not_reached_says_so() -> None:
    plan = set_route(wye(), Route("Fen", "Fen")).applied(wye())
    first = control_table(Junction(plan)).rows[0]
    assert not first.reached
    assert first.goal == "Fen"
