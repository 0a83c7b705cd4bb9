"""A dialog goes once it is answered: a window that is open for days must not gather them."""

from __future__ import annotations

import pytest

from app.window import MainWindow
from model.files.plan_file import read_plan
from tests.app.answering import answering, dialogs_of
from tests.app.windows import example, settle


@pytest.mark.parametrize(
    "name", ["title", "sheet_data", "go_to", "move_plan", "find_action", "shortcuts", "cautions", "about"]
)
def test_a_dialog_goes_once_it_is_answered(window: MainWindow, name: str) -> None:
    window.document.load(read_plan(example("fen-ring")), None)
    settle(window)
    before = dialogs_of(window)
    with answering() as answered:
        for _ in range(3):
            window.bound[name].trigger()
    assert len(answered) == 3
    assert dialogs_of(window) == before
