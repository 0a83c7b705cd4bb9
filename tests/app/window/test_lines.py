"""Lines in the window: drawn with mouse and keys, and one wired anew beside the window."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.window import MainWindow
from model.grid import Cell
from model.parts import Part
from model.pieces import Piece
from tests.app.windows import settle
from tests.model.dry_run.building import UP, Bench, E, N, S

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
LOW = 61


def pixel(window: MainWindow, x: int, z: int) -> QPoint:
    view = window.view.navigator.view
    left, top = view.corner(x, z)
    return QPoint(int(left + view.scale / 2), int(top + view.scale / 2))


def bench() -> Bench:
    """Below two tracks a lever, its repeater, and a target block with a torch; between them a detour."""
    bench = Bench()
    for z in (-2, 6):
        bench.line(-2, z, 14, E, Part.RAIL)
    bench.put("lever", 0, 0, UP, y=LOW)
    bench.put("repeater", 1, 0, E, y=LOW)
    bench.put("target-block", 8, 0, y=LOW)
    bench.put("torch", 8, 0, UP, y=LOW + 1)
    return bench


def detour(bench: Bench) -> Bench:
    bench.line(2, 0, 4, S, y=LOW)
    bench.line(3, 3, 4, E, y=LOW)
    bench.line(7, 3, 4, N, y=LOW)
    return bench


def show(window: MainWindow, qtbot: QtBot, bench: Bench) -> MainWindow:
    window.document.load(bench.plan(), None)
    settle(window)
    window.view.level = LOW
    navigator = window.view.navigator
    qtbot.waitUntil(lambda: navigator.drawn == navigator.view)
    window.activateWindow()
    window.view.setFocus()
    return window


@pytest.fixture
def empty(window: MainWindow, qtbot: QtBot) -> MainWindow:
    return show(window, qtbot, bench())


@pytest.fixture
def wired(window: MainWindow, qtbot: QtBot) -> MainWindow:
    return show(window, qtbot, detour(bench()))


def said(window: MainWindow) -> str:
    return window.panels.status.here.text()


def dust(window: MainWindow) -> list[Piece]:
    return [piece for piece in window.document.plan.pieces if piece.part is Part.DUST]


def look(window: MainWindow) -> QImage:
    return window.view.grab().toImage()


def test_a_line_drawn_with_the_mouse(empty: MainWindow, qtbot: QtBot) -> None:
    view = empty.view
    qtbot.keyClick(view, "I")
    assert view.tool == "line"
    assert said(empty).startswith("Drag to draw a line of dust")
    before = look(empty)
    QTest.mousePress(view, LEFT, NONE, pixel(empty, 2, 0))
    for x in (3, 5, 7):
        QTest.mouseMove(view, pixel(empty, x, 0))
    assert said(empty) == "6 dust, 6 blocks; strength 10 at the end."
    assert look(empty) != before
    QTest.mouseRelease(view, LEFT, NONE, pixel(empty, 7, 0))
    assert empty.document.undo_stack.undoText() == "Lay line of 6 dust"
    assert empty.document.undo_stack.count() == 1
    assert {piece.at for piece in dust(empty)} == {Cell(x, LOW, 0) for x in range(2, 8)}


def test_a_line_drawn_with_keys_alone_over_a_step(empty: MainWindow, qtbot: QtBot) -> None:
    view = empty.view
    view.put_cursor(Cell(2, LOW, 0), by_key=True)
    for key in ("I", Qt.Key.Key_Return, Qt.Key.Key_Right, Qt.Key.Key_PageDown, Qt.Key.Key_Right):
        qtbot.keyClick(view, key)
    assert view.level == LOW - 1
    assert view.hands.tool.is_busy
    qtbot.keyClick(view, Qt.Key.Key_Right)
    qtbot.keyClick(view, Qt.Key.Key_Return)
    assert [tuple(piece.at) for piece in dust(empty)] == [
        (2, LOW, 0), (3, LOW, 0), (4, LOW - 1, 0), (5, LOW - 1, 0)
    ]  # fmt: skip


def test_esc_and_undo_leave_the_plan(empty: MainWindow, qtbot: QtBot) -> None:
    view, plan = empty.view, empty.document.plan
    qtbot.keyClick(view, "I")
    QTest.mousePress(view, LEFT, NONE, pixel(empty, 2, 0))
    QTest.mouseMove(view, pixel(empty, 5, 0))
    qtbot.keyClick(view, Qt.Key.Key_Escape)
    QTest.mouseRelease(view, LEFT, NONE, pixel(empty, 5, 0))
    assert empty.document.undo_stack.count() == 0
    QTest.mousePress(view, LEFT, NONE, pixel(empty, 2, 0))
    QTest.mouseRelease(view, LEFT, NONE, pixel(empty, 5, 0))
    assert empty.document.undo_stack.count() == 1
    empty.document.undo_stack.undo()
    assert empty.document.plan == plan


def rewire(window: MainWindow, qtbot: QtBot) -> None:
    qtbot.keyClick(window.view, "J", Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)


def end(window: MainWindow) -> None:
    window.view.rewiring.search.finish()
    for _ in range(3):
        QApplication.processEvents()


@pytest.mark.parametrize("by", ["choice", "cursor"])
def test_a_line_is_wired_anew_as_one_step(wired: MainWindow, qtbot: QtBot, by: str) -> None:
    plan, view = wired.document.plan, wired.view
    if by == "choice":
        view.choose({Cell(4, LOW, 3), Cell(8, LOW, 0)})
    else:
        view.put_cursor(Cell(4, LOW, 3), by_key=True)
    rewire(wired, qtbot)
    assert said(wired).startswith("Wiring the line anew, 0 s")
    end(wired)
    assert said(wired) == "The line is wired anew: 6 dust instead of 12 dust."
    assert wired.document.undo_stack.undoText() == "Re-wire line"
    assert len(dust(wired)) == 6
    wired.document.undo_stack.undo()
    assert wired.document.plan == plan


def test_esc_stops_it(wired: MainWindow, qtbot: QtBot) -> None:
    wired.view.put_cursor(Cell(4, LOW, 3), by_key=True)
    wired.view.rewiring.start(frozenset(), wired.view.cursor)
    wired.view.hands.escape()
    assert said(wired) == "Stopped: the line stays as it is."
    end(wired)
    assert wired.document.undo_stack.count() == 0


def test_an_edit_ends_it(wired: MainWindow) -> None:
    wired.view.rewiring.start(frozenset({Cell(4, LOW, 3)}), wired.view.cursor)
    wired.view.choose({Cell(0, LOW, 0)})
    wired.view.delete()
    assert not wired.view.rewiring.search.is_running
    QApplication.processEvents()
    assert said(wired) == "The plan has changed, so the line stays as it is."
    end(wired)
    assert wired.document.undo_stack.count() == 1


def test_another_plan_ends_it_and_what_was_said_of_it(wired: MainWindow) -> None:
    wired.view.rewiring.start(frozenset({Cell(4, LOW, 3)}), wired.view.cursor)
    assert said(wired).startswith("Wiring the line anew")
    wired.document.new()
    assert not wired.view.rewiring.search.is_running
    end(wired)
    assert "anew" not in said(wired)


def test_it_says_which_line_is_meant(wired: MainWindow, qtbot: QtBot) -> None:
    wired.view.put_cursor(Cell(20, LOW, 20), by_key=True)
    rewire(wired, qtbot)
    assert said(wired) == "No line here: choose a dust or a repeater of one, or put the cursor on it."
    other = detour(bench())
    other.put("lever", 20, 1, UP, y=LOW)
    other.line(21, 1, 3, y=LOW)
    wired.document.load(other.plan(), None)
    settle(wired)
    wired.view.choose({Cell(21, LOW, 1), Cell(4, LOW, 3)})
    rewire(wired, qtbot)
    assert said(wired) == "Pieces of several lines are chosen; choose one."


def test_why_it_cannot_is_said(empty: MainWindow, qtbot: QtBot) -> None:
    lamp = bench()
    lamp.line(2, 0, 3, E, y=LOW)
    lamp.put("lamp", 5, 0, y=LOW)
    empty.document.load(lamp.plan(), None)
    settle(empty)
    empty.view.choose({Cell(3, LOW, 0)})
    rewire(empty, qtbot)
    end(empty)
    assert said(empty).startswith("The line acts on the lamp at 5 61 0;")
    assert empty.document.undo_stack.count() == 0


def test_the_drag_so_far_shows_from_the_next_level_too_but_not_alone(empty: MainWindow, qtbot: QtBot) -> None:
    view = empty.view
    view.put_cursor(Cell(3, LOW, 2), by_key=True)
    for key in ("I", Qt.Key.Key_Return, Qt.Key.Key_Right, Qt.Key.Key_Right, Qt.Key.Key_PageUp):
        qtbot.keyClick(view, key)
    begun, cell = pixel(empty, 3, 2), view.navigator.view.scale
    there = look(empty).copy(begun.x() - cell // 2, begun.y() - cell // 2, cell, cell)
    view.solo = True
    alone = look(empty).copy(begun.x() - cell // 2, begun.y() - cell // 2, cell, cell)
    assert there != alone
    qtbot.keyClick(view, Qt.Key.Key_Escape)
    assert look(empty).copy(begun.x() - cell // 2, begun.y() - cell // 2, cell, cell) == alone
