"""What the start screen offers, and to whom what comes first."""

from __future__ import annotations

import time
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.first_sketch.sketch import ENDED
from app.recovery import LeftOver
from app.start import StartScreen
from app.window import MainWindow, begin
from model.files.plan_file import plan_bytes
from tests.app.windows import drop, example, straight_plan


def left_over(count: int) -> list[LeftOver]:
    now = time.time()
    return [LeftOver(Path(f"{n}.plan.json"), f"Plan {n}", None, now - 60 * n) for n in range(count)]


def shown(window: MainWindow) -> list[StartScreen]:
    return [screen for screen in window.findChildren(StartScreen) if screen.isVisible()]


def test_every_start_without_a_file_shows_the_start_screen_and_no_plan(window: MainWindow) -> None:
    begin(window, None)
    assert len(shown(window)) == 1
    assert len(window.document.plan.pieces) == 0


def test_a_file_comes_before_the_start_screen(window: MainWindow) -> None:
    begin(window, str(example("fen-ring")))
    assert shown(window) == []
    assert len(window.document.plan.pieces) > 0


def test_a_file_dropped_on_the_start_screen_opens(window: MainWindow, tmp_path: Path, qtbot: QtBot) -> None:
    file = tmp_path / "dropped.plan.json"
    file.write_bytes(plan_bytes(straight_plan()))
    screen = window.show_start()
    drop(screen, [file, file])
    assert screen.isVisible(), "only one file can be opened"
    drop(screen, [file])
    qtbot.waitUntil(lambda: window.document.path == file)
    assert not screen.isVisible()


def test_the_first_sketch_is_the_dark_button_until_the_user_had_enough(window: MainWindow) -> None:
    screen = window.show_start()
    assert screen.sketch_button.property("look") == "dark"
    assert screen.new_button.property("look") != "dark"
    assert screen.focusWidget() in (None, screen.sketch_button)
    assert screen.sketch_button.y() < screen.new_button.y()
    screen.reject()
    window.settings.choose(*ENDED)
    screen = window.show_start()
    assert screen.new_button.property("look") == "dark"
    assert screen.new_button.y() < screen.sketch_button.y()
    screen.sketch_button.click()
    assert not screen.isVisible()
    assert window.first_sketch.is_on


@pytest.mark.parametrize("seconds", ["1e300", "NaN", "-1e300"])
def test_a_copy_whose_note_was_spoilt_is_offered(window: MainWindow, seconds: str) -> None:
    folder = window.recovery.folder
    (folder / "left.plan.json").write_bytes(plan_bytes(straight_plan()))
    note = f'{{"title": "Left", "original": null, "stamp": [Infinity, 1, 1], "seconds": {seconds}}}'
    (folder / "left.about.json").write_text(note)
    shown = window.show_start()
    assert [row.entry.copy.name for row in shown.left_over_rows] == ["left.plan.json"]
    note = note.replace("[Infinity, 1, 1]", "null")
    (folder / "left.about.json").write_text(note)
    shown.reject()
    assert len(window.show_start().left_over_rows) == 1


@pytest.mark.parametrize("count", [1, 5])
def test_all_that_was_left_over_is_reached_by_keys(window: MainWindow, qtbot: QtBot, count: int) -> None:
    entries = left_over(count)
    screen = StartScreen(window, [], entries, sketch_first=True)
    screen.show()
    qtbot.waitExposed(screen)
    screen.activateWindow()
    screen.sketch_button.setFocus()
    last = screen.left_over_rows[-1].take_up_button
    for _ in range(20):
        if screen.focusWidget() is last:
            break
        QTest.keyClick(screen.focusWidget() or screen, Qt.Key.Key_Tab)
    QApplication.processEvents()
    assert screen.focusWidget() is last
    assert not last.visibleRegion().isEmpty(), "it is scrolled into sight"
    assert "Plan" in last.accessibleName()
    with qtbot.waitSignal(screen.take_up_asked, timeout=2_000) as asked:
        QTest.keyClick(last, Qt.Key.Key_Space)
    assert asked.args == [entries[-1]]
    screen.deleteLater()


def test_what_is_thrown_away_goes_when_the_screen_closes_and_not_before(window: MainWindow) -> None:
    entries = left_over(3)
    screen = StartScreen(window, [], entries, sketch_first=False)
    gone: list[LeftOver] = []
    screen.thrown_away.connect(gone.append)
    screen.show()
    first, second, _ = screen.left_over_rows
    for row in (first, second):
        QTest.mouseClick(row.throw_button, Qt.MouseButton.LeftButton)
        assert not row.take_up_button.isEnabled()
        assert row.throw_button.accessibleName().startswith("Bring back Plan ")
    second.throw_button.setFocus()
    QTest.keyClick(second.throw_button, Qt.Key.Key_Space)
    assert second.take_up_button.isEnabled()
    assert second.throw_button.accessibleName() == "Throw away Plan 1, never saved"
    assert gone == []
    screen.reject()
    assert gone == [entries[0]]
    screen.deleteLater()


def test_texts_and_buttons_have_room(window: MainWindow) -> None:
    screen = StartScreen(window, [], left_over(3), sketch_first=False)
    screen.show()
    QApplication.processEvents()
    for row in screen.left_over_rows:
        for button in (row.take_up_button, row.throw_button):
            assert button.width() >= button.sizeHint().width()
    for card in screen.example_cards:
        assert card.height() == 128
    screen.deleteLater()
