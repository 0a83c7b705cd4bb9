"""A view without a screen: it holds a plan, counts what is committed, and drives a tool like a user."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from app.tools.events import Buttons, Key, Modifiers, PointerEvent
from app.tools.hand import Hand
from app.tools.host import ArmQuestion, Ghost, Tag
from app.tools.module_hand import ModuleHand
from app.tools.paste import PasteTool
from app.tools.table import TOOLS
from app.tools.tool import Tool
from model.edits import EditRefused
from model.grid import Cell, Heading
from model.pieces import Piece
from model.plan import EMPTY_PLAN, Change, Plan
from model.track.layout import Layout
from model.track.shapes import Shape

LEVEL = 64


class Desk:
    """The host of the tool tests. Its undo stack is a list of the changes committed."""

    def __init__(self, plan: Plan = EMPTY_PLAN) -> None:
        self.layout = Layout(plan)
        self.done: list[Change] = []
        self.hand = Hand()
        self.module_hand = ModuleHand()
        self.selection: frozenset[Cell] = frozenset()
        self.powered: frozenset[Cell] = frozenset()
        self.ghost: Ghost | None = None
        self.band: tuple[Cell, Cell] | None = None
        self.said: list[str] = []
        self.question: ArmQuestion | None = None
        self.surveyed: dict[Cell, Shape] = {}
        self.carts: list[tuple[object, ...]] = []
        self.tags: dict[Cell, Tag] = {}
        self.in_dry_run = False
        self.cart_loaded = False
        self.workable: set[Cell] = set()
        self.worked: list[Cell] = []
        self.level = LEVEL
        self._tool: Tool | None = None

    @property
    def plan(self) -> Plan:
        return self.layout.plan

    @property
    def tool(self) -> Tool:
        assert self._tool is not None
        return self._tool

    def use(self, name: str) -> Driver:
        """Takes up a tool by its name."""
        return self._take_up(TOOLS[name](self))

    def use_paste(self, pieces: tuple[Piece, ...], x: int = 0, z: int = 0) -> Driver:
        """Carries pieces to put down."""
        return self._take_up(PasteTool(self, pieces, Cell(x, self.level, z)))

    def _take_up(self, tool: Tool) -> Driver:
        if self._tool is not None:
            self._tool.leave()
        self._tool = tool
        tool.enter()
        return Driver(self, tool)

    @property
    def wired(self) -> frozenset[Cell]:
        return frozenset()

    def take_in_hand(self, hand: Hand) -> None:
        self.hand = hand

    def take_module(self, hand: ModuleHand) -> None:
        self.module_hand = hand

    def choose(self, cells: frozenset[Cell]) -> None:
        self.selection = cells

    def cells_in(self, corner: Cell, opposite: Cell) -> frozenset[Cell]:
        xs, zs = sorted((corner.x, opposite.x)), sorted((corner.z, opposite.z))
        return frozenset(
            piece.at
            for piece in self.plan.pieces
            if xs[0] <= piece.at.x <= xs[1] and zs[0] <= piece.at.z <= zs[1] and piece.at.y == opposite.y
        )

    def tag_at(self, event: PointerEvent) -> Tag | None:
        return self.tags.get(event.cell)

    def show_ghost(self, ghost: Ghost | None) -> None:
        self.ghost = ghost

    def show_band(self, corners: tuple[Cell, Cell] | None) -> None:
        self.band = corners

    def commit(self, change: Change) -> bool:
        if not change.is_empty:
            self.layout.follow(change)
            self.done.append(change)
        return True

    def make(self, function: Callable[[Plan], Change], pieces: int, words: str) -> Change | None:
        try:
            change = function(self.plan)
        except EditRefused as refused:
            self.say(str(refused))
            return None
        self.commit(change)
        return change

    def say(self, text: str) -> None:
        self.said.append(text)

    def ask_arm(self, question: ArmQuestion) -> None:
        self.question = question

    def drop_question(self) -> None:
        self.question = None

    def preview_switches(self, powered: frozenset[Cell]) -> None:
        self.powered = powered

    def clear_preview(self) -> None:
        self.powered = frozenset()

    def load_cart(self, loaded: bool) -> None:
        self.cart_loaded = loaded

    def can_work(self, cell: Cell) -> bool:
        return self.in_dry_run and cell in self.workable

    def work(self, cell: Cell) -> None:
        self.worked.append(cell)

    def survey(self, shapes: Mapping[Cell, Shape]) -> None:
        self.surveyed |= shapes

    def run_cart(self, arm_name: str, waybill: bool) -> None:
        self.carts.append((arm_name, waybill))

    def send_cart(self, cell: Cell, heading: Heading, waybill: bool) -> None:
        self.carts.append((cell, heading, waybill))


class Driver:
    """The user's hand on one tool."""

    def __init__(self, desk: Desk, tool: Tool) -> None:
        self.desk = desk
        self.tool = tool
        self.at = (0, 0)

    def _event(
        self, x: int, z: int, mods: Modifiers, fraction: tuple[float, float] = (0.5, 0.5)
    ) -> PointerEvent:
        self.at = (x, z)
        return PointerEvent(Cell(x, self.desk.level, z), fraction, Buttons.LEFT, mods)

    def hover(self, x: int, z: int) -> Driver:
        self.tool.hover(self._event(x, z, Modifiers.NONE))
        return self

    def press(self, x: int, z: int, mods: Modifiers = Modifiers.NONE) -> Driver:
        self.tool.press(self._event(x, z, mods))
        return self

    def drag_to(
        self, x: int, z: int, mods: Modifiers = Modifiers.NONE, fraction: tuple[float, float] = (0.5, 0.5)
    ) -> Driver:
        self.tool.drag(self._event(x, z, mods, fraction))
        return self

    def release(self, mods: Modifiers = Modifiers.NONE) -> Driver:
        self.tool.release(self._event(*self.at, mods))
        return self

    def click(self, x: int, z: int, mods: Modifiers = Modifiers.NONE) -> Driver:
        return self.press(x, z, mods).release(mods)

    def key(self, key: Key, mods: Modifiers = Modifiers.NONE) -> Driver:
        self.tool.key(key, mods)
        return self
