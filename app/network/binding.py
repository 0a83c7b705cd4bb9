"""What happens in the network window when the map or the document changes."""

from __future__ import annotations

from collections import Counter
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from app.commands.binding import name_step
from app.commands.letters import plain_text
from app.network.actions import NETWORK_TOOLS
from app.network.found import Found, markers_of
from app.network.here import here_words, place_words
from app.network.items import Item, Kind
from app.titles import give_title
from app.translation import tr

if TYPE_CHECKING:
    from app.network.window import NetworkWindow


def bind_network(window: NetworkWindow) -> None:
    """The panels follow the map and the document."""
    view, panels = window.view, window.panels
    view.tool_changed.connect(lambda tool: window.bound[NETWORK_TOOLS[tool]].setChecked(True))
    window.bound[NETWORK_TOOLS["select"]].setChecked(True)
    view.selection_changed.connect(lambda: _show_selection(window))
    view.here_changed.connect(lambda item: _show_here(window, item))
    view.status.connect(panels.status.say)
    view.navigator.moved.connect(lambda: panels.status.show_zoom(view.navigator.zoomed_by))
    panels.status.show_zoom(view.navigator.zoomed_by)
    panels.findings.chosen.connect(lambda found: _go_to(window, found))
    panels.stations.station_chosen.connect(lambda item: view.show_items((item,)))
    panels.stations.change_asked.connect(window.commands.change)
    panels.trips.add_asked.connect(window.commands.add_trip)
    panels.trips.way_asked.connect(window.commands.pin_way)
    for signal in (panels.trips.trip_chosen, panels.readers.reader_chosen):
        signal.connect(lambda _what: _allow(window))
    _bind_document(window)
    _show_selection(window)
    _show_here(window, None)


def _bind_document(window: NetworkWindow) -> None:
    document, panels, stack = window.document, window.panels, window.document.undo_stack
    document.refused.connect(panels.status.say)
    document.acted_at.connect(window.view.show_items)
    document.acted_on.connect(lambda what: _bring_forward(window, what))
    document.plan_updated.connect(lambda: _show_plan(window))
    document.details_changed.connect(lambda: _show_title(window))
    document.dirty_changed.connect(lambda _dirty: _show_dirty(window))
    document.changed.connect(lambda *_: _show_counts(window))
    document.changed.connect(lambda *_: panels.status.say(""))
    document.reset.connect(lambda: _show_reset(window))
    window.recovery.written.connect(panels.status.tell_copied)
    window.recovery.failed.connect(panels.status.tell_copy_failed)
    panels.findings.count_changed.connect(lambda count: window.side.lower_tabs.show_count("Findings", count))
    for name, can, text in (
        ("undo", stack.canUndoChanged, stack.undoTextChanged),
        ("redo", stack.canRedoChanged, stack.redoTextChanged),
    ):
        action = window.bound[name]
        can.connect(action.setEnabled)
        action.setEnabled(False)
        text.connect(partial(name_step, action, plain_text(action)))


def _show_selection(window: NetworkWindow) -> None:
    window.panels.status.show_chosen(len(window.view.selection))
    _allow(window)


def _allow(window: NetworkWindow) -> None:
    """Actions that need something chosen can be used only then."""
    chosen, network = window.view.selection, window.document.network
    for name in ("delete", "fit_selection", "properties"):
        window.bound[name].setEnabled(bool(chosen))
    junctions = [network.junctions[item.place] for item in chosen if item.kind is Kind.JUNCTION]
    window.bound["open_plan"].setEnabled(any(each.plan is not None for each in junctions))
    window.bound["remove_trip"].setEnabled(window.panels.trips.chosen >= 0)
    window.bound["put_out"].setEnabled(bool(window.view.lit.title))


def _show_here(window: NetworkWindow, item: Item | None) -> None:
    spot = window.view.cursor_spot
    place, here = place_words(spot), here_words(window.document, item)
    window.panels.status.show_here(place, here)
    window.view.setAccessibleDescription(f"{place}: {here}")


def _go_to(window: NetworkWindow, found: Found) -> None:
    """Show what a finding is about: on the map, or else its trip or reader in the list."""
    if found.trips and not found.items:
        window.side.upper_tabs.bring_forward("Trips")
        window.panels.trips.choose(found.trips[0])
    elif found.items:
        window.view.show_items(found.items)
    elif found.readers:
        window.side.upper_tabs.bring_forward("Readers")
        window.panels.readers.choose(found.readers[0])


def _bring_forward(window: NetworkWindow, what: str) -> None:
    """Bring the list to the front in which an undo or redo shows."""
    window.side.upper_tabs.bring_forward("Trips" if what == "trips" else "Readers")


def _show_plan(window: NetworkWindow) -> None:
    document = window.document
    open_ones = (finding for finding in document.findings if not finding.waived)
    window.panels.status.show_counts(Counter(finding.severity for finding in open_ones))
    window.view.show_markers(markers_of(document.findings))
    _show_counts(window)
    _allow(window)
    if document.news and not document.plan_is_old:
        window.panels.status.say(tr("The plan is worked out: {news}.", news=document.news))
    if document.path is not None and not document.plan_is_old and not document.is_dirty:
        _describe_recent(window, document.path)


def _show_counts(window: NetworkWindow) -> None:
    network, tabs = window.document.network, window.side.upper_tabs
    tabs.show_count("Trips", len(network.trips))
    tabs.show_count("Readers", len(window.panels.readers.model.rows()))
    tabs.show_count("Stations", len(network.stations))
    _allow(window)


def _describe_recent(window: NetworkWindow, path: Path) -> None:
    found = window.document.findings
    gravest = min((each.severity for each in found), key=lambda severity: severity.rank, default=None)
    count = sum(each.severity is gravest for each in found)
    window.settings.describe_recent(path, window.document.title, gravest.value if gravest else "", count)


def _show_title(window: NetworkWindow) -> None:
    document = window.document
    said = tr("{name} — changed", name=document.name) if document.is_dirty else document.name
    window.menu_row.set_title(said)
    give_title(window, tr("{said} — Platelayer", said=said))


def _show_dirty(window: NetworkWindow) -> None:
    _show_title(window)
    if window.document.is_dirty or window.document.path is None:
        window.panels.status.tell_unchanged()
    else:
        window.panels.status.tell_saved()


def _show_reset(window: NetworkWindow) -> None:
    window.panels.message.hide()
    window.panels.status.say("")
    window.panels.status.tell_unchanged()
    _show_counts(window)
