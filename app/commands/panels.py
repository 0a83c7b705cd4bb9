"""Showing and hiding the panels around the plan view, and putting them back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.panels.arrangement import HIDEABLE, Arrangement, keep_arrangement, read_arrangement

if TYPE_CHECKING:
    from app.window import MainWindow


def bind_panels(window: MainWindow) -> None:
    """The panels stand as they did last time; what the user does to them is remembered."""
    window.frame.arrange(read_arrangement(window.settings))
    window.frame.arranged.connect(lambda: _keep(window))
    for tabs in (window.side.upper_tabs, window.side.lower_tabs):
        tabs.asked_for.connect(lambda: _show_side(window))
    _show_checks(window)


def toggle_panel(window: MainWindow, panel: str) -> None:
    """Hide a panel, or show it again; the focus does not stay in what is hidden."""
    focus = window.focusWidget()
    window.frame.arrange(window.frame.arrangement.toggled(panel))
    # Qt hands the focus to whatever comes next in the order of Tab.
    if focus is not None and not focus.isVisible():
        window.view.setFocus()
    _keep(window)


def reset_panels(window: MainWindow) -> None:
    """Every panel as it comes: shown, and of its first size."""
    window.frame.arrange(Arrangement())
    _keep(window)


def _keep(window: MainWindow) -> None:
    keep_arrangement(window.settings, window.frame.arrangement)
    _show_checks(window)


def _show_side(window: MainWindow) -> None:
    """Who asks for a list by key or menu wants to see it."""
    if "side" in window.frame.arrangement.hidden:
        toggle_panel(window, "side")


def _show_checks(window: MainWindow) -> None:
    for panel in HIDEABLE:
        window.bound[f"panel_{panel}"].setChecked(panel not in window.frame.arrangement.hidden)
