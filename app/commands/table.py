"""Which command carries out which action of the table."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt

from app.actions import TOOLS
from app.commands.bound import Command
from app.commands.build_order import show_build_order
from app.commands.contents import ask_contents
from app.commands.menu_here import open_menu_here
from app.commands.panels import panel_commands
from app.commands.plan import BACK, CLOCKWISE, MIRROR
from app.commands.wiring import show_wiring
from app.first_sketch.binding import begin_first_sketch
from app.help.showing import ask_what_this_is, show_help
from app.help.topics import topic_of
from app.panels.arrangement import PLAN_PANELS
from model.plan import Side

if TYPE_CHECKING:
    from app.window import MainWindow


def commands_of(window: MainWindow) -> dict[str, Command]:
    """By the name of the action."""
    return {
        **_file_commands(window),
        **_edit_commands(window),
        **_plan_commands(window),
        **_view_commands(window),
        **{name: partial(window.view.use, tool) for tool, name in TOOLS.items()},
    }


def _file_commands(window: MainWindow) -> dict[str, Command]:
    files, exports = window.files, window.exports
    return {
        "new": files.new,
        "new_network": window.new_network,
        "open": files.open,
        "start": window.show_start,
        "save": files.save,
        "save_as": files.save_as,
        "read_again": files.read_again,
        "build_sheet": exports.build_sheet,
        "materials_csv": exports.materials_csv,
        "close": window.close,
        "find_action": window.find_action,
        "help": lambda: show_help(window, topic_of(window)),
        "whats_this": ask_what_this_is,
        "first_sketch": partial(begin_first_sketch, window),
        "shortcuts": window.show_keys,
        "cautions": window.show_cautions,
        "about": window.show_about,
    }


def _edit_commands(window: MainWindow) -> dict[str, Command]:
    view, document = window.view, window.document
    return {
        "undo": view.hands.take_back,
        "redo": document.redo,
        "cut": view.cut,
        "copy": view.copy,
        "paste": view.paste,
        "delete": view.delete,
        "menu_here": open_menu_here,
        "select_all": view.select_all,
        "turn_chosen": lambda: window.turn_chosen(CLOCKWISE),
        "contents": partial(ask_contents, window),
        "mirror_chosen": lambda: window.turn_chosen(MIRROR),
    }


def _plan_commands(window: MainWindow) -> dict[str, Command]:
    plan = window.plan_commands
    return {
        "title": plan.title,
        "side_none": lambda: plan.running_side(None),
        "side_left": lambda: plan.running_side(Side.LEFT),
        "side_right": lambda: plan.running_side(Side.RIGHT),
        "sheet_data": plan.sheet_data,
        "go_to": plan.go_to,
        "move_plan": plan.move,
        "turn_plan": lambda: window.turn_plan(CLOCKWISE),
        "turn_plan_back": lambda: window.turn_plan(BACK),
        "mirror_plan": lambda: window.turn_plan(MIRROR),
        "build_order": partial(show_build_order, window),
        "wire": partial(show_wiring, window),
        "rewire": lambda: window.view.rewiring.start(window.view.selection, window.view.cursor),
        "order_from_survey": window.view.surveying.find,
        "clear_survey": window.view.surveying.clear,
        "compare": window.comparison.with_file,
        "compare_saved": window.comparison.with_saved,
        "next_difference": lambda: window.comparison.step(1),
        "previous_difference": lambda: window.comparison.step(-1),
        "swap_comparison": window.view.comparing.swap,
    }


def _view_commands(window: MainWindow) -> dict[str, Command]:
    view, side = window.view, window.side
    return {
        "level_up": lambda: window.go_to_level(view.level + 1),
        "level_down": lambda: window.go_to_level(view.level - 1),
        "solo": window.toggle_solo,
        "lock_level": lambda: window.document.levels.toggle_lock(view.level),
        "hide_level": lambda: window.document.levels.toggle_hidden(view.level),
        "clear_preview": view.clear_preview,
        **_dry_run_commands(window),
        "zoom_in": view.zoom_in,
        "zoom_out": view.zoom_out,
        "zoom_100": view.zoom_100,
        "fit_all": view.fit_all,
        "fit_selection": view.fit_selection,
        "in_depth": window.in_depth.show_or_hide,
        "show_findings": lambda: side.upper_tabs.show_panel("Findings"),
        "show_materials": lambda: side.upper_tabs.show_panel("Materials"),
        "show_switches": lambda: side.lower_tabs.show_panel("Switches"),
        "show_routes": lambda: side.lower_tabs.show_panel("Routes"),
        "show_readers": lambda: side.lower_tabs.show_panel("Readers"),
        "show_pieces": lambda: side.lower_tabs.show_panel("Pieces"),
        "show_runs": lambda: side.upper_tabs.show_panel("Test runs"),
        "show_differences": window.comparison.go_to_list,
        "show_plan": partial(view.setFocus, Qt.FocusReason.ShortcutFocusReason),
        "show_timing": window.timing.show_or_hide,
        "probe": window.timing.probe,
        "timing_svg": window.timing.write_svg,
        "timing_vcd": window.timing.write_vcd,
        **panel_commands(window, PLAN_PANELS),
        "theme_system": lambda: window.use_scheme("system"),
        "theme_light": lambda: window.use_scheme("light"),
        "theme_dark": lambda: window.use_scheme("dark"),
        "less_motion": window.toggle_motion,
    }


def _dry_run_commands(window: MainWindow) -> dict[str, Command]:
    dry_run = window.view.dry_run
    runner = dry_run.runner
    return {
        "dry_run": window.view.start_dry_run,
        "run_pause": dry_run.run_or_pause,
        "run_tick": runner.step,
        "run_slower": lambda: dry_run.change_speed(-1),
        "run_faster": lambda: dry_run.change_speed(1),
        "run_back": runner.rewind,
        "run_repeat": dry_run.repeat,
    }
