"""A dry run in the window: begun, worked and ended with mouse and keys; the plan stays as it is."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

import pytest
from PySide6.QtCore import QEvent, QObject, QPoint, QRect, Qt
from PySide6.QtGui import QHelpEvent, QImage, QPaintEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QToolTip
from pytestqt.qtbot import QtBot

from app.dry_run import DryRunner
from app.window import MainWindow
from model.edits import erase
from model.grid import Cell, Heading
from model.plan import Plan
from model.track.shapes import Shape
from tests.app.circuits import (
    JUNCTION,
    LAMP,
    LEVER,
    THROW,
    at,
    blinker,
    dust_line,
    line_with_switch,
    two_hoppers,
)
from tests.app.windows import settle, straight_plan

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
SIZES = [(1440, 900), (1024, 640)]
Begin = Callable[[Plan], DryRunner]


@pytest.fixture
def begin(window: MainWindow, qtbot: QtBot) -> Begin:
    """Opens a plan and begins a dry run by its key; paused, so that the test does the ticks."""

    def begin(plan: Plan) -> DryRunner:
        window.document.load(plan, None)
        settle(window)
        navigator = window.view.navigator
        qtbot.waitUntil(lambda: navigator.drawn == navigator.view)
        window.activateWindow()
        window.view.setFocus()
        QTest.keyClick(window.view, Qt.Key.Key_F5)
        runner = window.view.dry_run.runner
        assert runner.is_running
        QTest.keyClick(window.view, Qt.Key.Key_F6)
        assert not runner.is_running
        runner.rewind()
        return runner

    return begin


def pixel(window: MainWindow, cell: Cell, fx: float = 0.5, fz: float = 0.5) -> QPoint:
    view = window.view.navigator.view
    left, top = view.corner(cell.x, cell.z)
    return QPoint(int(left + fx * view.scale), int(top + fz * view.scale))


def click(window: MainWindow, cell: Cell) -> None:
    QTest.mouseClick(window.view, LEFT, NONE, pixel(window, cell))


def drag(window: MainWindow, start: Cell, end: Cell) -> None:
    QTest.mousePress(window.view, LEFT, NONE, pixel(window, start))
    QTest.mouseMove(window.view, pixel(window, end))
    QTest.mouseRelease(window.view, LEFT, NONE, pixel(window, end))


def steps(runner: DryRunner, count: int) -> None:
    for _ in range(count):
        runner.step()


def strength(window: MainWindow, cell: Cell) -> int | None:
    live = window.view.scene.live
    assert live is not None
    return live.looks[cell].strength


def said(window: MainWindow) -> str:
    return window.panels.status.here.text()


def log(window: MainWindow) -> list[str]:
    return window.view.run_bar.model.stringList()


def test_it_is_begun_and_ended_by_key_and_touches_neither_plan_nor_undo(
    window: MainWindow, begin: Begin
) -> None:
    plan = dust_line()
    runner = begin(plan)
    bar = window.view.run_bar
    assert bar.isVisible()
    assert bar.text.text() == "Dry run, tick 0 (0.00 s)"
    click(window, LEVER)
    steps(runner, 3)
    assert bar.text.text() == "Dry run, tick 3 (0.15 s)"
    QTest.keyClick(window.view, Qt.Key.Key_Escape)
    assert not runner.is_on
    assert not bar.isVisible()
    assert window.view.scene.live is None
    assert window.document.plan is plan
    assert window.document.undo_stack.count() == 0


def test_a_click_works_a_lever_and_chooses_nothing(window: MainWindow, begin: Begin) -> None:
    runner = begin(dust_line())
    click(window, LEVER)
    assert window.view.selection == frozenset()
    assert "next tick" in said(window)
    assert strength(window, at(1, 0)) == 0
    runner.step()
    assert strength(window, at(1, 0)) == 15
    click(window, LEVER)
    click(window, LEVER)
    click(window, LEVER)
    runner.step()
    assert strength(window, at(1, 0)) == 0
    click(window, LAMP)
    assert window.view.selection == {LAMP}


def test_a_drag_from_a_lever_neither_works_nor_moves_it(window: MainWindow, begin: Begin) -> None:
    runner = begin(dust_line())
    drag(window, LEVER, at(4, 0))
    assert runner.pending == ()
    assert runner.is_on
    assert window.view.selection == frozenset()
    assert window.document.undo_stack.count() == 0


def test_throw_works_levers_and_says_that_signals_throw_switches(window: MainWindow, begin: Begin) -> None:
    runner = begin(line_with_switch())
    QTest.keyClick(window.view, Qt.Key.Key_T)
    click(window, JUNCTION)
    assert "signals throw the switches" in said(window)
    assert runner.is_on
    click(window, THROW)
    runner.step()
    live = window.view.scene.live
    assert live is not None
    assert live.looks[JUNCTION].shape is Shape.SOUTH_WEST


def test_keys_alone_are_enough(window: MainWindow, begin: Begin) -> None:
    runner = begin(dust_line())
    view = window.view
    view.put_cursor(at(1, 0), by_key=True)
    QTest.keyClick(view, Qt.Key.Key_Left)
    QTest.keyClick(view, Qt.Key.Key_Return)
    QTest.keyClick(view, Qt.Key.Key_F7)
    assert (runner.tick, strength(window, at(1, 0))) == (1, 15)
    assert runner.speed == 1.0
    QTest.keyClick(view, Qt.Key.Key_Period)
    assert runner.speed == 2.0
    QTest.keyClick(view, Qt.Key.Key_Comma)
    QTest.keyClick(view, Qt.Key.Key_Comma)
    QTest.keyClick(view, Qt.Key.Key_Comma)
    assert runner.speed == 0.25
    assert view.run_bar.speed.currentText() == "×¼"
    QTest.keyClick(view, Qt.Key.Key_F5, Qt.KeyboardModifier.ControlModifier)
    assert runner.is_running
    runner.pause()
    while runner.tick < 1:
        runner.step()
    assert strength(window, at(1, 0)) == 15
    QTest.keyClick(view, Qt.Key.Key_F5, Qt.KeyboardModifier.ShiftModifier)
    assert (runner.tick, strength(window, at(1, 0))) == (0, 0)


def test_the_buttons_of_the_chip_do_what_they_say(window: MainWindow, begin: Begin) -> None:
    runner = begin(dust_line())
    bar = window.view.run_bar
    assert bar.go.text() == "Run"
    QTest.mouseClick(bar.tick, LEFT)
    assert runner.tick == 1
    QTest.mouseClick(bar.go, LEFT)
    assert runner.is_running
    assert bar.go.text() == "Pause"
    QTest.mouseClick(bar.go, LEFT)
    assert not runner.is_running
    QTest.mouseClick(bar.back, LEFT)
    assert runner.tick == 0
    QTest.mouseClick(bar.repeat, LEFT)
    assert runner.is_running
    assert window.view.hasFocus()


def test_only_a_run_that_is_on_can_be_moved(window: MainWindow, begin: Begin) -> None:
    names = ("run_pause", "run_tick", "run_slower", "run_faster", "run_back", "run_repeat")
    assert not any(window.bound[name].isEnabled() for name in names)
    begin(dust_line())
    assert all(window.bound[name].isEnabled() for name in names)


def test_an_empty_plan_has_nothing_to_run(window: MainWindow) -> None:
    window.bound["dry_run"].trigger()
    assert not window.view.dry_run.is_on
    assert "the plan is empty" in said(window)


def test_an_edit_ends_it_and_says_so(window: MainWindow, begin: Begin, qtbot: QtBot) -> None:
    runner = begin(dust_line())
    click(window, LEVER)
    runner.step()
    window.document.apply(erase(window.document.plan, frozenset({LAMP})))
    assert not runner.is_on
    qtbot.waitUntil(lambda: "the dry run has ended" in said(window))
    assert window.document.undo_stack.count() == 1
    window.document.undo_stack.undo()
    assert LAMP in window.document.plan.pieces


def test_another_plan_ends_it(window: MainWindow, begin: Begin) -> None:
    runner = begin(dust_line())
    window.document.load(straight_plan(), None)
    assert not runner.is_on
    assert window.view.scene.live is None


def test_a_preview_ends_it_and_it_ends_a_preview(window: MainWindow, begin: Begin) -> None:
    runner = begin(line_with_switch())
    window.view.preview_switches(frozenset({JUNCTION}))
    assert not runner.is_on
    assert window.view.previews.is_on
    window.bound["dry_run"].trigger()
    assert runner.is_on
    assert not window.view.previews.is_on


def test_a_train_comes_in_by_an_arm_throws_nothing_and_leaves(window: MainWindow, begin: Begin) -> None:
    runner = begin(line_with_switch())
    view, bar = window.view, window.view.run_bar
    assert not bar.train.isVisible()
    QTest.keyClick(view, Qt.Key.Key_C)
    assert bar.train.isVisible()
    bar.train.carts.setValue(3)
    bar.train.gap.setValue(2)
    assert view.dry_run.train.carts == 3
    click(window, at(2, -1))
    QTest.keyClick(view, Qt.Key.Key_S)
    click(window, at(2, -1))
    click(window, THROW)
    QTest.keyClick(view, Qt.Key.Key_C)
    QTest.keyClick(view, Qt.Key.Key_W)
    assert bar.train.waybill.currentText() == "waybill of the arm"
    drag(window, at(-2, 0), at(-1, 0))
    steps(runner, 30)
    carts = view.dry_run.carts
    assert len(carts) == 3
    assert all(cart.loaded for cart in carts)
    cells = [cart.cell.x for cart in carts]
    assert [a - b for a, b in pairwise(cells)] == [3, 3]
    steps(runner, 40)
    assert [line.split(": ")[1] for line in log(window)] == [
        f"Cart {number} leaves by Mill with 1 Waybill" for number in (1, 2, 3)
    ]
    assert "Cart 3 leaves by Mill" in said(window)


def test_a_train_may_start_anywhere_on_the_track(window: MainWindow, begin: Begin) -> None:
    runner = begin(line_with_switch())
    window.view.use("cart")
    window.view.run_bar.train.carts.setValue(2)
    drag(window, at(10, 0), at(12, 0))
    steps(runner, 9)
    assert [cart.cell for cart in window.view.dry_run.carts] == [at(13, 0), at(11, 0)]


def test_collisions_and_lost_carts_are_told_and_shown(window: MainWindow, begin: Begin) -> None:
    runner = begin(line_with_switch())
    window.view.use("cart")
    drag(window, at(10, 0), at(11, 0))
    drag(window, at(14, 0), at(13, 0))
    drag(window, at(1, 0), at(0, 0))
    steps(runner, 12)
    lines = log(window)
    assert sum("collided at" in line for line in lines) == 2
    assert sum("left the track at −2 64 0" in line for line in lines) == 1
    index = window.view.run_bar.model.index(len(lines) - 1)
    QTest.mouseClick(
        window.view.run_bar.log.viewport(), LEFT, NONE, window.view.run_bar.log.visualRect(index).center()
    )
    assert len(window.view.selection) == 1


def test_a_long_line_of_the_log_is_read_in_its_tip_and_below(window: MainWindow, begin: Begin) -> None:
    runner = begin(dust_line())
    click(window, LEVER)
    steps(runner, 1)
    shown = window.view.run_bar.log
    (line,) = log(window)
    assert shown.fontMetrics().horizontalAdvance(line) > shown.viewport().width()
    assert not shown.horizontalScrollBar().isVisible()
    place = shown.visualRect(window.view.run_bar.model.index(0)).center()
    asked = QHelpEvent(QEvent.Type.ToolTip, place, shown.viewport().mapToGlobal(place))
    QApplication.sendEvent(shown.viewport(), asked)
    assert QToolTip.text() == line
    QToolTip.hideText()
    assert said(window) == f"{line}."
    assert not line.endswith(".")


def test_return_in_the_chip_sends_nothing_and_goes_back_to_the_plan(window: MainWindow, begin: Begin) -> None:
    runner = begin(line_with_switch())
    view, bar = window.view, window.view.run_bar
    view.use("cart")
    view.put_cursor(at(5, 0), by_key=True)
    bar.train.carts.setFocus()
    QTest.keyClicks(bar.train.carts, "4")
    QTest.keyClick(bar.train.carts, Qt.Key.Key_Return)
    assert view.dry_run.train.carts in (4, 14, 41)
    assert not view.hands.tool.is_busy
    assert runner.pending == ()
    assert view.hasFocus()
    bar.train.carts.setFocus()
    QTest.keyClick(bar.train.carts, Qt.Key.Key_Escape)
    assert not runner.is_on


def test_the_menu_sends_carts_into_the_run(window: MainWindow, begin: Begin) -> None:
    runner = begin(line_with_switch())
    window.view.run_cart("Quay", False)
    steps(runner, 4)
    assert runner.is_on
    assert [cart.cell for cart in window.view.dry_run.carts] == [at(-1, 0)]


def test_the_status_bar_says_what_the_view_shows(window: MainWindow, begin: Begin) -> None:
    runner = begin(dust_line())
    view = window.view
    view.dry_run.work(LEVER)
    runner.step()
    view.status.emit("")
    words = {}
    for cell in (LEVER, at(3, 0), LAMP):
        view.put_cursor(cell, by_key=True)
        words[cell] = said(window)
    assert words == {LEVER: "lever, on", at(3, 0): "signal dust, strength 13", LAMP: "lamp, out"}
    view.level = 63
    view.put_cursor(Cell(3, 63, 0), by_key=True)
    assert said(window) == "solid block, weakly powered, 13"


def test_what_is_not_sure_is_told(window: MainWindow, begin: Begin) -> None:
    runner = begin(two_hoppers())
    runner.step()
    assert log(window) == ["Tick 0: Unsure: 0 64 0 or 1 64 0 may come first"]
    window.view.put_cursor(at(0, 0), by_key=True)
    window.view.status.emit("")
    assert said(window).endswith(", unsure")


def test_what_is_not_sure_is_told_once(window: MainWindow, begin: Begin) -> None:
    runner = begin(two_hoppers())
    engine = runner.engine
    assert engine is not None
    runner.step()
    engine.unsure += engine.unsure
    runner.step()
    assert len(log(window)) == 1


def test_what_changes_too_often_is_explained(window: MainWindow, begin: Begin, qtbot: QtBot) -> None:
    runner = begin(blinker(delay=8))
    note = window.view.run_bar.note
    assert not note.isVisible()
    steps(runner, 100)
    assert note.isVisible()
    qtbot.waitUntil(lambda: not note.isVisible(), timeout=3_000)


class Painted(QObject):
    """Notes which parts of a widget are painted."""

    def __init__(self) -> None:
        super().__init__()
        self.rects: list[QRect] = []

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if isinstance(event, QPaintEvent):
            self.rects.append(event.region().boundingRect())
        return False


def test_only_what_changed_is_painted(window: MainWindow, begin: Begin, qtbot: QtBot) -> None:
    runner = begin(line_with_switch())
    runner.step()
    painted = Painted()
    view = window.view
    view.installEventFilter(painted)
    view.update()
    qtbot.waitUntil(lambda: bool(painted.rects))
    while painted.rects:
        # What the window still paints of itself, because a plan was opened, comes to its end.
        painted.rects.clear()
        qtbot.wait(250)
    view.dry_run.work(THROW)
    runner.step()
    QApplication.processEvents()
    near = QRect(pixel(window, at(8, -2), 0, 0), pixel(window, at(11, 2), 0, 0)).united(
        view.run_bar.geometry()
    )
    assert painted.rects
    assert [rect for rect in painted.rects if not near.contains(rect)] == []


def pictures(window: MainWindow) -> tuple[QImage, QImage]:
    """The window as its parts have been painted one after the other, and painted anew."""
    on_screen = window.screen().grabWindow(window.winId()).toImage()
    return on_screen, window.grab().toImage()


def differs_while_it_runs(window: MainWindow, runner: DryRunner) -> bool:
    """Whether anything on the screen is ever not as it would be painted anew."""
    view = window.view
    for cell in (THROW, at(2, -1)):
        view.dry_run.work(cell)
    for start in (-2, 0, 4):
        view.dry_run.drop(at(start, 0), Heading.EAST, start == 0)
    for number in range(120):
        runner.advance(11)
        for _ in range(3):
            QApplication.processEvents()
        if number % 8 == 0:
            on_screen, anew = pictures(window)
            if on_screen != anew:
                return True
    return False


def test_what_is_painted_bit_by_bit_is_what_would_be_painted_anew(window: MainWindow, begin: Begin) -> None:
    runner = begin(line_with_switch())
    settle(window)
    assert not differs_while_it_runs(window, runner)


def test_control_without_the_bits_the_pictures_differ(window: MainWindow, begin: Begin) -> None:
    runner = begin(line_with_switch())
    settle(window)
    window.view.dry_run.repaint.disconnect()
    assert differs_while_it_runs(window, runner)


def test_other_levels_show_rails_as_they_lie(window: MainWindow, begin: Begin) -> None:
    runner = begin(line_with_switch())
    window.view.level = 65
    piece = window.document.plan.pieces.get(JUNCTION)
    assert piece is not None
    looks = window.view.scene.looks
    assert looks.bare(piece).shape is Shape.SOUTH_EAST
    window.view.dry_run.work(THROW)
    runner.step()
    assert looks.bare(piece).shape is Shape.SOUTH_WEST
    runner.stop()
    assert looks.bare(piece).shape is window.document.layout.shape(JUNCTION)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("theme", ["light", "dark"])
def test_the_chip_keeps_inside_and_clear_of_the_north_arrow(
    window: MainWindow, begin: Begin, size: tuple[int, int], theme: str
) -> None:
    window.resize(*size)
    window.use_scheme(theme)
    QApplication.processEvents()
    runner = begin(line_with_switch())
    view, bar = window.view, window.view.run_bar
    view.use("cart")
    for _ in range(5):
        view.dry_run.drop(at(5, 0), Heading.EAST, False)
        view.dry_run.drop(at(5, 0), Heading.EAST, False)
        runner.step()
    QApplication.processEvents()
    assert len(log(window)) == 10
    assert bar.geometry().right() < view.width() - 50
    assert view.rect().contains(bar.geometry())
    for widget in (bar.go, bar.tick, bar.speed, bar.back, bar.repeat, bar.train.waybill, bar.log):
        assert bar.rect().contains(QRect(widget.mapTo(bar, QPoint(0, 0)), widget.size()))
        assert widget.width() >= min(widget.minimumSizeHint().width(), 60)
        assert widget.accessibleName()
