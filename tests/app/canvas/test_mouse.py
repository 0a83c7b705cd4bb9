"""Drawing with the mouse, as a user does."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.canvas import clipboard
from app.canvas.arms import ShownTag, shown_tags
from app.canvas.geometry import ZOOM_STEPS
from app.canvas.view import PlanView
from app.document import Document
from app.tools.host import Ends
from app.tools.table import TOOLS
from app.window import MainWindow
from model.grid import Cell, Facing, Heading, Turn
from model.parts import Part
from model.track.shapes import Shape
from tests.app.canvas.conftest import LEFT, LEVEL, NONE, SWITCH, User, wye

SHIFT, CTRL = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.ControlModifier


def turn_wheel(view: PlanView, at: QPoint, notches: int) -> None:
    position = QPointF(at)
    event = QWheelEvent(
        position,
        QPointF(view.mapToGlobal(at)),
        QPoint(),
        QPoint(0, 120 * notches),
        Qt.MouseButton.NoButton,
        NONE,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(view, event)


def test_a_drag_lays_track_in_one_step(document: Document, view: PlanView, user: User) -> None:
    view.use("lay")
    user.drag((0, 0), (3, 0), (3, 2))
    assert document.undo_stack.count() == 1
    assert document.undo_stack.text(0) == "Lay 6 rails"
    assert document.layout.shape(Cell(3, LEVEL, 0)) is Shape.SOUTH_WEST
    document.undo_stack.undo()
    assert len(document.plan.pieces) == 0


def test_escape_in_the_middle_of_a_drag_drops_it(document: Document, view: PlanView, user: User) -> None:
    view.use("lay")
    user.press(0, 0)
    user.move(3, 0)
    user.keys(Qt.Key.Key_Escape)
    user.move(4, 0)
    user.release(4, 0)
    assert document.undo_stack.count() == 0
    assert view.tool == "lay"


def test_undo_in_the_middle_of_a_drag_takes_back_that_alone(
    document: Document, view: PlanView, user: User
) -> None:
    view.use("lay")
    user.drag((0, 0), (3, 0))
    before = document.plan
    assert len(before.pieces) == 4
    user.press(0, 2)
    user.move(3, 2)
    view.hands.take_back()
    user.release(3, 2)
    assert document.plan == before
    view.hands.take_back()
    assert not document.plan.pieces


def test_the_first_drag_of_all_is_taken_back_by_key(window: MainWindow) -> None:
    """There is no step yet, so the action is off."""
    view = window.view
    view.use("lay")
    QTest.mousePress(view, LEFT, NONE, QPoint(300, 300))
    QTest.mouseMove(view, QPoint(400, 300))
    QTest.keyClick(view, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    QTest.mouseRelease(view, LEFT, NONE, QPoint(400, 300))
    assert not window.document.plan.pieces
    QTest.mousePress(view, LEFT, NONE, QPoint(300, 300))
    QTest.mouseMove(view, QPoint(400, 300))
    QTest.mouseRelease(view, LEFT, NONE, QPoint(400, 300))
    assert window.document.plan.pieces


def test_a_drag_beyond_the_edge_takes_the_view_along(
    document: Document, view: PlanView, user: User, qtbot: QtBot
) -> None:
    """One drag lays track to where nothing was in sight; the view stands still when the drag is over."""
    view.use("lay")
    seen = view.navigator.seen
    user.press(1, 1)
    y = round(view.navigator.view.corner(1, 1)[1]) + 5
    QTest.mouseMove(view, QPoint(view.width() + 30, y))
    qtbot.waitUntil(lambda: view.cursor.x > seen.east + 10)
    QTest.mouseMove(view, QPoint(view.width() // 2, y))
    stands = view.navigator.view
    qtbot.wait(100)
    assert view.navigator.view == stands
    QTest.mouseMove(view, QPoint(view.width() + 30, y))
    QTest.mouseRelease(view, LEFT, NONE, QPoint(view.width() + 30, y))
    stands, east = view.navigator.view, view.cursor.x
    assert [piece.at for piece in document.plan.pieces] == [Cell(x, LEVEL, 1) for x in range(1, east + 1)]
    qtbot.wait(100)
    assert view.navigator.view == stands


@pytest.mark.parametrize(("x", "y"), [(-40, 200), (400, -40), (400, 2_000)])
def test_escape_beyond_an_edge_lets_the_view_stand(
    view: PlanView, user: User, qtbot: QtBot, x: int, y: int
) -> None:
    before = view.navigator.view
    user.press(1, 1)
    QTest.mouseMove(view, QPoint(x, y))
    qtbot.waitUntil(lambda: view.navigator.view != before)
    stands = view.navigator.view
    # What was at the edge comes into sight.
    assert (stands.origin_x > before.origin_x, stands.origin_y > before.origin_y) == (x < 0, y < 0)
    user.keys(Qt.Key.Key_Escape)
    stands = view.navigator.view
    qtbot.wait(100)
    assert view.navigator.view == stands


@pytest.mark.parametrize("tool", TOOLS)
@pytest.mark.parametrize("abort", ["escape", "other tool", "undo", "new plan"])
def test_a_gesture_aborted_from_outside_leaves_no_trace(
    document: Document, shown_wye: PlanView, user: User, tool: str, abort: str
) -> None:
    shown_wye.use("lay")
    user.drag((-3, -3), (-1, -3))
    after = document.plan
    shown_wye.use(tool)
    user.press(0, 0)
    user.move(0, 2)
    user.move(3, 3)
    if abort == "escape":
        user.keys(Qt.Key.Key_Escape)
    elif abort == "other tool":
        shown_wye.use("lay" if tool == "select" else "select")
    elif abort == "undo":
        document.undo_stack.undo()
        document.undo_stack.redo()
    else:
        document.load(after, None)
    user.release(3, 3)
    assert document.plan == after
    assert document.undo_stack.count() == (0 if abort == "new plan" else 1)
    assert shown_wye.name_entry.question is None


def test_cutting_in_the_middle_of_a_band_erases_what_it_keeps(
    document: Document, shown_wye: PlanView, user: User
) -> None:
    shown_wye.selection = frozenset({Cell(0, LEVEL, 4)})
    user.press(-4, -1)
    user.move(-2, 0)
    shown_wye.cut()
    user.release(-2, 0)
    document_now = clipboard.document_now()
    assert document_now is not None
    kept = {piece.at for piece in clipboard.pieces_in(document_now)}
    assert kept == {Cell(0, LEVEL, 4)}
    assert kept.isdisjoint(piece.at for piece in document.plan.pieces)


def test_the_wheel_zooms_and_keeps_the_cell_under_the_pointer(view: PlanView, user: User) -> None:
    for at in (QPoint(100, 300), QPoint(640, 77), QPoint(899, 699)):
        cell = view.navigator.view.cell_at(at.x(), at.y(), LEVEL)
        for notches in (1, -1, -2, -4, 3, 9, -20, 20, -3):
            turn_wheel(view, at, notches)
            assert view.navigator.view.scale in ZOOM_STEPS
            assert view.navigator.view.cell_at(at.x(), at.y(), LEVEL) == cell


def test_space_and_the_middle_button_move_the_plan_and_draw_nothing(
    document: Document, view: PlanView, user: User
) -> None:
    view.use("lay")
    before = view.navigator.view
    QTest.keyPress(view, Qt.Key.Key_Space)
    QTest.mousePress(view, LEFT, NONE, QPoint(300, 300))
    QTest.mouseMove(view, QPoint(340, 330))
    QTest.mouseRelease(view, LEFT, NONE, QPoint(340, 330))
    QTest.keyRelease(view, Qt.Key.Key_Space)
    assert view.navigator.view == before.panned(40, 30)
    QTest.mousePress(view, Qt.MouseButton.MiddleButton, NONE, QPoint(300, 300))
    QTest.mouseMove(view, QPoint(290, 280))
    QTest.mouseRelease(view, Qt.MouseButton.MiddleButton, NONE, QPoint(290, 280))
    assert view.navigator.view == before.panned(30, 10)
    assert document.undo_stack.count() == 0


def test_a_click_throws_a_switch_and_escape_releases_it(
    document: Document, shown_wye: PlanView, user: User
) -> None:
    shown_wye.use("throw")
    texts: list[str] = []
    shown_wye.preview_text_changed.connect(texts.append)
    user.click(0, 0)
    assert shown_wye.previews.shown.powered == {SWITCH}
    user.keys(Qt.Key.Key_Escape)
    assert shown_wye.previews.shown.powered == frozenset()
    assert texts == ["Preview: S1 powered", ""]
    assert document.undo_stack.count() == 0


def test_the_tray_part_is_placed_turned(document: Document, view: PlanView, user: User) -> None:
    view.hand = view.hand.holding(Part.REPEATER)
    view.use("place")
    user.keys(Qt.Key.Key_R, Qt.Key.Key_D)
    user.click(2, 2)
    piece = document.plan.pieces.get(Cell(2, LEVEL, 2))
    assert piece is not None
    assert (piece.part, piece.facing, piece.delay) == (Part.REPEATER, Facing.EAST, 4)


def test_a_drag_off_a_track_asks_for_the_name_in_place(
    document: Document, view: PlanView, user: User
) -> None:
    view.use("lay")
    user.drag((0, 0), (3, 0))
    view.use("arm")
    user.drag((3, 0), (4, 0))
    entry = view.name_entry
    assert entry.isVisible()
    assert entry.ends is Ends.OUT
    QTest.keyClicks(entry.line, "Tithe/Barn")
    QTest.keyClick(entry.line, Qt.Key.Key_Return)
    assert entry.problem.isVisible()
    assert document.plan.arms == ()
    entry.line.clear()
    QTest.keyClicks(entry.line, "Tithe Barn")
    entry.choose(Ends.BOTH)
    QTest.keyClick(entry.line, Qt.Key.Key_Return)
    assert not entry.isVisible()
    (arm,) = document.plan.arms
    assert arm.name == "Tithe Barn"
    assert arm.enter is not None
    assert arm.leave is not None
    assert (arm.enter.heading, arm.leave.heading) == (Heading.WEST, Heading.EAST)


def test_escape_in_the_name_makes_no_arm(document: Document, view: PlanView, user: User) -> None:
    view.use("lay")
    user.drag((0, 0), (3, 0))
    view.use("arm")
    user.drag((4, 0), (3, 0))
    QTest.keyClicks(view.name_entry.line, "Orchard")
    QTest.keyClick(view.name_entry.line, Qt.Key.Key_Escape)
    assert not view.name_entry.isVisible()
    assert document.plan.arms == ()
    assert view.hasFocus()


def test_a_click_on_a_tag_sends_a_cart_with_the_waybill(shown_wye: PlanView, user: User) -> None:
    shown_wye.use("cart")
    tag = next(t for t in _tags(shown_wye) if t.tag.arm == "Mill")
    at = tag.rect.center().toPoint()
    QTest.mouseClick(shown_wye, LEFT, SHIFT, at)
    (run,) = shown_wye.previews.shown.runs
    assert run.called
    assert run.way.arm == "Quay"
    QTest.mouseClick(shown_wye, LEFT, NONE, at)
    empty = shown_wye.previews.shown.runs[-1]
    assert not empty.called
    assert empty.way.arm == "Fen"
    assert {each.words for each in shown_wye.previews.shown.runs} == {
        "Mill → Quay, with Salt",
        "Mill → Fen, empty",
    }


def test_a_copy_is_pasted_turned_where_the_pointer_clicks(
    document: Document, shown_wye: PlanView, user: User
) -> None:
    shown_wye.selection = frozenset({Cell(1, LEVEL, 0), Cell(2, LEVEL, 0), Cell(3, LEVEL, 0)})
    shown_wye.copy()
    shown_wye.paste()
    user.move(-3, 3)
    user.keys(Qt.Key.Key_R)
    user.click(-3, 3)
    assert document.undo_stack.text(0) == "Paste 3 pieces"
    assert shown_wye.selection == {Cell(-3, LEVEL, z) for z in (2, 3, 4)}
    assert shown_wye.tool == "select"


def test_text_that_is_no_plan_is_refused_in_words(document: Document, view: PlanView, user: User) -> None:
    said: list[str] = []
    view.status.connect(said.append)
    QApplication.clipboard().setText(
        '{"format": "platelayer-plan", "version": 1, "pieces": [{"part": "rail"}]}'
    )
    view.paste()
    assert "clipboard" in said[-1]
    QApplication.clipboard().setText("good morning")
    view.paste()
    assert "Nothing to paste" in said[-1]
    assert document.undo_stack.count() == 0


def test_turning_what_is_chosen_is_one_step(document: Document, shown_wye: PlanView) -> None:
    shown_wye.select_all()
    shown_wye.turn_selection(Turn(1))
    assert document.undo_stack.count() == 1
    document.undo_stack.undo()
    assert document.plan == wye()


def test_showing_cells_switches_the_level_and_chooses_them(shown_wye: PlanView) -> None:
    far = Cell(500, 70, -300)
    levels: list[int] = []
    shown_wye.level_changed.connect(levels.append)
    shown_wye.show_cells([far])
    assert levels == [70]
    assert shown_wye.selection == {far}
    assert shown_wye.navigator.seen.holds(far.x, far.z)


def test_cells_in_sight_are_shown_without_moving_the_plan(shown_wye: PlanView) -> None:
    before = shown_wye.navigator.view
    shown_wye.show_cells([SWITCH])
    assert shown_wye.navigator.view == before


def _tags(view: PlanView) -> list[ShownTag]:
    return shown_tags(view.document.plan.arms, view.level, view.navigator.view)


def test_a_tool_gesture_ends_with_its_own_button_though_the_plan_is_moved_meanwhile(
    document: Document, view: PlanView, user: User
) -> None:
    view.use("lay")
    user.press(0, 0)
    user.move(3, 0)
    middle = user.pixel(3, 0)
    QTest.mousePress(view, Qt.MouseButton.MiddleButton, NONE, middle)
    QTest.mouseMove(view, middle + QPoint(20, 10))
    QTest.mouseRelease(view, LEFT, NONE, middle + QPoint(20, 10))
    QTest.mouseRelease(view, Qt.MouseButton.MiddleButton, NONE, middle + QPoint(20, 10))
    assert document.undo_stack.count() == 1
    assert not view.hands.tool.is_busy


def test_space_is_let_go_with_the_focus(document: Document, view: PlanView, user: User) -> None:
    view.use("lay")
    QTest.keyPress(view, Qt.Key.Key_Space)
    view.clearFocus()
    view.setFocus()
    user.drag((0, 0), (3, 0))
    assert document.undo_stack.count() == 1
