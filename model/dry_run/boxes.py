"""What holds items while a plan runs: containers and carts."""

from __future__ import annotations

from collections.abc import Iterable

from model.dry_run.nodes import Node, Taker
from model.grid import Cell
from model.parts import TRAITS, Part
from model.pieces import Held, Piece
from model.signals.containers import slots, strength_of
from model.signals.crafter import slots_in_use
from model.signals.items import Slots, items_in, slots_of, with_item, with_item_spread


class Box:
    """A container or a cart: its slots, and who works at it."""

    __slots__ = ("crafts", "reading", "slots", "users")

    def __init__(self, content: Slots, reading: Node | None = None, *, crafts: bool = False) -> None:
        self.slots = content
        self.reading = reading
        """The node that a comparator looks at; none for a cart."""
        self.crafts = crafts
        """Whether it is an auto-crafter, which spreads items over its slots and reads as the slots in use."""
        self.users: list[Actor] = []
        """The hoppers and auto-crafters that give to it, take from it, or are it, in file order."""

    def with_item(self, content: Slots, item: str) -> Slots | None:
        """Such slots with one more item; ``None`` where it does not fit."""
        return with_item_spread(content, item) if self.crafts else with_item(content, item)

    def strength(self) -> int:
        """What a comparator reads, 0 to 15."""
        if self.crafts:
            return slots_in_use(self.slots)
        return strength_of(items_in(self.slots), len(self.slots))


class Actor:
    """A hopper or an auto-crafter at work."""

    __slots__ = ("above", "crafts", "gives_to", "group", "own", "piece", "rank", "ready", "signal")

    def __init__(self, piece: Piece, rank: int, own: Box, signal: Taker) -> None:
        self.piece = piece
        self.rank = rank
        self.own = own
        self.signal = signal
        self.crafts = own.crafts
        self.gives_to: Box | None = None
        """The container that it faces."""
        self.above: Box | None = None
        """The container from which a hopper takes."""
        self.group = -1
        """Those that work at one container, and so on from container to container, have the same number."""
        self.ready = 0
        """A hopper may act from this tick on; the craft of an auto-crafter is due in this tick."""

    def boxes(self) -> list[Box]:
        """Its own, and those that it gives to and takes from; no cart."""
        return [box for box in (self.own, self.gives_to, self.above) if box is not None]


def number_groups(actors: Iterable[Actor]) -> None:
    """Gives each its group."""
    for number, first in enumerate(actors):
        ends = [first] if first.group < 0 else []
        while ends:
            actor = ends.pop()
            actor.group = number
            ends += (other for box in actor.boxes() for other in box.users if other.group < 0)


def content_of(part: Part, holds: tuple[Held, ...]) -> Slots:
    """All slots of a container filled so, the empty ones too."""
    return slots_of(slots(Piece(part, Cell(0, 0, 0), holds=holds)), TRAITS[part].slots)
