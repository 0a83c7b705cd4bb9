"""The search for a build order, and placing in the one that was chosen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.dialogs.build_order import BuildOrderDialog
from app.order_words import needs_words
from app.translation import tr
from model.edits import set_build_order, turn_and_order
from model.grid import Turn
from model.ordering import BuildOrder

if TYPE_CHECKING:
    from app.window import MainWindow


def show_build_order(window: MainWindow) -> BuildOrderDialog:
    """Begin the search, or bring the one to the front that is open.

    A window keeps its one dialog: the thread of a search must not outlive what it reports to.
    """
    dialog = window.findChild(BuildOrderDialog)
    if dialog is None:
        dialog = BuildOrderDialog(window, window.document)
        dialog.placed.connect(lambda turn, order: place_in_order(window, turn, order))
    if not dialog.isVisible():
        dialog.begin()
    dialog.show()
    dialog.raise_()
    dialog.activateWindow()
    return dialog


def place_in_order(window: MainWindow, turn: Turn, order: BuildOrder) -> None:
    """Turn the plan where that is asked for, and set its order, as one step."""
    document, view = window.document, window.view
    if turn == Turn():
        document.edit(set_build_order, order.rails)
    else:
        with view.carry_choice(turn.cell):
            document.edit(turn_and_order, turn, order.rails)
        view.fit_all()
    window.panels.status.say(tr("Placed in this order: {needs}.", needs=needs_words(order)))
