"""Lay track: a drag lays rails along its way, and their shapes show as they really come out."""

from __future__ import annotations

from dataclasses import dataclass

from app.tools.events import PointerEvent
from app.tools.host import Ghost
from app.tools.paths import Path, extended
from app.tools.tool import Tool
from model.edits import EditRefused, lay_track
from model.parts import RAILS, Part
from model.plan import Change


@dataclass(frozen=True)
class Laying:
    """The button is down; the drag went along this path."""

    path: Path


class LayTool(Tool):
    """Idle (state ``None``) or laying."""

    name = "lay"
    drags_by_key = True
    state: Laying | None = None

    @property
    def is_busy(self) -> bool:
        """While the button is down."""
        return self.state is not None

    def press(self, event: PointerEvent) -> None:
        """Begins a drag."""
        self._lay_along((event.cell,))

    def drag(self, event: PointerEvent) -> None:
        """Lays the track on; a change of level drops the drag, for track is laid level by level."""
        if self.state is None:
            return
        if event.cell.y != self.state.path[0].y:
            self.interrupt()
        else:
            self._lay_along(extended(self.state.path, event.cell))

    def release(self, event: PointerEvent) -> None:
        """Lays the track for good."""
        self.drag(event)
        self.complete()

    def complete(self) -> bool:
        """Lays what the ghost shows."""
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

    def _lay_along(self, path: Path) -> None:
        self.state = Laying(path)
        pieces = self.host.plan.pieces
        in_the_way = frozenset(c for c in path if c in pieces and pieces.part_at(c) not in RAILS)
        self.host.show_ghost(Ghost(self._change(path), in_the_way))

    def _change(self, path: Path) -> Change | None:
        hand = self.host.hand
        track = hand if hand.part in RAILS else hand.holding(Part.RAIL)
        try:
            return lay_track(self.host.plan, path, track.part, track.facing)
        except EditRefused as refused:
            self.host.say(str(refused))
            return None
