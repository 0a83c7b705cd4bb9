"""What the tools on the map may ask and do: they see this, and nothing of Qt or of the window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.network.commands import NetworkCommands
from app.network.ghost import Ghost
from app.network.items import Item, Kind
from app.network.picture import Picture
from model.network.network import Spot

if TYPE_CHECKING:
    from app.network.map_view import MapView


class ViewHost:
    """Hands on what the tools want to the view and to the commands."""

    view: MapView

    def __init__(self, commands: NetworkCommands) -> None:
        self._commands = commands

    @property
    def picture(self) -> Picture:
        """What is drawn."""
        return self.view.document.picture

    @property
    def selection(self) -> frozenset[Item]:
        """What is chosen."""
        return self.view.selection

    def choose(self, items: frozenset[Item]) -> None:
        """Make these the chosen ones."""
        self.view.choose(items)

    def show_ghost(self, ghost: Ghost | None) -> None:
        """Draw what the gesture would make."""
        self.view.show_ghost(ghost)

    def show_band(self, corners: tuple[Spot, Spot] | None) -> None:
        """Draw a band around what is being chosen."""
        self.view.show_band(corners)

    def say(self, text: str) -> None:
        """A sentence in the status bar."""
        self.view.say(text)

    def move(self, spots: dict[Item, Spot]) -> None:
        """Put nodes elsewhere, as one step."""
        self._commands.move(spots)

    def remove(self, items: frozenset[Item]) -> None:
        """Take things away, as one step."""
        self._commands.remove(items)

    def ask_node(self, kind: Kind, at: Spot) -> None:
        """Ask for a new station or junction there."""
        self._commands.add_node(kind, at)

    def ask_link(self, start: Item, end: Item) -> None:
        """Ask for a link between two nodes."""
        self._commands.add_link(start, end)

    def ask_trip(self, start: Item, end: Item) -> None:
        """Ask for a trip between two stations."""
        self._commands.add_trip(start, end)

    def edit(self, item: Item) -> None:
        """Ask for what can be said of a thing."""
        self._commands.change(item)
