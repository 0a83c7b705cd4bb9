"""The start screen by its keys."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.window import MainWindow


@pytest.mark.parametrize(("key", "signal"), [(Qt.Key.Key_N, "new_asked"), (Qt.Key.Key_O, "open_asked")])
def test_the_keys_on_the_buttons_work(window: MainWindow, qtbot: QtBot, key: Qt.Key, signal: str) -> None:
    screen = window.show_start()
    # What the window would do then asks for files; here only the screen matters.
    screen.new_asked.disconnect()
    screen.open_asked.disconnect()
    qtbot.waitExposed(screen)
    screen.activateWindow()
    QApplication.processEvents()
    with qtbot.waitSignal(getattr(screen, signal), timeout=2000):
        QTest.keyClick(screen, key, Qt.KeyboardModifier.ControlModifier)
    assert not screen.isVisible()
