"""Place: puts the part in hand where the pointer clicks, or along a drag."""

from __future__ import annotations

from dataclasses import dataclass

import msgspec

from app.tools.events import Key, Modifiers, PointerEvent
from app.tools.hand import Hand
from app.tools.host import Ghost
from app.tools.paths import Path, extended
from app.tools.tool import Tool
from model.edits import EditRefused, paste, place
from model.grid import Cell
from model.plan import Change


@dataclass(frozen=True)
class Placing:
    """The button is down; the drag went along this path."""

    path: Path


class PlaceTool(Tool):
    """Idle (state ``None``, the part in hand hovers) or placing."""

    name = "place"
    state: Placing | None = None
    hovered: Cell | None = None

    @property
    def is_busy(self) -> bool:
        """While the button is down."""
        return self.state is not None

    def leave(self) -> None:
        """Takes the hovering part away, too."""
        super().leave()
        self.hovered = None
        self.host.show_ghost(None)

    def hover(self, event: PointerEvent) -> None:
        """Shows the part in hand where it would go."""
        self.hovered = event.cell
        self._show()

    def press(self, event: PointerEvent) -> None:
        """Begins with one piece."""
        self.state = Placing((event.cell,))
        self._show()

    def drag(self, event: PointerEvent) -> None:
        """One piece more for each cell passed; a change of level drops the drag."""
        if self.state is None:
            return
        if event.cell.y != self.state.path[0].y:
            self.interrupt()
            return
        self.state = Placing(extended(self.state.path, event.cell))
        self._show()

    def release(self, event: PointerEvent) -> None:
        """Places for good."""
        self.drag(event)
        self.complete()

    def complete(self) -> bool:
        """Places what the ghost shows."""
        if self.state is None:
            return False
        change = self._change(self.state.path)
        self.cancel()
        if change is not None:
            self.host.commit(change)
        return True

    def cancel(self) -> bool:
        """Drops the drag."""
        if self.state is None:
            return False
        self.state = None
        self.host.show_ghost(None)
        return True

    def key(self, key: Key, modifiers: Modifiers) -> bool:
        """R turns what is in hand; D goes to its next delay or mode."""
        if modifiers or key not in (Key.TURN, Key.CYCLE):
            return False
        hand = self.host.hand
        self.host.take_in_hand(hand.turned() if key is Key.TURN else hand.cycled())
        self._show()
        return True

    def _show(self) -> None:
        path = self.state.path if self.state else (self.hovered,) if self.hovered else ()
        self.host.show_ghost(Ghost(self._change(path)) if path else None)

    def _change(self, path: Path) -> Change | None:
        hand = self.host.hand
        try:
            return _placed(self, hand, path)
        except EditRefused as refused:
            self.host.say(str(refused))
            return None


def _placed(tool: PlaceTool, hand: Hand, path: Path) -> Change:
    plan = tool.host.plan
    pieces = [hand.piece(cell) for cell in dict.fromkeys(path)]
    new = [piece for piece in pieces if plan.pieces.get(piece.at) != piece]
    if len(pieces) == 1:
        return place(plan, pieces[0])
    change = paste(plan, new)
    return msgspec.structs.replace(change, label=change.label.replace("Paste", "Place", 1))
