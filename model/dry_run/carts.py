"""Carts: what they carry, and when they come into their next cell.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from math import ceil
from typing import Final

from model.dry_run.boxes import Box
from model.dry_run.script import EventRefused, Load
from model.grid import Cell, Heading
from model.parts import STACK
from model.pieces import WAYBILL, Held
from model.signals.containers import stacks
from model.signals.items import CART_SLOTS, Slots, count_of, slots_of
from model.track.rails import unpack
from model.wording import tr

TICKS_A_CELL: Final = 2.5
"""8 cells a second, the highest speed."""


class Cart:
    """A cart; ``key`` is its packed cell, or where it is to come in."""

    __slots__ = (
        "base",
        "box",
        "came",
        "cells",
        "goes",
        "heading",
        "held",
        "key",
        "load",
        "number",
        "stopped",
        "train",
    )

    def __init__(self, number: int, key: int, heading: Heading, load: Load, base: int, cells: int) -> None:
        self.number = number
        self.key = key
        self.heading = heading
        self.load = load
        self.box = Box(content_of_cart(load))
        self.base = base
        """The tick from which its way is timed, and how many cells it had gone by then, less those ahead."""
        self.cells = cells
        self.came = base
        self.goes: int | None = None
        self.held = False
        self.stopped = False
        self.train = number
        """The number of the first cart of its train."""

    @property
    def cell(self) -> Cell:
        """Where it is."""
        return unpack(self.key)

    def tick_of_next_cell(self) -> int:
        """Rounded once, so that nothing adds up."""
        return self.base + ceil(TICKS_A_CELL * self.cells)

    def carries(self) -> Load:
        """What is left of each waybill that it had."""
        return tuple((name, count_of(self.box.slots, WAYBILL + name)) for name, _ in self.load)


def content_of_cart(load: Load) -> Slots:
    """The slots of a cart with these waybills. Raises EventRefused where they are too many."""
    held = [stack for name, count in load for stack in stacks(Held(WAYBILL + name, count))]
    if len(held) > CART_SLOTS:
        raise EventRefused(
            tr(
                "a cart holds {slots} stacks of {stack}; {count} are too many",
                slots=CART_SLOTS,
                stack=STACK,
                count=len(held),
            )
        )
    return slots_of(held, CART_SLOTS)
