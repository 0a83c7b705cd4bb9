"""What becomes of carts, and how they are seen."""

from __future__ import annotations

from enum import StrEnum

from msgspec import Struct

from model.dry_run.script import Load
from model.grid import Cell, Heading


class Why(StrEnum):
    """Why a cart reached no arm."""

    LEAVES_TRACK = "leaves-track"
    STOPPED = "stopped"
    COLLISION = "collision"
    RUNNING = "running"


class Arrival(Struct, frozen=True):
    """A cart has left by an arm."""

    cart: int
    tick: int
    arm: str
    carries: Load
    """What is left of each waybill that it had."""


class Lost(Struct, frozen=True):
    """A cart has reached no arm."""

    cart: int
    at: Cell
    why: Why
    tick: int
    """In which it was lost; of a running cart, in which it came into its cell, or was sent."""


class CartState(Struct, frozen=True):
    """A cart on the track, to be drawn."""

    cart: int
    at: Cell
    heading: Heading
    carries: Load
    came: int
    """The tick in which it came into its cell."""
    goes: int | None
    """The tick in which it leaves it; ``None`` while it is held or stopped."""
    held: bool
    """By a booster without a signal."""
