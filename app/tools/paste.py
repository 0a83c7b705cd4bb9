"""Paste: the pieces follow the pointer until a click puts them down; R turns them, M mirrors them."""

from __future__ import annotations

import msgspec

from app.tools.events import Key, Modifiers, PointerEvent
from app.tools.host import Ghost, Host
from app.tools.select import MIRROR, QUARTER, SelectTool
from app.tools.tool import Tool
from model.edits import EditRefused, paste
from model.grid import Cell, Turn
from model.pieces import Piece
from model.plan import Change


class PasteTool(Tool):
    """Holds pieces about their middle, until they are put down once or dropped."""

    name = SelectTool.name
    """To the builder, pasting is a part of choosing and moving."""

    def __init__(self, host: Host, pieces: tuple[Piece, ...], at: Cell) -> None:
        super().__init__(host)
        self.pieces = _about_origin(pieces)
        self.at = at

    @property
    def is_busy(self) -> bool:
        """Until the pieces are put down."""
        return bool(self.pieces)

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
        change = self._change() if self.pieces else None
        if change is None:
            return False
        self.cancel()
        if self.host.commit(change):
            self.host.choose(frozenset(entry.piece.at for entry in change.placed))
        return True

    def cancel(self) -> bool:
        """Drops the pieces."""
        if not self.pieces:
            return False
        self.pieces = ()
        self.host.show_ghost(None)
        return True

    def key(self, key: Key, modifiers: Modifiers) -> bool:
        """R turns the pieces a quarter clockwise, M mirrors them east to west."""
        if modifiers or key not in (Key.TURN, Key.MIRROR):
            return False
        turn = QUARTER if key is Key.TURN else MIRROR
        self.pieces = tuple(_turned(piece, turn) for piece in self.pieces)
        self._show()
        return True

    def _show(self) -> None:
        if self.pieces:
            self.host.show_ghost(Ghost(self._change()))

    def _change(self) -> Change | None:
        pieces = [_moved(piece, self.at.x, self.at.y, self.at.z) for piece in self.pieces]
        try:
            return paste(self.host.plan, pieces)
        except EditRefused as refused:
            self.host.say(str(refused))
            return None


def _about_origin(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """The pieces with the middle of their lowest level at 0 0 0."""
    if not pieces:
        return ()
    xs, ys, zs = zip(*(piece.at for piece in pieces), strict=True)
    x, z = (min(xs) + max(xs)) // 2, (min(zs) + max(zs)) // 2
    return tuple(_moved(piece, -x, -min(ys), -z) for piece in pieces)


def _moved(piece: Piece, dx: int, dy: int, dz: int) -> Piece:
    return msgspec.structs.replace(piece, at=piece.at.moved(dx, dy, dz))


def _turned(piece: Piece, turn: Turn) -> Piece:
    return msgspec.structs.replace(piece, at=turn.cell(piece.at), facing=turn.facing(piece.facing))
