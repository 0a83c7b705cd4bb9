"""Place: puts the part in hand where the pointer clicks, or along a drag."""

from __future__ import annotations

from app.tools.events import Key, Modifiers, PointerEvent
from app.tools.host import Ghost
from app.tools.paths import Path
from app.tools.stroke import StrokeTool
from model.edits import place, place_all
from model.grid import Cell
from model.plan import Change


class PlaceTool(StrokeTool):
    """Idle (the part in hand hovers) or placing."""

    name = "place"
    drags_by_shift = True
    hovered: Cell | None = None

    def leave(self) -> None:
        """Takes the hovering part away, too."""
        super().leave()
        self.hovered = None
        self.host.show_ghost(None)

    def hover(self, event: PointerEvent) -> None:
        """Shows the part in hand where it would go."""
        self.hovered = event.cell
        self.show()

    def key(self, key: Key, modifiers: Modifiers) -> bool:
        """R turns what is in hand; D goes to its next delay or mode."""
        if modifiers or key not in (Key.TURN, Key.CYCLE):
            return False
        hand = self.host.hand
        self.host.take_in_hand(hand.turned() if key is Key.TURN else hand.cycled())
        self.show()
        return True

    def show(self) -> None:
        """Shows the part along the drag, or under the pointer."""
        path = self.state.path if self.state else (self.hovered,) if self.hovered else ()
        self.host.show_ghost(Ghost(self.change(path)) if path else None)

    def edit(self, path: Path) -> Change:
        """The part in hand in every cell of the path that does not hold just that already."""
        plan = self.host.plan
        pieces = [self.host.hand.piece(cell) for cell in dict.fromkeys(path)]
        if len(pieces) == 1:
            return place(plan, pieces[0])
        return place_all(plan, [piece for piece in pieces if plan.pieces.get(piece.at) != piece])
