"""What the keys do in the views of a plan, in words. No Qt here."""

from __future__ import annotations

from typing import Final

KeyRows = tuple[tuple[str, str], ...]
"""Keys, each with what it does."""

IN_THE_PLAN: Final = (
    ("Arrows", "move the cursor a cell"),
    ("Enter", "does at the cursor what a click does there"),
    ("Space and drag", "moves the view"),
    ("Esc", "takes back one step of a gesture, ends a preview or a dry run, chooses nothing"),
    ("Click", "in a dry run, on a lever or a button: works it; Shift and click chooses it"),
    ("R", "turns what is in hand, or what is chosen or carried"),
    ("M", "mirrors what is chosen or carried"),
    ("D", "changes the delay, the mode or the way up of what is chosen or in hand; a line's repeaters"),
    ("PgUp and PgDown", "while a line is drawn: lead it a level up or down"),
    ("W", "gives the test cart the waybill, or takes it"),
    ("Ctrl and arrows", "moves what is chosen by a cell"),
    ("Ctrl and drag", "copies what is chosen"),
    ("Shift and click", "chooses one piece more, or one less"),
    ("Shift and Enter, arrows, Enter", "places or erases in every cell passed"),
    ("Shift and Enter", "steps a surveyed rail back to the shape before"),
    ("Alt", "goes to the menus"),
)

IN_THE_DIAGRAM: Final = (
    ("Left and right", "move the cursor by a tick"),
    ("Ctrl, left and right", "go to the change before and after"),
    ("Home", "goes to the first tick"),
    ("End", "goes along with the run"),
    ("Up and down", "choose a row"),
    ("Page up, page down", "scroll along time; so does Shift with the wheel"),
    ("+ and \u2212", "zoom along time; so does Ctrl with the wheel"),
    ("0", "shows the whole run"),
    ("Enter", "shows the row's cell on the plan"),
    ("Del", "takes the row's probe away"),
)

IN_DEPTH: Final = (
    ("Left and right", "turn the plan by a quarter"),
    ("+ and \u2212", "pull the levels apart, or bring them closer"),
    ("Up and down", "draw on the level above or below"),
    ("O", "shows all levels, or only some"),
    ("W", "shows the ways of carts as on the plan, or leaves them out"),
    ("0", "shows all of it, the levels pulled apart"),
    ("Ctrl, + and \u2212", "zoom; so does the wheel"),
    ("Ctrl and arrows", "move the picture; so does a drag"),
    ("Click", "goes to the cell in the plan view, and chooses what is there"),
    ("Esc", "closes the window"),
)

PLAN_KEYS: Final[dict[str, KeyRows]] = {
    "In the plan view": IN_THE_PLAN,
    "In the timing diagram": IN_THE_DIAGRAM,
    "In depth": IN_DEPTH,
}
"""By the heading under which they stand."""
