"""What the keys do in the timing diagram."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt

from app.translation import tr
from app.view_keys import IN_THE_DIAGRAM

if TYPE_CHECKING:
    from app.panels.timing_view import TimingView

_NONE, _CTRL = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ControlModifier
_KEY = Qt.Key

KEYS: Final[dict[tuple[Qt.Key, Qt.KeyboardModifier], Callable[[TimingView], None]]] = {
    (_KEY.Key_Left, _NONE): lambda view: view.put_cursor(view.tick - 1),
    (_KEY.Key_Right, _NONE): lambda view: view.put_cursor(view.tick + 1),
    (_KEY.Key_Left, _CTRL): lambda view: view.go_to_change(forward=False),
    (_KEY.Key_Right, _CTRL): lambda view: view.go_to_change(forward=True),
    (_KEY.Key_Home, _NONE): lambda view: view.put_cursor(0),
    (_KEY.Key_End, _NONE): lambda view: view.put_cursor(None),
    (_KEY.Key_Up, _NONE): lambda view: view.choose_row(view.row - 1),
    (_KEY.Key_Down, _NONE): lambda view: view.choose_row(view.row + 1),
    (_KEY.Key_PageUp, _NONE): lambda view: view.scroll_pages(-1),
    (_KEY.Key_PageDown, _NONE): lambda view: view.scroll_pages(1),
    (_KEY.Key_Plus, _NONE): lambda view: view.zoom(closer=True),
    (_KEY.Key_Equal, _NONE): lambda view: view.zoom(closer=True),
    (_KEY.Key_Minus, _NONE): lambda view: view.zoom(closer=False),
    (_KEY.Key_0, _NONE): lambda view: view.show_whole_run(),
    (_KEY.Key_Delete, _NONE): lambda view: view.ask_removal(),
    (_KEY.Key_Backspace, _NONE): lambda view: view.ask_removal(),
    (_KEY.Key_Return, _NONE): lambda view: view.ask_cell(),
    (_KEY.Key_Enter, _NONE): lambda view: view.ask_cell(),
}
"""By the key and whether Ctrl is held."""


def keys_in_words() -> str:
    """What each key does, a line each."""
    return "\n".join(f"{tr(keys)}: {tr(does)}" for keys, does in IN_THE_DIAGRAM)
