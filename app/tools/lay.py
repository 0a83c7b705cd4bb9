"""Lay track: a drag lays rails along its way, and their shapes show as they really come out."""

from __future__ import annotations

from app.tools.host import Ghost
from app.tools.paths import Path
from app.tools.stroke import StrokeTool
from model.edits import lay_track
from model.parts import RAILS, Part
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

    def edit(self, path: Path) -> Change:
        """The rail in hand along the path, or plain rails when no rail is in hand."""
        hand = self.host.hand
        track = hand if hand.part in RAILS else hand.holding(Part.RAIL)
        return lay_track(self.host.plan, path, track.part, track.facing)
