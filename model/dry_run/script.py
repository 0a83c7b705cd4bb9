"""What is done to a plan while it runs: events, each in its tick."""

from __future__ import annotations

from typing import Final

from msgspec import Struct

from model.grid import Cell, Heading
from model.pieces import Held

Load = tuple[tuple[str, int], ...]
"""The waybills in a cart, by name, and how many of each."""
EMPTY: Final[Load] = ()
TICK_LIMIT: Final = 12_000
"""Ticks that a run takes at most, where none are asked for: ten minutes."""


class Send(Struct, frozen=True):
    """A train comes in by an arm; its carts are as many as its loads."""

    arm: str
    loads: tuple[Load, ...] = (EMPTY,)
    gap: int = 1
    """Free cells between two carts."""


class Drop(Struct, frozen=True):
    """A cart is set on a rail."""

    at: Cell
    heading: Heading
    load: Load = EMPTY


class Lever(Struct, frozen=True):
    """A lever is pulled."""

    at: Cell
    on: bool


class Press(Struct, frozen=True):
    """A button is pressed."""

    at: Cell


class Fill(Struct, frozen=True):
    """The content of a container is replaced."""

    at: Cell
    holds: tuple[Held, ...]


Event = Send | Drop | Lever | Press | Fill


class Timed(Struct, frozen=True):
    """An event in its tick."""

    tick: int
    event: Event


class Script(Struct, frozen=True):
    """What is done, in the order in which it is written, and the cells that are watched."""

    events: tuple[Timed, ...] = ()
    probes: tuple[Cell, ...] = ()


class EventRefused(Exception):  # noqa: N818  # says what happened; nothing went wrong
    """An event that the plan has nothing for. The message is for the user."""
