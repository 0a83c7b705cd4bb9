"""Light or dark: the theme of the whole program."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QApplication

from app import theme as themes
from app.actions import TOOLS
from app.icons import icon

ICONS: Final = {"lay": "lay-track", "cart": "test-cart"}
"""Icons that are not called as their tool is."""


def use_theme() -> None:
    """Give the program the colours of the theme in force."""
    application = QApplication.instance()
    if isinstance(application, QApplication):
        of = themes.current()
        style = themes.window_style(of)
        # Dressing every widget anew takes long; a second window in the same colours need not wait for it.
        if style != application.styleSheet():
            application.setPalette(themes.window_palette(of))
            application.setStyleSheet(style)


def show_tool_icons(actions: Mapping[str, QAction]) -> None:
    """Draw the icons of the tools in the colours of the theme in force."""
    for tool, name in TOOLS.items():
        actions[name].setIcon(icon(ICONS.get(tool, tool)))
