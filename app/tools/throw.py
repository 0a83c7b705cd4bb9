"""Throw: a click on a switch shows its powered state, the next one releases it; in a dry run, on a lever."""

from __future__ import annotations

from dataclasses import dataclass

from app.tools.events import PointerEvent
from app.tools.tool import Tool
from app.translation import tr
from model.grid import Cell
from model.track.switches import power_states


@dataclass(frozen=True)
class Pressing:
    """The button went down on this cell."""

    cell: Cell


class ThrowTool(Tool):
    """Idle (state ``None``) or pressing. It changes no plan, only what is previewed."""

    name = "throw"
    state: Pressing | None = None

    @property
    def is_busy(self) -> bool:
        """While the button is down."""
        return self.state is not None

    def press(self, event: PointerEvent) -> None:
        """Notes the switch."""
        self.state = Pressing(event.cell)

    def release(self, event: PointerEvent) -> None:
        """Throws the switch when the pointer is still on it."""
        if self.state is not None and event.cell != self.state.cell:
            self.cancel()
        self.complete()

    def complete(self) -> bool:
        """Throws the switch, or releases it."""
        if self.state is None:
            return False
        cell = self.state.cell
        self.state = None
        self._throw(cell)
        return True

    def cancel(self) -> bool:
        """Throws nothing."""
        was_busy = self.is_busy
        self.state = None
        return was_busy

    def _throw(self, cell: Cell) -> None:
        if self.host.in_dry_run:
            self._work(cell)
            return
        layout = self.host.layout
        if layout.shape(cell) is None or not power_states(layout, cell).is_switch:
            self.host.say(tr("No switch at {cell}.", cell=cell))
            return
        powered = self.host.powered ^ {cell}
        if powered:
            self.host.preview_switches(powered)
        else:
            self.host.clear_preview()

    def _work(self, cell: Cell) -> None:
        """In a dry run signals throw the switches, and the hand works levers and buttons."""
        if self.host.can_work(cell):
            self.host.work(cell)
        else:
            self.host.say(
                tr("No lever or button at {cell}; in a dry run signals throw the switches.", cell=cell)
            )
