"""What happens in the window when the view or the document changes."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtGui import QAction

from app.actions import TOOLS
from app.commands.letters import plain_text
from app.commands.modules import bind_modules
from app.panels.here import here_words
from app.panels.run_words import run_words
from app.panels.words import cell_words
from app.titles import give_title
from app.tools.lay import LayTool
from app.translation import tr
from model.commissioning import Fault, Run
from model.grid import Cell
from model.parts import RAILS, Part
from model.plan import Side
from model.rules import Finding, Severity

if TYPE_CHECKING:
    from app.window import MainWindow

SIDES: Final = {None: "side_none", Side.LEFT: "side_left", Side.RIGHT: "side_right"}


def bind_view(window: MainWindow) -> None:
    """The panels follow the view, and what is chosen in them shows on the view."""
    view, panels = window.view, window.panels
    view.level_changed.connect(panels.levels.show_level)
    view.navigator.moved.connect(lambda: panels.status.show_zoom(view.navigator.zoomed_by))
    panels.levels.level_chosen.connect(window.go_to_level)
    panels.levels.lock_asked.connect(window.document.levels.toggle_lock)
    panels.levels.hiding_asked.connect(window.document.levels.toggle_hidden)
    view.level_changed.connect(lambda _level: _show_levels(window))
    window.document.levels.changed.connect(lambda: _show_levels(window))
    view.tool_changed.connect(lambda tool: window.bound[TOOLS[tool]].setChecked(True))
    window.bound[TOOLS["select"]].setChecked(True)
    view.tool_changed.connect(lambda _tool: _show_hand(window))
    view.hand_changed.connect(lambda: _show_hand(window))
    panels.tray.part_chosen.connect(lambda part: _take_in_hand(window, part))
    view.selection_changed.connect(lambda: _show_selection(window))
    view.cursor_moved.connect(lambda _cell: _show_here(window))
    view.status.connect(panels.status.say)
    panels.findings.chosen.connect(lambda finding: _go_to_finding(window, finding))
    panels.pieces.piece_chosen.connect(lambda cell: _go_to_piece(window, cell))
    panels.pieces.plan_asked.connect(view.setFocus)
    panels.switches.switch_chosen.connect(lambda cell: view.lead_to((cell,)))
    view.previews.changed.connect(lambda: panels.readers.show_preview(view.previews.is_on))
    panels.readers.preview_asked.connect(window.view.preview_reader)
    view.surveying.changed.connect(lambda: _show_here(window))
    view.comparing.changed.connect(lambda: _show_here(window))
    panels.commissioning.run_chosen.connect(lambda run: _show_way(window, run))
    panels.commissioning.list.faults_chosen.connect(lambda faults: _go_to_faults(window, faults))
    panels.orientations.turn_chosen.connect(window.turn_plan)
    _bind_dry_run(window)
    _bind_timing(window)
    bind_modules(window)
    window.comparison.bind()
    _show_hand(window)
    _show_selection(window)
    _show_here(window)
    panels.status.show_zoom(view.navigator.zoomed_by)


def _bind_dry_run(window: MainWindow) -> None:
    dry_run = window.view.dry_run
    for signal in (dry_run.changed, dry_run.runner.ticked, dry_run.runner.rewound):
        signal.connect(lambda: _show_here(window))
    dry_run.changed.connect(lambda: _allow_dry_run(window))
    _allow_dry_run(window)


def _allow_dry_run(window: MainWindow) -> None:
    """Only a dry run that is on can be moved."""
    for name in ("run_pause", "run_tick", "run_slower", "run_faster", "run_back", "run_repeat"):
        window.bound[name].setEnabled(window.view.dry_run.is_on)


def _bind_timing(window: MainWindow) -> None:
    panel, timing = window.panels.timing, window.timing
    panel.probe_asked.connect(timing.probe)
    panel.svg_asked.connect(timing.write_svg)
    panel.vcd_asked.connect(timing.write_vcd)
    panel.cell_asked.connect(lambda cell: window.view.show_cells((cell,)))
    panel.cells_asked.connect(window.view.show_cells)
    window.view.selection_changed.connect(timing.name_action)
    window.view.cursor_moved.connect(lambda _cell: timing.name_action())
    window.view.dry_run.runner.probes_changed.connect(timing.name_action)


def bind_document(window: MainWindow) -> None:
    """The window follows the document."""
    document, panels, stack = window.document, window.panels, window.document.undo_stack
    document.refused.connect(panels.status.say)
    document.acted_at.connect(window.view.show_cells)
    document.acted_on.connect(lambda names: _show_acted_on(window, names))
    document.junction_updated.connect(lambda: _show_junction(window))
    document.findings_changed.connect(lambda _difference: _show_findings(window))
    document.details_changed.connect(lambda: _show_details(window))
    document.dirty_changed.connect(lambda _dirty: _show_dirty(window))
    document.changed.connect(lambda *_: _forget_message(window))
    document.reset.connect(lambda: _show_reset(window))
    window.recovery.written.connect(panels.status.tell_copied)
    window.recovery.failed.connect(panels.status.tell_copy_failed)
    panels.findings.count_changed.connect(lambda count: window.side.upper_tabs.show_count("Findings", count))
    panels.routes.count_changed.connect(lambda count: window.side.lower_tabs.show_count("Routes", count))
    panels.commissioning.count_changed.connect(
        lambda count: window.side.upper_tabs.show_count("Test runs", count)
    )
    for name, can, text in (
        ("undo", stack.canUndoChanged, stack.undoTextChanged),
        ("redo", stack.canRedoChanged, stack.redoTextChanged),
    ):
        action = window.bound[name]
        can.connect(action.setEnabled)
        action.setEnabled(False)
        text.connect(partial(name_step, action, plain_text(action)))


def name_step(action: QAction, word: str, step: str) -> None:
    """The menu names the step that would be taken back or done again."""
    # An ampersand in a name is a letter of the name, not a key; the menu gives the key when it opens.
    action.setText(f"{word} {step}".strip().replace("&", "&&"))


def _show_hand(window: MainWindow) -> None:
    view, panels = window.view, window.panels
    if view.tool == LayTool.name:
        panels.in_hand.show_track(view.hand)
        panels.tray.show_part(view.hand.as_track().part)
    else:
        panels.in_hand.show_hand(view.hand)
        panels.tray.show_part(view.hand.part)


def _take_in_hand(window: MainWindow, part: Part) -> None:
    window.view.take_in_hand(window.view.hand.holding(part))
    window.view.use("lay" if part in RAILS else "place")


def _show_levels(window: MainWindow) -> None:
    """The menu tells what holds of the level that is drawn on."""
    levels, level = window.document.levels, window.view.level
    window.bound["lock_level"].setChecked(level in levels.locked)
    window.bound["hide_level"].setChecked(level in levels.hidden)


def _show_selection(window: MainWindow) -> None:
    chosen = window.view.selection
    window.panels.status.show_chosen(len(chosen))
    window.panels.switches.mark(chosen)
    window.panels.pieces.mark(chosen)
    for name in ("cut", "copy", "delete", "fit_selection"):
        window.bound[name].setEnabled(bool(chosen))


def _show_here(window: MainWindow) -> None:
    cell = window.view.cursor
    engine, live = window.view.dry_run.runner.engine, window.view.scene.live
    if engine is not None and live is not None:
        said = run_words(engine, cell, cell in live.unsure)
    else:
        surveyed = window.view.surveying.words_at(cell) if window.view.survey_bar.isVisible() else ""
        compared = window.view.comparing.words_at(cell)
        said = surveyed or "; ".join(filter(None, (compared, here_words(window.document, cell))))
    window.panels.status.show_here(cell_words(cell), said)
    window.view.setAccessibleDescription(f"{cell_words(cell)}: {said}")


def _forget_message(window: MainWindow) -> None:
    """What was said of an earlier edit or gesture is not true of the new plan."""
    _show_here(window)
    window.panels.status.say("")


def _show_findings(window: MainWindow) -> None:
    window.panels.status.show_counts(window.document.found.open)
    window.view.show_finding(window.panels.findings.finding)


def _show_junction(window: MainWindow) -> None:
    document, panels = window.document, window.panels
    _show_findings(window)
    switches = document.junction.switches if document.junction else ()
    window.side.lower_tabs.show_count("Switches", len(switches))
    window.side.lower_tabs.show_count("Readers", len(panels.readers.readers))
    _show_here(window)
    if document.path is not None and not document.junction_is_old and not document.is_dirty:
        _describe_recent(window, document.path)


def _describe_recent(window: MainWindow, path: Path) -> None:
    document = window.document
    counts = document.found.open
    gravest = next((severity for severity in Severity if counts[severity]), None)
    said = ("", 0) if gravest is None else (gravest.value, counts[gravest])
    window.settings.describe_recent(path, document.plan.details.title, *said)


def _show_acted_on(window: MainWindow, names: frozenset[str]) -> None:
    """Bring the list to the front in which an undo or redo shows."""
    if "routes" in names:
        window.side.lower_tabs.bring_forward("Routes")
    if "waivers" in names:
        window.side.upper_tabs.bring_forward("Findings")


def _show_details(window: MainWindow) -> None:
    window.bound[SIDES[window.document.plan.details.running_side]].setChecked(True)
    _show_title(window)


def _show_title(window: MainWindow) -> None:
    document = window.document
    said = tr("{document} — changed", document=document.name) if document.is_dirty else document.name
    window.menu_row.set_title(said)
    give_title(window, tr("{said} — Platelayer", said=said))


def _show_dirty(window: MainWindow) -> None:
    _show_title(window)
    if window.document.is_dirty or window.document.path is None:
        # The first copy is still to be written, or all was taken back in a plan that has no file.
        window.panels.status.tell_unchanged()
    else:
        window.panels.status.tell_saved()


def _show_reset(window: MainWindow) -> None:
    window.panels.message.hide()
    window.panels.status.tell_unchanged()
    window.panels.status.say("")
    window.view.fit_all()


def _go_to_piece(window: MainWindow, cell: Cell) -> None:
    """The cursor of the keyboard comes there, so that Enter goes on where the list was left."""
    window.view.go_to(cell)
    window.view.selection = frozenset({cell})


def _go_to_finding(window: MainWindow, finding: Finding) -> None:
    window.view.lead_to(finding.cells or _ends_of(window, finding))
    window.view.show_finding(finding)


def _show_way(window: MainWindow, run: Run) -> None:
    """Send a test cart where the builder sends one, and show the level where it comes in."""
    arm = window.document.plan.details.arm(run.start)
    if arm is not None and arm.enter is not None:
        window.view.level = arm.enter.at.y
    window.view.clear_preview()
    window.view.run_cart(run.start, run.waybill is not None)


def _go_to_faults(window: MainWindow, faults: tuple[Fault, ...]) -> None:
    """Choose the cells to look at; where the whole plan may be built otherwise, show all of it."""
    if faults:
        window.view.show_cells(dict.fromkeys(cell for fault in faults for cell in _cells_of(window, fault)))
    else:
        window.view.fit_all()


def _cells_of(window: MainWindow, fault: Fault) -> tuple[Cell, ...]:
    """A line is looked at where its reader stands, at the arm, and at the switches that it throws."""
    if fault.at is not None:
        return (fault.at,)
    junction = window.document.junction
    switches = junction.switches if junction is not None else ()
    thrown = (switch.at for switch in switches if fault.arm in switch.called_by)
    arms = (arm for arm in window.document.plan.arms if arm.name == fault.arm and arm.enter is not None)
    return (*thrown, *(arm.enter.at for arm in arms if arm.enter is not None))


def _ends_of(window: MainWindow, finding: Finding) -> tuple[Cell, ...]:
    """A finding about an arm alone is shown where the arm is."""
    arms = [arm for arm in window.document.plan.arms if arm.name in finding.arms]
    return tuple(end.at for arm in arms for end in (arm.enter, arm.leave) if end is not None)
