"""What is said of a step: every label there is can be said as done."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.speech.deeds import deed_words, done_verbs
from app.undo import Step
from tests.strategies import EDITS, NEEDED, changes, plans


def test_a_step_is_said_as_done_undone_and_done_again() -> None:
    assert deed_words(Step.DONE, "Lay 6 rails") == "Laid 6 rails"
    assert deed_words(Step.UNDONE, "Lay 6 rails") == "Undid: Lay 6 rails"
    assert deed_words(Step.DONE_AGAIN, "Lay 6 rails") == "Did again: Lay 6 rails"


def test_a_word_that_is_not_known_is_left_as_it_is() -> None:
    assert deed_words(Step.DONE, "Gleis legen") == "Done: Gleis legen"


@pytest.mark.parametrize("kind", EDITS)
@settings(max_examples=5)
@given(data=st.data())
def test_every_kind_of_edit_can_be_said_as_done(kind: str, data: st.DataObject) -> None:
    plan = data.draw(plans().filter(lambda plan: kind not in NEEDED or NEEDED[kind](plan)))
    label = data.draw(changes(plan, kind)).label
    assert label.split(" ")[0] in done_verbs(), label
