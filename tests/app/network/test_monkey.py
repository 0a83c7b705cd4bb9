"""Random keys, clicks, drags and edits on the network window: no mistake, no warning, undo leads back."""

from __future__ import annotations

import random

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.network.actions import NETWORK_TOOLS
from app.network.window import NetworkWindow
from tests.app.answering import answering
from tests.app.network.networks import load, settle, small_network
from tests.harness.memory import grows_little

KEYS = (
    Qt.Key.Key_Left,
    Qt.Key.Key_Right,
    Qt.Key.Key_Up,
    Qt.Key.Key_Down,
    Qt.Key.Key_Return,
    Qt.Key.Key_Escape,
    Qt.Key.Key_Delete,
)
QUIET_ACTIONS = (
    *NETWORK_TOOLS.values(),
    "undo",
    "redo",
    "delete",
    "select_all",
    "remove_trip",
    "place_anew",
    "put_out",
    "pin_names",
    "zoom_in",
    "zoom_out",
    "zoom_100",
    "fit_all",
    "fit_selection",
    "show_trips",
    "show_readers",
    "show_stations",
    "show_findings",
    "show_plan",
)


def monkey(window: NetworkWindow, events: int, seed: int) -> None:
    """So many events; whatever is asked is accepted or dropped at once."""
    chance = random.Random(seed)
    view = window.view
    with answering():
        for _ in range(events):
            at = QPoint(chance.randrange(view.width()), chance.randrange(view.height()))
            if chance.random() < 0.6 and view.document.picture.spots:
                x, y = chance.choice(list(view.document.picture.spots.values()))
                at = view.pixel_of((x, y)).toPoint()
            act = chance.randrange(7)
            if act == 0:
                QTest.mouseClick(view, Qt.MouseButton.LeftButton, pos=at)
            elif act == 1:
                QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=at)
            elif act == 2:
                QTest.mouseMove(view, at)
            elif act == 3:
                QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=at)
            elif act == 4:
                QTest.keyClick(view, chance.choice(KEYS))
            elif act == 5:
                wheel(view, at, chance.choice((-120, 120)))
            else:
                window.bound[chance.choice(QUIET_ACTIONS)].trigger()
            if chance.random() < 0.1 and window.document.network.trips:
                window.panels.trips.choose(chance.randrange(len(window.document.network.trips)))


def wheel(view: object, at: QPoint, turned: int) -> None:
    """A notch of the wheel."""
    event = QWheelEvent(
        QPointF(at),
        QPointF(at),
        QPoint(),
        QPoint(0, turned),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(view, event)  # type: ignore[arg-type]


def run(window: NetworkWindow, events: int, seed: int) -> None:
    """Everything can be taken back, and done again to the same."""
    load(window)
    monkey(window, events, seed)
    window.view.hands.interrupt()
    settle(window)
    end = window.document.network
    stack = window.document.undo_stack
    steps = stack.index()
    while stack.canUndo():
        stack.undo()
    assert window.document.network == small_network()
    while stack.index() < steps:
        stack.redo()
    assert window.document.network == end


@pytest.mark.timeout(300)
@pytest.mark.parametrize("seed", range(2))
def test_random_events(network_window: NetworkWindow, seed: int) -> None:
    run(network_window, 1_000, seed)


@pytest.mark.slow
@pytest.mark.timeout(3_600)
@pytest.mark.parametrize("seed", range(7, 12))
def test_many_random_events(network_window: NetworkWindow, seed: int) -> None:
    run(network_window, 10_000, seed)


@pytest.mark.slow
@pytest.mark.timeout(3_600)
def test_random_events_leave_little_behind(network_window: NetworkWindow) -> None:
    def act(events: int) -> None:
        for number in range(events // 500):
            load(network_window)
            monkey(network_window, 500, number)
            network_window.view.hands.interrupt()
        load(network_window)
        network_window.bound["fit_all"].trigger()
        QApplication.processEvents()
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)

    grows_little(act, 3_000, 10_000)
