"""The view as tools know it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from app.canvas.geometry import area_between
from app.tools.events import PointerEvent
from app.tools.hand import Hand
from app.tools.host import ArmQuestion, Ghost, Tag
from app.tools.module_hand import ModuleHand
from model.grid import Cell, Heading
from model.plan import Change, Plan
from model.track.layout import Layout
from model.track.shapes import Shape

if TYPE_CHECKING:
    from app.canvas.view import PlanView


class ViewHost:
    """Passes on to the view what a tool may ask of it, and nothing more."""

    def __init__(self, view: PlanView) -> None:
        self._view = view

    @property
    def plan(self) -> Plan:
        """The plan as it stands."""
        return self._view.document.plan

    @property
    def layout(self) -> Layout:
        """The shapes of its rails."""
        return self._view.document.layout

    @property
    def hand(self) -> Hand:
        """What is in hand."""
        return self._view.hand

    @property
    def module_hand(self) -> ModuleHand:
        """The module in hand."""
        return self._view.module_hand

    @property
    def selection(self) -> frozenset[Cell]:
        """The chosen cells."""
        return self._view.selection

    @property
    def powered(self) -> frozenset[Cell]:
        """The switches that are shown powered."""
        return self._view.previews.shown.powered

    @property
    def wired(self) -> frozenset[Cell]:
        """The switches that are meant to be thrown, as far as that is worked out."""
        junction = self._view.document.junction
        return frozenset() if junction is None else frozenset(junction.choice.wired)

    @property
    def surveyed(self) -> Mapping[Cell, Shape]:
        """The rails surveyed so far."""
        return self._view.surveying.shapes

    @property
    def in_dry_run(self) -> bool:
        """Whether a dry run is on."""
        return self._view.dry_run.is_on

    @property
    def cart_loaded(self) -> bool:
        """Whether the next test cart carries the waybill."""
        return self._view.dry_run.train.loaded

    def load_cart(self, loaded: bool) -> None:
        """The next test cart carries the waybill, or does not."""
        self._view.dry_run.show_loaded(loaded)

    def can_work(self, cell: Cell) -> bool:
        """Whether a dry run is on and a lever or a button is in a cell."""
        return self._view.dry_run.can_work(cell)

    def work(self, cell: Cell) -> None:
        """Pulls the lever or presses the button in a cell."""
        self._view.dry_run.work(cell)

    def take_in_hand(self, hand: Hand) -> None:
        """Puts a part in hand."""
        self._view.hand = hand

    def take_module(self, hand: ModuleHand) -> None:
        """Puts a module in hand."""
        self._view.module_hand = hand

    def choose(self, cells: frozenset[Cell]) -> None:
        """Makes these the chosen cells."""
        self._view.selection = cells

    def cells_in(self, corner: Cell, opposite: Cell) -> frozenset[Cell]:
        """The cells with a piece between two corners."""
        pieces = self._view.scene.index.pieces_in(area_between(corner, opposite), opposite.y)
        return frozenset(piece.at for piece in pieces)

    def tag_at(self, event: PointerEvent) -> Tag | None:
        """The arm's tag under the pointer."""
        return self._view.tag_at(event.cell.x + event.fraction[0], event.cell.z + event.fraction[1])

    def show_ghost(self, ghost: Ghost | None) -> None:
        """Draws what a gesture would make."""
        self._view.show_ghost(ghost)

    def show_band(self, corners: tuple[Cell, Cell] | None) -> None:
        """Draws a band around what is being chosen."""
        self._view.show_band(corners)

    def commit(self, change: Change) -> bool:
        """Makes a change, as one step of undo; whether it may be made."""
        return self._view.document.apply(change)

    def make(self, function: Callable[[Plan], Change], pieces: int, words: str) -> Change | None:
        """Makes an edit of so many pieces, as one step of undo; what was done, if it was."""
        return self._view.document.make(function, pieces, words)

    def say(self, text: str) -> None:
        """Puts a sentence into the status bar."""
        self._view.status.emit(text)

    def ask_arm(self, question: ArmQuestion) -> None:
        """Asks for an arm's name in place."""
        self._view.ask_arm(question)

    def drop_question(self) -> None:
        """Takes the question away."""
        self._view.name_entry.drop()

    def preview_switches(self, powered: frozenset[Cell]) -> None:
        """Shows these switches powered."""
        self._view.preview_switches(powered)

    def clear_preview(self) -> None:
        """Ends every preview."""
        self._view.clear_preview()

    def survey(self, shapes: Mapping[Cell, Shape]) -> None:
        """Takes down in which shape each of these rails stands in the world."""
        self._view.surveying.take(shapes)

    def run_cart(self, arm_name: str, waybill: bool) -> None:
        """Sends a test cart in by an arm."""
        self._view.run_cart(arm_name, waybill)

    def send_cart(self, cell: Cell, heading: Heading, waybill: bool) -> None:
        """Sends a test cart off from a rail."""
        self._view.send_cart(cell, heading, waybill)
