"""Edits of arms, wanted routes, waivers, title and sheet; and what follows a turned or moved plan."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given

from model import edits
from model.edits import EditRefused, name_problem
from model.files import limits
from model.files.plan_file import PlanFileError, parse_plan, plan_bytes
from model.grid import ALL_TURNS, XZ_LIMIT, Cell, Heading, Turn
from model.parts import Part
from model.pieces import Piece
from model.plan import TEXT_LIMIT, Arm, ArmEnd, Details, Plan, Route, SheetData, Side, Waiver, plan_of
from tests.strategies import filled_plans, turns

QUAY = Arm("Quay", ArmEnd(Cell(0, 64, 4), Heading.NORTH), ArmEnd(Cell(2, 64, 4), Heading.SOUTH))
FEN = Arm("Fen", leave=ArmEnd(Cell(0, 64, 0), Heading.NORTH))
WAIVED = Waiver("running-side", (Cell(0, 64, 4), Cell(2, 64, 4)), ("Quay",), "old loop, goes in spring")
JUNCTION = plan_of(
    [Piece(Part.RAIL, Cell(0, 64, z)) for z in range(5)],
    Details(
        "Fen halt",
        Side.LEFT,
        (QUAY, FEN),
        (Route("Quay", "Fen", "Quay", "Salt"), Route("Fen", "Quay")),
        (WAIVED,),
    ),
)


def test_routes_and_waivers_follow_a_new_name() -> None:
    change = edits.set_arm(JUNCTION, "Quay", msgspec.structs.replace(QUAY, name="Mill"))
    assert change.label == "Rename arm Quay to Mill"
    plan = change.applied(JUNCTION)
    assert [arm.name for arm in plan.arms] == ["Mill", "Fen"]
    assert plan.routes == (Route("Mill", "Fen", "Mill", "Salt"), Route("Fen", "Mill"))
    assert plan.details.waivers[0].arms == ("Mill",)


def test_an_arm_set_anew_keeps_its_place() -> None:
    one_way = msgspec.structs.replace(QUAY, leave=None)
    change = edits.set_arm(JUNCTION, "Quay", one_way)
    assert change.label == "Set arm Quay"
    assert change.applied(JUNCTION).arms == (one_way, FEN)
    assert edits.set_arm(JUNCTION, "Quay", QUAY).is_empty


def test_a_name_in_use_is_refused() -> None:
    with pytest.raises(EditRefused, match="already an arm Fen"):
        edits.add_arm(JUNCTION, FEN)
    with pytest.raises(EditRefused, match="already an arm Fen"):
        edits.set_arm(JUNCTION, "Quay", msgspec.structs.replace(QUAY, name="Fen"))


def test_a_name_of_a_route_left_over_is_refused() -> None:
    """Two routes from one arm could not be saved."""
    left_over = edits.set_route(JUNCTION, Route("Mill", "Quay")).applied(JUNCTION)
    with pytest.raises(EditRefused, match="already a wanted route from Mill"):
        edits.set_arm(left_over, "Quay", msgspec.structs.replace(QUAY, name="Mill"))


def test_an_arm_of_a_doubled_name_can_still_be_renamed() -> None:
    doubled = plan_of([], Details(arms=(QUAY, QUAY)))
    plan = edits.set_arm(doubled, "Quay", msgspec.structs.replace(QUAY, name="Mill")).applied(doubled)
    assert [arm.name for arm in plan.arms] == ["Mill", "Quay"]


def test_an_arm_has_an_end_within_reach() -> None:
    with pytest.raises(EditRefused, match="needs an in or an out"):
        edits.add_arm(JUNCTION, Arm("Mill"))
    far = ArmEnd(Cell(XZ_LIMIT + 1, 0, 0), Heading.EAST)
    with pytest.raises(EditRefused, match="out of reach"):
        edits.add_arm(JUNCTION, Arm("Mill", far))
    with pytest.raises(EditRefused, match="out of reach"):
        edits.move_plan(JUNCTION, 0, 960, 0)


def test_a_plan_takes_so_many_arms() -> None:
    full = plan_of([], Details(arms=tuple(msgspec.structs.replace(QUAY, name=str(n)) for n in range(1_000))))
    with pytest.raises(EditRefused, match="1,000 arms at most"):
        edits.add_arm(full, QUAY)


def test_a_removed_arm_takes_its_own_route_along() -> None:
    change = edits.remove_arm(JUNCTION, "Quay")
    assert change.label == "Remove arm Quay"
    plan = change.applied(JUNCTION)
    assert plan.arms == (FEN,)
    assert plan.routes == (Route("Fen", "Quay"),)
    with pytest.raises(KeyError):
        edits.remove_arm(plan, "Quay")


@pytest.mark.parametrize(
    ("name", "sound"),
    [
        ("Tithe Barn", True),
        ("Fährhaus 2", True),
        ("x" * 80, True),
        ("x" * 81, False),
        ("", False),
        ("Fen/North", False),
        ("Quay,Mill", False),
        ("Fen\n", False),
        ("Fen\u0085", False),
        ("\ud800", False),
    ],
)
def test_names(name: str, sound: bool) -> None:
    """1 to 80 characters, no control character, comma or slash; half of a surrogate pair cannot be saved."""
    assert (name_problem(name) is None) is sound
    if not sound:
        with pytest.raises(EditRefused):
            edits.add_arm(JUNCTION, msgspec.structs.replace(FEN, name=name))
        with pytest.raises(EditRefused):
            edits.set_route(JUNCTION, Route("Fen", "Quay", "Quay", name))


def test_one_route_an_arm() -> None:
    change = edits.set_route(JUNCTION, Route("Quay", "Quay"))
    assert change.label == "Set route from Quay"
    assert change.applied(JUNCTION).routes == (Route("Quay", "Quay"), Route("Fen", "Quay"))
    added = edits.set_route(JUNCTION, Route("Mill", "Quay")).applied(JUNCTION)
    assert added.routes[2:] == (Route("Mill", "Quay"),)
    assert edits.remove_route(added, "Mill").applied(added) == JUNCTION
    assert edits.remove_route(JUNCTION, "Mill").is_empty


def test_a_waiver_for_the_same_finding_takes_the_place_of_the_old_one() -> None:
    turned = msgspec.structs.replace(WAIVED, cells=WAIVED.cells[::-1], reason="built so")
    plan = edits.set_aside(JUNCTION, turned).applied(JUNCTION)
    assert plan.details.waivers == (turned,)
    assert edits.take_up(plan, WAIVED).applied(plan).details.waivers == ()
    assert edits.take_up(plan, Waiver("loose-end")).is_empty
    with pytest.raises(EditRefused, match="control"):
        edits.set_aside(JUNCTION, Waiver("loose-end", reason="a\x00b"))


def test_texts_are_as_long_as_files_take_and_no_longer() -> None:
    longest = edits.set_title(JUNCTION, "x" * TEXT_LIMIT).applied(JUNCTION)
    assert parse_plan(plan_bytes(longest), "longest.plan.json") == longest
    with pytest.raises(EditRefused, match="10,000 characters"):
        edits.set_title(JUNCTION, "x" * (TEXT_LIMIT + 1))
    longer = plan_bytes(plan_of([], Details(title="x" * (TEXT_LIMIT + 1))))
    with pytest.raises(PlanFileError):
        parse_plan(longer, "longer.plan.json")


def test_a_plan_takes_so_many_routes() -> None:
    routes = tuple(Route(str(number), "Quay") for number in range(limits.ROUTE_LIMIT))
    full = plan_of([], Details(routes=routes))
    with pytest.raises(EditRefused, match="1,000 wanted routes"):
        edits.set_route(full, Route("Quay", "Fen"))
    assert len(edits.set_route(full, Route("7", "Fen")).applied(full).routes) == limits.ROUTE_LIMIT


def test_title_side_and_sheet() -> None:
    assert edits.set_title(JUNCTION, "Fen halt").is_empty
    assert edits.set_title(JUNCTION, "Fen").applied(JUNCTION).details.title == "Fen"
    assert edits.set_running_side(JUNCTION, None).applied(JUNCTION).details.running_side is None
    assert edits.set_running_side(JUNCTION, Side.RIGHT).label == "Set running side to right"
    sheet = SheetData(number="BW-003")
    assert edits.set_sheet(JUNCTION, sheet).applied(JUNCTION).details.sheet == sheet
    for refused in (
        lambda: edits.set_title(JUNCTION, "a\tb"),
        lambda: edits.set_sheet(JUNCTION, SheetData(owner="\x1b")),
    ):
        with pytest.raises(EditRefused):
            refused()


def test_everything_follows_a_mirrored_plan() -> None:
    change = edits.turn_plan(JUNCTION, Turn(0, True))
    assert change.label == "Turn plan to orientation 5"
    details = change.applied(JUNCTION).details
    assert details.running_side is Side.RIGHT
    assert details.arms[0].leave == ArmEnd(Cell(-2, 64, 4), Heading.SOUTH)
    assert details.waivers[0].cells == (Cell(0, 64, 4), Cell(-2, 64, 4))
    assert details.routes == JUNCTION.routes


def test_everything_follows_a_moved_plan() -> None:
    plan = edits.move_plan(JUNCTION, 10, -1, -4).applied(JUNCTION)
    assert plan.pieces.get(Cell(10, 63, -4)) == Piece(Part.RAIL, Cell(10, 63, -4))
    assert plan.arms[0].enter == ArmEnd(Cell(10, 63, 0), Heading.NORTH)
    assert plan.details.waivers[0].cells[1] == Cell(12, 63, 0)


@given(filled_plans, turns, turns)
def test_turns_of_a_plan_follow_one_another(plan: Plan, first: Turn, later: Turn) -> None:
    once = edits.turn_plan(plan, first).applied(plan)
    assert edits.turn_plan(once, later).applied(once) == edits.turn_plan(plan, first.then(later)).applied(
        plan
    )
    assert [piece.part for piece in once.pieces] == [piece.part for piece in plan.pieces]


@given(filled_plans)
def test_the_turn_that_stays_is_empty(plan: Plan) -> None:
    assert edits.turn_plan(plan, ALL_TURNS[0]).is_empty
    assert edits.move_plan(plan, 0, 0, 0).is_empty
