"""The keyboard alone: everything that the mouse does on the plan."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.canvas.view import PlanView
from app.document import Document
from model.grid import Cell
from model.parts import Part
from model.track.shapes import Shape
from tests.app.canvas.conftest import LEVEL, SWITCH, User

K = Qt.Key
CTRL = Qt.KeyboardModifier.ControlModifier


def test_track_is_laid_by_enter_arrows_enter(document: Document, view: PlanView, user: User) -> None:
    view.use("lay")
    view.go_to(Cell(0, LEVEL, 0))
    user.keys(K.Key_Return, K.Key_Right, K.Key_Right, K.Key_Down, K.Key_Down)
    assert document.undo_stack.count() == 0
    user.keys(K.Key_Return)
    assert document.undo_stack.text(0) == "Lay 5 rails"
    assert document.layout.shape(Cell(2, LEVEL, 0)) is Shape.SOUTH_WEST


def test_a_whole_arm_is_made_by_keys(document: Document, view: PlanView, user: User) -> None:
    view.use("lay")
    view.go_to(Cell(0, LEVEL, 0))
    user.keys(K.Key_Return, K.Key_Right, K.Key_Right, K.Key_Return)
    view.use("arm")
    user.keys(K.Key_Return, K.Key_Right, K.Key_Return)
    QTest.keyClicks(view.name_entry.line, "Beacon")
    cursor = view.cursor
    QTest.keyClick(view.name_entry.line, K.Key_Down)
    assert view.cursor == cursor, "the arrows belong to the name"
    QTest.keyClick(view.name_entry.line, K.Key_Return)
    (arm,) = document.plan.arms
    assert arm.name == "Beacon"
    assert arm.leave is not None
    assert arm.leave.at == Cell(2, LEVEL, 0)
    assert not view.hands.tool.is_busy, "the Enter that gave the name begins nothing on the plan"


def test_enter_places_erases_and_throws(document: Document, shown_wye: PlanView, user: User) -> None:
    shown_wye.go_to(Cell(2, LEVEL, 2))
    shown_wye.use("place")
    user.keys(K.Key_Return)
    assert document.plan.pieces.part_at(Cell(2, LEVEL, 2)) is Part.SOLID_BLOCK
    shown_wye.use("erase")
    user.keys(K.Key_Return)
    assert Cell(2, LEVEL, 2) not in document.plan.pieces
    shown_wye.go_to(SWITCH)
    shown_wye.use("throw")
    user.keys(K.Key_Return)
    assert shown_wye.previews.shown.powered == {SWITCH}


def test_shift_and_enter_begins_a_drag_where_enter_acts_at_once(
    document: Document, view: PlanView, user: User
) -> None:
    view.go_to(Cell(0, LEVEL, 0))
    view.use("place")
    user.keys(K.Key_Return, mods=Qt.KeyboardModifier.ShiftModifier)
    user.keys(K.Key_Right, K.Key_Right, K.Key_Down)
    assert document.undo_stack.count() == 0
    user.keys(K.Key_Return)
    assert document.undo_stack.text(0) == "Place 4 pieces"
    view.use("erase")
    user.keys(K.Key_Return, mods=Qt.KeyboardModifier.ShiftModifier)
    user.keys(K.Key_Up, K.Key_Return)
    assert document.undo_stack.text(1) == "Erase 2 pieces"


def test_pieces_are_chosen_and_carried_by_keys(document: Document, shown_wye: PlanView, user: User) -> None:
    shown_wye.go_to(Cell(4, LEVEL, 0))
    user.keys(K.Key_Return, K.Key_Return)
    assert shown_wye.selection == {Cell(4, LEVEL, 0)}
    user.keys(K.Key_Return, K.Key_Down, K.Key_Down, K.Key_Return)
    assert shown_wye.selection == {Cell(4, LEVEL, 2)}
    user.keys(K.Key_Up, mods=CTRL)
    assert shown_wye.selection == {Cell(4, LEVEL, 1)}
    assert document.undo_stack.count() == 2


def test_escape_unwinds_step_by_step(document: Document, shown_wye: PlanView, user: User) -> None:
    shown_wye.selection = frozenset({SWITCH})
    shown_wye.preview_switches(frozenset({SWITCH}))
    shown_wye.use("lay")
    shown_wye.go_to(Cell(2, LEVEL, 2))
    user.keys(K.Key_Return, K.Key_Right)
    user.keys(K.Key_Escape)
    assert shown_wye.previews.is_on
    user.keys(K.Key_Escape)
    assert not shown_wye.previews.is_on
    assert shown_wye.selection
    user.keys(K.Key_Escape)
    assert not shown_wye.selection
    assert shown_wye.tool == "lay"
    user.keys(K.Key_Escape)
    assert shown_wye.tool == "select"
    assert document.undo_stack.count() == 0


def test_the_cursor_stays_in_sight(view: PlanView, user: User) -> None:
    view.go_to(Cell(0, LEVEL, 0))
    user.keys(*[K.Key_Left] * 30, *[K.Key_Up] * 30)
    assert view.cursor == Cell(-30, LEVEL, -30)
    assert view.navigator.seen.holds(-30, -30)


def test_page_keys_change_the_level(view: PlanView, user: User) -> None:
    user.keys(K.Key_PageUp, K.Key_PageUp, K.Key_PageDown)
    assert view.level == LEVEL + 1
    assert view.cursor.y == LEVEL + 1


def test_w_loads_the_next_cart(shown_wye: PlanView, user: User) -> None:
    shown_wye.use("cart")
    shown_wye.go_to(Cell(0, LEVEL, 4))
    user.keys(K.Key_W, K.Key_Return, K.Key_Up, K.Key_Return)
    (run,) = shown_wye.previews.shown.runs
    assert run.called
    assert run.way.arm == "Quay"
