"""Carts under way.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from tests.oracle.carts import STOPPERS, ArmSpec, next_cell, way_out_of
from tests.oracle.dry_run_items import Slots, in_stacks
from tests.oracle.shapes import Place, Track

STORAGE_CART = 27


@dataclass
class Cart:
    """A cart; ``at`` is its cell while it is on the track, ``last`` the last cell that it stood on."""

    number: int
    entry: tuple[Place, str]
    timed_from: int
    ahead: int
    """Cells that it lies behind the head of its train when timed."""
    names: tuple[str, ...] = ()
    slots: Slots = field(default_factory=list)
    moved: int = -1
    """Cells that it has gone since it was timed; -1 before it comes in."""
    at: Place | None = None
    last: Place | None = None
    heading: str = ""
    state: str = "running"
    """running, held, stopped, or gone."""

    def next_move(self) -> int:
        """The tick in which it comes into its next cell: ceil(2.5 times the cells)."""
        return self.timed_from + (5 * (self.moved + 1 + self.ahead) + 1) // 2

    def come_in(self) -> None:
        """Into the cell of the way in."""
        self.at = self.last = self.entry[0]
        self.heading = self.entry[1]
        self.moved = 0

    def carries(self) -> dict[str, int]:
        """What is left of the waybills that it was sent with."""
        return {name: sum(s[1] for s in self.slots if s and s[0] == "waybill:" + name) for name in self.names}


def train(event: dict, entry: tuple[Place, str], tick: int, first: int) -> list[Cart]:
    """The carts of a train; the first comes in at once."""
    carts = []
    count = event.get("carts", 1)
    waybills = event.get("waybills", {})
    for k in range(count):
        own = waybills[k] if isinstance(waybills, list) else waybills
        slots = in_stacks(tuple(("waybill:" + name, number) for name, number in own.items()))
        slots += [None] * (STORAGE_CART - len(slots))
        carts.append(Cart(first + k, entry, tick, k * (event.get("gap", 1) + 1), tuple(own), slots))
    carts[0].come_in()
    return carts


def move(cart: Cart, track: Track, others: dict[Place, str], arms: list[ArmSpec]) -> str | None:
    """Leave the cell: the arm by which it arrives, or ``None``. ``others`` are the pieces that are no
    rails.
    """
    end = way_out_of(track.shape[cart.at], cart.heading)
    cart.heading = end[0]
    ahead = next_cell(cart.at, end)
    below = (ahead[0], ahead[1] - 1, ahead[2])
    if others.get(ahead) in STOPPERS:
        cart.state = "stopped"
        return None
    for arm in arms:
        if arm.way_out == (cart.at, cart.heading):
            cart.at, cart.state = None, "gone"
            return arm.name
    cart.moved += 1
    if ahead in track.part:
        cart.at = cart.last = ahead
    elif below in track.part:
        cart.at = cart.last = below
    else:
        cart.at, cart.state = None, "gone"
    return None
