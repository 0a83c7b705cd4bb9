"""A plan becomes another one, with as little taken and placed as the order of placing allows."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from model.edits import become, erase, place, set_title
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from tests.strategies import changes, plans


def row(*xs: int, facing: Facing = Facing.NORTH) -> Plan:
    return plan_of([Piece(Part.RAIL, Cell(x, 64, 0), facing) for x in xs])


@given(plans(), plans())
def test_any_plan_becomes_any_other(plan: Plan, other: Plan) -> None:
    change = become(plan, other)
    became = change.applied(plan)
    assert became == other
    # Not of the other plan itself: its pieces are in the same order, but have ranks of their own.
    assert change.inverse().applied(became) == plan


@given(plans(), st.data())
def test_a_plan_becomes_what_an_edit_elsewhere_made_of_it(plan: Plan, data: st.DataObject) -> None:
    other = plan_of([*data.draw(changes(plan)).applied(plan).pieces])
    assert become(plan, other).applied(plan) == other


def test_an_equal_plan_changes_nothing() -> None:
    plan = erase(row(0, 1, 2), [Cell(0, 64, 0)]).applied(row(0, 1, 2))
    assert become(plan, row(1, 2)).is_empty


def test_only_what_differs_is_touched() -> None:
    plan = row(*range(100))
    with_one_more = place(plan, Piece(Part.LEVER, Cell(5, 65, 5), Facing.UP)).applied(plan)
    assert become(plan, plan_of([*with_one_more.pieces])).cells == {Cell(5, 65, 5)}
    without = row(*(x for x in range(100) if x != 40))
    assert become(plan, without).cells == {Cell(40, 64, 0)}
    turned = [*plan.pieces]
    turned[7] = Piece(Part.RAIL, Cell(7, 64, 0), Facing.EAST)
    assert become(plan, plan_of(turned)).cells == {Cell(7, 64, 0)}


def test_other_details_alone_touch_no_piece() -> None:
    plan = row(0, 1)
    titled = set_title(plan, "Quay").applied(plan)
    change = become(plan, titled)
    assert change.cells == frozenset()
    assert change.applied(plan).details.title == "Quay"
