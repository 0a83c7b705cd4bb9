"""Line: a drag draws dust with blocks under it, and shows the strength that is left along it."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Final

from app.tools.events import Key, Modifiers, PointerEvent
from app.tools.host import Ghost
from app.tools.paths import Path, climbed
from app.tools.tool import Tool
from app.translation import QT_TR_NOOP, tr
from model.edits import EditRefused, lay_line
from model.grid import Cell
from model.parts import Part
from model.plan import Change, Plan
from model.wiring.lines.drawn_line import DrawnLine, draw_line
from model.wiring.lines.lines import FoundLine, lines

HINT: Final = QT_TR_NOOP(
    "Drag to draw a line of dust. Page Up, Page Down: a level on. D: repeaters, or dust alone."
)
FIGURES_UP_TO: Final = 100
"""Cells of a drag up to which its strength follows the pointer; else it is told when the line is laid."""
AS_PIECES: Final = 30
"""A cell costs as much as so many pieces of another edit."""


@dataclass(frozen=True)
class Drawing:
    """The button is down; the drag went along this path."""

    path: Path
    found: tuple[FoundLine, ...] = field(repr=False)
    """The lines that the plan had at the press."""


class LineTool(Tool):
    """Idle (state ``None``) or drawing. A change of level leads the drag on, a step up or down a cell."""

    name = "line"
    drags_by_key = True
    state: Drawing | None = None
    _sets_repeaters = True

    @property
    def is_busy(self) -> bool:
        """While the button is down."""
        return self.state is not None

    def enter(self) -> None:
        """Says what to do."""
        self.host.say(tr(HINT))

    def press(self, event: PointerEvent) -> None:
        """Begins with one cell."""
        self.state = Drawing((event.cell,), lines(self.host.plan, self.host.layout))
        self.show()

    def drag(self, event: PointerEvent) -> None:
        """Goes on through every cell passed."""
        if self.state is None:
            return
        path = climbed(self.state.path, event.cell)
        if path != self.state.path:
            self.state = replace(self.state, path=path)
            self.show()

    def release(self, event: PointerEvent) -> None:
        """Ends where the pointer is."""
        self.drag(event)
        self.complete()

    def complete(self) -> bool:
        """Lays the line; what is wrong with it is said, and one step takes it back."""
        if self.state is None:
            return False
        state, wired, drawn = self.state, self.host.wired, list[DrawnLine]()
        self._drop()

        def make(plan: Plan) -> Change:
            drawn.append(self._drawn(plan, state, wired))
            return drawn[-1].change

        if self.host.make(make, AS_PIECES * len(state.path), tr("Laying the line…")) is not None:
            self.host.say(drawn[-1].problem)
        return True

    def cancel(self) -> bool:
        """Drops the drag."""
        if self.state is None:
            return False
        self._drop()
        self.host.say("")
        return True

    def key(self, key: Key, modifiers: Modifiers) -> bool:
        """D: with repeaters, or dust alone."""
        if modifiers or key is not Key.CYCLE:
            return False
        self._sets_repeaters = not self._sets_repeaters
        if self.state is None:
            set_ones = tr("It sets repeaters where its strength would run out.")
            self.host.say(set_ones if self._sets_repeaters else tr("Dust alone: no repeaters are set."))
        self.show()
        return True

    def _drop(self) -> None:
        self.state = None
        self.host.show_ghost(None)

    def show(self) -> None:
        """Shows the line so far, its strength, and what is wrong with it."""
        if self.state is None:
            self.host.show_ghost(None)
            return
        try:
            self._show(self.state)
        except EditRefused as refused:
            self.host.show_ghost(None)
            self.host.say(str(refused))

    def _show(self, state: Drawing) -> None:
        plan, length = self.host.plan, len(state.path)
        if length > FIGURES_UP_TO:
            self.host.show_ghost(Ghost(lay_line(plan, state.path)))
            self.host.say(tr("{count} cells: the strength comes when the line is laid.", count=length))
        else:
            drawn = self._drawn(plan, state, self.host.wired)
            self.host.show_ghost(Ghost(drawn.change, drawn.marked, strengths=drawn.strength))
            self.host.say(drawn.problem or _words(drawn))

    def _drawn(self, plan: Plan, state: Drawing, wired: frozenset[Cell]) -> DrawnLine:
        """What a drag lays. Raises EditRefused."""
        return draw_line(plan, state.found, state.path, wired, with_repeaters=self._sets_repeaters)


def _words(drawn: DrawnLine) -> str:
    """How long it is and what is left: ``12 dust and 1 repeater (at 9 63 0), 3 left at the end``."""
    if not drawn.strength:
        return ""
    blocks = sum(entry.piece.part is Part.SOLID_BLOCK for entry in drawn.change.placed)
    at = ", ".join(map(str, drawn.repeaters))
    said = [tr("{count} dust", count=len(drawn.strength))]
    if at:
        said.append(tr("%n repeater(s) (at {at})", "", len(drawn.repeaters), at=at))
    if blocks:
        said.append(tr("%n block(s)", "", blocks))
    return tr("{said}; strength {left} at the end.", said=", ".join(said), left=drawn.left)
