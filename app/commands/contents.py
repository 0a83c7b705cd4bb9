"""What lies in a container: asked for, and set as one step."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.dialogs.asking import asking
from app.dialogs.contents import ContentsDialog
from app.translation import tr
from model.edits import set_piece
from model.parts import TRAITS
from model.pieces import Piece

if TYPE_CHECKING:
    from app.window import MainWindow


def ask_contents(window: MainWindow) -> None:
    """Ask what the chosen container holds, or that under the cursor."""
    piece = _container(window)
    if piece is None:
        window.panels.status.say(tr("Choose a hopper, a barrel or an auto-crafter to say what it holds."))
        return
    with asking(ContentsDialog(window, window.document.plan, piece)) as dialog:
        if dialog.exec() and dialog.piece != piece:
            window.document.edit(set_piece, dialog.piece)


def _container(window: MainWindow) -> Piece | None:
    """The one that is chosen; where none or several pieces are, the one under the cursor."""
    view, pieces = window.view, window.document.plan.pieces
    cell = next(iter(view.selection)) if len(view.selection) == 1 else view.cursor
    piece = pieces.get(cell)
    return piece if piece is not None and TRAITS[piece.part].slots else None
