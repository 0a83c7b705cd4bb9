"""From Qt's keys, buttons and modifiers to those that tools know."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QKeySequence

from app import user_keys
from app.tools.events import Buttons, Key, Modifiers
from model.grid import Heading

KEYS: Final = {
    Qt.Key.Key_R: Key.TURN,
    Qt.Key.Key_D: Key.CYCLE,
    Qt.Key.Key_M: Key.MIRROR,
    Qt.Key.Key_W: Key.WAYBILL,
    Qt.Key.Key_Left: Key.LEFT,
    Qt.Key.Key_Right: Key.RIGHT,
    Qt.Key.Key_Up: Key.UP,
    Qt.Key.Key_Down: Key.DOWN,
}
ARROWS: Final = {
    Qt.Key.Key_Up: Heading.NORTH,
    Qt.Key.Key_Right: Heading.EAST,
    Qt.Key.Key_Down: Heading.SOUTH,
    Qt.Key.Key_Left: Heading.WEST,
}


def modifiers_of(held: Qt.KeyboardModifier) -> Modifiers:
    """Shift, Ctrl and Alt; the key pad does not count."""
    found = Modifiers.NONE
    for theirs, ours in (
        (Qt.KeyboardModifier.ShiftModifier, Modifiers.SHIFT),
        (Qt.KeyboardModifier.ControlModifier, Modifiers.CTRL),
        (Qt.KeyboardModifier.AltModifier, Modifiers.ALT),
    ):
        if held & theirs:
            found |= ours
    return found


def buttons_of(down: Qt.MouseButton) -> Buttons:
    """The left and the right button."""
    found = Buttons.NONE
    if down & Qt.MouseButton.LeftButton:
        found |= Buttons.LEFT
    if down & Qt.MouseButton.RightButton:
        found |= Buttons.RIGHT
    return found


def takes_back(event: QKeyEvent) -> bool:
    """Whether the key is one of Undo's: a view gets it while there is no step that the action could undo."""
    pressed = QKeySequence(event.keyCombination())
    return any(pressed == QKeySequence(key) for key in user_keys.keys_of(user_keys.entry_of("undo")))
