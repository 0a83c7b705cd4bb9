"""Erasing, and what it says of a builder who erases by hand."""

from __future__ import annotations

from app.tools.hand import Hand
from app.tools.host import Ends, Tag
from model.grid import Cell
from model.parts import Part
from model.plan import Arm
from model.track.shapes import Shape
from tests.app.tools.desk import LEVEL, Desk


def test_a_drag_erases_what_it_passes_in_one_step(junction: Desk) -> None:
    junction.use("erase").press(0, 3).drag_to(0, 1).release()
    assert [change.label for change in junction.done] == ["Erase 2 pieces"]


def test_it_says_where_a_builder_by_hand_gets_another_shape(desk: Desk) -> None:
    corner = Cell(0, LEVEL, 0)
    desk.use("lay").press(0, 2).drag_to(0, 0).drag_to(2, 0).release()
    desk.use("erase").click(0, 1)
    # World rules, "Removing": in the world, taking away a plain rail changes no other rail.
    assert desk.layout.shape(corner) is Shape.EAST_WEST
    assert (
        desk.said[-1] == f"Taken away by hand, {corner} stays south-east; in the plan it becomes east-west."
    )


def test_it_says_nothing_of_rails_that_a_detector_gives_notice_as_it_goes(desk: Desk) -> None:
    desk.take_in_hand(Hand().holding(Part.DETECTOR_RAIL))
    desk.use("lay").press(0, 1).release()
    desk.take_in_hand(Hand())
    desk.use("lay").press(0, 0).drag_to(2, 0).release()
    before = desk.layout.shape(Cell(0, LEVEL, 0))
    desk.use("erase").click(0, 1)
    assert before is Shape.SOUTH_EAST
    assert desk.layout.shape(Cell(0, LEVEL, 0)) is Shape.EAST_WEST
    assert desk.said[-1] == ""


def test_it_says_nothing_where_no_other_rail_changes(junction: Desk) -> None:
    junction.use("erase").click(0, 2)
    assert junction.said[-1] == ""
    assert len(junction.done) == 1


def test_a_click_on_nothing_is_no_step(junction: Desk) -> None:
    junction.use("erase").click(7, 7)
    assert not junction.done


def test_a_click_on_a_tag_removes_the_arm(junction: Desk) -> None:
    junction.tags[Cell(-3, LEVEL, 0)] = Tag("Quay", Ends.IN)
    junction.use("erase").press(-3, 0).drag_to(5, 5).release()
    assert [arm.name for arm in junction.plan.arms] == ["Quay"]
    junction.use("erase").click(-3, 0)
    assert junction.plan.arms == tuple[Arm, ...]()
