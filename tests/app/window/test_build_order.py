"""The search for the best build order: beside the window, in all orientations, placed as one step."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.dialogs.build_order import SECONDS, BuildOrderDialog
from app.dialogs.build_order_model import INVERTERS, MARK, ORIENTATION, PROOF
from app.window import MainWindow
from model.edits import place, set_build_order, set_title, turn_plan
from model.files.plan_file import read_plan
from model.grid import ALL_TURNS, Cell, Facing, Turn
from model.parts import Part
from model.pieces import new_piece
from model.track.layout import Layout
from tests.app.orders import Planner, backward
from tests.app.window.test_reach import unnamed
from tests.app.windows import example, settle


@pytest.fixture
def planner(monkeypatch: pytest.MonkeyPatch) -> Planner:
    planner = Planner()
    monkeypatch.setattr("app.dialogs.build_order.orders_by_orientation", planner)
    return planner


@pytest.fixture
def wye(window: MainWindow) -> MainWindow:
    """A window with the example of a wye."""
    window.document.load(read_plan(example("beacon-wye")), None)
    settle(window)
    return window


@pytest.fixture
def dialog(wye: MainWindow, planner: Planner, qtbot: QtBot) -> BuildOrderDialog:
    """The search has found an order for the plan as it is drawn, and waits there."""
    return opened(wye, qtbot)


def opened(window: MainWindow, qtbot: QtBot) -> BuildOrderDialog:
    window.bound["build_order"].trigger()
    dialog = window.findChild(BuildOrderDialog)
    assert dialog is not None
    qtbot.waitUntil(lambda: dialog.chosen.text().startswith("1 inverter"))
    return dialog


def end(dialog: BuildOrderDialog, planner: Planner, qtbot: QtBot) -> None:
    planner.may_go_on.set()
    qtbot.waitUntil(lambda: not dialog.search.is_running)


def cell(dialog: BuildOrderDialog, turn: Turn, column: int) -> str:
    return str(dialog.model.index(turn.number - 1, column).data())


def choose(dialog: BuildOrderDialog, turn: Turn) -> None:
    """With the arrow keys."""
    dialog.table.setFocus()
    for _ in range(turn.number - 1):
        QTest.keyClick(dialog.table, Qt.Key.Key_Down)
    assert dialog.turn == turn


def test_it_searches_at_once_and_tells_what_it_found(dialog: BuildOrderDialog, planner: Planner) -> None:
    assert not dialog.isModal()
    assert planner.seconds == SECONDS * len(ALL_TURNS)
    assert dialog.state.text().startswith("Searching, ")
    assert dialog.state.text().endswith(" s: orientation 1 of 8")
    assert dialog.as_drawn.text() == "2 inverters, 4 thrown, 3 wired"
    assert dialog.chosen.text() == "1 inverter, 4 thrown, 3 wired; no order is better"
    assert dialog.again.text() == "Stop"
    assert cell(dialog, Turn(), PROOF) == "searching…"
    assert cell(dialog, Turn(1), PROOF) == "waiting"
    assert cell(dialog, Turn(), MARK) == "cheapest so far"


def test_it_closes_with_the_window(wye: MainWindow, dialog: BuildOrderDialog, planner: Planner) -> None:
    assert wye.close()
    assert not dialog.isVisible()
    assert planner.is_ended


def test_without_wanted_routes_it_says_that_there_is_nothing_to_serve(
    window: MainWindow, qtbot: QtBot
) -> None:
    window.bound["build_order"].trigger()
    dialog = window.findChild(BuildOrderDialog)
    assert dialog is not None
    qtbot.waitUntil(lambda: not dialog.search.is_running)
    assert dialog.state.text() == "No routes are wanted yet, so every order serves."
    assert not dialog.place.isEnabled()


def test_all_eight_orientations_and_the_cheapest_in_words(
    dialog: BuildOrderDialog, planner: Planner, qtbot: QtBot
) -> None:
    end(dialog, planner, qtbot)
    assert dialog.state.text().startswith("All eight orientations were searched in ")
    assert [cell(dialog, turn, INVERTERS) for turn in ALL_TURNS] == ["1", "1", "2", "—", "0", "1", "2", "—"]
    assert [turn.number for turn in ALL_TURNS if cell(dialog, turn, MARK) == "cheapest"] == [5]
    assert cell(dialog, Turn(3), PROOF) == "no order serves"
    assert cell(dialog, Turn(0, mirror=True), ORIENTATION) == "mirrored"
    assert dialog.again.text() == "Search again"


def test_placing_is_one_step_that_undo_takes_back(
    wye: MainWindow, dialog: BuildOrderDialog, planner: Planner
) -> None:
    before = wye.document.plan
    assert dialog.place.text() == "Place in this order"
    QTest.mouseClick(dialog.place, Qt.MouseButton.LeftButton)
    assert not dialog.isVisible()
    assert not dialog.search.is_running
    assert wye.document.plan == set_build_order(before, backward(before).rails).applied(before)
    assert wye.document.undo_stack.count() == 1
    assert wye.panels.status.here.text() == "Placed in this order: 1 inverter, 4 thrown, 3 wired."
    wye.bound["undo"].trigger()
    assert wye.document.plan == before


def test_another_orientation_turns_and_places_in_one_step(
    wye: MainWindow, dialog: BuildOrderDialog, planner: Planner, qtbot: QtBot
) -> None:
    end(dialog, planner, qtbot)
    before, turn = wye.document.plan, Turn(0, mirror=True)
    rail = next(piece.at for piece in before.pieces if piece.part is Part.RAIL)
    wye.view.choose({rail})
    choose(dialog, turn)
    assert dialog.place.text() == "Turn, and place in this order"
    QTest.keyClick(dialog.table, Qt.Key.Key_Return)
    turned = turn_plan(before, turn).applied(before)
    assert wye.document.plan == set_build_order(turned, backward(turned).rails).applied(turned)
    assert wye.document.layout.shapes == Layout(wye.document.plan).shapes
    assert wye.document.undo_stack.count() == 1
    assert wye.view.selection == {turn.cell(rail)}
    wye.bound["undo"].trigger()
    assert wye.document.plan == before


def test_what_is_not_served_cannot_be_placed(
    dialog: BuildOrderDialog, planner: Planner, qtbot: QtBot
) -> None:
    end(dialog, planner, qtbot)
    choose(dialog, Turn(3))
    assert dialog.chosen.text() == "not served; no order serves all wanted routes"
    assert not dialog.place.isEnabled()


def test_where_nothing_is_gained_it_says_so(
    wye: MainWindow, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    def same(plan, seconds):  # type: ignore[no-untyped-def]
        yield Turn(), backward(plan, 1)

    monkeypatch.setattr("app.dialogs.build_order.orders_by_orientation", same)
    dialog = opened(wye, qtbot)
    assert dialog.chosen.text() == "1 inverter, 4 thrown, 3 wired; no order is better: as good as now"
    assert not dialog.place.isEnabled()


def test_stop_ends_the_search_and_keeps_what_was_found(
    dialog: BuildOrderDialog, planner: Planner, qtbot: QtBot
) -> None:
    QTest.mouseClick(dialog.again, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: planner.is_ended)
    assert dialog.state.text().startswith("Stopped after ")
    assert dialog.place.isEnabled()
    assert cell(dialog, Turn(1), PROOF) == "not looked at"
    QTest.mouseClick(dialog.again, Qt.MouseButton.LeftButton)
    assert dialog.search.is_running
    qtbot.waitUntil(lambda: dialog.chosen.text().startswith("1 inverter"))


def test_esc_closes_it_and_ends_the_search(dialog: BuildOrderDialog, planner: Planner, qtbot: QtBot) -> None:
    QTest.keyClick(dialog.table, Qt.Key.Key_Escape)
    assert not dialog.isVisible()
    qtbot.waitUntil(lambda: planner.is_ended)


def test_an_edit_of_the_plan_meanwhile_marks_the_result_as_old(
    wye: MainWindow, dialog: BuildOrderDialog, planner: Planner, qtbot: QtBot
) -> None:
    wye.document.edit(set_title, "Beacon")
    assert dialog.search.is_running, "a title bears on no order"
    wye.document.edit(place, new_piece(Part.RAIL, Cell(40, 64, 40), Facing.EAST))
    qtbot.waitUntil(lambda: planner.is_ended)
    assert dialog.state.text() == "The plan has changed since: what stands here is of the plan before."
    assert not dialog.place.isEnabled()
    QTest.mouseClick(dialog.again, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: dialog.chosen.text().startswith("1 inverter"))
    assert dialog.place.isEnabled()
    QTest.mouseClick(dialog.place, Qt.MouseButton.LeftButton)
    assert Cell(40, 64, 40) in wye.document.plan.pieces


def test_another_plan_closes_it(wye: MainWindow, dialog: BuildOrderDialog) -> None:
    wye.document.new()
    assert not dialog.isVisible()


def test_asking_twice_shows_the_same_search(wye: MainWindow, dialog: BuildOrderDialog) -> None:
    wye.bound["build_order"].trigger()
    assert wye.findChildren(BuildOrderDialog) == [dialog]
    assert dialog.chosen.text().startswith("1 inverter")


def test_everything_in_it_has_a_name_and_nothing_moves(
    dialog: BuildOrderDialog, planner: Planner, qtbot: QtBot
) -> None:
    def places() -> list[object]:
        QApplication.processEvents()
        widgets = (dialog.state, dialog.table, dialog.again, dialog.close_button, dialog.place)
        return [widget.pos() for widget in widgets] + [dialog.again.size(), dialog.place.size()]

    assert unnamed(dialog) == []
    before = places()
    end(dialog, planner, qtbot)
    choose(dialog, Turn(1))
    assert places() == before


def test_the_planner_itself_finds_the_same_as_the_plan_then_needs(wye: MainWindow, qtbot: QtBot) -> None:
    """The counts shown are those that the window works out of the plan once it is placed so."""
    wye.bound["build_order"].trigger()
    dialog = wye.findChild(BuildOrderDialog)
    assert dialog is not None
    qtbot.waitUntil(lambda: "no order is better" in dialog.chosen.text(), timeout=30_000)
    junction = wye.document.junction
    assert junction is not None
    wired = [switch for switch in junction.switches if switch.idle is not None]
    counts = (sum(switch.inverter for switch in wired), sum(len(switch.called_by) for switch in wired))
    inverters = "1 inverter" if counts[0] == 1 else f"{counts[0]} inverters"
    assert dialog.as_drawn.text() == f"{inverters}, {counts[1]} thrown, {len(wired)} wired"
