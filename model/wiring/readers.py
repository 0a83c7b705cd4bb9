"""Where the reader of an arm can stand, and how soon its line must be on at each switch."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from math import ceil, floor
from typing import Final, NamedTuple

from msgspec import Struct

from model.dry_run.carts import TICKS_A_CELL
from model.grid import Cell, Heading, Turn
from model.wiring.modules.modules import Module, load_module
from model.wiring.needs import Reading, Straight


class Ring(NamedTuple):
    """A form of the reader by what stops its lower hopper, and keeps the line on."""

    name: str
    detector: int
    """Cells from the detector rail to the hopper."""
    hold: int
    """Ticks for which the line is on, at least, after a cart came to the detector rail."""


RINGS: Final = (Ring("short", 2, 63), Ring("beside", 2, 63), Ring("apart", 4, 63), Ring("long", 2, 119))
"""The simplest first."""


class Stand(Struct, frozen=True):
    """A reader in its place."""

    arm: str
    module: Module
    start: Cell
    """Where its line starts."""
    slack: dict[Cell, int | None]
    """By switch: ticks by which line and drive may delay the signal; ``None`` where nothing hurries."""
    price: int
    """The lower the better, before anything is known of its line."""


def stands(reading: Reading) -> Iterator[Stand]:
    """All places on the arm's straight in which a reader holds long enough, the cheapest first."""
    found = (
        _stand(reading, straight, place, ring, line, mirror)
        for ring in RINGS
        for straight in reading.straights
        for place in range(ring.detector, len(straight.cells))
        if _holds_long_enough(reading, straight.place + place, ring)
        for line in ("ahead", "aside")
        for mirror in (False, True)
    )
    yield from sorted((stand for stand in found if stand is not None), key=lambda stand: stand.price)


def _stand(
    reading: Reading, straight: Straight, place: int, ring: Ring, line: str, mirror: bool
) -> Stand | None:
    turn = _turn(straight.heading, mirror)
    module = _module(reading.waybill, ring.name, line).turned(turn, straight.cells[place])
    slack = {
        switch: None if at is None else _ticks_until(at - straight.place - place) - module.delay
        for switch, at in reading.thrown.items()
    }
    tightest = min((ticks for ticks in slack.values() if ticks is not None), default=0)
    if tightest < 0:
        return None
    price = 2 * RINGS.index(ring) + int(line == "aside") + _haste(tightest)
    return Stand(reading.arm, module, module.port("line").at, slack, price)


def _haste(slack: int) -> int:
    """What little time costs, and, less, a reader far from its switches, whose line is long."""
    return (8 - slack) * 3 if slack < 8 else (slack - 8) // 2


def _ticks_until(cells: int) -> int:
    """From a cart coming into a cell until the last tick in which a switch ``cells`` further may still turn.

    The way out of the switch is looked up as the cart leaves it, on the shapes at the end of the tick before.
    Both ticks are rounded up; half a tick may be lost by that.
    """
    return floor(TICKS_A_CELL * (cells + 1)) - 1


def _holds_long_enough(reading: Reading, hopper: int, ring: Ring) -> bool:
    """Whether the line is on until the last cart of a train has left the last switch."""
    return ring.hold > ceil(TICKS_A_CELL * (reading.last - (hopper - ring.detector) + 1))


@cache
def _module(waybill: str, ring: str, line: str) -> Module:
    return load_module("reader", waybill=waybill, ring=ring, line=line)


def _turn(heading: Heading, mirror: bool) -> Turn:
    """The turn that brings east to ``heading``."""
    return next(
        turn for quarter in range(4) if (turn := Turn(quarter, mirror)).heading(Heading.EAST) is heading
    )
