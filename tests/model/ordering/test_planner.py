"""How the planner goes about its work; that it finds the best is compared with all orders elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import msgspec
import pytest

from model.edits import set_build_order, set_route, turn_plan
from model.files.plan_file import read_plan
from model.grid import ALL_TURNS, Cell, Facing, Heading, Turn
from model.ordering import BuildOrder, best_order
from model.ordering.ground import Ground
from model.ordering.linking import Linking
from model.parts import RAILS, Part
from model.pieces import Piece
from model.plan import Arm, ArmEnd, Plan, Route, plan_of
from model.routing.junction import Junction
from model.track.layout import Layout
from model.track.rails import pack, unpack

EXAMPLES = sorted((Path(__file__).parents[3] / "resources" / "examples").glob("*.plan.json"))


def last(plan: Plan, seconds: float = 60) -> BuildOrder:
    return list(best_order(plan, seconds))[-1]


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
@pytest.mark.parametrize("turn", ALL_TURNS, ids=lambda turn: str(turn.number))
def test_no_example_is_dearer_than_as_it_was_drawn(path: Path, turn: Turn) -> None:
    """Each result is what a check of the reordered plan says, and never worse than the order drawn."""
    plan = turn_plan(read_plan(path), turn).applied(read_plan(path))
    orders = list(best_order(plan))
    costs = [order.cost for order in orders if order.served]
    assert costs == sorted(costs, reverse=True)
    found = orders[-1]
    assert found.served
    assert found.proved
    junction = Junction(set_build_order(plan, found.rails).applied(plan))
    assert junction.control.serves
    choice = junction.choice
    assert found.cost == (len(choice.idle), sum(map(len, choice.thrown.values())), len(choice.wired))


def test_the_first_answer_is_the_plans_own_order() -> None:
    plan = read_plan(EXAMPLES[0])
    search = best_order(plan)
    first = next(search)
    search.close()
    assert first.rails == tuple((piece.at, piece.facing) for piece in plan.pieces if piece.part in RAILS)
    assert not first.proved


def test_without_time_nothing_is_proved() -> None:
    plan = turn_plan(read_plan(EXAMPLES[0]), Turn(1)).applied(read_plan(EXAMPLES[0]))
    found = last(plan, 0)
    assert found.served
    assert not found.proved


def test_where_nothing_is_wanted_nothing_is_searched() -> None:
    plan = read_plan(EXAMPLES[0])
    bare = Plan(plan.pieces, plan.details.replace(routes=()))
    assert [(order.served, order.cost, order.proved) for order in best_order(bare)] == [
        (True, (0, 0, 0), True)
    ]


def test_an_arm_that_is_not_there_is_served_by_no_order() -> None:
    plan = read_plan(EXAMPLES[0])
    route = msgspec.structs.replace(plan.routes[0], idle="Nowhere")
    found = last(set_route(plan, route).applied(plan))
    assert not found.served
    assert found.proved


def test_rails_one_above_the_other_leave_the_answer_unproved() -> None:
    """In the column to the east stand two rails, one level apart: which is found hangs on more than links."""
    cells = [Cell(0, 64, 0), Cell(1, 64, 0), Cell(1, 65, 0), Cell(-1, 64, 0), Cell(0, 64, 1)]
    plan = plan_of([Piece(Part.RAIL, cell) for cell in cells])
    assert Ground(plan, Layout(plan)).crowded
    wanted = Plan(plan.pieces, plan.details.replace(routes=(Route("Quay", "Mill"),)))
    assert not last(wanted).proved


def test_a_neighbour_that_sees_the_rail_above_is_planned_around() -> None:
    """The rail east of the branch finds the one that stands above the branch, and joins it in its place."""
    cells = [Cell(0, 64, 0), Cell(1, 65, 0), Cell(0, 65, 0), Cell(-1, 64, 0), Cell(0, 64, 1)]
    plan = plan_of([Piece(Part.RAIL, cell) for cell in cells])
    ground = Ground(plan, Layout(plan))
    assert Cell(0, 64, 0) in map(unpack, ground.three_way)
    assert unpack(ground.beside[pack(Cell(1, 65, 0))][Heading.WEST]) == Cell(0, 65, 0)
    arms = (
        Arm("Quay", enter=ArmEnd(Cell(-1, 64, 0), Heading.EAST)),
        Arm("Mill", leave=ArmEnd(Cell(0, 64, 1), Heading.SOUTH)),
    )
    wanted = Plan(plan.pieces, plan.details.replace(arms=arms, routes=(Route("Quay", "Mill"),)))
    assert last(wanted).served


def test_a_break_while_rings_are_looked_for_is_not_lost(monkeypatch: pytest.MonkeyPatch) -> None:
    def broken_off(_: Linking) -> Iterator[tuple[int, int]]:
        yield (1, 2)
        raise KeyboardInterrupt

    monkeypatch.setattr(Linking, "orders_known", broken_off)
    search = best_order(turn_plan(read_plan(EXAMPLES[0]), Turn(1)).applied(read_plan(EXAMPLES[0])))
    with pytest.raises(KeyboardInterrupt):
        list(search)


def test_only_rails_near_branches_matter() -> None:
    """A T with long arms: the branch and the three rails beside it; plain runs come out in any order."""
    rails = [Cell(x, 64, 0) for x in range(-9, 10)] + [Cell(0, 64, z) for z in range(1, 9)]
    plan = plan_of([Piece(Part.RAIL, cell, Facing.EAST) for cell in rails])
    ground = Ground(plan, Layout(plan))
    assert len(ground.bound) == 1
    assert len(ground.relevant) == 4
