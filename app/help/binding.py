"""What a window has to do with the help: who asks for it, and what everything tells of itself."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QTabWidget, QWidget

from app.help.rules import network_key, rule_key
from app.help.showing import show_help
from app.help.whats_this import (
    MAP,
    MENUS,
    NETWORK_PANELS,
    PANELS,
    TABS,
    VIEW,
    tell_of_actions,
    tell_of_buttons,
    tell_of_panels,
    tell_of_parts,
)
from app.shown_keys import follow_keys
from app.translation import tr

if TYPE_CHECKING:
    from app.network.window import NetworkWindow
    from app.window import MainWindow


def bind_help(window: MainWindow) -> None:
    """Findings lead to their rule; all that stands in the window says what it is."""
    window.panels.findings.help_asked.connect(lambda rule: show_help(window, rule_key(rule)))
    tell_of_panels(window.panels, PANELS)
    tell_of_parts(window.panels.tray)
    window.view.setWhatsThis(tr(VIEW))
    _tell_of_frame(window)
    follow_keys(window, lambda: _tell_of_keys(window))


def bind_network_help(window: NetworkWindow) -> None:
    """The same in the window of a network."""
    window.panels.findings.help_asked.connect(lambda rule: show_help(window, network_key(rule)))
    tell_of_panels(window.panels, NETWORK_PANELS)
    window.view.setWhatsThis(tr(MAP))
    _tell_of_frame(window)
    follow_keys(window, lambda: _tell_of_keys(window))


def _tell_of_keys(window: MainWindow | NetworkWindow) -> None:
    """What says keys: it is said anew when they change."""
    tell_of_actions(window.bound, window.table)
    tell_of_buttons(window, window.bound)


def _tell_of_frame(window: MainWindow | NetworkWindow) -> None:
    menus: QWidget = window.menu_row
    menus.setWhatsThis(tr(MENUS))
    for tabs in window.side.findChildren(QTabWidget):
        tabs.setWhatsThis(tr(TABS))
