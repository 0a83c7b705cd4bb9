"""Laying track by dragging."""

from __future__ import annotations

from app.tools.hand import Hand
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import plan_of
from model.track.shapes import Shape
from tests.app.tools.desk import LEVEL, Desk


def test_one_drag_is_one_step_named_in_words(desk: Desk) -> None:
    desk.use("lay").press(2, 3).drag_to(6, 3).release()
    assert [change.label for change in desk.done] == ["Lay 5 rails"]
    assert [piece.at for piece in desk.plan.pieces] == [Cell(x, LEVEL, 3) for x in range(2, 7)]
    assert {piece.facing for piece in desk.plan.pieces} == {Facing.EAST}


def test_a_jump_of_the_pointer_goes_straight_on_and_then_round_one_corner(desk: Desk) -> None:
    desk.use("lay").press(0, 0).drag_to(1, 0).drag_to(3, 2).release()
    cells = [(piece.at.x, piece.at.z) for piece in desk.plan.pieces]
    assert cells == [(0, 0), (1, 0), (2, 0), (3, 0), (3, 1), (3, 2)]


def test_the_corner_comes_out_as_a_curve_while_dragging(desk: Desk) -> None:
    desk.use("lay").press(0, 0).drag_to(3, 0).drag_to(3, 2)
    assert desk.ghost is not None
    assert desk.ghost.change is not None
    assert desk.layout.preview(desk.ghost.change)[Cell(3, LEVEL, 0)] is Shape.SOUTH_WEST
    assert len(desk.plan.pieces) == 0


def test_going_back_takes_the_last_cells_off_again(desk: Desk) -> None:
    desk.use("lay").press(0, 0).drag_to(5, 0).drag_to(2, 0).release()
    assert [piece.at.x for piece in desk.plan.pieces] == [0, 1, 2]


def test_a_drag_round_to_its_start_closes_the_ring(desk: Desk) -> None:
    drag = desk.use("lay").press(0, 0)
    for x, z in ((2, 0), (2, 2), (0, 2), (0, 0)):
        drag.drag_to(x, z)
    drag.release()
    shapes = desk.layout.shapes
    assert len(shapes) == 8
    assert shapes[Cell(0, LEVEL, 0)] is Shape.SOUTH_EAST


def test_a_cell_in_the_way_is_crossed_and_skipped() -> None:
    block = Piece(Part.SOLID_BLOCK, Cell(2, LEVEL, 0))
    desk = Desk(plan_of([block]))
    drag = desk.use("lay").press(0, 0).drag_to(4, 0)
    assert desk.ghost is not None
    assert desk.ghost.crossed == {block.at}
    drag.release()
    assert desk.plan.pieces.get(block.at) == block
    assert len(desk.plan.pieces) == 5


def test_the_rail_in_hand_is_the_one_that_is_laid(desk: Desk) -> None:
    desk.take_in_hand(Hand().holding(Part.BOOSTER_RAIL))
    desk.use("lay").press(0, 0).drag_to(1, 0).release()
    assert {piece.part for piece in desk.plan.pieces} == {Part.BOOSTER_RAIL}


def test_a_change_of_level_drops_the_drag(desk: Desk) -> None:
    drag = desk.use("lay").press(0, 0).drag_to(2, 0)
    desk.level += 1
    drag.drag_to(3, 0).release()
    assert not desk.done
    assert desk.ghost is None


def test_nothing_drifts_over_many_moves_of_one_drag(desk: Desk) -> None:
    drag = desk.use("lay").press(0, 0)
    for turn in range(20):
        drag.drag_to(turn % 5, turn % 3)
    once = drag.drag_to(0, 0).drag_to(4, 0).desk.ghost
    assert once is not None
    assert not desk.done
    assert len(desk.plan.pieces) == 0
