"""The table of actions of the network window, and that all of it can be reached and says what it is."""

from __future__ import annotations

from collections import Counter

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from app.actions import ACTIONS
from app.network.actions import NETWORK_ACTIONS, NETWORK_MENUS, NETWORK_TOOLS
from app.network.dialogs import LinkDialog, TripDialog
from app.network.items import Item, Kind
from app.network.junction_dialog import JunctionDialog
from app.network.tools.table import TOOLS
from app.network.way_dialog import WayDialog
from app.network.ways import ways_offered
from app.network.window import NetworkWindow
from tests.app.network.networks import EXAMPLE, load, settle, small_network
from tests.app.window.test_reach import unnamed


def test_no_key_means_two_things() -> None:
    keys = Counter(QKeySequence(key).toString() for entry in NETWORK_ACTIONS for key in entry.keys)
    assert [key for key, count in keys.items() if count > 1 or key == ""] == []


def test_what_the_plan_editor_has_too_has_the_same_name_and_keys() -> None:
    plan = {entry.name: entry for entry in ACTIONS}
    shared = [entry for entry in NETWORK_ACTIONS if entry.name in plan]
    assert len(shared) > 20
    for entry in shared:
        assert entry.keys == plan[entry.name].keys
        assert entry.is_choice == plan[entry.name].is_choice


@pytest.mark.parametrize("entry", NETWORK_ACTIONS, ids=lambda entry: entry.name)
def test_every_action_says_what_it_does(entry) -> None:
    assert entry.text.strip()
    assert entry.tip.endswith(".")
    assert entry.menu.split("/")[0] in NETWORK_MENUS


def test_every_tool_can_be_taken_up(network_window: NetworkWindow) -> None:
    assert set(NETWORK_TOOLS) == set(TOOLS)
    for tool, name in NETWORK_TOOLS.items():
        network_window.bound[name].trigger()
        assert network_window.view.tool == tool
        assert network_window.bound[name].isChecked()


def test_every_action_stands_in_its_menu(network_window: NetworkWindow) -> None:
    for entry in NETWORK_ACTIONS:
        bound = network_window.bound[entry.name]
        assert bound in network_window.menus[entry.menu].actions(), entry.name
        assert entry.tip in bound.toolTip()


def test_everything_that_takes_the_focus_has_a_name(network_window: NetworkWindow) -> None:
    network_window.files.open_example(EXAMPLE)
    settle(network_window)
    network_window.panels.readers.choose("Fen Ring/Quay")
    assert unnamed(network_window) == []


def test_every_question_has_names_too(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    network = small_network()
    questions: tuple[QWidget, ...] = (
        JunctionDialog(window, network.junctions[0], window.document, is_new=False),
        LinkDialog(window, window.document, Item(Kind.STATION, 0), Item(Kind.JUNCTION, 0)),
        TripDialog(window, network),
        WayDialog(window, "Quay → Fen", ways_offered(network, "Quay", "Fen")),
    )
    for question in questions:
        assert unnamed(question) == [], type(question).__name__
        question.deleteLater()


def test_tab_goes_all_around_the_window(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    window.activateWindow()
    window.frame.tools.tools["select"].setFocus()
    seen: list[QWidget] = []
    for _ in range(100):
        widget = window.focusWidget()
        assert widget is not None
        if widget in seen:
            break
        seen.append(widget)
        QTest.keyClick(widget, Qt.Key.Key_Tab)
    for wanted in (window.view, window.panels.trips.table, window.frame.tools.main):
        assert wanted in seen
    assert seen[0] is window.focusWidget()


def test_the_smallest_window_and_both_themes(network_window: NetworkWindow) -> None:
    window = network_window
    window.files.open_example(EXAMPLE)
    settle(window)
    pictures = []
    for scheme in ("light", "dark"):
        window.use_scheme(scheme)
        window.resize(1024, 640)
        assert (window.width(), window.height()) == (1024, 640)
        pictures.append(window.view.grab().toImage())
    assert pictures[0] != pictures[1]
