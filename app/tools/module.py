"""Module: puts the module in hand down where the pointer clicks; R turns it, M mirrors it."""

from __future__ import annotations

from app.tools.events import Key, Modifiers, PointerEvent
from app.tools.host import Ghost
from app.tools.module_hand import MIRROR, QUARTER
from app.tools.tool import Tool
from model.edits import EditRefused
from model.grid import Cell
from model.wiring.modules.placing import Placing, place_module
from model.wording import tr


class ModuleTool(Tool):
    """Idle (the module in hand hovers) or carrying, from the press to the release."""

    name = "module"
    hovered: Cell | None = None
    _carries = False
    _put_down_at: Cell | None = None
    """Where it was put down last: until the pointer moves on, nothing hovers there."""
    _complains = False
    """Whether the status bar says what is wrong."""

    @property
    def is_busy(self) -> bool:
        """While the button is down."""
        return self._carries

    def leave(self) -> None:
        """Takes the hovering module away, too."""
        super().leave()
        self.hovered = None
        self.host.show_ghost(None)

    def hover(self, event: PointerEvent) -> None:
        """Shows the module where it would go."""
        self.hovered = event.cell
        if event.cell != self._put_down_at:
            self._put_down_at = None
        self.show()

    def press(self, event: PointerEvent) -> None:
        """The module is carried until the button goes up."""
        self._carries, self._put_down_at = True, None
        self.hover(event)

    def drag(self, event: PointerEvent) -> None:
        """Carries the module on."""
        self.hover(event)

    def release(self, event: PointerEvent) -> None:
        """Puts the module down."""
        self.hovered = event.cell
        self.complete()

    def complete(self) -> bool:
        """Puts the module down, unless something stands in the way or it would couple; that is said."""
        if not self._carries:
            return False
        self._carries = False
        placing = self._placing()
        if placing is None or placing.problem is not None:
            self.show()
            return True
        self.host.show_ghost(None)
        self._put_down_at = self.hovered
        self.host.commit(placing.change)
        return True

    def cancel(self) -> bool:
        """Drops the gesture; the module hovers again when the pointer moves."""
        if not self._carries:
            return False
        self._carries = False
        self.host.show_ghost(None)
        return True

    def key(self, key: Key, modifiers: Modifiers) -> bool:
        """R turns the module a quarter clockwise, M mirrors it east to west."""
        if modifiers or key not in (Key.TURN, Key.MIRROR):
            return False
        self._put_down_at = None
        self.host.take_module(self.host.module_hand.turned(QUARTER if key is Key.TURN else MIRROR))
        self.show()
        return True

    def show(self) -> None:
        """Shows the module under the pointer, with a cross where something is wrong; says what."""
        placing = None if self.hovered is None or self.hovered == self._put_down_at else self._placing()
        if placing is None:
            self.host.show_ghost(None)
            return
        self.host.show_ghost(Ghost(placing.change, placing.marked, note=_levels_words(placing)))
        self._complain(placing.problem or "")

    def _placing(self) -> Placing | None:
        """The module over the plan; out of reach there is none, and that is said."""
        if self.hovered is None:
            return None
        try:
            return place_module(self.host.plan, self.host.module_hand.module(self.hovered))
        except EditRefused as refused:
            self._complain(str(refused))
            return None

    def _complain(self, problem: str) -> None:
        """Says what is wrong, or takes that back; what others said stays."""
        if problem or self._complains:
            self.host.say(problem)
        self._complains = bool(problem)


def _levels_words(placing: Placing) -> str:
    """On which levels the module stands: most of it may lie on none that is in sight."""
    levels = {cell.y for cell in placing.change.cells}
    low, high = min(levels, default=0), max(levels, default=0)
    return tr("level {low}", low=low) if low == high else tr("levels {low} to {high}", low=low, high=high)
