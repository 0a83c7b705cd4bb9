"""The tools that place stations and junctions."""

from __future__ import annotations

from typing import ClassVar

from app.network.ghost import Ghost
from app.network.items import Kind
from app.network.tools.tool import At, MapTool
from app.translation import tr


class NodeTool(MapTool):
    """Places a station or a junction with a click."""

    kind: ClassVar[Kind]

    def hover(self, at: At) -> None:
        """Show it where a click would put it."""
        spot = at.crossing
        taken = spot in self.host.picture.spots.values()
        self.host.show_ghost(
            Ghost(
                stations=(spot,) if self.kind is Kind.STATION and not taken else (),
                junctions=(spot,) if self.kind is Kind.JUNCTION and not taken else (),
                refused=(spot,) if taken else (),
            )
        )

    def press(self, at: At) -> None:
        """Nothing yet: the click may still be taken back."""
        self.hover(at)

    def release(self, at: At) -> None:
        """Ask for its name."""
        if at.crossing in self.host.picture.spots.values():
            self.host.say(tr("Something stands there already."))
            return
        self.host.ask_node(self.kind, at.crossing)
        self.host.show_ghost(None)


class StationTool(NodeTool):
    """Places stations."""

    name = "station"
    kind = Kind.STATION


class JunctionTool(NodeTool):
    """Places junctions."""

    name = "junction"
    kind = Kind.JUNCTION
