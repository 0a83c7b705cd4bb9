"""Comparisons of the order planner with the second implementation, each with a failure that can be read."""

from __future__ import annotations

from itertools import pairwise
from random import Random

from model.edits import set_build_order
from model.grid import Cell, Facing
from model.ordering import BuildOrder, best_order
from model.parts import RAILS
from model.plan import Plan
from model.text_drawing import draw
from model.track.layout import Layout
from tests.oracle.adapter import drawn_from, pieces_from, plan_from
from tests.oracle.optimum import Cost, cost_of_order, optimum
from tests.oracle.random_junctions import Junction
from tests.oracle.shapes import Rail

SECONDS = 60.0


def told(name: object, plan: Plan) -> str:
    """A plan to read when a comparison fails."""
    return f"{name}\n{draw(Layout(plan))}\n{[(str(p.part), tuple(p.at)) for p in plan.pieces]}"


def on_blocks(random: Random, pieces: list[Rail]) -> list[Rail]:
    """The rails in their order with a block under each, somewhere between the rails."""
    taken = {at for _, at, _ in pieces}
    built = list(pieces)
    for _, (x, y, z), _ in pieces:
        if (x, y - 1, z) not in taken:
            built.insert(random.randint(0, len(built)), ("solid-block", (x, y - 1, z), "north"))
    return built


def built_in(plan: Plan, rails: tuple[tuple[Cell, Facing], ...]) -> Plan:
    """The plan with its rails in that order; checks that nothing but order and facings of rails changes."""
    after = set_build_order(plan, rails).applied(plan)
    before, now = list(plan.pieces), list(after.pieces)
    assert after.details == plan.details
    assert sorted((piece.part, piece.at) for piece in now) == sorted((p.part, p.at) for p in before)
    assert [p if p.part not in RAILS else None for p in now] == [
        p if p.part not in RAILS else None for p in before
    ]
    assert tuple((piece.at, piece.facing) for piece in now if piece.part in RAILS) == rails
    return after


def cost_said(order: BuildOrder) -> Cost | None:
    """The cost that the planner gives; ``None`` where it found no order that serves."""
    return (order.inverters, order.thrown, order.wired) if order.served else None


def compare_best_order(name: object, junction: Junction) -> Cost | None:
    """The planner's last word is the least cost of all orders, proved, and its order has it."""
    plan = plan_from(*junction)
    found = list(best_order(plan, SECONDS))
    check_that_each_is_better(found, told(name, plan))
    best = optimum(*junction)
    assert best.exact
    assert (cost_said(found[-1]), found[-1].proved) == (best.cost, True), told(name, plan)
    for order in (found[0], found[-1]):
        compare_cost_of_order(name, plan, order)
    return best.cost


def compare_cost_of_order(name: object, plan: Plan, order: BuildOrder) -> None:
    """The plan placed in the order that was found costs just what was said."""
    drawn = drawn_from(built_in(plan, order.rails))
    pieces = pieces_from(built_in(plan, order.rails))
    assert cost_of_order(pieces, drawn.arms, drawn.routes) == cost_said(order), told(name, plan)


def check_that_each_is_better(found: list[BuildOrder], message: str) -> None:
    """Each is better than the one before, or as good and more certain, or a repetition."""
    for before, after in pairwise(found):
        assert worth(after) >= worth(before), message
        assert after.proved >= before.proved, message


def worth(order: BuildOrder) -> tuple[int, ...]:
    """The more the better."""
    return (order.served, -order.inverters, -order.thrown, -order.wired) if order.served else (0,)
