"""Test cart: drag it onto a rail or an arm in the direction of its heading, or click an arm's tag."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from app.tools.events import Key, Modifiers, PointerEvent
from app.tools.host import Ghost, ShownCart
from app.tools.tool import Tool
from app.translation import tr
from model.grid import Cell, Heading
from model.plan import Arm, Plan

AIMED: Final = 0.3
"""How far a drag must go, in cells, before it gives a heading."""


@dataclass(frozen=True)
class Aiming:
    """The cart is held over a cell, where the pointer went down; the drag gives its heading."""

    cell: Cell
    grip: tuple[float, float]
    """Where the pointer went down, in cells."""
    heading: Heading | None = None


@dataclass(frozen=True)
class Tagging:
    """The button went down on the tag of this arm."""

    arm: str


class CartTool(Tool):
    """Idle (state ``None``), aiming, or on a tag."""

    name = "cart"
    drags_by_key = True
    state: Aiming | Tagging | None = None

    @property
    def is_busy(self) -> bool:
        """While the button is down."""
        return self.state is not None

    def press(self, event: PointerEvent) -> None:
        """Holds a cart over the rail, or over the arm that the tag names."""
        tag = self.host.tag_at(event)
        if tag is not None:
            self.state = Tagging(tag.arm)
        elif self.host.layout.shape(event.cell) is None:
            self.host.say(tr("No rail at {cell}.", cell=event.cell))
        else:
            self.state = Aiming(event.cell, _point(event))
            self._show(event.modifiers)

    def drag(self, event: PointerEvent) -> None:
        """Turns the cart."""
        if isinstance(self.state, Aiming):
            self.state = replace(self.state, heading=_aim(self.state, event))
            self._show(event.modifiers)

    def release(self, event: PointerEvent) -> None:
        """Sends the cart off; Shift gives it the waybill, or takes it."""
        self.drag(event)
        self._send(self._is_loaded(event.modifiers))

    def complete(self) -> bool:
        """Sends the cart off."""
        return self._send(self.host.cart_loaded)

    def cancel(self) -> bool:
        """Takes the cart off."""
        if self.state is None:
            return False
        self.state = None
        self.host.show_ghost(None)
        return True

    def key(self, key: Key, modifiers: Modifiers) -> bool:
        """W gives the cart the waybill, or takes it."""
        if modifiers or key is not Key.WAYBILL:
            return False
        loaded = not self.host.cart_loaded
        self.host.load_cart(loaded)
        self.host.say(tr("The test cart carries the waybill.") if loaded else tr("The test cart is empty."))
        if isinstance(self.state, Aiming):
            self._show(Modifiers.NONE)
        return True

    def _is_loaded(self, modifiers: Modifiers) -> bool:
        return self.host.cart_loaded != bool(modifiers & Modifiers.SHIFT)

    def _show(self, modifiers: Modifiers) -> None:
        assert isinstance(self.state, Aiming)
        heading = self._heading(self.state)
        if heading is None:
            self.host.show_ghost(None)
        else:
            cart = ShownCart(self.state.cell, heading, self._is_loaded(modifiers))
            self.host.show_ghost(Ghost(cart=cart))

    def _heading(self, state: Aiming) -> Heading | None:
        """That of the drag, else that in which an arm's carts enter here."""
        arm = _arm_in(self.host.plan, state.cell)
        entering = arm.enter.heading if arm is not None and arm.enter is not None else None
        return entering if state.heading is None else state.heading

    def _send(self, loaded: bool) -> bool:
        state = self.state
        if state is None:
            return False
        self.cancel()
        if isinstance(state, Tagging):
            self._send_in_by(state.arm, loaded)
            return True
        heading = self._heading(state)
        arm = _arm_in(self.host.plan, state.cell, heading)
        if arm is not None:
            self.host.run_cart(arm.name, loaded)
        elif heading is not None:
            self.host.send_cart(state.cell, heading, loaded)
        else:
            self.host.say(tr("Drag the cart in the direction in which it shall run."))
        return True

    def _send_in_by(self, name: str, loaded: bool) -> None:
        arm = self.host.plan.details.arm(name)
        if arm is None or arm.enter is None:
            self.host.say(tr("No cart comes in by {name}: the arm has only an out.", name=name))
        else:
            self.host.run_cart(name, loaded)


def _arm_in(plan: Plan, cell: Cell, heading: Heading | None = None) -> Arm | None:
    """The first arm whose carts enter in a cell, with a heading where one is given."""
    for arm in plan.arms:
        end = arm.enter
        if end is not None and end.at == cell and heading in (None, end.heading):
            return arm
    return None


def _point(event: PointerEvent) -> tuple[float, float]:
    return event.cell.x + event.fraction[0], event.cell.z + event.fraction[1]


def _aim(state: Aiming, event: PointerEvent) -> Heading | None:
    x, z = _point(event)
    dx, dz = x - state.grip[0], z - state.grip[1]
    if max(abs(dx), abs(dz)) < AIMED:
        return None
    if abs(dx) > abs(dz):
        return Heading.EAST if dx > 0 else Heading.WEST
    return Heading.SOUTH if dz > 0 else Heading.NORTH
