"""Showing and hiding the panels around a plan or a network, and putting them back."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, TypeAlias

from app.commands.bound import Command
from app.panels.arrangement import PanelSet, keep_arrangement, read_arrangement

if TYPE_CHECKING:
    from app.network.window import NetworkWindow
    from app.window import MainWindow

    Arranged: TypeAlias = MainWindow | NetworkWindow


def panel_commands(window: Arranged, panels: PanelSet) -> dict[str, Command]:
    """By the name of the action."""
    return {
        **{f"panel_{panel}": partial(toggle_panel, window, panel) for panel in panels.hideable},
        "reset_panels": partial(reset_panels, window),
    }


def bind_panels(window: Arranged) -> None:
    """The panels stand as they did last time; what the user does to them is remembered."""
    window.frame.arrange(read_arrangement(window.settings, window.frame.panel_set))
    window.frame.arranged.connect(lambda: _keep(window))
    for tabs in (window.side.upper_tabs, window.side.lower_tabs):
        tabs.asked_for.connect(lambda: _show_side(window))
    _show_checks(window)


def toggle_panel(window: Arranged, panel: str) -> None:
    """Hide a panel, or show it again; the focus does not stay in what is hidden."""
    focus = window.focusWidget()
    window.frame.arrange(window.frame.arrangement.toggled(panel))
    # Qt hands the focus to whatever comes next in the order of Tab.
    if focus is not None and not focus.isVisible():
        window.view.setFocus()
    _keep(window)


def reset_panels(window: Arranged) -> None:
    """Every panel as it comes: shown, and of its first size."""
    window.frame.arrange(window.frame.panel_set.first)
    _keep(window)


def _keep(window: Arranged) -> None:
    keep_arrangement(window.settings, window.frame.arrangement, window.frame.panel_set)
    _show_checks(window)


def _show_side(window: Arranged) -> None:
    """Who asks for a list by key or menu wants to see it."""
    if "side" in window.frame.arrangement.hidden:
        toggle_panel(window, "side")


def _show_checks(window: Arranged) -> None:
    for panel in window.frame.panel_set.hideable:
        window.bound[f"panel_{panel}"].setChecked(panel not in window.frame.arrangement.hidden)
