"""What the menu Plan does: title, running side, sheet data, places, turns."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractContextManager
from typing import Final

from PySide6.QtWidgets import QWidget

from app.dialogs.asking import asking
from app.dialogs.cell import CellDialog
from app.dialogs.details import sheet_dialog, title_dialog
from app.document import Document
from app.translation import tr
from model.edits import move_plan, set_running_side, set_sheet, set_title, turn_plan
from model.grid import Cell, Turn
from model.plan import Change, Plan, Side

CLOCKWISE: Final = Turn(1)
BACK: Final = Turn(3)
MIRROR: Final = Turn(0, mirror=True)


CarryChoice = Callable[[Callable[[Cell], Cell]], AbstractContextManager[None]]
"""Lets what is chosen follow an edit that takes every cell to another."""


class PlanCommands:
    """Each is one undo step."""

    def __init__(
        self,
        parent: QWidget,
        document: Document,
        cursor: Callable[[], Cell],
        go_to: Callable[[Cell], None],
        carry_choice: CarryChoice,
    ) -> None:
        self._parent = parent
        self._document = document
        self._cursor = cursor
        self._go_to = go_to
        self._carry_choice = carry_choice

    def title(self) -> None:
        """Ask for the title and set it."""
        with asking(title_dialog(self._parent, self._document.plan.details.title)) as dialog:
            if dialog.exec():
                self._document.edit(set_title, dialog.texts["title"])

    def sheet_data(self) -> None:
        """Ask for the title block and set it."""
        sheet = self._document.plan.details.sheet
        with asking(sheet_dialog(self._parent, sheet)) as dialog:
            if dialog.exec():
                self._document.edit(set_sheet, type(sheet)(**dialog.texts, kept=sheet.kept))

    def running_side(self, side: Side | None) -> None:
        """Set the side on which carts run."""
        self._document.edit(set_running_side, side)

    def go_to(self) -> None:
        """Ask for a cell and show it."""
        with asking(
            CellDialog(
                self._parent, tr("Go to x y z"), tr("Shows the cell and its level."), tr("Go"), self._cursor()
            )
        ) as dialog:
            if dialog.exec():
                self._go_to(dialog.cell)

    def move(self) -> None:
        """Ask for the place that the cursor's cell is to have, and move the whole plan with it."""
        here = self._cursor()
        sentence = tr(
            "The cell of the cursor, now at {here}, comes to this place; the whole plan follows.", here=here
        )
        with asking(CellDialog(self._parent, tr("Move plan to x y z"), sentence, tr("Move"), here)) as dialog:
            if dialog.exec():
                there = dialog.cell
                step = (there.x - here.x, there.y - here.y, there.z - here.z)
                with self._carry_choice(lambda cell: cell.moved(*step)):
                    moved = self._make(lambda plan: move_plan(plan, *step), tr("Moving the plan…"))
                if moved is not None:
                    self._go_to(there)

    def turn(self, turn: Turn) -> None:
        """Turn the whole plan about x = z = 0."""
        with self._carry_choice(turn.cell):
            self._make(lambda plan: turn_plan(plan, turn), tr("Turning the plan…"))

    def _make(self, edit: Callable[[Plan], Change], words: str) -> Change | None:
        """An edit of all pieces."""
        return self._document.make(edit, len(self._document.plan.pieces), words)
