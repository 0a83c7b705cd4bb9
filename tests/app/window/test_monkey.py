"""Random keys, clicks, drags, commands and sizes: no exception, no complaint of Qt, nothing lost.

pytest-qt fails the test for an exception in a slot and for a warning of Qt.
"""

from __future__ import annotations

import gc
import random

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.window import MainWindow
from model.files.plan_file import parse_plan, plan_bytes, read_plan
from tests.app.answering import answering
from tests.app.windows import example, settle
from tests.harness.memory import grows_little

COMMANDS = (
    "undo", "redo", "cut", "copy", "paste", "delete", "select_all", "turn_chosen", "mirror_chosen",
    "turn_plan", "turn_plan_back", "mirror_plan", "side_left", "side_right", "side_none",
    "level_up", "level_down", "solo", "clear_preview", "order_from_survey", "clear_survey",
    "dry_run", "dry_run", "run_pause", "run_tick", "run_slower", "run_faster", "run_back", "run_repeat",
    "zoom_in", "zoom_out", "zoom_100", "fit_all", "fit_selection",
    "show_findings", "show_materials", "show_switches", "show_routes", "show_readers", "show_plan",
)  # fmt: skip
"""All that opens no question."""
KEYS = [Qt.Key(getattr(Qt.Key, f"Key_{letter}")) for letter in "SLPAETCVRDMWO"] + [
    Qt.Key.Key_Return, Qt.Key.Key_Escape, Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down,
    Qt.Key.Key_PageUp, Qt.Key.Key_PageDown, Qt.Key.Key_Space, Qt.Key.Key_Delete, Qt.Key.Key_Tab,
]  # fmt: skip
BUTTONS = (Qt.MouseButton.LeftButton, Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton)


class Monkey:
    """Does one random thing after another to a window."""

    def __init__(self, window: MainWindow, seed: int) -> None:
        self._window = window
        self._random = random.Random(seed)

    def act(self) -> None:
        """One event."""
        doing = self._random.choices(
            (self._drag, self._key, self._command, self._click_row, self._wheel, self._resize, self._tile),
            (8, 8, 5, 3, 2, 1, 1),
        )[0]
        doing()

    def _point(self) -> QPoint:
        view = self._window.view
        return QPoint(self._random.randrange(view.width()), self._random.randrange(view.height()))

    def _drag(self) -> None:
        view, button = self._window.view, self._random.choice(BUTTONS)
        QTest.mousePress(view, button, pos=self._point())
        for _ in range(self._random.randrange(4)):
            QTest.mouseMove(view, self._point())
        QTest.mouseRelease(view, button, pos=self._point())

    def _key(self) -> None:
        focus = self._window.focusWidget() or self._window.view
        QTest.keyClick(focus, self._random.choice(KEYS))

    def _command(self) -> None:
        self._window.bound[self._random.choice(COMMANDS)].trigger()

    def _click_row(self) -> None:
        panels = self._window.panels
        lists = (panels.findings.list, panels.switches.table, panels.readers.list, panels.tray)
        table = self._random.choice(lists)
        if table.isVisible():
            height = max(1, table.viewport().height())
            place = QPoint(30, self._random.randrange(height))
            QTest.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)

    def _wheel(self) -> None:
        view, place = self._window.view, QPointF(self._point())
        turn = QPoint(0, self._random.choice((-120, 120)))
        event = QWheelEvent(
            place, QPointF(view.mapToGlobal(place.toPoint())), QPoint(), turn,
            Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
        )  # fmt: skip
        QApplication.sendEvent(view, event)

    def _resize(self) -> None:
        self._window.resize(self._random.randrange(1024, 1500), self._random.randrange(640, 950))

    def _tile(self) -> None:
        tile = self._random.choice(self._window.panels.orientations.tiles)
        if tile.isVisible():
            QTest.mouseClick(tile, Qt.MouseButton.LeftButton)


def act_often(window: MainWindow, monkey: Monkey, events: int) -> None:
    """So many events, with time for the window in between; whatever is asked is answered at random."""
    with answering():
        for number in range(events):
            monkey.act()
            if number % 10 == 0:
                QApplication.processEvents()
    settle(window)


def run(window: MainWindow, seed: int, events: int) -> None:
    """Let the monkey at the ring; then undo and redo must lead there and back, and the plan be savable."""
    start = read_plan(example("fen-ring"))
    window.document.load(start, None)
    act_often(window, Monkey(window, seed), events)
    end, stack = window.document.plan, window.document.undo_stack
    index = stack.index()
    assert stack.count() > 0, "the monkey changed nothing at all"
    stack.setIndex(0)
    assert window.document.plan == start
    stack.setIndex(stack.count())
    stack.setIndex(index)
    assert window.document.plan == end
    written = plan_bytes(end)
    assert plan_bytes(parse_plan(written, "monkey")) == written
    # A monkey never rests, so no window has looked for all garbage: a hundred MB of each would gather.
    gc.collect()


@pytest.mark.timeout(300)
@pytest.mark.parametrize("seed", range(2))
def test_a_monkey_breaks_nothing(window: MainWindow, seed: int) -> None:
    run(window, seed, 500)


@pytest.mark.slow
@pytest.mark.timeout(3_600)
def test_a_monkey_leaves_little_behind(window: MainWindow) -> None:
    """The undo stack keeps what is done, by intent; it is emptied now and then, as by opening a file."""
    start = read_plan(example("fen-ring"))
    monkey = Monkey(window, 7)

    def act(events: int) -> None:
        for _ in range(events // 500):
            window.document.load(start, None)
            act_often(window, monkey, 500)
        window.document.load(start, None)
        come_to_rest(window)

    grows_little(act, 3_000, 10_000)


def come_to_rest(window: MainWindow) -> None:
    """What is used then hangs neither on what was copied last nor on what is in sight."""
    window.resize(1_300, 800)
    window.bound["clear_preview"].trigger()
    window.view.use("select")
    window.bound["fit_all"].trigger()
    QApplication.clipboard().clear()
    settle(window)
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


def test_a_mistake_in_a_slot_is_seen(window: MainWindow, qtbot: QtBot) -> None:
    """The control that must fail: an action that raises, among those that the monkey triggers."""

    def blunder() -> None:
        raise RuntimeError("planted")

    window.bound["solo"].triggered.connect(blunder)
    window.document.load(read_plan(example("fen-ring")), None)
    with qtbot.captureExceptions() as caught:
        act_often(window, Monkey(window, 1), 200)
    assert {kind for kind, *_ in caught} == {RuntimeError}


@pytest.mark.slow
@pytest.mark.timeout(3_600)
@pytest.mark.parametrize("seed", range(100, 150))
def test_a_patient_monkey_breaks_nothing(window: MainWindow, seed: int) -> None:
    run(window, seed, 1_000)
