"""Stand-ins for the search for a wiring, whose steps a test hands out one by one."""

from __future__ import annotations

import threading
from collections.abc import Iterator

from model.edits import place
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import new_piece
from model.plan import Change, Plan
from model.progress import Progress
from model.wiring.proof.proof import Headway
from model.wiring.result import LineReport, Unwired, Wiring

LAMP = Cell(0, 60, 0)
"""What the stand-in places."""
SWITCHES = (Cell(1, 64, -1), Cell(3, 64, 1))


def lamp(plan: Plan) -> Change:
    """A change that stands for a wiring."""
    return place(plan, new_piece(Part.LAMP, LAMP, Facing.NORTH))


def wired(plan: Plan) -> Wiring:
    """Two lines, with all that is said of them."""
    lines = (LineReport("Quay", SWITCHES, 31, 1), LineReport("Fen", SWITCHES[1:], 9, 0))
    headways = (Headway("Quay", 155), Headway("Fen", 120))
    return Wiring(True, lamp(plan), lines, 180, 4, 106, 106, (), headways)


def unwired(*messages: str) -> Wiring:
    """Why not: something of an arm, something of a cell, and something of both."""
    found = (
        Unwired("Quay", None, "No straight of it is long enough for a reader."),
        Unwired(None, SWITCHES[0], "Nothing fits under the switch."),
        Unwired("Fen", SWITCHES[1], "The line finds no way to it."),
    )
    return Wiring(False, None, (), 0, 0, 0, 0, found)


class Wirer:
    """Says how far it is, and gives its result when it is let go on."""

    def __init__(self) -> None:
        self.may_go_on = threading.Event()
        self.is_wired = True
        self.asked: tuple[int, int, int] | None = None
        """The seed, the cells to grow and the levels of depth."""
        self.is_ended = False

    def __call__(self, plan: Plan, seed: int, grow: int, depth: int) -> Iterator[Progress | Wiring]:
        self.asked = (seed, grow, depth)
        self.is_ended = False
        try:
            yield Progress("control table", 0, 1)
            yield Progress("attempts", 0, 40)
            yield Progress("lines", 3, 30)
            yield Progress("proof", 12, 106)
            while not self.may_go_on.wait(0.005):
                yield Progress("proof", 12, 106)
            yield wired(plan) if self.is_wired else unwired()
        finally:
            self.is_ended = True
