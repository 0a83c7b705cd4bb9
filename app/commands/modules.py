"""The modules beside the plan view: which is in hand, and how it is set."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.tools.module import ModuleTool
from app.tools.select import SelectTool
from model.edits import EditRefused

if TYPE_CHECKING:
    from app.window import MainWindow


def bind_modules(window: MainWindow) -> None:
    """The panel shows while the tool is in use; what is chosen and set in it is in hand."""
    view, panel, tray = window.view, window.panels.modules, window.panels.tray
    tray.modules_asked.connect(lambda: _open(window))
    panel.module_chosen.connect(lambda name: _take(window, name))
    panel.list.picked.connect(lambda: view.setFocus())
    panel.settings.finished.connect(lambda: view.setFocus())
    panel.settings.refused.connect(window.panels.status.say)
    panel.parameter_set.connect(lambda name, value: _set(window, name, value))
    panel.parts_asked.connect(lambda: _close(window))
    view.module_changed.connect(lambda: panel.show_hand(view.module_hand))
    view.tool_changed.connect(lambda tool: window.frame.show_modules(tool == ModuleTool.name))


def _open(window: MainWindow) -> None:
    window.view.use(ModuleTool.name)
    window.panels.modules.list.setFocus()


def _close(window: MainWindow) -> None:
    window.view.use(SelectTool.name)
    window.panels.tray.setFocus()


def _take(window: MainWindow, name: str) -> None:
    window.view.module_hand = window.view.module_hand.holding(name)


def _set(window: MainWindow, parameter: str, value: str) -> None:
    try:
        window.view.module_hand = window.view.module_hand.setting(parameter, value)
    except EditRefused as refused:
        window.panels.status.say(str(refused))
