"""What a tool of the map is: it answers the pointer and speaks to a host."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor
from typing import ClassVar, Protocol

from app.network.ghost import Ghost
from app.network.items import Item, Kind
from app.network.picture import Picture
from app.tools.events import Modifiers
from model.network.network import Spot


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
