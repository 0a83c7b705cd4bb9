"""Light or dark: the theme of the whole program."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QApplication

from app import theme as themes
from app.actions import TOOLS
from app.icons import icon
from app.theme import Scheme

ICONS: Final = {"lay": "lay-track", "cart": "test-cart"}
"""Icons that are not called as their tool is."""


def use_theme() -> None:
    """Give the program the colours of the theme in force."""
    application = QApplication.instance()
    if isinstance(application, QApplication):
        of = themes.current()
        application.setPalette(themes.window_palette(of))
        application.setStyleSheet(themes.window_style(of))


def use_scheme(name: str) -> None:
    """Follow the system, or keep to light or dark."""
    themes.choose(Scheme(name))
    use_theme()


def show_tool_icons(actions: Mapping[str, QAction]) -> None:
    """Draw the icons of the tools in the colours of the theme in force."""
    for tool, name in TOOLS.items():
        actions[name].setIcon(icon(ICONS.get(tool, tool)))
