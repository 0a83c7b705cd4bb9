"""A window that is closed is gone, with its plan and all that was made for it; so is what it asked."""

from __future__ import annotations

import gc
import weakref
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QDialog, QMainWindow

from app.network.window import NetworkWindow
from app.settings import Settings
from app.window import MainWindow
from model.files.plan_file import read_plan
from tests.app.network.networks import load as load_network
from tests.app.windows import example, settle


class WindowThatStays(MainWindow):
    """The control that must fail: the application holds it."""

    def __init__(self, settings: Settings, recovery: Path) -> None:
        super().__init__(settings, recovery)
        QGuiApplication.styleHints().colorSchemeChanged.connect(lambda _scheme: self.use_motion())


def plan_window(kind: type[MainWindow], settings: Settings, recovery: Path) -> MainWindow:
    """With a plan worked out, and what is only made when it is first looked at."""
    window = kind(settings, recovery)
    window.show()
    window.document.load(read_plan(example("saltern-junction")), None)
    settle(window)
    for name in ("show_timing", "dry_run", "dry_run", "in_depth"):
        window.bound[name].trigger()
        QApplication.processEvents()
    return window


def network_window(settings: Settings, recovery: Path) -> NetworkWindow:
    window = NetworkWindow(settings, recovery)
    window.show()
    load_network(window)
    return window


def stays(make: Callable[[], QMainWindow]) -> bool:
    """Whether anything is left of a window that was closed and put away."""
    window = make()
    left = weakref.ref(window)
    window.document.undo_stack.setClean()
    window.close()
    window.deleteLater()
    del window
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    QApplication.processEvents()
    gc.collect()
    return left() is not None


@pytest.fixture(autouse=True)
def _undressed(qapp: QApplication) -> Iterator[None]:
    yield
    qapp.setStyleSheet("")


@pytest.mark.parametrize(("kind", "expected"), [(MainWindow, False), (WindowThatStays, True)])
def test_a_plan_window(settings: Settings, tmp_path: Path, kind: type[MainWindow], expected: bool) -> None:
    assert stays(lambda: plan_window(kind, settings, tmp_path)) is expected


@pytest.mark.parametrize("action", ["start", "shortcuts", "find_action", "go_to"])
def test_what_was_asked_is_gone_once_it_is_answered(window: MainWindow, action: str) -> None:
    for _ in range(2):
        QTimer.singleShot(0, lambda: QApplication.activeModalWidget().close())
        window.bound[action].trigger()
        QApplication.processEvents()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert window.findChildren(QDialog) == []


def test_a_network_window(settings: Settings, tmp_path: Path) -> None:
    assert not stays(lambda: network_window(settings, tmp_path))
