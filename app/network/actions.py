"""The table of user actions of the network window; what the plan editor has, too, is taken from its table."""

from __future__ import annotations

from typing import Final

from app.actions import UserAction, action

NETWORK_MENUS: Final = ("File", "Edit", "Network", "View", "Help")


def _same(name: str, tip: str = "", text: str = "", *, opens_group: bool | None = None) -> UserAction:
    """An action that the plan editor has: the same name and keys, said of a network where need be."""
    entry = action(name)
    opens = entry.opens_group if opens_group is None else opens_group
    return entry._replace(tip=tip or entry.tip, text=text or entry.text, opens_group=opens)


NETWORK_ACTIONS: Final = (
    _same("new", "Start with an empty plan, in a window of its own."),
    _same("new_network", "Start with an empty network."),
    _same("open"),
    _same("save", "Write the network to its file."),
    _same("save_as", "Write the network to another file."),
    _same("read_again"),
    UserAction(
        "cards",
        "File",
        "Departure cards…",
        "Write a card for every station, what to take to go where, as PDF.",
        ("Ctrl+B",),
        opens_group=True,
    ),
    UserAction(
        "graphml", "File", "Network as GraphML…", "Write stations, junctions and links for other programs."
    ),
    _same("close"),
    _same("undo"),
    _same("redo"),
    _same("menu_here"),
    _same("delete", "Take what is chosen away, with all that ends there.", opens_group=True),
    _same("select_all", "Choose every station and junction."),
    UserAction(
        "properties",
        "Edit",
        "Change…",
        "Change the name, the length or the readers of what is chosen.",
        ("F2",),
    ),
    _same("tool_select", "Choose and move stations and junctions."),
    UserAction("tool_station", "Edit/Tool", "Station", "Click to place a station.", ("P",), is_choice=True),
    UserAction(
        "tool_junction", "Edit/Tool", "Junction", "Click to place a junction.", ("J",), is_choice=True
    ),
    UserAction(
        "tool_link",
        "Edit/Tool",
        "Link",
        "Drag from a station or junction to another to join them.",
        ("L",),
        is_choice=True,
    ),
    UserAction("tool_trip", "Edit/Tool", "Trip", "Drag from a station to another.", ("T",), is_choice=True),
    _same("tool_erase", "Click to take a station, a junction or a link away."),
    _same("title", "Name the network.", opens_group=False)._replace(menu="Network"),
    UserAction(
        "add_trip",
        "Network",
        "Add trip…",
        "Say who rides where.",
        ("Ctrl+T",),
        opens_group=True,
    ),
    UserAction("remove_trip", "Network", "Remove trip", "Take the trip that is chosen in the list away."),
    UserAction(
        "pin_names",
        "Network",
        "Pin all names",
        "Keep the name of every reader that is called, as signs in the world bear it already.",
    ),
    UserAction(
        "open_plan",
        "Network",
        "Open junction's plan",
        "Show the plan of the chosen junction in a window of its own.",
        ("Ctrl+Return", "Ctrl+Enter"),
        opens_group=True,
    ),
    UserAction(
        "read_plans",
        "Network",
        "Read plans again",
        "Take over what the plan files of the junctions say now.",
        ("F5",),
    ),
    UserAction(
        "place_anew",
        "Network",
        "Place anew",
        "Find a place for every station and junction, as when nobody had moved any.",
        opens_group=True,
    ),
    UserAction("put_out", "Network", "Light nothing", "Show no trip and no reader; Esc does the same."),
    _same("zoom_in", "Show the map larger."),
    _same("zoom_out", "Show the map smaller."),
    _same("zoom_100", "48 pixels a square."),
    _same("fit_all", "Show the whole network."),
    _same("fit_selection"),
    _same("show_findings"),
    UserAction("show_trips", "View", "Trips", "Go to the trips.", ("Alt+2",)),
    UserAction("show_readers", "View", "Readers", "Go to the readers.", ("Alt+5",)),
    UserAction("show_stations", "View", "Stations", "Go to the stations.", ("Alt+3",)),
    _same("show_plan", "Go to the map.", "Map"),
    UserAction(
        "panel_summary", "View/Panels", "Sums", "Show or hide the sums under the map.", is_choice=True
    ),
    _same("panel_side", "Show or hide trips, readers, stations and findings."),
    _same("reset_panels"),
    _same("theme_system"),
    _same("theme_light"),
    _same("theme_dark"),
    _same("less_motion", "Let nothing glide: the view jumps to what is shown."),
    _same("help"),
    _same("whats_this"),
    _same("find_action"),
    _same("shortcuts"),
    _same("about"),
)

NETWORK_TOOLS: Final = {
    "select": "tool_select",
    "station": "tool_station",
    "junction": "tool_junction",
    "link": "tool_link",
    "trip": "tool_trip",
    "erase": "tool_erase",
}
"""The action that takes up a tool, by the tool's name."""

ON_THE_MAP: Final = (
    ("Arrows", "move the cursor a square"),
    ("Shift and arrows", "go to the next station or junction that way"),
    ("Enter", "does at the cursor what a click does there; a link or a trip ends with a second Enter"),
    ("Space and drag", "moves the map"),
    ("Esc", "takes back one step of a gesture, lights nothing, chooses nothing"),
    ("Ctrl and arrows", "moves what is chosen by a square"),
    ("Shift and click", "chooses one thing more, or one less"),
    ("Double click", "changes what is there"),
    ("Alt", "goes to the menus"),
)
"""For the shortcut sheet."""
