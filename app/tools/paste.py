"""Paste: the pieces follow the pointer until a click puts them down; R turns them, M mirrors them."""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from app.tools.boxes import SHOWN_UP_TO, Box, box_of
from app.tools.events import Key, Modifiers, PointerEvent
from app.tools.host import Ghost, Host
from app.tools.select import MIRROR, QUARTER, SelectTool
from app.tools.tool import Tool
from app.translation import tr
from model.edits import EditRefused, paste
from model.grid import Cell, Turn
from model.pieces import Piece
from model.plan import Change, Plan


class PasteTool(Tool):
    """Holds pieces about their middle, until they are put down once or dropped."""

    name = SelectTool.name
    """To the builder, pasting is a part of choosing and moving."""

    def __init__(self, host: Host, pieces: tuple[Piece, ...], at: Cell) -> None:
        super().__init__(host)
        self.at = at
        self._pieces = pieces
        self._turn = Turn()
        self._box = box_of(piece.at for piece in pieces) if pieces else None

    @property
    def is_busy(self) -> bool:
        """Until the pieces are put down."""
        return bool(self._pieces)

    def enter(self) -> None:
        """Shows the pieces at the pointer."""
        self._show()

    def hover(self, event: PointerEvent) -> None:
        """Carries the pieces on."""
        self.at = event.cell
        self._show()

    def press(self, event: PointerEvent) -> None:
        """The pieces stay carried until the button goes up."""
        self.hover(event)

    def drag(self, event: PointerEvent) -> None:
        """Carries the pieces on."""
        self.hover(event)

    def release(self, event: PointerEvent) -> None:
        """Puts the pieces down."""
        self.hover(event)
        self.complete()

    def complete(self) -> bool:
        """Puts the pieces down, and chooses them."""
        if not self._pieces:
            return False
        change = self.host.make(self._paste(), len(self._pieces), tr("Pasting the pieces…"))
        if change is None:
            return False
        self.cancel()
        self.host.choose(frozenset(entry.piece.at for entry in change.placed))
        return True

    def cancel(self) -> bool:
        """Drops the pieces."""
        if not self._pieces:
            return False
        self._pieces = ()
        self.host.show_ghost(None)
        self.host.show_band(None)
        return True

    def key(self, key: Key, modifiers: Modifiers) -> bool:
        """R turns the pieces a quarter clockwise, M mirrors them east to west."""
        if modifiers or key not in (Key.TURN, Key.MIRROR):
            return False
        self._turn = self._turn.then(QUARTER if key is Key.TURN else MIRROR)
        self._show()
        return True

    def _show(self) -> None:
        if len(self._pieces) > SHOWN_UP_TO:
            goes_to, (lowest, highest) = self._goes_to(), self._known_box
            self.host.show_band((goes_to(lowest), goes_to(highest)))
        elif self._pieces:
            self.host.show_ghost(Ghost(self._change()))

    def _change(self) -> Change | None:
        try:
            return self._paste()(self.host.plan)
        except EditRefused as refused:
            self.host.say(str(refused))
            return None

    def _paste(self) -> Callable[[Plan], Change]:
        """The edit that puts the pieces down where they are held now."""
        pieces, turn, goes_to = self._pieces, self._turn, self._goes_to()
        return lambda plan: paste(plan, [_placed(piece, turn, goes_to) for piece in pieces])

    def _goes_to(self) -> Callable[[Cell], Cell]:
        """Where a cell of what was copied lies now: the middle of its lowest level is at the pointer."""
        lowest, highest = self._known_box
        x, y, z = (lowest.x + highest.x) // 2, lowest.y, (lowest.z + highest.z) // 2
        turn, at = self._turn, self.at
        return lambda cell: turn.cell(cell.moved(-x, -y, -z)).moved(*at)

    @property
    def _known_box(self) -> Box:
        assert self._box is not None, "something is carried"
        return self._box


def _placed(piece: Piece, turn: Turn, goes_to: Callable[[Cell], Cell]) -> Piece:
    return msgspec.structs.replace(piece, at=goes_to(piece.at), facing=turn.facing(piece.facing))
