"""A network window as a user has it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.network.window import NetworkWindow
from app.settings import Settings

MakeWindow = Callable[[], NetworkWindow]


@pytest.fixture
def make_network(
    qapp: QApplication, qtbot: QtBot, tmp_path: Path, settings: Settings
) -> Iterator[MakeWindow]:
    """Opens windows that share settings and the folder of recovery copies."""
    opened: list[NetworkWindow] = []

    def make() -> NetworkWindow:
        window = NetworkWindow(settings, tmp_path / "recovery")
        opened.append(window)
        window.show()
        qtbot.waitExposed(window)
        return window

    yield make
    for window in opened:
        window.document.undo_stack.setClean()
        window.close()
        window.deleteLater()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    QApplication.processEvents()
    qapp.setStyleSheet("")


@pytest.fixture
def network_window(make_network: MakeWindow) -> NetworkWindow:
    """A window with an empty network."""
    return make_network()
