"""A window as a user has it, with settings and recovery copies of its own."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QEvent, QSettings
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.settings import Settings

if TYPE_CHECKING:
    from app.window import MainWindow
    from tests.app.by_keys import Watcher

MakeWindow = Callable[[], "MainWindow"]


@pytest.fixture(autouse=True)
def one_kind_of_application() -> Iterator[None]:
    """One application a process: where the command line made its own, the next window would abort."""
    yield
    application = QApplication.instance()
    assert application is None or isinstance(application, QApplication), "the test needs the fixture qapp"


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    """Settings that nobody else sees."""
    return Settings(QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat))


@pytest.fixture
def make_window(qapp: QApplication, qtbot: QtBot, tmp_path: Path, settings: Settings) -> Iterator[MakeWindow]:
    """Opens windows that share settings and the folder of recovery copies, one after another."""
    from app.window import MainWindow

    opened: list[MainWindow] = []

    def make() -> MainWindow:
        window = MainWindow(settings, tmp_path / "recovery")
        opened.append(window)
        window.show()
        qtbot.waitExposed(window)
        return window

    yield make
    for window in opened:
        # Whatever is typed or changed by now would make the window ask, and nobody would answer.
        window.panels.routes.table.finish_edit()
        window.document.undo_stack.setClean()
        window.close()
        window.deleteLater()
    # A window that is only marked for deletion would be dressed anew with each window after it.
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    QApplication.processEvents()
    # The next test finds the application undressed, as it was.
    qapp.setStyleSheet("")


@pytest.fixture
def window(make_window: MakeWindow) -> MainWindow:
    """A window with an empty plan."""
    return make_window()


@pytest.fixture
def no_mouse(qapp: QApplication) -> Iterator[Watcher]:
    """Notes every event of a mouse, from the first key to the last."""
    from tests.app.by_keys import Watcher

    watcher = Watcher(qapp)
    qapp.installEventFilter(watcher)
    yield watcher
    qapp.removeEventFilter(watcher)
