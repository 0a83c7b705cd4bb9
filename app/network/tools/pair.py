"""The tools that lead from one node to another: links and trips."""

from __future__ import annotations

from typing import ClassVar

from app.network.ghost import Ghost
from app.network.items import Item, Kind
from app.network.lines import beside, ways_between
from app.network.tools.tool import At, MapHost, MapTool
from app.translation import QT_TR_NOOP, tr


class PairTool(MapTool):
    """Drags from one node to another."""

    waits_for_drag = True
    only: ClassVar[Kind | None] = None
    refusal: ClassVar[str]

    def __init__(self, host: MapHost) -> None:
        super().__init__(host)
        self._start: Item | None = None

    @property
    def is_busy(self) -> bool:
        """Whether a gesture is under way."""
        return self._start is not None

    def press(self, at: At) -> None:
        """Begin at the node there."""
        self._start = self._node(at)
        if self._start is None:
            self.host.say(tr(self.refusal))

    def drag(self, at: At) -> None:
        """Show the line to the node there, or to the pointer."""
        if self._start is None:
            return
        spots = self.host.picture.spots
        end = self._node(at)
        to = spots[end] if end is not None else at.crossing
        start = spots[self._start]
        line = next(iter(ways_between(start, to))) if to != start else ()
        self.host.show_ghost(Ghost((beside(line, 0.15),) if line else ()))

    def release(self, at: At) -> None:
        """Ask for the rest, where it ends at another node."""
        start, end = self._start, self._node(at)
        self.cancel()
        if start is None:
            return
        if end is None or end == start:
            self.host.say(tr(self.refusal))
            return
        self._ask(start, end)

    def cancel(self) -> bool:
        """Drop the gesture."""
        was_busy = self._start is not None
        self._start = None
        self.host.show_ghost(None)
        return was_busy

    def _node(self, at: At) -> Item | None:
        node = self.host.picture.node_at(at.x, at.y, max(at.reach, 0.7))
        return node if node is not None and (self.only is None or node.kind is self.only) else None

    def _ask(self, start: Item, end: Item) -> None:
        raise NotImplementedError


class LinkTool(PairTool):
    """Draws links."""

    name = "link"
    refusal = QT_TR_NOOP(
        "A link runs from one station or junction to another: drag from the one to the other."
    )

    def _ask(self, start: Item, end: Item) -> None:
        self.host.ask_link(start, end)


class TripTool(PairTool):
    """Draws trips."""

    name = "trip"
    only = Kind.STATION
    refusal = QT_TR_NOOP("A trip runs from one station to another: drag from the one to the other.")

    def _ask(self, start: Item, end: Item) -> None:
        self.host.ask_trip(start, end)
