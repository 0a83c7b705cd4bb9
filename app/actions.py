"""The one table of user actions: menus, tooltips, shortcuts and the shortcut sheet are made from it."""

from __future__ import annotations

from typing import Final, NamedTuple

MENUS: Final = ("File", "Edit", "Plan", "Level", "Preview", "View", "Help")


class UserAction(NamedTuple):
    """Something the user can ask for, by menu or by key."""

    name: str
    menu: str
    """One of MENUS, or ``MENU/Submenu``."""
    text: str
    tip: str
    """One sentence for the tooltip and the status bar."""
    keys: tuple[str, ...] = ()
    """The first one is shown."""
    opens_group: bool = False
    """Whether a line stands above it in its menu."""
    is_choice: bool = False
    """Whether it is one of several of which one holds, or a thing that is on or off."""


ACTIONS: Final = (
    UserAction("new", "File", "New plan", "Start with an empty plan.", ("Ctrl+N",)),
    UserAction(
        "new_network",
        "File",
        "New network",
        "Start with an empty network, in a window of its own.",
        ("Ctrl+Shift+N",),
    ),
    UserAction("open", "File", "Open…", "Open a plan or a network from a file.", ("Ctrl+O",)),
    UserAction(
        "start", "File", "Start screen…", "Recent plans, examples, and plans left over from last time."
    ),
    UserAction("save", "File", "Save", "Write the plan to its file.", ("Ctrl+S",), opens_group=True),
    UserAction("save_as", "File", "Save as…", "Write the plan to another file.", ("Ctrl+Shift+S",)),
    UserAction(
        "read_again",
        "File",
        "Read again",
        "Take over the file as another program left it, as one step that can be undone.",
    ),
    UserAction(
        "build_sheet",
        "File",
        "Build sheet…",
        "Write the sheets to build from, as PDF, SVG or PNG.",
        ("Ctrl+B",),
        opens_group=True,
    ),
    UserAction(
        "materials_csv", "File", "Materials as CSV…", "Write what to carry as a table.", ("Ctrl+Shift+B",)
    ),
    UserAction("close", "File", "Close", "Close the window.", ("Ctrl+Q", "Ctrl+W"), opens_group=True),
    UserAction("undo", "Edit", "Undo", "Take back the last step.", ("Ctrl+Z",)),
    UserAction("redo", "Edit", "Redo", "Do again what was taken back.", ("Ctrl+Shift+Z", "Ctrl+Y")),
    UserAction(
        "cut", "Edit", "Cut", "Take the chosen pieces away and keep them.", ("Ctrl+X",), opens_group=True
    ),
    UserAction("copy", "Edit", "Copy", "Keep a copy of the chosen pieces.", ("Ctrl+C",)),
    UserAction("paste", "Edit", "Paste", "Place the pieces that were kept.", ("Ctrl+V",)),
    UserAction("delete", "Edit", "Erase chosen", "Take the chosen pieces away.", ("Del", "Backspace")),
    UserAction("select_all", "Edit", "Choose all", "Choose every piece of this level.", ("Ctrl+A",)),
    UserAction(
        "menu_here",
        "Edit",
        "Menu here",
        "Open the menu of what has the focus, as a right click on it does.",
        ("Shift+F10",),
    ),
    UserAction(
        "turn_chosen",
        "Edit",
        "Turn",
        "Turn the chosen pieces a quarter clockwise, or the plan when nothing is chosen.",
        ("Ctrl+R",),
        opens_group=True,
    ),
    UserAction(
        "mirror_chosen",
        "Edit",
        "Mirror",
        "Mirror the chosen pieces east to west, or the plan when nothing is chosen.",
        ("Ctrl+M",),
    ),
    UserAction(
        "contents",
        "Edit",
        "Contents…",
        "Say what the chosen hopper, barrel or auto-crafter holds.",
        ("F2",),
    ),
    UserAction("tool_select", "Edit/Tool", "Select", "Choose and move pieces.", ("S",), is_choice=True),
    UserAction("tool_lay", "Edit/Tool", "Lay track", "Drag to lay track.", ("L",), is_choice=True),
    UserAction(
        "tool_place", "Edit/Tool", "Place", "Click to place the part in hand.", ("P",), is_choice=True
    ),
    UserAction(
        "tool_module",
        "Edit/Tool",
        "Module",
        "Click to put down a ready circuit: a reader, a latch, an inverter.",
        ("N",),
        is_choice=True,
    ),
    UserAction(
        "tool_line",
        "Edit/Tool",
        "Line",
        "Drag to draw a line of dust with blocks under it; the strength left is shown.",
        ("I",),
        is_choice=True,
    ),
    UserAction(
        "tool_arm",
        "Edit/Tool",
        "Arm",
        "Drag across the end of a track: in, out or both.",
        ("A",),
        is_choice=True,
    ),
    UserAction(
        "tool_erase", "Edit/Tool", "Erase", "Click or drag to take pieces away.", ("E",), is_choice=True
    ),
    UserAction(
        "tool_throw",
        "Edit/Tool",
        "Throw",
        "Click a switch to preview its powered state.",
        ("T",),
        is_choice=True,
    ),
    UserAction(
        "tool_cart",
        "Edit/Tool",
        "Test cart",
        "Drag a cart onto a rail or an arm to see its way.",
        ("C",),
        is_choice=True,
    ),
    UserAction(
        "tool_survey",
        "Edit/Tool",
        "Survey",
        "Draw each rail in the shape in which it stands in the world.",
        ("V",),
        is_choice=True,
    ),
    UserAction("title", "Plan", "Title…", "Name the plan."),
    UserAction(
        "side_none", "Plan/Running side", "Not checked", "Carts may run on either side.", is_choice=True
    ),
    UserAction("side_left", "Plan/Running side", "Left", "Carts run on the left.", is_choice=True),
    UserAction("side_right", "Plan/Running side", "Right", "Carts run on the right.", is_choice=True),
    UserAction("sheet_data", "Plan", "Sheet data…", "What the title block of the build sheet says."),
    UserAction("go_to", "Plan", "Go to x y z…", "Show a cell and its level.", ("Ctrl+G",), opens_group=True),
    UserAction(
        "move_plan",
        "Plan",
        "Move plan to x y z…",
        "Give the cell of the cursor another place; all follows.",
        ("Ctrl+Shift+G",),
    ),
    UserAction(
        "turn_plan", "Plan", "Turn plan", "Turn the whole plan a quarter clockwise.", opens_group=True
    ),
    UserAction(
        "turn_plan_back", "Plan", "Turn plan back", "Turn the whole plan a quarter counter-clockwise."
    ),
    UserAction(
        "mirror_plan", "Plan", "Mirror plan", "Mirror the whole plan east to west; the running side changes."
    ),
    UserAction(
        "build_order",
        "Plan",
        "Build order…",
        "Find the order of placing that needs the fewest inverters.",
        ("Ctrl+Shift+O",),
        opens_group=True,
    ),
    UserAction(
        "wire",
        "Plan",
        "Wire junction…",
        "Lay readers, inverters and lines under the track for all wanted routes, and prove them.",
        ("Ctrl+J",),
    ),
    UserAction(
        "rewire",
        "Plan",
        "Re-wire line",
        "Lead the line that is chosen, or under the cursor, a shorter way to the same ends.",
        ("Ctrl+Shift+J",),
    ),
    UserAction(
        "order_from_survey",
        "Plan",
        "Order from survey",
        "Find an order of placing that gives every rail the shape in which it stands.",
        ("Ctrl+Return", "Ctrl+Enter"),
    ),
    UserAction(
        "clear_survey", "Plan", "Clear survey", "Forget the surveyed shapes; once more brings them back."
    ),
    UserAction(
        "compare",
        "Plan",
        "Compare with a plan…",
        "Mark what another plan has otherwise, and list what to place and take away; once more ends it.",
        ("Ctrl+E",),
        opens_group=True,
    ),
    UserAction(
        "compare_saved",
        "Plan",
        "Compare with the saved file",
        "Mark what was changed since the plan was saved; once more ends it.",
        ("Ctrl+Shift+E",),
    ),
    UserAction("next_difference", "Plan", "Next difference", "Go to the next difference.", ("F8",)),
    UserAction(
        "previous_difference",
        "Plan",
        "Previous difference",
        "Go to the difference before.",
        ("Shift+F8",),
    ),
    UserAction(
        "swap_comparison",
        "Plan",
        "Swap earlier and later",
        "Tell how to get from the open plan to the other one, or the other way round.",
    ),
    UserAction("level_up", "Level", "One level up", "Draw on the level above.", ("PgUp",)),
    UserAction("level_down", "Level", "One level down", "Draw on the level below.", ("PgDown",)),
    UserAction(
        "solo", "Level", "Solo", "Hide the levels above and below.", ("O",), opens_group=True, is_choice=True
    ),
    UserAction("lock_level", "Level", "Lock level", "Let nothing on this level be changed.", is_choice=True),
    UserAction(
        "hide_level",
        "Level",
        "Hide level",
        "Leave this level out where the ones above and below it are drawn on.",
        is_choice=True,
    ),
    UserAction(
        "clear_preview",
        "Preview",
        "End the preview",
        "Show the plan as built; Esc in the plan view does the same.",
    ),
    UserAction(
        "dry_run",
        "Preview",
        "Dry run",
        "Run signals, items and carts together, tick by tick; Esc in the plan view ends it.",
        ("F5",),
        opens_group=True,
    ),
    UserAction(
        "run_pause", "Preview", "Run or pause", "Let the time of the dry run go on, or stand still.", ("F6",)
    ),
    UserAction("run_tick", "Preview", "One tick", "Do a twentieth of a second of the dry run.", ("F7",)),
    UserAction("run_slower", "Preview", "Slower", "Let the dry run go on more slowly.", (",",)),
    UserAction("run_faster", "Preview", "Faster", "Let the dry run go on faster.", (".",)),
    UserAction(
        "run_back", "Preview", "Back to the start", "Begin the dry run again at tick 0.", ("Shift+F5",)
    ),
    UserAction(
        "run_repeat",
        "Preview",
        "Repeat from the start",
        "Begin at tick 0; what was done comes again, each in its tick.",
        ("Ctrl+F5",),
    ),
    UserAction(
        "probe",
        "Preview",
        "Probe",
        "Watch in the timing diagram what the chosen cells read, or watch them no more.",
        ("B",),
        opens_group=True,
    ),
    UserAction(
        "timing_svg", "Preview", "Timing diagram as SVG…", "Write the ticks that are seen, as a drawing."
    ),
    UserAction(
        "timing_vcd",
        "Preview",
        "Waveforms as VCD…",
        "Write what all probes read for a waveform viewer (IEEE 1364).",
    ),
    UserAction("zoom_in", "View", "Zoom in", "Show the plan larger.", ("Ctrl++", "Ctrl+=")),
    UserAction("zoom_out", "View", "Zoom out", "Show the plan smaller.", ("Ctrl+-",)),
    UserAction("zoom_100", "View", "100 %", "48 pixels a cell.", ("Ctrl+1",)),
    UserAction("fit_all", "View", "Fit all", "Show the whole plan.", ("Ctrl+0",)),
    UserAction("fit_selection", "View", "Fit selection", "Show all that is chosen.", ("Ctrl+2",)),
    UserAction(
        "in_depth",
        "View",
        "In depth",
        "Show the levels pulled apart, in a window of its own that follows the plan.",
        ("Ctrl+D",),
    ),
    UserAction("show_findings", "View", "Findings", "Go to the findings.", ("Alt+1",), opens_group=True),
    UserAction("show_materials", "View", "Materials", "Go to the materials.", ("Alt+2",)),
    UserAction("show_switches", "View", "Switches", "Go to the switches.", ("Alt+3",)),
    UserAction("show_routes", "View", "Routes", "Go to the wanted routes.", ("Alt+4",)),
    UserAction("show_readers", "View", "Readers", "Go to the readers.", ("Alt+5",)),
    UserAction("show_pieces", "View", "Pieces", "Go to the list of all pieces.", ("Alt+8",)),
    UserAction("show_runs", "View", "Test runs", "Go to the test runs.", ("Alt+6",)),
    UserAction(
        "show_timing",
        "View",
        "Timing diagram",
        "Go to the timing diagram; from there, hide it.",
        ("Alt+7",),
    ),
    UserAction(
        "show_differences", "View", "Differences", "Go to what another plan has otherwise.", ("Alt+9",)
    ),
    UserAction("show_plan", "View", "Plan view", "Go to the plan view.", ("Alt+0",)),
    UserAction("panel_tray", "View/Panels", "Parts tray", "Show or hide the parts tray.", is_choice=True),
    UserAction(
        "panel_levels", "View/Panels", "Level strip", "Show or hide the strip of levels.", is_choice=True
    ),
    UserAction(
        "panel_orientations",
        "View/Panels",
        "Orientations",
        "Show or hide how the plan comes out in its eight orientations.",
        is_choice=True,
    ),
    UserAction(
        "panel_side",
        "View/Panels",
        "Side panel",
        "Show or hide findings, materials, switches and routes.",
        is_choice=True,
    ),
    UserAction(
        "reset_panels", "View/Panels", "Reset panels", "Show every panel again, as large as it comes."
    ),
    UserAction(
        "theme_system", "View/Theme", "As the system", "Light or dark as the system asks.", is_choice=True
    ),
    UserAction("theme_light", "View/Theme", "Light", "Dark lines on light paper.", is_choice=True),
    UserAction("theme_dark", "View/Theme", "Dark", "Light lines on dark paper.", is_choice=True),
    UserAction(
        "less_motion",
        "View",
        "Less motion",
        "Let nothing glide: the view jumps, and a test cart is at the end of its way at once.",
        is_choice=True,
    ),
    UserAction(
        "help",
        "Help",
        "Help…",
        "Every tool, part, finding, menu and key; opens at what has the focus.",
        ("F1",),
    ),
    UserAction(
        "whats_this",
        "Help",
        "What is this?",
        "The next click on a thing in the window says what it is; Esc ends that.",
        ("Shift+F1",),
    ),
    UserAction("first_sketch", "Help", "First sketch", "Draw a small junction yourself, a hint at a time."),
    UserAction(
        "find_action", "Help", "Look for an action…", "Type a word and choose what to do.", ("Ctrl+K",)
    ),
    UserAction("shortcuts", "Help", "Keys", "All keys on one page.", ("Ctrl+F1",)),
    UserAction("cautions", "Help", "Before you build…", "What to know and to try before you place a block."),
    UserAction("about", "Help", "About Platelayer", "The version, and what it is for.", opens_group=True),
)

TOOLS: Final = {
    "select": "tool_select",
    "lay": "tool_lay",
    "place": "tool_place",
    "line": "tool_line",
    "module": "tool_module",
    "arm": "tool_arm",
    "erase": "tool_erase",
    "throw": "tool_throw",
    "cart": "tool_cart",
    "survey": "tool_survey",
}
"""The action that takes up a tool, by the tool's name."""


def action(name: str) -> UserAction:
    """The action of that name. Raises KeyError."""
    return _BY_NAME[name]


_BY_NAME: Final = {entry.name: entry for entry in ACTIONS}
