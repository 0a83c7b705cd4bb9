"""What a tool may ask of the view, and what it may tell it. Tests put a view of their own in its place."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from enum import Flag, auto
from typing import Protocol

from app.tools.events import PointerEvent
from app.tools.hand import Hand
from app.tools.module_hand import ModuleHand
from model.grid import Cell, Heading
from model.plan import Change, Plan
from model.track.layout import Layout
from model.track.shapes import Shape


class Ends(Flag):
    """Which ends an arm has: where carts come in, where they leave."""

    NONE = 0
    IN = auto()
    OUT = auto()
    BOTH = IN | OUT


@dataclass(frozen=True)
class ShownCart:
    """A test cart that is held over the track."""

    cell: Cell
    heading: Heading
    loaded: bool
    """Whether it carries the waybill."""


@dataclass(frozen=True)
class Ghost:
    """What a gesture would make, for the view to draw; the plan is as it was."""

    change: Change | None = None
    crossed: frozenset[Cell] = frozenset()
    """Cells that cannot take the piece, or that lose theirs."""
    cart: ShownCart | None = None
    crossing: tuple[Cell, Heading, Ends] | None = None
    """An arm in the making: the track's last cell, the heading out of it, and the ends."""
    strengths: Mapping[Cell, int] = field(default_factory=dict)
    """The figures of new dust."""
    surveyed: Mapping[Cell, Shape] = field(default_factory=dict)
    """Rails that are being surveyed, with the shape in which each stands in the world."""
    note: str = ""
    """A few words for what takes up more than the levels in sight; an outline goes with them."""


@dataclass(frozen=True)
class ArmQuestion:
    """Asks for the name and the ends of an arm, in place."""

    cell: Cell
    outward: Heading
    ends: Ends
    name: str
    """What to offer; empty where nothing suggests itself."""
    show: Callable[[Ends], None]
    """Hears which ends are chosen while the name is typed."""
    answer: Callable[[str, Ends], str | None]
    """Takes the answer; returns what is wrong with it in words, or ``None``."""


@dataclass(frozen=True)
class Tag:
    """The tag of one end of an arm, as the view shows it."""

    arm: str
    ends: Ends


class Host(Protocol):
    """The view, as tools know it."""

    @property
    def plan(self) -> Plan:
        """The plan as it stands."""

    @property
    def layout(self) -> Layout:
        """The shapes of its rails."""

    @property
    def hand(self) -> Hand:
        """What is in hand."""

    @property
    def module_hand(self) -> ModuleHand:
        """The module in hand."""

    @property
    def selection(self) -> frozenset[Cell]:
        """The chosen cells."""

    @property
    def powered(self) -> frozenset[Cell]:
        """The switches that are shown powered."""

    @property
    def wired(self) -> frozenset[Cell]:
        """The switches that are meant to be thrown, as far as that is worked out."""

    @property
    def surveyed(self) -> Mapping[Cell, Shape]:
        """The rails surveyed so far, with the shape in which each stands in the world."""

    @property
    def in_dry_run(self) -> bool:
        """Whether a dry run is on."""

    @property
    def cart_loaded(self) -> bool:
        """Whether the next test cart carries the waybill."""

    def load_cart(self, loaded: bool) -> None:
        """The next test cart carries the waybill, or does not."""

    def can_work(self, cell: Cell) -> bool:
        """Whether a dry run is on and a lever or a button is in a cell."""

    def work(self, cell: Cell) -> None:
        """Pulls the lever or presses the button in a cell."""

    def take_in_hand(self, hand: Hand) -> None:
        """Puts a part in hand."""

    def take_module(self, hand: ModuleHand) -> None:
        """Puts a module in hand."""

    def choose(self, cells: frozenset[Cell]) -> None:
        """Makes these the chosen cells."""

    def cells_in(self, corner: Cell, opposite: Cell) -> frozenset[Cell]:
        """The cells with a piece between two corners, on the level of ``opposite``."""

    def tag_at(self, event: PointerEvent) -> Tag | None:
        """The arm's tag under the pointer."""

    def show_ghost(self, ghost: Ghost | None) -> None:
        """Draws what a gesture would make; ``None`` takes it away."""

    def show_band(self, corners: tuple[Cell, Cell] | None) -> None:
        """Draws a band around what is being chosen; ``None`` takes it away."""

    def commit(self, change: Change) -> bool:
        """Makes a change, as one step of undo. An empty one is dropped. Whether it may be made here."""

    def make(self, function: Callable[[Plan], Change], pieces: int, words: str) -> Change | None:
        """Makes an edit of so many pieces, as one step of undo; long work is done beside the view.

        What was done; ``None`` where it was refused or cancelled, which is said.
        """

    def say(self, text: str) -> None:
        """Puts a sentence into the status bar; an empty one clears it."""

    def ask_arm(self, question: ArmQuestion) -> None:
        """Asks for an arm's name in place."""

    def drop_question(self) -> None:
        """Takes the question away."""

    def preview_switches(self, powered: frozenset[Cell]) -> None:
        """Shows these switches powered."""

    def clear_preview(self) -> None:
        """Ends every preview."""

    def survey(self, shapes: Mapping[Cell, Shape]) -> None:
        """Takes down in which shape each of these rails stands in the world."""

    def run_cart(self, arm_name: str, waybill: bool) -> None:
        """Sends a test cart in by an arm."""

    def send_cart(self, cell: Cell, heading: Heading, waybill: bool) -> None:
        """Sends a test cart off from a rail."""
