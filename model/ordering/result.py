"""What the planner gives: an order of the rails, and what it costs to wire."""

from __future__ import annotations

from typing import NamedTuple

import msgspec

from model.edits import set_build_order
from model.grid import Cell, Facing
from model.parts import RAILS
from model.plan import Plan
from model.routing.choice import Choice
from model.routing.junction import Junction

BuiltRails = tuple[tuple[Cell, Facing], ...]
"""All rails of a plan in the order of placing, each with the way that its builder faces."""


class Cost(NamedTuple):
    """What counts, the gravest first."""

    inverters: int
    thrown: int
    """Switches thrown, summed over the readers."""
    wired: int


class BuildOrder(msgspec.Struct, frozen=True):
    """An order of placing, and the wiring that then serves the wanted routes."""

    rails: BuiltRails
    served: bool
    inverters: int
    thrown: int
    wired: int
    proved: bool
    """Whether no order is better; where none serves, whether that is proved."""

    @property
    def cost(self) -> Cost:
        """What counts, the gravest first."""
        return Cost(self.inverters, self.thrown, self.wired)


def built_rails(plan: Plan) -> BuiltRails:
    """The plan's own order."""
    return tuple((piece.at, piece.facing) for piece in plan.pieces if piece.part in RAILS)


def cost_of(choice: Choice) -> Cost:
    """What a choice of wired switches costs."""
    return Cost(len(choice.idle), sum(map(len, choice.thrown.values())), len(choice.wired))


def judged(plan: Plan, rails: BuiltRails, *, proved: bool) -> BuildOrder:
    """The plan built in this order, with the best choice of wired switches for it."""
    control = Junction(set_build_order(plan, rails).applied(plan)).control
    return BuildOrder(rails, control.serves, *cost_of(control.choice), proved=proved)
