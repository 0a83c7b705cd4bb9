"""The search for a wiring, and placing the one that was found."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.dialogs.wiring import WiringDialog
from app.wire_words import lines_words
from model.wiring.result import Wiring

if TYPE_CHECKING:
    from app.window import MainWindow


def show_wiring(window: MainWindow) -> WiringDialog:
    """Begin the search, or bring the one to the front that is open.

    A window keeps its one dialog: the thread of a search must not outlive what it reports to.
    """
    dialog = window.findChild(WiringDialog)
    if dialog is None:
        dialog = WiringDialog(window, window.document)
        dialog.placed.connect(lambda wiring: place_wiring(window, wiring))
        dialog.asked.connect(lambda cells: window.view.show_cells(cells))
    if not dialog.isVisible():
        dialog.begin()
    dialog.show()
    dialog.raise_()
    dialog.activateWindow()
    return dialog


def place_wiring(window: MainWindow, wiring: Wiring) -> None:
    """Place what was found, as one step."""
    assert wiring.change is not None
    window.document.apply(wiring.change)
    window.panels.status.say(f"{lines_words(wiring).capitalize()}.")
