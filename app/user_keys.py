"""The keys that the user gave to actions instead of those in the table.

They hold for the program, as there is one user. No Qt here. Sequences of keys are written as Qt writes them
in files, ``Ctrl+Shift+Z``.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import ClassVar, Final, NamedTuple

from app.actions import ACTIONS, UserAction
from app.network.actions import NETWORK_ACTIONS
from app.translation import QT_TR_NOOP, tr

Chosen = Mapping[str, tuple[str, ...]]
"""By the name of an action, all its keys; an action that is not named keeps those of the table."""

TABLES: Final = (ACTIONS, NETWORK_ACTIONS)
"""One for each kind of window: a key may mean one thing in one and another in the other."""

_BY_NAME: Final = {entry.name: entry for table in TABLES for entry in table}

OF_THE_DRAWING: Final = {
    "R": QT_TR_NOOP("turns what is in hand"),
    "D": QT_TR_NOOP("changes delay and mode"),
    "M": QT_TR_NOOP("mirrors what is carried"),
    "W": QT_TR_NOOP("loads the test cart"),
    "Left": QT_TR_NOOP("moves the cursor"),
    "Right": QT_TR_NOOP("moves the cursor"),
    "Up": QT_TR_NOOP("moves the cursor"),
    "Down": QT_TR_NOOP("moves the cursor"),
    "Ctrl+Left": QT_TR_NOOP("moves what is chosen"),
    "Ctrl+Right": QT_TR_NOOP("moves what is chosen"),
    "Ctrl+Up": QT_TR_NOOP("moves what is chosen"),
    "Ctrl+Down": QT_TR_NOOP("moves what is chosen"),
    "Shift+Left": QT_TR_NOOP("goes to the next station or junction"),
    "Shift+Right": QT_TR_NOOP("goes to the next station or junction"),
    "Shift+Up": QT_TR_NOOP("goes to the next station or junction"),
    "Shift+Down": QT_TR_NOOP("goes to the next station or junction"),
    "Return": QT_TR_NOOP("acts at the cursor"),
    "Enter": QT_TR_NOOP("acts at the cursor"),
    "Shift+Return": QT_TR_NOOP("acts at the cursor"),
    "Shift+Enter": QT_TR_NOOP("acts at the cursor"),
    "Num+Enter": QT_TR_NOOP("acts at the cursor"),
    "Shift+Num+Enter": QT_TR_NOOP("acts at the cursor"),
    "Space": QT_TR_NOOP("moves the view"),
    "Esc": QT_TR_NOOP("goes a step back"),
    "Tab": QT_TR_NOOP("goes to the next field"),
    "Shift+Tab": QT_TR_NOOP("goes to the field before"),
    "Shift+Backtab": QT_TR_NOOP("goes to the field before"),
}
"""Keys that no action may have: the drawing, or every window, would lose them."""


LETTER_OF_A_MENU: Final = re.compile(r"Alt\+[^\W\d_]")
"""Which letters they are hangs on the language; the menu would open in place of the action."""


class _User:
    chosen: ClassVar[Chosen] = {}


def take(chosen: Chosen) -> None:
    """Let these hold from now on."""
    _User.chosen = dict(chosen)


def chosen() -> Chosen:
    """What the user chose otherwise than the table."""
    return _User.chosen


def keys_of(entry: UserAction) -> tuple[str, ...]:
    """The keys that an action has now; the first one is shown."""
    return _User.chosen.get(entry.name, entry.keys)


def entry_of(name: str) -> UserAction:
    """The action of that name, of whichever kind of window. Raises KeyError."""
    return _BY_NAME[name]


def with_keys(entry: UserAction, keys: tuple[str, ...]) -> Chosen:
    """The choice with other keys for an action; those of the table are no choice."""
    others = {name: given for name, given in _User.chosen.items() if name != entry.name}
    return others if keys == entry.keys else {**others, entry.name: keys}


class Clash(NamedTuple):
    """Who has a key already."""

    words: str
    """Its text, or what the key does in the drawing."""
    entry: UserAction | None
    """``None`` where the key cannot be taken."""


def clash_of(entry: UserAction, key: str) -> Clash | None:
    """What else would answer to a key in a window that has the action."""
    if LETTER_OF_A_MENU.fullmatch(key):
        return Clash(tr("opens a menu"), None)
    if key in OF_THE_DRAWING:
        return Clash(tr(OF_THE_DRAWING[key]), None)
    return next((Clash(other.text, other) for other in _beside(entry) if key in keys_of(other)), None)


def _beside(entry: UserAction) -> Iterator[UserAction]:
    for table in TABLES:
        if any(other.name == entry.name for other in table):
            yield from (other for other in table if other.name != entry.name)
