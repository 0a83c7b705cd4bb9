"""Which command carries out which action of the network window."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt

from app.commands.bound import Command
from app.commands.menu_here import open_menu_here
from app.commands.panels import panel_commands
from app.help.showing import ask_what_this_is, show_help
from app.help.topics import network_topic_of
from app.network.actions import NETWORK_TOOLS
from app.network.frame import NETWORK_PANEL_SET
from app.network.items import Kind

if TYPE_CHECKING:
    from app.network.window import NetworkWindow


def commands_of(window: NetworkWindow) -> dict[str, Command]:
    """By the name of the action."""
    return {
        **_file_commands(window),
        **_network_commands(window),
        **_view_commands(window),
        **{name: partial(window.view.use, tool) for tool, name in NETWORK_TOOLS.items()},
    }


def _file_commands(window: NetworkWindow) -> dict[str, Command]:
    files, exports = window.files, window.exports
    return {
        "new": window.new_plan,
        "new_network": files.new,
        "open": files.open,
        "save": files.save,
        "save_as": files.save_as,
        "read_again": files.read_again,
        "menu_here": open_menu_here,
        "cards": exports.cards,
        "graphml": exports.graphml,
        "close": window.close,
        "help": lambda: show_help(window, network_topic_of(window)),
        "whats_this": ask_what_this_is,
        "find_action": window.find_action,
        "shortcuts": window.show_keys,
        "about": window.show_about,
    }


def _network_commands(window: NetworkWindow) -> dict[str, Command]:
    view, commands, document = window.view, window.commands, window.document
    return {
        "undo": view.hands.take_back,
        "redo": document.redo,
        "delete": lambda: commands.remove(view.selection),
        "select_all": view.select_all,
        "properties": lambda: _change(window),
        "title": commands.title,
        "add_trip": commands.add_trip,
        "remove_trip": window.panels.trips.remove,
        "pin_names": commands.pin_names,
        "open_plan": lambda: _open_plan(window),
        "read_plans": commands.read_plans,
        "place_anew": lambda: _place_anew(window),
        "put_out": window.lighting.put_out,
    }


def _view_commands(window: NetworkWindow) -> dict[str, Command]:
    view, side = window.view, window.side
    return {
        "zoom_in": view.zoom_in,
        "zoom_out": view.zoom_out,
        "zoom_100": view.zoom_100,
        "fit_all": view.fit_all,
        "fit_selection": view.fit_selection,
        "show_findings": lambda: side.lower_tabs.show_panel("Findings"),
        "show_trips": lambda: side.upper_tabs.show_panel("Trips"),
        "show_readers": lambda: side.upper_tabs.show_panel("Readers"),
        "show_stations": lambda: side.upper_tabs.show_panel("Stations"),
        "show_plan": partial(view.setFocus, Qt.FocusReason.ShortcutFocusReason),
        **panel_commands(window, NETWORK_PANEL_SET),
        "theme_system": lambda: window.use_scheme("system"),
        "theme_light": lambda: window.use_scheme("light"),
        "theme_dark": lambda: window.use_scheme("dark"),
        "less_motion": window.toggle_motion,
    }


def _change(window: NetworkWindow) -> None:
    """Of several chosen things the first one is asked about."""
    if window.view.selection:
        window.commands.change(min(window.view.selection))


def _place_anew(window: NetworkWindow) -> None:
    window.commands.place_anew()
    window.view.fit_all()


def _open_plan(window: NetworkWindow) -> None:
    """Of several chosen junctions the first one that has a plan."""
    junctions = window.document.network.junctions
    for item in sorted(window.view.selection):
        if item.kind is Kind.JUNCTION and junctions[item.place].plan is not None:
            window.open_plan_of(item.place)
            return
