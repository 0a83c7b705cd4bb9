"""The wanted routes, edited in place."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit
from pytestqt.qtbot import QtBot

from app.panels.routes_model import CALLED, FROM, IDLE, REACHED_ROLE, WAYBILL
from app.window import MainWindow
from model.files.plan_file import read_plan
from model.plan import Route
from tests.app.windows import example, settle, straight_plan


@pytest.fixture
def routed(window: MainWindow) -> MainWindow:
    """A window that shows the routes of a straight track."""
    window.document.load(straight_plan(), None)
    settle(window)
    window.bound["show_routes"].trigger()
    return window


def begin_edit(window: MainWindow, qtbot: QtBot, row: int, column: int) -> QComboBox | QLineEdit:
    """Double-click a cell; the editor that opens."""
    table = window.panels.routes.table
    index = window.panels.routes.model.index(row, column)
    place = table.visualRect(index).center()
    qtbot.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)
    qtbot.mouseDClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)
    editor = table.indexWidget(index)
    assert isinstance(editor, QComboBox | QLineEdit)
    return editor


def choose(editor: QComboBox | QLineEdit, qtbot: QtBot, text: str) -> None:
    """Choose an arm from the list with the keyboard."""
    assert isinstance(editor, QComboBox)
    editor.showPopup()
    for _ in range(editor.count()):
        qtbot.keyClick(editor.view(), Qt.Key.Key_Up)
    for _ in range(editor.findText(text)):
        qtbot.keyClick(editor.view(), Qt.Key.Key_Down)
    qtbot.keyClick(editor.view(), Qt.Key.Key_Return)
    QApplication.processEvents()


def end_edit(editor: QLineEdit, qtbot: QtBot) -> None:
    """Press Return; the table takes the words over with the next events."""
    qtbot.keyClick(editor, Qt.Key.Key_Return)
    QApplication.processEvents()


def test_each_edit_in_place_is_one_undo_step_and_is_saved(
    routed: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    choose(begin_edit(routed, qtbot, 0, CALLED), qtbot, "Quay")
    line = begin_edit(routed, qtbot, 0, WAYBILL)
    qtbot.keyClicks(line, "Salt")
    end_edit(line, qtbot)
    assert routed.document.plan.routes == (Route("Quay", "Fen", "Quay", "Salt"),)
    assert routed.document.undo_stack.count() == 2

    routed.bound["show_switches"].trigger()
    routed.bound["undo"].trigger()
    assert routed.document.plan.routes == (Route("Quay", "Fen", "Quay"),)
    assert routed.panels.routes.isVisible(), "undo shows where it acted"
    routed.bound["redo"].trigger()
    path = tmp_path / "routed.plan.json"
    routed.document.save(path)
    routed.document.new()
    assert routed.panels.routes.model.rowCount() == 0
    assert routed.files.open_path(path)
    model = routed.panels.routes.model
    assert [model.index(0, column).data() for column in range(4)] == ["Quay", "Fen", "Quay", "Salt"]


def test_the_arms_that_let_carts_out_are_the_choices(routed: MainWindow, qtbot: QtBot) -> None:
    editor = begin_edit(routed, qtbot, 0, IDLE)
    assert isinstance(editor, QComboBox)
    assert [editor.itemText(n) for n in range(editor.count())] == ["Fen", "Quay"], "back to Quay comes last"


def test_the_start_of_a_route_can_be_changed_in_its_place(routed: MainWindow, qtbot: QtBot) -> None:
    choose(begin_edit(routed, qtbot, 0, FROM), qtbot, "Fen")
    assert routed.document.plan.routes == (Route("Fen", "Fen"),)
    assert routed.document.undo_stack.count() == 1


def test_adding_and_removing_routes(routed: MainWindow, qtbot: QtBot) -> None:
    panel = routed.panels.routes
    qtbot.mouseClick(panel.add_button, Qt.MouseButton.LeftButton)
    assert routed.document.plan.routes == (Route("Quay", "Fen"), Route("Fen", "Quay"))
    assert not panel.add_button.isEnabled(), "every arm has its route"
    assert routed.side.lower_tabs.tabText(1) == "Routes  2"
    panel.table.setCurrentIndex(panel.model.index(0, FROM))
    qtbot.mouseClick(panel.remove_button, Qt.MouseButton.LeftButton)
    assert routed.document.plan.routes == (Route("Fen", "Quay"),)


def test_a_click_on_the_first_route_offers_to_remove_it(routed: MainWindow, qtbot: QtBot) -> None:
    panel = routed.panels.routes
    assert not panel.remove_button.isEnabled()
    place = panel.table.visualRect(panel.model.index(0, IDLE)).center()
    qtbot.mouseClick(panel.table.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert panel.remove_button.isEnabled()
    qtbot.mouseClick(panel.remove_button, Qt.MouseButton.LeftButton)
    assert routed.document.plan.routes == ()
    assert not panel.remove_button.isEnabled()


def test_a_name_that_no_waybill_can_have_is_refused_in_words(routed: MainWindow, qtbot: QtBot) -> None:
    line = begin_edit(routed, qtbot, 0, WAYBILL)
    qtbot.keyClicks(line, "salt, fish")
    end_edit(line, qtbot)
    assert routed.document.plan == straight_plan()
    assert "comma" in routed.panels.status.here.text()


def test_typing_in_a_cell_does_not_take_up_a_tool(routed: MainWindow, qtbot: QtBot) -> None:
    before = routed.view.tool
    line = begin_edit(routed, qtbot, 0, WAYBILL)
    qtbot.keyClicks(line, "place")
    assert routed.view.tool == before
    qtbot.keyClick(line, Qt.Key.Key_Escape)
    assert routed.document.plan == straight_plan()


def test_news_from_the_background_leaves_what_is_being_typed(routed: MainWindow, qtbot: QtBot) -> None:
    line = begin_edit(routed, qtbot, 0, WAYBILL)
    qtbot.keyClicks(line, "Salt")
    routed.document.junction_updated.emit()
    assert isinstance(line, QLineEdit)
    assert line.text() == "Salt"


def test_saving_and_closing_take_over_what_is_being_typed(
    routed: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    path = tmp_path / "typed.plan.json"
    routed.document.save(path)
    qtbot.keyClicks(begin_edit(routed, qtbot, 0, WAYBILL), "Salt")
    routed.bound["save"].trigger()
    assert read_plan(path).routes[0].waybill == "Salt"
    qtbot.keyClicks(begin_edit(routed, qtbot, 0, WAYBILL), "Fish")
    routed.panels.routes.table.finish_edit()
    assert routed.document.is_dirty


def test_a_route_that_is_not_reached_is_marked(window: MainWindow) -> None:
    plan = straight_plan()
    wrong = plan.details.replace(routes=(Route("Quay", "Quay"),))
    window.document.load(type(plan)(plan.pieces, wrong), None)
    settle(window)
    model = window.panels.routes.model
    assert model.index(0, IDLE).data(REACHED_ROLE) is False
    assert "not reached" in model.index(0, IDLE).data(Qt.ItemDataRole.AccessibleTextRole)
    window.document.load(plan, None)
    settle(window)
    assert model.index(0, IDLE).data(REACHED_ROLE) is True
    assert model.index(0, CALLED).data(REACHED_ROLE) is None


def test_a_key_begins_an_edit(routed: MainWindow, qtbot: QtBot) -> None:
    table = routed.panels.routes.table
    table.setCurrentIndex(routed.panels.routes.model.index(0, WAYBILL))
    table.setFocus()
    qtbot.keySequence(table, QKeySequence("F2"))
    line = table.viewport().findChild(QLineEdit)
    assert line is not None
    qtbot.keyClicks(line, "Fish")
    end_edit(line, qtbot)
    assert routed.document.plan.routes[0].waybill == "Fish"


def test_examples_show_all_their_routes(window: MainWindow) -> None:
    for name in ("saltern-junction", "fen-ring", "beacon-wye"):
        plan = read_plan(example(name))
        window.document.load(plan, None)
        model = window.panels.routes.model
        assert [model.index(row, FROM).data() for row in range(model.rowCount())] == [
            route.start for route in plan.routes
        ]


def test_the_arrows_look_through_the_choices_and_only_enter_makes_one(
    routed: MainWindow, qtbot: QtBot
) -> None:
    table, steps = routed.panels.routes.table, routed.document.undo_stack
    before = steps.count()
    table.setFocus()
    table.setCurrentIndex(table.model().index(0, 2))
    qtbot.keySequence(table, QKeySequence("F2"))
    QApplication.processEvents()
    (box,) = table.findChildren(QComboBox)
    names = [box.itemText(at) for at in range(box.count())]
    assert names[-1] == routed.document.plan.routes[0].start, "few carts go back where they came from"
    for _ in names:
        qtbot.keyClick(box, Qt.Key.Key_Up)
    for _ in names[1:]:
        qtbot.keyClick(box, Qt.Key.Key_Down)
    assert box.currentText() == names[-1]
    assert steps.count() == before
    qtbot.keyClick(box, Qt.Key.Key_Up)
    qtbot.keyClick(box, Qt.Key.Key_Return)
    QApplication.processEvents()
    assert routed.document.plan.routes[0].called == names[-2]
    assert steps.count() == before + 1


def test_a_button_reached_by_tab_has_no_second_frame(routed: MainWindow) -> None:
    """The system's own frame about the words would stand inside that of the window."""
    button = routed.panels.routes.add_button
    routed.bound["show_routes"].trigger()
    button.setFocus(Qt.FocusReason.MouseFocusReason)
    QApplication.processEvents()
    by_mouse = button.grab().toImage()
    QTest.keyClick(button, Qt.Key.Key_Tab)
    button.setFocus(Qt.FocusReason.TabFocusReason)
    QApplication.processEvents()
    assert button.grab().toImage() == by_mouse
