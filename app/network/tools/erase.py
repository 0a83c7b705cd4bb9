"""The tool that takes away."""

from __future__ import annotations

from app.network.ghost import Ghost
from app.network.tools.tool import At, MapTool


class EraseTool(MapTool):
    """Takes away what is clicked."""

    name = "erase"

    def hover(self, at: At) -> None:
        """Mark what would go."""
        hit = self.host.picture.item_at(at.x, at.y, at.reach)
        spots = self.host.picture.spots
        self.host.show_ghost(Ghost(refused=(spots[hit],)) if hit is not None and hit.is_node else None)

    def release(self, at: At) -> None:
        """Take it away."""
        hit = self.host.picture.item_at(at.x, at.y, at.reach)
        self.host.show_ghost(None)
        if hit is not None:
            self.host.remove(frozenset({hit}))
