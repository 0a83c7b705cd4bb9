"""Select: choose by click or band, move or copy the chosen by dragging, nudge and turn them by key.

In a dry run a click on a lever or a button works it instead.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

import msgspec

from app.tools.boxes import SHOWN_UP_TO, Box, box_of
from app.tools.events import Key, Modifiers, PointerEvent
from app.tools.host import Ghost
from app.tools.tool import Tool
from app.translation import QT_TR_NOOP, tr
from model.edits import EditRefused, copy_pieces, move, paste, set_next, turn_pieces
from model.grid import Cell, Heading, Turn
from model.plan import Change, Plan

NUDGES: Final = {
    Key.UP: Heading.NORTH,
    Key.RIGHT: Heading.EAST,
    Key.DOWN: Heading.SOUTH,
    Key.LEFT: Heading.WEST,
}
MOVING: Final = QT_TR_NOOP("Moving what is chosen…")
QUARTER: Final = Turn(1)
MIRROR: Final = Turn(0, mirror=True)


@dataclass(frozen=True)
class Pressing:
    """The button is down and has not left its cell."""

    cell: Cell
    before: frozenset[Cell]
    """What was chosen before the press."""


@dataclass(frozen=True)
class Banding:
    """A band is drawn from this corner."""

    corner: Cell
    before: frozenset[Cell]
    kept: frozenset[Cell]
    """What stays chosen beside what the band holds."""


@dataclass(frozen=True)
class Moving:
    """The chosen pieces are carried from here."""

    start: Cell
    before: frozenset[Cell]
    cells: frozenset[Cell]
    at: Cell
    box: Box | None = None
    """Around the chosen, where they are too many to be shown one by one."""
    copying: bool = False


@dataclass(frozen=True)
class Working:
    """In a dry run the button went down on a lever or a button; it is worked when let go there."""

    cell: Cell


class SelectTool(Tool):
    """Idle (state ``None``), pressing, banding, moving, or working a lever."""

    name = "select"
    drags_by_key = True
    state: Pressing | Banding | Moving | Working | None = None

    @property
    def is_busy(self) -> bool:
        """While the button is down."""
        return self.state is not None

    @property
    def waits_for_drag(self) -> bool:
        """A lever is worked at once."""
        return not isinstance(self.state, Working)

    def press(self, event: PointerEvent) -> None:
        """Chooses the piece under the pointer, unless it is chosen; Shift takes it in or out."""
        before = self.host.selection
        if not event.modifiers and self.host.can_work(event.cell):
            self.state = Working(event.cell)
            return
        self.state = Pressing(event.cell, before)
        if event.cell not in self.host.plan.pieces:
            return
        if event.modifiers & Modifiers.SHIFT:
            self.host.choose(before ^ {event.cell})
        elif event.cell not in before:
            self.host.choose(frozenset({event.cell}))

    def drag(self, event: PointerEvent) -> None:
        """Carries the chosen pieces, or draws the band on."""
        if isinstance(self.state, Pressing) and event.cell != self.state.cell:
            self.state = self._begun(self.state, event)
        if isinstance(self.state, Banding):
            band = self.host.cells_in(self.state.corner, event.cell)
            self.host.choose(self.state.kept | band)
            self.host.show_band((self.state.corner, event.cell))
        elif isinstance(self.state, Moving):
            copying = bool(event.modifiers & Modifiers.CTRL)
            self.state = replace(self.state, at=event.cell, copying=copying)
            self._show_carried(self.state)

    def release(self, event: PointerEvent) -> None:
        """Ends the drag; a click on nothing chooses nothing, on one of several just that one."""
        self.drag(event)
        if isinstance(self.state, Working) and event.cell == self.state.cell:
            self.host.work(event.cell)
        if isinstance(self.state, Pressing) and not event.modifiers & Modifiers.SHIFT:
            cell = self.state.cell
            self.host.choose(frozenset({cell} if cell in self.host.plan.pieces else ()))
        self.complete()

    def complete(self) -> bool:
        """Puts the pieces down where the ghost shows them."""
        state, self.state = self.state, None
        if state is None:
            return False
        self.host.show_band(None)
        self.host.show_ghost(None)
        if isinstance(state, Moving):
            self._put_down(state)
        return True

    def cancel(self) -> bool:
        """Drops the drag; what was chosen before the press is chosen again."""
        state, self.state = self.state, None
        if state is None:
            return False
        self.host.show_band(None)
        self.host.show_ghost(None)
        if not isinstance(state, Working):
            self.host.choose(state.before)
        return True

    def key(self, key: Key, modifiers: Modifiers) -> bool:
        """Ctrl and an arrow nudge the chosen pieces by a cell; R turns, M mirrors, D sets them anew."""
        if self.is_busy or not self.host.selection:
            return False
        if modifiers == Modifiers.CTRL and key in NUDGES:
            step = Cell(0, 0, 0).step(NUDGES[key])
            return self._edit(lambda plan, cells: move(plan, cells, *step), tr(MOVING))
        if modifiers == Modifiers.NONE and key is Key.CYCLE:
            return self._edit(set_next, tr("Setting what is chosen…"))
        if modifiers == Modifiers.NONE and key in (Key.TURN, Key.MIRROR):
            return self.turn(QUARTER if key is Key.TURN else MIRROR)
        return False

    def turn(self, turn: Turn) -> bool:
        """Turns the chosen pieces about their middle; they stay chosen."""
        return self._edit(lambda plan, cells: turn_pieces(plan, cells, turn), tr("Turning what is chosen…"))

    def _begun(self, state: Pressing, event: PointerEvent) -> Banding | Moving:
        shift = bool(event.modifiers & Modifiers.SHIFT)
        chosen = self.host.selection
        # Where something was taken back, cells are ringed on which nothing stands: no piece is dragged there.
        if state.cell in chosen and state.cell in self.host.plan.pieces and not shift:
            box = box_of(chosen) if len(chosen) > SHOWN_UP_TO else None
            return Moving(state.cell, state.before, chosen, event.cell, box)
        return Banding(state.cell, state.before, state.before if shift else frozenset())

    def _show_carried(self, state: Moving) -> None:
        if state.box is not None:
            lowest, highest = state.box
            self.host.show_band((lowest.moved(*_step(state)), highest.moved(*_step(state))))
            return
        try:
            self.host.show_ghost(Ghost(_carried(self.host.plan, state)))
        except EditRefused as refused:
            self.host.say(str(refused))
            self.host.show_ghost(Ghost())

    def _put_down(self, state: Moving) -> None:
        if state.at == state.start:
            return
        change = self.host.make(lambda plan: _carried(plan, state), len(state.cells), tr(MOVING))
        if change is not None:
            self.host.choose(frozenset(entry.piece.at for entry in change.placed))

    def _edit(self, edit: Callable[[Plan, frozenset[Cell]], Change], words: str) -> bool:
        cells = self.host.selection
        change = self.host.make(lambda plan: edit(plan, cells), len(cells), words)
        if change is None:
            return True
        moved = {entry.piece.at for entry in change.placed}
        stayed = self.host.selection - {entry.piece.at for entry in change.taken}
        self.host.choose(stayed | moved)
        return True


def _step(state: Moving) -> tuple[int, int, int]:
    return state.at.x - state.start.x, state.at.y - state.start.y, state.at.z - state.start.z


def _carried(plan: Plan, state: Moving) -> Change:
    return (
        _copied(plan, state.cells, _step(state)) if state.copying else move(plan, state.cells, *_step(state))
    )


def _copied(plan: Plan, cells: frozenset[Cell], step: tuple[int, int, int]) -> Change:
    pieces = copy_pieces(plan, cells)
    moved = [msgspec.structs.replace(piece, at=piece.at.moved(*step)) for piece in pieces]
    change = paste(plan, moved)
    return msgspec.structs.replace(change, label=change.label.replace("Paste", "Copy", 1))
