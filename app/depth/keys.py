"""What the keys do in the view in depth."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

if TYPE_CHECKING:
    from app.depth.view import DepthView

Pressed = tuple[Qt.Key, bool]
"""A key, and whether Ctrl is held."""
STEP: Final = 64
"""px that an arrow with Ctrl moves the picture."""

_KEY = Qt.Key
KEYS: Final[dict[Pressed, Callable[[DepthView], None]]] = {
    (_KEY.Key_Left, False): lambda view: view.turn(1),
    (_KEY.Key_Right, False): lambda view: view.turn(-1),
    (_KEY.Key_Up, False): lambda view: view.ask_level(1),
    (_KEY.Key_Down, False): lambda view: view.ask_level(-1),
    (_KEY.Key_Plus, False): lambda view: view.pull(1),
    (_KEY.Key_Equal, False): lambda view: view.pull(1),
    (_KEY.Key_Minus, False): lambda view: view.pull(-1),
    (_KEY.Key_0, False): lambda view: view.fit(),
    (_KEY.Key_0, True): lambda view: view.fit(),
    (_KEY.Key_O, False): lambda view: view.show_next_levels(),
    (_KEY.Key_W, False): lambda view: view.show_or_leave_out_ways(),
    (_KEY.Key_Plus, True): lambda view: view.zoom(1),
    (_KEY.Key_Equal, True): lambda view: view.zoom(1),
    (_KEY.Key_Minus, True): lambda view: view.zoom(-1),
    (_KEY.Key_Left, True): lambda view: view.pan(STEP, 0),
    (_KEY.Key_Right, True): lambda view: view.pan(-STEP, 0),
    (_KEY.Key_Up, True): lambda view: view.pan(0, STEP),
    (_KEY.Key_Down, True): lambda view: view.pan(0, -STEP),
}


def pressed(event: QKeyEvent) -> Pressed:
    """The key of an event as the table has it."""
    return Qt.Key(event.key()), bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
