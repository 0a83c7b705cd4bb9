"""Each edit alone comes undone, and any sequence of edits, undos and redos equals its replay.

So do the shapes of the rails: those that followed every edit equal those worked out afresh.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from model import edits
from model.files.plan_file import parse_plan, plan_bytes
from model.plan import EMPTY_PLAN, Change, Plan
from model.track.layout import Layout
from tests.strategies import EDITS, changes, filled_plans, plans


def comes_undone(kind: str, data: st.DataObject) -> None:
    plan = data.draw(filled_plans)
    change = data.draw(changes(plan, kind))
    done = change.applied(plan)
    undone = change.inverse().applied(done)
    assert undone == plan
    assert plan_bytes(undone) == plan_bytes(plan)
    assert change.applied(undone) == done


@pytest.mark.parametrize("kind", EDITS)
@settings(max_examples=25, deadline=None)
@given(data=st.data())
def test_an_edit_comes_undone_byte_for_byte(kind: str, data: st.DataObject) -> None:
    comes_undone(kind, data)


@pytest.mark.slow
@pytest.mark.timeout(0)
@pytest.mark.parametrize("kind", EDITS)
@settings(max_examples=5_000, deadline=None)
@given(data=st.data())
def test_an_edit_comes_undone_byte_for_byte_at_length(kind: str, data: st.DataObject) -> None:
    comes_undone(kind, data)


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


TestEditing = Editing.TestCase
TestEditing.settings = settings(max_examples=300, stateful_step_count=30, deadline=None)


@pytest.mark.slow
@pytest.mark.timeout(0)
class TestEditingAtLength(Editing.TestCase):
    settings = settings(max_examples=5_000, stateful_step_count=50, deadline=None)
