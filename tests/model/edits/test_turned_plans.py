"""A plan turned, mirrored or moved: what must follow follows, and what must stay stays."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from pathlib import Path
from random import Random

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model import edits
from model.files.plan_file import plan_bytes, read_plan
from model.grid import ALL_TURNS, Cell, Turn
from model.plan import Change, Plan, plan_of
from model.routing.junction import Junction
from model.rules import find_all
from model.sheet import materials
from model.steps.bound import ordered_rails
from model.track.layout import Layout
from model.track.shapes import Shape
from tests.harness.plans import random_plan
from tests.strategies import plans, tracks, turns

EXAMPLES = sorted((Path(__file__).parents[3] / "resources" / "examples").glob("*.plan.json"))

BLIND_TO_SHAPES = {"arm-off-track", "unknown-arm", "name-doubled", "running-side"}
"""Rules that look at places and names only, so that what they find follows any turn."""

Found = Counter[tuple[str, frozenset[Cell], frozenset[str], bool]]


def found(plan: Plan, place: Callable[[Cell], Cell], rules: set[str] | None = None) -> Found:
    return Counter(
        (finding.rule, frozenset(map(place, finding.cells)), frozenset(finding.arms), finding.waived)
        for finding in find_all(Junction(plan))
        if rules is None or finding.rule in rules
    )


def same(cell: Cell) -> Cell:
    return cell


def turned_shape(turn: Turn, shape: Shape) -> Shape:
    """The shape whose ends are where the turn brings those of the given one."""
    ends = {(turn.heading(end.heading), end.rise) for end in shape.ends}
    return next(other for other in Shape if {(end.heading, end.rise) for end in other.ends} == ends)


def moves_whole(plan: Plan, dx: int, dy: int, dz: int) -> None:
    def place(cell: Cell) -> Cell:
        return cell.moved(dx, dy, dz)

    moved = edits.move_plan(plan, dx, dy, dz).applied(plan)
    here, there = Junction(plan), Junction(moved)
    assert {place(cell): shape for cell, shape in here.layout.shapes.items()} == there.layout.shapes
    assert [(place(s.at), s.name, s.idle, s.called_by) for s in here.switches] == [
        (s.at, s.name, s.idle, s.called_by) for s in there.switches
    ]
    assert here.routes == there.routes
    assert found(plan, place) == found(moved, same)
    assert [(m.part, m.pieces) for m in materials(plan).parts] == [
        (m.part, m.pieces) for m in materials(moved).parts
    ]


def turns_whole(plan: Plan, turn: Turn) -> None:
    turned = edits.turn_plan(plan, turn).applied(plan)
    assert materials(turned) == materials(plan)
    assert [(route.start, route.idle, route.called) for route in turned.routes] == [
        (route.start, route.idle, route.called) for route in plan.routes
    ]
    assert found(plan, turn.cell, BLIND_TO_SHAPES) == found(turned, same, BLIND_TO_SHAPES)
    what_carries_turns(plan, turned, turn)
    shapes_turn_where_order_is_free(plan, turned, turn)
    assert plan_bytes(edits.turn_plan(turned, turn.inverse).applied(turned)) == plan_bytes(plan)


def what_carries_turns(plan: Plan, turned: Plan, turn: Turn) -> None:
    """A rail's raised end asks for a block, and which end is raised may be a choice tied to the axes."""
    before, after = Layout(plan).shapes, Layout(turned).shapes
    bent = {cell for cell, shape in before.items() if after[turn.cell(cell)] is not turned_shape(turn, shape)}
    rule = {"unsupported"}
    here = {cell for _, cells, _, _ in found(plan, same, rule) for cell in cells} - bent
    there = {cell for _, cells, _, _ in found(turned, turn.inverse.cell, rule) for cell in cells} - bent
    assert here == there


def shapes_turn_where_order_is_free(plan: Plan, turned: Plan, turn: Turn) -> None:
    """The rules tied to the world's axes only choose where a rail cannot link to all its neighbours.

    A rail that finds one above it on both sides is such a choice too: south and west win.
    """
    if ordered_rails(plan):
        return
    before, after = Layout(plan).shapes, Layout(turned).shapes
    for cell, shape in before.items():
        above = [cell.step(end.heading, 1) in before for end in shape.ends]
        if not all(above):
            assert after[turn.cell(cell)] is turned_shape(turn, shape)


PLANS = plans() | tracks().map(plan_of)
MOVES = st.tuples(st.integers(-5_000, 5_000), st.integers(-900, 900), st.integers(-5_000, 5_000))


@settings(max_examples=20, deadline=None)
@given(PLANS, MOVES)
def test_everything_follows_a_move(plan: Plan, by: tuple[int, int, int]) -> None:
    moves_whole(plan, *by)


@settings(max_examples=50, deadline=None)
@given(PLANS, turns)
def test_what_must_follow_a_turn_follows(plan: Plan, turn: Turn) -> None:
    turns_whole(plan, turn)


def moved_and_turned(seeds: range) -> None:
    """Cheap plans by the number of their seed, each moved and turned."""
    for seed in seeds:
        random = Random(seed)
        plan = random_plan(random, most=10)
        moves_whole(
            plan, random.randint(-5_000, 5_000), random.randint(-900, 900), random.randint(-5_000, 5_000)
        )
        turns_whole(plan, random.choice(ALL_TURNS))


@pytest.mark.timeout(600)
def test_1_000_plans_are_moved_and_turned_whole() -> None:
    moved_and_turned(range(1_000))


@pytest.mark.slow
@pytest.mark.timeout(0)
def test_100_000_plans_are_moved_and_turned_whole() -> None:
    moved_and_turned(range(1_000, 101_000))


def test_a_turn_that_forgets_the_arms_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    """The control that must fail."""
    turn_plan = edits.turn_plan

    def forgetful(plan: Plan, turn: Turn) -> Change:
        change = turn_plan(plan, turn)
        after = None if change.after is None else change.after.replace(arms=plan.arms)
        return msgspec.structs.replace(change, after=after)

    monkeypatch.setattr(edits, "turn_plan", forgetful)
    with pytest.raises(AssertionError):
        moved_and_turned(range(20))


@pytest.mark.slow
@pytest.mark.timeout(0)
@settings(max_examples=2_000, deadline=None)
@given(PLANS, MOVES, turns)
def test_moves_and_turns_at_length(plan: Plan, by: tuple[int, int, int], turn: Turn) -> None:
    moves_whole(plan, *by)
    turns_whole(plan, turn)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_the_examples_turn_and_move_whole(path: Path) -> None:
    plan = read_plan(path)
    moves_whole(plan, 100, -3, -40)
    for turn in ALL_TURNS:
        turns_whole(plan, turn)
