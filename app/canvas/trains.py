"""What the test cart tool sends in a dry run: how many carts, how far apart, what they carry. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil
from typing import Final

from model.dry_run import EMPTY, Drop, Event, Load, Send
from model.grid import Cell, Heading
from model.pieces import WAYBILL
from model.plan import Plan

CARTS_AT_MOST: Final = 50
GAP_AT_MOST: Final = 50
UNNAMED: Final = "Waybill"
"""Of a plan that names no waybill."""
TICKS_A_CELL: Final = 2.5


@dataclass(frozen=True)
class Train:
    """What is sent next."""

    carts: int = 1
    gap: int = 1
    """Free cells between two carts."""
    loaded: bool = False
    waybill: str = ""
    """Its name; empty: that of the arm by which the train comes in."""


def send(train: Train, plan: Plan, arm: str, loaded: bool) -> Send:
    """The train comes in by an arm."""
    load = _load(train, plan, arm) if loaded else EMPTY
    return Send(arm, (load,) * train.carts, train.gap)


def drops(train: Train, plan: Plan, cell: Cell, heading: Heading, loaded: bool) -> list[tuple[int, Event]]:
    """The train starts on a rail: one cart after another is set there, each so many ticks after the first."""
    load = _load(train, plan, None) if loaded else EMPTY
    apart = TICKS_A_CELL * (train.gap + 1)
    return [(ceil(number * apart), Drop(cell, heading, load)) for number in range(train.carts)]


def waybills_of(plan: Plan) -> tuple[str, ...]:
    """The waybills that the routes of a plan call for, and those that lie in its containers, by name."""
    called = {route.waybill or route.start for route in plan.routes if route.called is not None}
    items = {held.item for piece in plan.pieces for held in piece.holds}
    return tuple(sorted(called | {item.removeprefix(WAYBILL) for item in items if item.startswith(WAYBILL)}))


def _load(train: Train, plan: Plan, arm: str | None) -> Load:
    own = (route.waybill or route.start for route in plan.routes if route.start == arm and route.called)
    name = train.waybill or next(own, "") or next(iter(waybills_of(plan)), UNNAMED)
    return ((name, 1),)
