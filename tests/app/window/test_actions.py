"""The table of actions: texts, keys, and that each does something."""

from __future__ import annotations

from collections import Counter

import pytest
from PySide6.QtGui import QKeySequence

from app.actions import ACTIONS, MENUS, TOOLS, action
from app.tools.table import TOOLS as TOOL_CLASSES
from app.window import MainWindow


def test_no_key_means_two_things() -> None:
    keys = Counter(QKeySequence(key).toString() for entry in ACTIONS for key in entry.keys)
    assert [key for key, count in keys.items() if count > 1] == []


def test_every_key_is_one_that_a_keyboard_has() -> None:
    for entry in ACTIONS:
        for key in entry.keys:
            assert QKeySequence(key).toString() != "", (entry.name, key)


@pytest.mark.parametrize("entry", ACTIONS, ids=lambda entry: entry.name)
def test_every_action_says_what_it_does(entry) -> None:
    assert entry.text.strip()
    assert entry.tip.endswith(".")
    assert entry.tip[0].isupper() or entry.tip[0].isdigit()
    assert entry.menu.split("/")[0] in MENUS


def test_names_and_texts_are_not_doubled_in_a_menu() -> None:
    assert len({entry.name for entry in ACTIONS}) == len(ACTIONS)
    texts = Counter((entry.menu, entry.text) for entry in ACTIONS)
    assert max(texts.values()) == 1


def test_every_tool_can_be_taken_up_by_an_action() -> None:
    assert set(TOOLS) == set(TOOL_CLASSES)
    for name in TOOLS.values():
        assert action(name).menu == "Edit/Tool"


def test_every_action_stands_in_its_menu_with_its_key_and_tip(window: MainWindow) -> None:
    for entry in ACTIONS:
        keys = [QKeySequence(key).toString() for key in entry.keys]
        bound = window.bound[entry.name]
        assert bound in window.menus[entry.menu].actions(), entry.name
        assert entry.tip in bound.toolTip()
        assert [key.toString() for key in bound.shortcuts()] == keys
