"""Stand-ins for the planner, whose results a test hands out one by one."""

from __future__ import annotations

import threading
from collections.abc import Iterator

from model.edits import turn_plan
from model.grid import ALL_TURNS, Turn
from model.ordering import BuildOrder
from model.parts import RAILS
from model.plan import Plan


def backward(plan: Plan, inverters: int = 0, *, served: bool = True, proved: bool = True) -> BuildOrder:
    """The plan's rails in the opposite order, and what they are said to need."""
    rails = tuple((piece.at, piece.facing) for piece in plan.pieces if piece.part in RAILS)[::-1]
    return BuildOrder(rails, served, inverters, 4, 3, proved)


class Planner:
    """Gives the orientations one by one, the first at once and each other when it is let go on."""

    def __init__(self) -> None:
        self.may_go_on = threading.Event()
        self.seconds = 0.0
        self.is_ended = False

    def __call__(self, plan: Plan, seconds: float) -> Iterator[tuple[Turn, BuildOrder]]:
        self.seconds = seconds
        self.is_ended = False
        try:
            yield Turn(), backward(plan, 2, proved=False)
            yield Turn(), backward(plan, 1)
            while not self.may_go_on.wait(0.005):
                yield Turn(), backward(plan, 1)
            for turn in ALL_TURNS[1:]:
                turned = turn_plan(plan, turn).applied(plan)
                yield turn, backward(turned, turn.quarter, served=turn.quarter != 3)
        finally:
            self.is_ended = True
