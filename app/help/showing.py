"""Opens the help of a window, and What's This."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QMainWindow, QWhatsThis

if TYPE_CHECKING:
    from app.help.dialog import HelpDialog


def show_help(window: QMainWindow, key: str | None) -> HelpDialog:
    """The help at an entry, or at its beginning; a window has one, which comes to the front again."""
    # The help is loaded when it is first wanted, so that the window comes up sooner.
    from app.help.dialog import HelpDialog

    dialog = window.findChild(HelpDialog) or HelpDialog(window)
    if key is not None:
        dialog.go_to(key)
    dialog.show()
    dialog.raise_()
    dialog.activateWindow()
    (dialog.line if key is None else dialog.index).setFocus()
    return dialog


def ask_what_this_is() -> None:
    """The next click, or the focus and Space, asks what something is; Esc ends that."""
    QWhatsThis.enterWhatsThisMode()
