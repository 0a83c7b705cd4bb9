"""Each edit alone comes undone, and any sequence of edits, undos and redos equals its replay.

So do the shapes of the rails: those that followed every edit equal those worked out afresh.
"""

from __future__ import annotations

from collections.abc import Callable
from random import Random

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from model import edits
from model.files.plan_file import parse_plan, plan_bytes
from model.grid import ALL_TURNS, Cell
from model.pieces import Placed
from model.plan import EMPTY_PLAN, Change, Plan
from model.track.layout import Layout
from tests.harness.plans import random_plan
from tests.strategies import EDITS, changes, filled_plans, plans


def comes_undone(plan: Plan, change: Change, inverse: Change) -> None:
    done = change.applied(plan)
    undone = inverse.applied(done)
    assert undone == plan
    assert plan_bytes(undone) == plan_bytes(plan)
    assert change.applied(undone) == done


def comes_undone_often(kind: str, examples: int) -> None:
    """Plans by the number of a seed cost little."""
    changing = 0

    @settings(max_examples=examples, deadline=None)
    @given(data=st.data(), seed=st.integers(0, 2**32))
    def each(data: st.DataObject, seed: int) -> None:
        nonlocal changing
        plan = random_plan(Random(seed), most=10)
        change = data.draw(changes(plan, kind))
        comes_undone(plan, change, change.inverse())
        changing += not change.is_empty

    each()
    assert changing >= examples // 4, "what changes nothing comes undone by itself"


@pytest.mark.parametrize("kind", EDITS)
def test_an_edit_comes_undone_byte_for_byte(kind: str) -> None:
    comes_undone_often(kind, 500)


@pytest.mark.slow
@pytest.mark.timeout(0)
@pytest.mark.parametrize("kind", EDITS)
def test_an_edit_comes_undone_byte_for_byte_at_length(kind: str) -> None:
    comes_undone_often(kind, 5_000)


@pytest.mark.slow
@pytest.mark.timeout(0)
@pytest.mark.parametrize("kind", EDITS)
@settings(max_examples=500, deadline=None)
@given(data=st.data())
def test_an_edit_of_a_plan_drawn_whole_comes_undone(kind: str, data: st.DataObject) -> None:
    """Such plans cost ten times as much, and shrink to the least that fails."""
    plan = data.draw(filled_plans)
    change = data.draw(changes(plan, kind))
    comes_undone(plan, change, change.inverse())


def forgets_the_details(change: Change) -> Change:
    return msgspec.structs.replace(change.inverse(), after=change.after)


def puts_pieces_last(change: Change) -> Change:
    inverse = change.inverse()
    later = tuple(Placed(entry.rank + 1_000, entry.piece) for entry in inverse.placed)
    return msgspec.structs.replace(inverse, placed=later)


@pytest.mark.parametrize("wrong", [forgets_the_details, puts_pieces_last])
def test_an_inverse_that_is_not_exact_is_seen(wrong: Callable[[Change], Change]) -> None:
    """Controls that must fail."""
    random = Random(1)
    with pytest.raises(AssertionError):
        undo_many(random, wrong)


def undo_many(random: Random, inverse: Callable[[Change], Change]) -> None:
    for _ in range(20):
        plan = random_plan(random)
        turned = edits.turn_plan(plan, ALL_TURNS[3])
        erased = edits.erase(plan, [next(iter(plan.pieces)).at])
        for change in (turned, erased, edits.set_title(plan, "another one")):
            comes_undone(plan, change, inverse(change))


def test_every_edit_is_drawn() -> None:
    asked = set(edits.__all__) - {"EditRefused", "copy_pieces", "name_problem"}
    assert set(EDITS) == asked


class Editing(RuleBasedStateMachine):
    """A user who edits, undoes, redoes, saves and loads at random."""

    def __init__(self) -> None:
        super().__init__()
        self.start = self.plan = EMPTY_PLAN
        self.layout = Layout(EMPTY_PLAN)
        self.done: list[Change] = []
        self.undone: list[Change] = []

    @initialize(plan=plans())
    def open(self, plan: Plan) -> None:
        self.start = self.plan = plan
        self.layout = Layout(plan)

    @rule(data=st.data())
    def edit(self, data: st.DataObject) -> None:
        change = data.draw(changes(self.plan))
        self.apply(change)
        self.done.append(change)
        self.undone.clear()

    @precondition(lambda self: self.done)
    @rule()
    def undo(self) -> None:
        change = self.done.pop()
        self.apply(change.inverse())
        self.undone.append(change)

    @precondition(lambda self: self.undone)
    @rule()
    def redo(self) -> None:
        change = self.undone.pop()
        self.apply(change)
        self.done.append(change)

    @rule()
    def save_and_load(self) -> None:
        saved = plan_bytes(self.plan)
        loaded = parse_plan(saved, "saved.plan.json")
        assert loaded == self.plan
        assert plan_bytes(loaded) == saved

    def apply(self, change: Change) -> None:
        before = self.layout.shapes
        self.plan = change.applied(self.plan)
        told = self.layout.follow(change)
        after = self.layout.shapes
        assert told == {cell for cell in before.keys() | after.keys() if before.get(cell) != after.get(cell)}

    @invariant()
    def shapes_equal_a_fresh_layout(self) -> None:
        """Item by item: the order of the rails is the order of the file."""
        assert list(self.layout.shapes.items()) == list(Layout(self.plan).shapes.items())

    @invariant()
    def equals_the_replay(self) -> None:
        replayed = self.start
        for change in self.done:
            replayed = change.applied(replayed)
        assert replayed == self.plan

    def teardown(self) -> None:
        end, plan = self.plan, self.plan
        for change in reversed(self.done):
            plan = change.inverse().applied(plan)
        assert plan == self.start
        for change in self.done:
            plan = change.applied(plan)
        assert plan == end
        assert plan_bytes(plan) == plan_bytes(end)


class Lazy(Layout):
    """The control that must fail: it tells nothing of the rails around those that an edit touches."""

    def follow(self, change: Change) -> set[Cell]:
        super().follow(change)
        return {cell for cell in change.cells if cell in self.shapes}


def test_an_incremental_that_tells_too_little_is_seen() -> None:
    with pytest.raises(AssertionError):
        follow_lazily()


def follow_lazily() -> None:
    random = Random(3)
    for _ in range(50):
        editing = Editing()
        editing.start = editing.plan = random_plan(random)
        editing.layout = Lazy(editing.plan)
        editing.apply(edits.erase(editing.plan, [next(iter(editing.plan.pieces)).at]))
        editing.apply(edits.turn_plan(editing.plan, ALL_TURNS[1]))


@pytest.mark.timeout(600)
class TestEditing(Editing.TestCase):
    settings = settings(max_examples=300, stateful_step_count=30, deadline=None)


@pytest.mark.slow
@pytest.mark.timeout(0)
class TestEditingAtLength(Editing.TestCase):
    settings = settings(max_examples=5_000, stateful_step_count=50, deadline=None)
