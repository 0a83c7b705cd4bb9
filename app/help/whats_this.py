"""What's This of all that stands in a window: from the tables of actions and parts, and for each panel."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QAbstractButton, QWidget

from app.actions import UserAction
from app.names import part_about, part_name
from app.panels.tray import part_of
from app.panels.words import plain_tip
from app.shown_keys import shown
from app.translation import QT_TR_NOOP, tr
from app.user_keys import keys_of

if TYPE_CHECKING:
    from app.panels.tray import Tray

PANELS: Final = {
    "findings": QT_TR_NOOP(
        "What stands in the way of the plan, the gravest first. Choosing a finding goes there and says why "
        "it matters and what to do; What is this? tells of its rule."
    ),
    "materials": QT_TR_NOOP("How many of each part the plan needs, in pieces and in stacks of 64."),
    "commissioning": QT_TR_NOOP(
        "The fewest test runs that show every fault. Note what each cart did; the list says what to look at."
    ),
    "switches": QT_TR_NOOP(
        "Each switch with its two states, how it must lie for an empty cart, and which readers throw it."
    ),
    "routes": QT_TR_NOOP(
        "What is wanted: from which arm to which, empty and with a waybill; edited in place."
    ),
    "readers": QT_TR_NOOP("For each arm with a called route: its waybill, and the switches that it throws."),
    "pieces": QT_TR_NOOP("Every piece of the plan, level by level: the drawing as a list."),
    "tray": QT_TR_NOOP("The parts. Choosing one takes it in hand; a click on the plan places it."),
    "in_hand": QT_TR_NOOP("What is in hand, the way in which it faces, and the keys that change it."),
    "modules": QT_TR_NOOP("Ready circuits. Choosing one takes it in hand; a click puts down all of it."),
    "levels": QT_TR_NOOP(
        "The levels of the plan with their pieces; choosing one draws on it, its menu locks or hides it."
    ),
    "orientations": QT_TR_NOOP(
        "The plan turned and mirrored in eight ways, with the inverters that each needs; choose one."
    ),
    "comparison": QT_TR_NOOP("What another plan has otherwise: what to place, take away, turn and change."),
    "timing": QT_TR_NOOP("What the probes of a dry run read, tick by tick."),
    "message": QT_TR_NOOP("What went wrong, and what became of it; it stays until it is closed."),
}
"""By the name of the panel in the plan window."""

NETWORK_PANELS: Final = {
    "trips": QT_TR_NOOP("Who rides where, which waybills to take, and how long it lasts."),
    "readers": QT_TR_NOOP("Each reader with the name of its waybill; a pinned name stays as it is."),
    "stations": QT_TR_NOOP("Each station, and what it takes to go from there."),
    "findings": PANELS["findings"],
    "summary": QT_TR_NOOP("How much the network needs in all."),
    "message": PANELS["message"],
}
"""By the name of the panel in the network window."""

STATUS: Final = {
    "place": QT_TR_NOOP("The cell of the cursor: x to the east, y up, z to the south."),
    "here": QT_TR_NOOP("What lies in the cell of the cursor, or what was just done."),
    "chosen": QT_TR_NOOP("How many pieces are chosen."),
    "counts": QT_TR_NOOP("How many errors, warnings and notes there are that are not set aside."),
    "recovery": QT_TR_NOOP("Whether all is saved, and when the copy was made that outlives a crash."),
}
"""By the name of the item in the status bar."""
VIEW: Final = QT_TR_NOOP(
    "The plan, seen from above, north up. The tool in use says what a click does; "
    "the arrows move a cursor, and Enter does there what a click does."
)
MAP: Final = QT_TR_NOOP("The network: stations, junctions and the links between them.")
MENUS: Final = QT_TR_NOOP("All that can be done, by name. Alt and a letter open a menu.")
TOLD: Final = "told"
"""The property of a button whose words are those of its action."""
TABS: Final = QT_TR_NOOP("Tabs: each brings a list to the front.")


def tell_of_actions(bound: Mapping[str, QAction], table: Sequence[UserAction]) -> None:
    """Menus and tool buttons tell the tip of the table, with the keys that hold now."""
    for entry in table:
        keys = ", ".join(map(shown, keys_of(entry)))
        said = tr("{title}. {tip} Keys: {keys}.", title=entry.text.rstrip("…"), tip=entry.tip, keys=keys)
        bound[entry.name].setWhatsThis(said if keys else f"{entry.text.rstrip('…')}. {entry.tip}")


def tell_of_panels(panels: object, texts: Mapping[str, str]) -> None:
    """Each panel tells its sentence, and so do the items of the status bar."""
    for name, text in texts.items():
        getattr(panels, name).setWhatsThis(tr(text))
    status = panels.status  # type: ignore[attr-defined]  # both kinds of windows have one
    for name, text in STATUS.items():
        getattr(status, name).setWhatsThis(tr(text))


def tell_of_parts(tray: Tray) -> None:
    """Each row of the tray tells what its part does."""
    for row in range(tray.count()):
        item = tray.item(row)
        part = part_of(item)
        if part is not None:
            item.setData(Qt.ItemDataRole.WhatsThisRole, f"{part_name(part)}. {part_about(part)}")


def tell_of_buttons(root: QWidget, bound: Mapping[str, QAction]) -> None:
    """A button tells what its action tells, else its tip, unless it has words of its own."""
    by_text = {action.text(): action.whatsThis() for action in bound.values()}
    for button in root.findChildren(QAbstractButton):
        said = by_text.get(button.text(), "") or button.toolTip()
        if said and (not button.whatsThis() or button.property(TOLD)):
            button.setWhatsThis(plain_tip(said))
            button.setProperty(TOLD, True)
