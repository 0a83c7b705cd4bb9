"""The hands on the map: choosing and moving, placing, drawing links and trips, erasing. No Qt here.

Invariant: until the end of a gesture the network is untouched, so dropping the preview is all that
cancelling takes.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import floor
from typing import ClassVar, Final, Protocol

from app.network.ghost import Ghost
from app.network.items import Item, Kind
from app.network.lines import beside, routes, ways_between
from app.network.picture import Picture
from app.tools.events import Modifiers
from app.translation import QT_TR_NOOP, tr
from model.network.network import Spot

STILL: Final = 0.3
"""Squares that the pointer may tremble before a press is a drag."""


@dataclass(frozen=True)
class At:
    """The pointer, or the keyboard's cursor, over the map."""

    x: float
    y: float
    reach: float
    """Squares within which a line counts as hit."""
    modifiers: Modifiers = Modifiers.NONE

    @property
    def crossing(self) -> Spot:
        """The crossing of the grid that is nearest."""
        return float(floor(self.x + 0.5)), float(floor(self.y + 0.5))


class MapHost(Protocol):
    """What the tools may ask of the map, and what they may do."""

    @property
    def picture(self) -> Picture:
        """What is drawn."""

    @property
    def selection(self) -> frozenset[Item]:
        """What is chosen."""

    def choose(self, items: frozenset[Item]) -> None:
        """Make these the chosen ones."""

    def show_ghost(self, ghost: Ghost | None) -> None:
        """Draw what the gesture would make."""

    def show_band(self, corners: tuple[Spot, Spot] | None) -> None:
        """Draw a band around what is being chosen."""

    def say(self, text: str) -> None:
        """A sentence in the status bar."""

    def move(self, spots: dict[Item, Spot]) -> None:
        """Put nodes elsewhere, as one step."""

    def remove(self, items: frozenset[Item]) -> None:
        """Take things away, as one step."""

    def ask_node(self, kind: Kind, at: Spot) -> None:
        """Ask for a new station or junction there."""

    def ask_link(self, start: Item, end: Item) -> None:
        """Ask for a link between two nodes."""

    def ask_trip(self, start: Item, end: Item) -> None:
        """Ask for a trip between two stations."""

    def edit(self, item: Item) -> None:
        """Ask for what can be said of a thing."""


class MapTool:
    """A tool: a small state machine that answers the pointer."""

    name: ClassVar[str]
    waits_for_drag: ClassVar[bool] = False
    """Whether Enter begins a drag that the arrow keys go on with and a second Enter ends."""

    def __init__(self, host: MapHost) -> None:
        self.host = host

    @property
    def is_busy(self) -> bool:
        """Whether a gesture is under way."""
        return False

    def hover(self, at: At) -> None:
        """The pointer moved with no button down."""

    def press(self, at: At) -> None:
        """The button went down."""

    def drag(self, at: At) -> None:
        """The pointer moved with the button down."""

    def release(self, at: At) -> None:
        """The button went up."""

    def open(self, at: At) -> None:
        """A double click, or Enter on what is chosen already."""

    def cancel(self) -> bool:
        """Drop the gesture. False where there is none."""
        return False


class SelectTool(MapTool):
    """Chooses by a click or a band; moves nodes by dragging them."""

    name = "select"

    def __init__(self, host: MapHost) -> None:
        super().__init__(host)
        self._from: At | None = None
        self._hit: Item | None = None
        self._moving = False

    @property
    def is_busy(self) -> bool:
        """Whether a gesture is under way."""
        return self._from is not None

    @property
    def waits_for_drag(self) -> bool:  # type: ignore[override]
        """By key a node is carried until the next Enter; an empty place does nothing."""
        return self._hit is not None and self._hit.is_node

    def press(self, at: At) -> None:
        """Choose what is there; what is chosen already stays so, as it may be dragged."""
        self._from, self._moving = at, False
        self._hit = self.host.picture.item_at(at.x, at.y, at.reach)
        chosen = self.host.selection
        if self._hit is None:
            if not at.modifiers & Modifiers.SHIFT:
                self.host.choose(frozenset())
        elif at.modifiers & Modifiers.SHIFT:
            self.host.choose(chosen ^ {self._hit})
        elif self._hit not in chosen:
            self.host.choose(frozenset({self._hit}))

    def drag(self, at: At) -> None:
        """Show where the chosen nodes would stand, or the band."""
        start = self._from
        if start is None or (not self._moving and max(abs(at.x - start.x), abs(at.y - start.y)) < STILL):
            return
        self._moving = True
        if self._hit is None:
            self.host.show_band(((start.x, start.y), (at.x, at.y)))
        elif self._hit.is_node:
            self.host.show_ghost(moved_ghost(self.host.picture, self._targets(at)))

    def release(self, at: At) -> None:
        """Move the nodes, or choose what the band holds."""
        start, hit, moving = self._from, self._hit, self._moving
        targets = self._targets(at) if moving and hit is not None and hit.is_node else {}
        self.cancel()
        if start is None or not moving:
            return
        if hit is None:
            found = frozenset(
                item
                for item, (x, y) in self.host.picture.spots.items()
                if min(start.x, at.x) <= x <= max(start.x, at.x)
                and min(start.y, at.y) <= y <= max(start.y, at.y)
            )
            kept = self.host.selection if at.modifiers & Modifiers.SHIFT else frozenset()
            self.host.choose(kept | found)
        elif targets:
            self.host.move(targets)

    def open(self, at: At) -> None:
        """Ask for what can be said of the thing there."""
        hit = self.host.picture.item_at(at.x, at.y, at.reach)
        self.cancel()
        if hit is not None:
            self.host.edit(hit)

    def cancel(self) -> bool:
        """Drop the gesture."""
        was_busy = self._from is not None
        self._from, self._hit, self._moving = None, None, False
        self.host.show_band(None)
        self.host.show_ghost(None)
        return was_busy

    def _targets(self, at: At) -> dict[Item, Spot]:
        """Where the chosen nodes come to stand: moved by as many whole squares as the pointer."""
        hit, start = self._hit, self._from
        if hit is None or start is None:
            return {}
        spots = self.host.picture.spots
        x, y = spots[hit]
        to_x, to_y = floor(x + at.x - start.x + 0.5), floor(y + at.y - start.y + 0.5)
        dx, dy = to_x - x, to_y - y
        chosen = {item for item in self.host.selection if item.is_node} | {hit}
        return (
            {item: (spots[item][0] + dx, spots[item][1] + dy) for item in chosen}
            if (dx, dy) != (0, 0)
            else {}
        )


def moved_ghost(picture: Picture, targets: dict[Item, Spot]) -> Ghost | None:
    """The nodes where they would stand, with the links as they would run."""
    if not targets:
        return None
    spots = {**picture.spots, **targets}
    lines = tuple(routes(picture.network, spots, targets.keys()).values())
    others = {spot for item, spot in picture.spots.items() if item not in targets}
    return Ghost(
        lines,
        tuple(spot for item, spot in targets.items() if item.kind is Kind.STATION),
        tuple(spot for item, spot in targets.items() if item.kind is Kind.JUNCTION),
        tuple(spot for spot in targets.values() if spot in others),
    )


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


TOOLS: Final = {
    tool.name: tool for tool in (SelectTool, StationTool, JunctionTool, LinkTool, TripTool, EraseTool)
}
