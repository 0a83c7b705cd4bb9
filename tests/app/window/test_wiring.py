"""Wiring a junction from the window: beside it, with what is found told as it comes, placed as one step."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from app.dialogs.wiring import WiringDialog
from app.dialogs.wiring_model import DUST, HEADWAY, READER, REPEATERS, THROWS
from app.panels.findings_model import PLACE_ROLE, SECOND_ROLE
from app.window import MainWindow
from app.wire_words import CAUTIONS
from model.edits import place, set_title
from model.files.plan_file import read_plan
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import new_piece
from model.plan import Plan
from model.wiring.proof.proof import prove
from tests.app.window.test_reach import unnamed
from tests.app.windows import example, settle, straight_plan
from tests.app.wirings import LAMP, SWITCHES, Wirer, lamp


@pytest.fixture
def wirer(monkeypatch: pytest.MonkeyPatch) -> Wirer:
    """In place of the search; it waits in the middle of the proof."""
    wirer = Wirer()
    monkeypatch.setattr("model.wiring.wire.wire", wirer)
    return wirer


@pytest.fixture
def saltern(window: MainWindow) -> MainWindow:
    """A window with the example of a junction on two levels."""
    window.document.load(read_plan(example("saltern-junction")), None)
    settle(window)
    return window


@pytest.fixture
def dialog(saltern: MainWindow, wirer: Wirer, qtbot: QtBot) -> WiringDialog:
    """The search has come to the proof, and waits there."""
    return opened(saltern, qtbot)


def opened(window: MainWindow, qtbot: QtBot) -> WiringDialog:
    window.bound["wire"].trigger()
    dialog = window.findChild(WiringDialog)
    assert dialog is not None
    qtbot.waitUntil(lambda: dialog.told["proof"].text() == "run 12 of 106")
    return dialog


def end(dialog: WiringDialog, wirer: Wirer, qtbot: QtBot, *, is_wired: bool = True) -> None:
    wirer.is_wired = is_wired
    wirer.may_go_on.set()
    qtbot.waitUntil(lambda: not dialog.search.is_running)


def row(dialog: WiringDialog, number: int) -> list[str]:
    columns = (READER, THROWS, DUST, REPEATERS, HEADWAY)
    return [str(dialog.lines.index(number, column).data()) for column in columns]


def told(dialog: WiringDialog) -> list[str]:
    return [dialog.told[name].text() for name in ("attempt", "lines", "proof", "room")]


def test_it_searches_at_once_and_tells_how_far_it_is(dialog: WiringDialog, wirer: Wirer) -> None:
    assert not dialog.isModal()
    assert wirer.asked == (0, 1, 6)
    assert dialog.state.text().startswith("Searching, ")
    assert told(dialog) == ["1 of 40", "round 3 of 30", "run 12 of 106", "…"]
    assert dialog.again.text() == "Stop"
    assert not dialog.place.isEnabled()
    assert dialog.lines.rowCount() == 0


def test_what_was_found(dialog: WiringDialog, wirer: Wirer, qtbot: QtBot) -> None:
    end(dialog, wirer, qtbot)
    assert dialog.state.text().startswith("Wired and proved in ")
    assert told(dialog) == [
        "1 of 40",
        "2 lines, 40 dust, 1 repeater",
        "all 106 runs passed",
        "180 cells from above, 4 levels below the track",
    ]
    assert row(dialog, 0) == ["Quay", "S5, S3", "31", "1", "155 ticks, 7.75 s"]
    assert row(dialog, 1) == ["Fen", "S3", "9", "0", "120 ticks, 6 s"]
    assert dialog.again.text() == "Search again"
    assert dialog.place.isEnabled()
    said = "\n".join(label.text() for label in dialog.findChildren(QLabel))
    assert all(caution in said for caution in CAUTIONS)


def test_placing_is_one_step_that_undo_takes_back(
    saltern: MainWindow, dialog: WiringDialog, wirer: Wirer, qtbot: QtBot
) -> None:
    end(dialog, wirer, qtbot)
    before = saltern.document.plan
    QTest.mouseClick(dialog.place, Qt.MouseButton.LeftButton)
    assert not dialog.isVisible()
    assert saltern.document.plan == lamp(before).applied(before)
    assert saltern.document.undo_stack.count() == 1
    assert saltern.panels.status.here.text() == "Wired: 2 lines, 40 dust, 1 repeater."
    saltern.bound["undo"].trigger()
    assert saltern.document.plan == before


def test_enter_places_too_and_in_a_changed_field_searches_with_its_number(
    saltern: MainWindow, dialog: WiringDialog, wirer: Wirer, qtbot: QtBot
) -> None:
    end(dialog, wirer, qtbot)
    wirer.may_go_on.clear()
    for field, keys in ((dialog.fields.seed, "7"), (dialog.fields.beside, "0"), (dialog.fields.below, "4")):
        field.setFocus()
        field.selectAll()
        QTest.keyClicks(field, keys)
    QTest.keyClick(dialog.fields.below, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: wirer.asked == (7, 0, 4))
    assert dialog.lines.rowCount() == 0
    assert dialog.isVisible()
    end(dialog, wirer, qtbot)
    QTest.keyClick(dialog.table, Qt.Key.Key_Return)
    assert not dialog.isVisible()
    assert LAMP in saltern.document.plan.pieces


def test_enter_in_a_changed_field_begins_anew_while_a_search_runs(
    saltern: MainWindow, dialog: WiringDialog, wirer: Wirer, qtbot: QtBot
) -> None:
    dialog.fields.seed.setFocus()
    dialog.fields.seed.selectAll()
    QTest.keyClicks(dialog.fields.seed, "7")
    assert dialog.again.text() == "Search again"
    QTest.keyClick(dialog.fields.seed, Qt.Key.Key_Return)
    wirer.may_go_on.set()
    qtbot.waitUntil(lambda: wirer.asked == (7, 1, 6))
    qtbot.waitUntil(lambda: not dialog.search.is_running)
    assert dialog.isVisible(), "nothing is placed by it"
    assert dialog.place.isEnabled()


def test_a_line_leads_to_its_switches(
    saltern: MainWindow, dialog: WiringDialog, wirer: Wirer, qtbot: QtBot
) -> None:
    end(dialog, wirer, qtbot)
    dialog.table.setFocus()
    QTest.keyClick(dialog.table, Qt.Key.Key_Down)
    assert saltern.view.selection == set(SWITCHES)
    QTest.keyClick(dialog.table, Qt.Key.Key_Down)
    assert saltern.view.selection == {SWITCHES[1]}


def test_why_it_is_not_wired_leads_to_the_place(
    saltern: MainWindow, dialog: WiringDialog, wirer: Wirer, qtbot: QtBot
) -> None:
    end(dialog, wirer, qtbot, is_wired=False)
    assert dialog.state.text().startswith("Not wired, after ")
    assert told(dialog)[3] == "—"
    assert not dialog.place.isEnabled()
    assert not dialog.table.isVisible()
    model = dialog.why_not
    rows = [(model.index(at).data(PLACE_ROLE), model.index(at).data(SECOND_ROLE)) for at in range(3)]
    assert rows == [
        ("Quay", "No straight of it is long enough for a reader."),
        (str(SWITCHES[0]), "Nothing fits under the switch."),
        (f"Fen  {SWITCHES[1]}", "The line finds no way to it."),
    ]
    dialog.list.setFocus()
    QTest.keyClick(dialog.list, Qt.Key.Key_Down)
    assert saltern.view.selection == {Cell(-8, 64, -1), Cell(-8, 64, 1)}, (
        "an arm is shown where carts come and go"
    )
    assert dialog.said.text() == "No straight of it is long enough for a reader."
    QTest.keyClick(dialog.list, Qt.Key.Key_Down)
    assert saltern.view.selection == {SWITCHES[0]}
    saltern.view.choose(set())
    middle = dialog.list.visualRect(model.index(1)).center()
    QTest.mouseClick(dialog.list.viewport(), Qt.MouseButton.LeftButton, pos=middle)
    assert saltern.view.selection == {SWITCHES[0]}, "a click on the chosen row leads there once more"


def test_stop_ends_the_search(dialog: WiringDialog, wirer: Wirer, qtbot: QtBot) -> None:
    QTest.mouseClick(dialog.again, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: wirer.is_ended)
    assert dialog.state.text().startswith("Stopped after ")
    assert told(dialog) == ["1 of 40", "round 3 of 30", "run 12 of 106", "—"]
    assert not dialog.place.isEnabled()
    QTest.mouseClick(dialog.again, Qt.MouseButton.LeftButton)
    assert dialog.search.is_running
    qtbot.waitUntil(lambda: dialog.told["proof"].text() == "run 12 of 106")


def test_esc_closes_it_and_ends_the_search(dialog: WiringDialog, wirer: Wirer, qtbot: QtBot) -> None:
    QTest.keyClick(dialog.table, Qt.Key.Key_Escape)
    assert not dialog.isVisible()
    qtbot.waitUntil(lambda: wirer.is_ended)


def test_it_closes_with_the_window(
    saltern: MainWindow, dialog: WiringDialog, wirer: Wirer, qtbot: QtBot
) -> None:
    assert saltern.close()
    assert not dialog.isVisible()
    qtbot.waitUntil(lambda: wirer.is_ended)


def test_an_edit_of_the_plan_meanwhile_marks_the_result_as_old(
    saltern: MainWindow, dialog: WiringDialog, wirer: Wirer, qtbot: QtBot
) -> None:
    saltern.document.edit(set_title, "Saltern")
    assert dialog.search.is_running, "a title bears on no wiring"
    end(dialog, wirer, qtbot)
    assert dialog.place.isEnabled()
    saltern.document.edit(place, new_piece(Part.RAIL, Cell(40, 64, 40), Facing.EAST))
    assert dialog.state.text() == "The plan has changed since: what stands here is of the plan before."
    assert not dialog.place.isEnabled()
    QTest.mouseClick(dialog.again, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: not dialog.search.is_running)
    QTest.mouseClick(dialog.place, Qt.MouseButton.LeftButton)
    assert {LAMP, Cell(40, 64, 40)} <= {piece.at for piece in saltern.document.plan.pieces}


def test_another_plan_closes_it(saltern: MainWindow, dialog: WiringDialog) -> None:
    saltern.document.new()
    assert not dialog.isVisible()


def test_asking_twice_shows_the_same_search(saltern: MainWindow, dialog: WiringDialog) -> None:
    saltern.bound["wire"].trigger()
    assert saltern.findChildren(WiringDialog) == [dialog]
    assert dialog.told["proof"].text() == "run 12 of 106"


def test_without_wanted_routes_it_says_that_there_is_nothing_to_wire(
    window: MainWindow, qtbot: QtBot
) -> None:
    window.bound["wire"].trigger()
    dialog = window.findChild(WiringDialog)
    assert dialog is not None
    qtbot.waitUntil(lambda: not dialog.search.is_running)
    assert dialog.state.text() == "No routes are wanted yet, so there is nothing to wire."
    assert set(told(dialog)) == {"—"}
    assert not dialog.place.isEnabled()


def test_where_no_line_is_needed_it_says_so(window: MainWindow, qtbot: QtBot) -> None:
    """One straight track, and no called route."""
    window.document.load(straight_plan(), None)
    window.bound["wire"].trigger()
    dialog = window.findChild(WiringDialog)
    assert dialog is not None
    qtbot.waitUntil(lambda: not dialog.search.is_running)
    assert dialog.state.text() == "All wanted routes are served as the plan is: there is nothing to place."
    assert dialog.told["proof"].text() == "all 18 runs passed"
    assert not dialog.place.isEnabled()


def test_everything_in_it_has_a_name_and_nothing_moves(
    dialog: WiringDialog, wirer: Wirer, qtbot: QtBot
) -> None:
    def places() -> list[object]:
        QApplication.processEvents()
        widgets = (dialog.state, dialog.fields, *dialog.told.values(), dialog.again, dialog.place)
        return [widget.pos() for widget in widgets] + [dialog.again.size(), dialog.place.size()]

    assert unnamed(dialog) == []
    before = places()
    end(dialog, wirer, qtbot)
    assert places() == before


def test_the_search_itself_wires_the_example(saltern: MainWindow, qtbot: QtBot) -> None:
    """And what is placed passes the proof that is told of, made again."""
    saltern.bound["wire"].trigger()
    dialog = saltern.findChild(WiringDialog)
    assert dialog is not None
    qtbot.waitUntil(lambda: not dialog.search.is_running, timeout=90_000)
    assert [row(dialog, at)[READER] for at in range(3)] == ["Quay", "Fen", "Mill"]
    assert dialog.told["proof"].text() == "all 106 runs passed"
    QTest.mouseClick(dialog.place, Qt.MouseButton.LeftButton)
    plan: Plan = saltern.document.plan
    *_, proof = prove(plan)
    assert (proof.runs, proof.passed) == (106, 106)
    assert saltern.bound["undo"].text() == "Undo Wire 3 lines"
    assert saltern.document.undo_stack.count() == 1
