"""What a screen reader hears of the plan window."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest

from app.window import MainWindow
from model.files.plan_file import read_plan
from model.grid import Cell
from tests.app.canvas.conftest import SWITCH, wye
from tests.app.windows import example, settle

K = Qt.Key
Hear = Callable[[], str]


@pytest.fixture
def hear(window: MainWindow) -> Hear:
    """What was told since the last time."""
    heard: list[str] = []
    window.speech.speaker.spoken.connect(heard.append)
    window.speech.speaker.speak()
    heard.clear()

    def listen() -> str:
        window.speech.speaker.speak()
        said = " | ".join(heard)
        heard.clear()
        return said

    return listen


def keys(window: MainWindow, *pressed: K) -> None:
    window.view.setFocus()
    for key in pressed:
        QTest.keyClick(window.view, key)


def described(window: MainWindow) -> str:
    """What assistive technology is given of the plan view."""
    found = QAccessible.queryAccessibleInterface(window.view)
    assert found.text(QAccessible.Text.Name) == "Plan view"
    return found.text(QAccessible.Text.Description)


def test_the_cell_of_the_cursor_is_told_when_a_key_moves_it(window: MainWindow, hear: Hear) -> None:
    window.document.load(wye(), None)
    settle(window)
    window.view.go_to(SWITCH._replace(z=1))
    hear()
    keys(window, K.Key_Up)
    # The words for a switch and its shapes are those of the trade in this world; no published source.
    start = "x 0, y 64, z 0: switch, rests south-east, powered south-west"
    assert hear().startswith(start)
    assert described(window).startswith(start)
    assert window.panels.status.place.text() + ": " + window.panels.status.here.text() == described(window)


def test_a_held_arrow_tells_only_where_it_came_to(window: MainWindow, hear: Hear) -> None:
    keys(window, *[K.Key_Right] * 20)
    assert hear() == "x 20, y 64, z 0: nothing here"


def test_a_mouse_that_passes_over_cells_tells_nothing(window: MainWindow, hear: Hear) -> None:
    window.view.put_cursor(Cell(3, 64, 3), by_key=False)
    assert hear() == ""
    assert described(window) == "x 3, y 64, z 3: nothing here"


def test_a_gesture_tells_what_it_will_do_and_what_it_did(window: MainWindow, hear: Hear) -> None:
    keys(window, K.Key_L)
    assert "Lay track" in hear()
    keys(window, K.Key_Return, K.Key_Right, K.Key_Right)
    assert hear() == "Lay 3 rails. x 2, y 64, z 0: nothing here"
    keys(window, K.Key_Return)
    assert "Laid 3 rails" in hear()
    window.bound["undo"].trigger()
    assert "Undid: Lay 3 rails" in hear()
    window.bound["redo"].trigger()
    assert "Did again: Lay 3 rails" in hear()


def test_a_gesture_that_is_dropped_says_so(window: MainWindow, hear: Hear) -> None:
    keys(window, K.Key_L, K.Key_Return, K.Key_Right)
    hear()
    keys(window, K.Key_Escape)
    assert hear() == "nothing made"


def test_levels_and_what_is_chosen_are_told(window: MainWindow, hear: Hear) -> None:
    window.document.load(wye(), None)
    window.view.go_to(SWITCH)
    hear()
    keys(window, K.Key_PageUp)
    assert hear().startswith("Level 65: 0 pieces. x ")
    keys(window, K.Key_PageDown)
    hear()
    window.bound["select_all"].trigger()
    assert hear() == f"{len(window.view.selection)} selected"


def test_a_check_tells_when_it_finds_something_else(window: MainWindow, hear: Hear) -> None:
    window.document.load(read_plan(example("fen-ring")), None)
    settle(window)
    assert f"Check: {window.panels.status.counts.words}" in hear()
    window.document.new()
    settle(window)
    assert "Check: no findings" in hear()
    window.document.junction_updated.emit()
    assert hear() == "", "the same counts are no news"


def test_previews_and_dry_runs_tell_that_they_begin_and_end(window: MainWindow, hear: Hear) -> None:
    window.document.load(wye(), None)
    settle(window)
    hear()
    window.view.preview_switches(frozenset({SWITCH}))
    assert hear() == "Preview: S1 powered"
    window.view.clear_preview()
    assert hear() == "The preview has ended"
    window.bound["dry_run"].trigger()
    assert "The dry run goes on" in hear()
    window.bound["run_pause"].trigger()
    assert hear().startswith("The dry run stands still at tick ")
    window.view.clear_preview()
    assert "The dry run has ended" in hear()
