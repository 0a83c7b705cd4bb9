"""The windows that are open: each document in one of its kind, a plan or a network.

A window opened here lives until it is closed; Python would otherwise let go of it at once.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Final, TypeAlias

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QApplication

from app.commands.files import PLANS

if TYPE_CHECKING:  # each of the two windows is loaded when it is first wanted
    from app.network.window import NetworkWindow
    from app.window import MainWindow

    AnyWindow: TypeAlias = MainWindow | NetworkWindow

_held: Final[dict[int, QObject]] = {}


def plan_window(beside: AnyWindow) -> MainWindow:
    """Another window for plans, with an empty one."""
    from app.window import MainWindow

    window = MainWindow(beside.settings, beside.recovery.folder)
    _hold(window)
    return window


def network_window(beside: AnyWindow) -> NetworkWindow:
    """Another window for networks, with an empty one."""
    from app.network.window import NetworkWindow

    window = NetworkWindow(beside.settings, beside.recovery.folder)
    _hold(window)
    return window


def open_file(path: Path, beside: AnyWindow) -> None:
    """Show a file in the window that has it open, else in a new one of its kind."""
    window = _window_of(path) or (plan_window(beside) if PLANS.is_for(path) else network_window(beside))
    if window.document.path is None and not window.files.open_path(path):
        # What went wrong is told where the user asked for the file; an empty window would say nothing.
        if window.panels.message.text:
            beside.panels.message.say(window.panels.message.text)
        window.close()
        return
    window.show()
    window.raise_()
    window.activateWindow()


def rescue_all() -> None:
    """Write the recovery copies of all windows, as after a mishap."""
    for window in QApplication.topLevelWidgets():
        recovery = getattr(window, "recovery", None)
        if recovery is not None:
            recovery.write_now()


def _window_of(path: Path) -> AnyWindow | None:
    for window in QApplication.topLevelWidgets():
        opened = getattr(getattr(window, "document", None), "path", None)
        if window.isVisible() and opened is not None and opened.absolute() == path.absolute():
            return window  # type: ignore[return-value]  # only the two windows have documents
    return None


def _hold(window: AnyWindow) -> None:
    window.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    key = id(window)
    _held[key] = window
    window.destroyed.connect(lambda: _held.pop(key, None))
    window.fit_screen()
    window.show()
