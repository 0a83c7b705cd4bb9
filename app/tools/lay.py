"""Lay track: a drag lays rails along its way, and their shapes show as they really come out."""

from __future__ import annotations

from app.tools.events import Key, Modifiers
from app.tools.host import Ghost
from app.tools.paths import Path
from app.tools.stroke import StrokeTool
from model.edits import lay_track
from model.parts import RAILS
from model.plan import Change


class LayTool(StrokeTool):
    """Idle or laying."""

    name = "lay"
    drags_by_key = True

    def show(self) -> None:
        """Shows the track, and the cells that other pieces keep free of it."""
        if self.state is None:
            return
        path, pieces = self.state.path, self.host.plan.pieces
        in_the_way = frozenset(c for c in path if c in pieces and pieces.part_at(c) not in RAILS)
        self.host.show_ghost(Ghost(self.change(path), in_the_way))

    def key(self, key: Key, modifiers: Modifiers) -> bool:
        """R turns the rail that a click lays; a drag turns its rails itself."""
        if modifiers or key is not Key.TURN:
            return False
        self.host.take_in_hand(self.host.hand.as_track().turned())
        self.show()
        return True

    def edit(self, path: Path) -> Change:
        """The rail in hand along the path, or plain rails when no rail is in hand."""
        track = self.host.hand.as_track()
        return lay_track(self.host.plan, path, track.part, track.facing)
