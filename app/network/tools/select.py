"""The tool that chooses and moves."""

from __future__ import annotations

from math import floor
from typing import Final

from app.network.ghost import Ghost
from app.network.items import Item, Kind
from app.network.lines import routes
from app.network.picture import Picture
from app.network.tools.tool import At, MapHost, MapTool
from app.tools.events import Modifiers
from model.network.network import Spot

STILL: Final = 0.3
"""Squares that the pointer may tremble before a press is a drag."""


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
