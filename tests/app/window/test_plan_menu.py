"""The menu Plan: title, running side, sheet data, places and turns, each one undo step."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QDialog
from pytestqt.qtbot import QtBot

from app.dialogs.cell import CellDialog
from app.dialogs.details import LinesDialog
from app.window import MainWindow
from model.edits import move_plan, turn_plan
from model.grid import Cell, Turn
from model.plan import Side
from tests.app.windows import settle, straight_plan


@pytest.fixture
def straight(window: MainWindow) -> MainWindow:
    """A window with a straight track."""
    window.document.load(straight_plan(), None)
    settle(window)
    return window


def answer(act: Callable[[Any], None]) -> None:
    """Act on the question that comes next, and accept it."""

    def run() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, QDialog)
        act(dialog)
        dialog.accept()

    QTimer.singleShot(0, run)


def test_the_title_is_set_and_shown(straight: MainWindow, qtbot: QtBot) -> None:
    def give(dialog: LinesDialog) -> None:
        field = dialog.fields["title"]
        assert field.text() == "Straight"
        field.selectAll()
        qtbot.keyClicks(field, "Mill Crossing")

    answer(give)
    straight.bound["title"].trigger()
    assert straight.document.plan.details.title == "Mill Crossing"
    assert straight.menu_row.title == "Mill Crossing — changed"
    straight.bound["undo"].trigger()
    assert straight.menu_row.title == "Straight"


def test_the_title_block_is_set(straight: MainWindow) -> None:
    def give(dialog: LinesDialog) -> None:
        dialog.fields["owner"].setText("Brinepan Tramway")
        dialog.fields["revision"].setText("B")

    answer(give)
    straight.bound["sheet_data"].trigger()
    sheet = straight.document.plan.details.sheet
    assert (sheet.owner, sheet.revision, sheet.number) == ("Brinepan Tramway", "B", "")


def test_the_running_side_follows_the_plan(straight: MainWindow) -> None:
    assert straight.bound["side_none"].isChecked()
    straight.bound["side_left"].trigger()
    assert straight.document.plan.details.running_side is Side.LEFT
    straight.bound["mirror_plan"].trigger()
    assert straight.document.plan.details.running_side is Side.RIGHT
    assert straight.bound["side_right"].isChecked()
    straight.bound["undo"].trigger()
    straight.bound["undo"].trigger()
    assert straight.bound["side_none"].isChecked()


def test_go_to_shows_the_cell_and_its_level(straight: MainWindow) -> None:
    def give(dialog: CellDialog) -> None:
        dialog.x_field.setValue(-40)
        dialog.y_field.setValue(12)
        dialog.z_field.setValue(300)

    answer(give)
    straight.bound["go_to"].trigger()
    assert straight.view.cursor == Cell(-40, 12, 300)
    assert straight.view.level == 12
    assert straight.panels.status.place.text() == "x −40, y 12, z 300"


def test_move_plan_takes_the_cursor_s_cell_to_the_place(straight: MainWindow) -> None:
    straight.view.go_to(Cell(1, 64, 0))
    answer(lambda dialog: (dialog.x_field.setValue(101), dialog.y_field.setValue(70)))
    straight.bound["move_plan"].trigger()
    before = straight_plan()
    assert straight.document.plan == move_plan(before, 100, 6, 0).applied(before)
    assert straight.document.undo_stack.count() == 1


def test_a_move_out_of_reach_is_refused_in_words(straight: MainWindow) -> None:
    straight.view.go_to(Cell(2, 64, 0))
    answer(lambda dialog: dialog.x_field.setValue(-10_000_000))
    straight.bound["move_plan"].trigger()
    assert straight.document.plan == straight_plan()
    assert "out of reach" in straight.panels.status.here.text()


def test_turn_turns_what_is_chosen_or_else_the_plan(straight: MainWindow) -> None:
    straight.bound["turn_chosen"].trigger()
    before = straight_plan()
    turned = turn_plan(before, Turn(1)).applied(before)
    assert straight.document.plan == turned
    straight.bound["undo"].trigger()
    straight.view.choose({Cell(0, 64, 0), Cell(1, 64, 0)})
    straight.bound["turn_chosen"].trigger()
    assert straight.document.plan.arms == before.arms
    assert straight.document.plan != before


def test_undo_names_the_step_and_shows_where_it_acted(straight: MainWindow) -> None:
    straight.view.select_all()
    straight.bound["delete"].trigger()
    assert straight.bound["undo"].text().startswith("Undo Erase")
    straight.view.go_to(Cell(500, 100, 500))
    straight.bound["undo"].trigger()
    assert straight.view.level == 64
    assert straight.bound["redo"].text().startswith("Redo Erase")


def test_an_empty_change_is_no_step(straight: MainWindow) -> None:
    answer(lambda _dialog: None)
    straight.bound["title"].trigger()
    assert straight.document.undo_stack.count() == 0
    assert not straight.document.is_dirty


def test_finding_an_action_does_it(straight: MainWindow, qtbot: QtBot) -> None:
    def give(dialog: QDialog) -> None:
        qtbot.keyClicks(dialog.line, "level up")  # type: ignore[attr-defined]

    answer(give)
    straight.bound["find_action"].trigger()
    assert straight.view.level == 65


def test_the_preview_menu_offers_the_arms_and_readers_of_the_plan(straight: MainWindow) -> None:
    menu = straight.menus["Preview"]
    menu.aboutToShow.emit()
    submenus = {action.text().replace("&", ""): action.menu() for action in menu.actions() if action.menu()}
    names = [action.text().replace("&", "") for action in submenus["Run an empty cart from"].actions()]
    assert names == ["Quay", "Fen"]
    nothing = submenus["Hold the reader of"].actions()
    assert [action.isEnabled() for action in nothing] == [False]
    submenus["Run an empty cart from"].actions()[0].trigger()
    assert len(straight.view.previews.shown.runs) == 1
    straight.bound["clear_preview"].trigger()
    assert not straight.view.previews.shown.runs
