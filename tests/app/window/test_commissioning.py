"""Commissioning with the hands of a user: keys alone, the pointer, and a plan that goes on being drawn."""

from __future__ import annotations

import pytest
from msgspec import structs
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.panels.commissioning_model import MUST, NUMBER, SAW
from app.panels.commissioning_panel import CommissioningPanel
from app.window import MainWindow
from model.commissioning import STAYS, Fault, Kind
from model.edits import lay_track, move_plan
from model.files.plan_file import plan_bytes
from model.grid import Cell
from model.plan import ArmEnd, Plan, plan_of
from tests.app.commissioning import (
    commissioning_of,
    example_plan,
    hold_up,
    rows,
    say_what_is_seen,
    settle_runs,
    show_runs,
    shown,
)

SALTERN = example_plan("saltern-junction")


def press(qtbot: QtBot, *keys: Qt.Key) -> None:
    """Press keys where the focus is, lists that pop up included."""
    for key in keys:
        focus = QApplication.focusWidget()
        assert focus is not None
        qtbot.keyClick(focus, key)
        QApplication.processEvents()


def click(panel: CommissioningPanel, qtbot: QtBot, row: int, column: int) -> None:
    """Click into a cell of the table."""
    index = panel.model.index(row, column)
    panel.table.scrollTo(index)
    place = panel.table.visualRect(index).center()
    qtbot.mouseClick(panel.table.viewport(), Qt.MouseButton.LeftButton, pos=place)
    QApplication.processEvents()


def with_fault(kind: Kind) -> Fault:
    """A fault of the example that some run shows."""
    asked = commissioning_of(SALTERN)
    return next(fault for fault in asked.faults if fault.kind is kind and fault not in asked.hidden)


def test_the_keyboard_alone_finds_the_fault(window: MainWindow, qtbot: QtBot) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    fault = with_fault(Kind.LINE_DEAD)
    window.view.setFocus()
    qtbot.keyClick(window.view, Qt.Key.Key_6, Qt.KeyboardModifier.AltModifier)
    assert window.focusWidget() is panel.table
    for row, run in enumerate(asked.tests):
        press(qtbot, Qt.Key.Key_Down)
        assert panel.table.currentIndex().row() == row
        saw = asked.outcome(run, (fault,))
        if saw == asked.outcome(run):
            press(qtbot, Qt.Key.Key_Space)
        else:
            choices = [answer for _, answer in panel.model.choices(row)]
            press(qtbot, Qt.Key.Key_Return, *[Qt.Key.Key_Down] * choices.index(saw), Qt.Key.Key_Return)
        assert panel.book.saw(run) == saw
    settle_runs(window)
    assert (fault,) in shown(panel)
    while window.focusWidget() is not panel.list:
        press(qtbot, Qt.Key.Key_Tab)
    press(qtbot, Qt.Key.Key_Down)
    assert panel.list.currentIndex().row() == 0
    assert window.view.selection >= {fault.at for fault in shown(panel)[0] if fault.at is not None}


def test_a_second_space_takes_the_tick_back(window: MainWindow, qtbot: QtBot) -> None:
    panel = show_runs(window, SALTERN)
    press(qtbot, Qt.Key.Key_Space)
    assert len(panel.book.observed) == 1
    press(qtbot, Qt.Key.Key_Space)
    assert panel.book.observed == ()


def test_escape_leaves_the_answer_as_it_was(window: MainWindow, qtbot: QtBot) -> None:
    panel = show_runs(window, SALTERN)
    press(qtbot, Qt.Key.Key_Return, Qt.Key.Key_Down, Qt.Key.Key_Escape, Qt.Key.Key_Escape)
    assert panel.book.observed == ()
    assert window.focusWidget() is panel.table


def test_news_from_the_background_leaves_the_choices_open(window: MainWindow, qtbot: QtBot) -> None:
    panel = show_runs(window, SALTERN)
    press(qtbot, Qt.Key.Key_Down, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: QApplication.activePopupWidget() is not None)
    panel.book.changed.emit()
    assert QApplication.activePopupWidget() is not None
    press(qtbot, Qt.Key.Key_Down, Qt.Key.Key_Return)
    assert panel.model.index(0, SAW).data() == "as it must"


def test_the_pointer_ticks_and_chooses(window: MainWindow, qtbot: QtBot) -> None:
    panel = show_runs(window, SALTERN)
    first, second, *_ = rows(panel)
    click(panel, qtbot, 0, NUMBER)
    assert panel.book.saw(first) == panel.book.must(first)
    click(panel, qtbot, 1, SAW)
    qtbot.waitUntil(lambda: QApplication.activePopupWidget() is not None)
    press(qtbot, *[Qt.Key.Key_Down] * (len(panel.model.choices(1)) - 1), Qt.Key.Key_Return)
    assert panel.book.saw(second) == STAYS
    settle_runs(window)
    assert shown(panel)


def test_choosing_a_run_shows_the_way_that_its_cart_must_take(window: MainWindow, qtbot: QtBot) -> None:
    panel = show_runs(window, SALTERN)
    for row, run in enumerate(rows(panel)):
        click(panel, qtbot, row, MUST)
        (way,) = window.view.previews.shown.runs
        assert (way.start, way.called, way.way.arm) == (
            run.start,
            run.waybill is not None,
            panel.book.must(run),
        )
    window.view.clear_preview()
    click(panel, qtbot, row, MUST)
    assert window.view.previews.is_on, "a click on the chosen run shows its way once more"


def test_an_answer_does_not_start_the_cart_anew(window: MainWindow, qtbot: QtBot) -> None:
    panel = show_runs(window, SALTERN)
    click(panel, qtbot, 0, MUST)
    before = window.view.previews.shown
    panel.table.setFocus()
    press(qtbot, Qt.Key.Key_Space)
    panel.book.answer(rows(panel)[0], STAYS)
    settle_runs(window)
    assert window.view.previews.shown is before


def test_choosing_what_is_wrong_goes_to_its_cells(window: MainWindow, qtbot: QtBot) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    say_what_is_seen(window, asked, (with_fault(Kind.LINE_DEAD),))
    switches = {switch.at: switch.called_by for switch in asked.junction.switches}
    for row, faults in enumerate(shown(panel)):
        window.view.level = 90
        panel.list.setFocus()
        press(qtbot, Qt.Key.Key_Down)
        assert panel.list.currentIndex().row() == row
        for fault in faults:
            if fault.at is not None:
                assert fault.at in window.view.selection
            else:
                arm = SALTERN.details.arm(str(fault.arm))
                assert arm is not None
                assert arm.enter is not None
                thrown = {at for at, by in switches.items() if fault.arm in by}
                assert window.view.selection >= {arm.enter.at, *thrown}
        assert window.view.level in {cell.y for cell in window.view.selection}


def test_commissioning_is_no_edit(window: MainWindow, qtbot: QtBot) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    before = plan_bytes(window.document.plan)
    say_what_is_seen(window, asked, (with_fault(Kind.LINE_DEAD),))
    click(panel, qtbot, 0, NUMBER)
    qtbot.mouseClick(panel.clear_button, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(panel.clear_button, Qt.MouseButton.LeftButton)
    assert window.document.undo_stack.count() == 0
    assert not window.document.is_dirty
    assert plan_bytes(window.document.plan) == before


def test_nothing_is_worked_out_while_nobody_looks(window: MainWindow) -> None:
    window.bound["show_findings"].trigger()
    window.document.load(SALTERN, None)
    settle_runs(window)
    assert window.panels.commissioning.book.worked is None
    window.bound["show_runs"].trigger()
    settle_runs(window)
    assert window.panels.commissioning.book.worked is not None
    window.bound["show_findings"].trigger()
    window.document.edit(move_plan, 1, 0, 0)
    settle_runs(window)
    assert window.panels.commissioning.book.is_old


def many(copies: int) -> Plan:
    """Copies of the example side by side; with fourteen it has 42 arms."""
    pieces, arms, routes = [], [], []
    for number in range(copies):
        add = f" {number + 1}"

        def there(end: ArmEnd | None, east: int = 40 * number) -> ArmEnd | None:
            return None if end is None else structs.replace(end, at=end.at.moved(east, 0, 0))

        pieces += [structs.replace(piece, at=piece.at.moved(40 * number, 0, 0)) for piece in SALTERN.pieces]
        arms += [type(a)(a.name + add, there(a.enter), there(a.leave)) for a in SALTERN.arms]
        routes += [
            type(r)(r.start + add, r.idle + add, r.called and r.called + add, r.waybill)
            for r in SALTERN.routes
        ]
    return plan_of(pieces, SALTERN.details.replace(arms=tuple(arms), routes=tuple(routes), waivers=()))


def test_drawing_goes_on_while_forty_arms_are_worked_out(
    window: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The background is held up, so that whoever waited for it would wait for good."""
    document, panel = window.document, window.panels.commissioning
    runs_may_go_on = hold_up(monkeypatch, "Commissioning")
    document.load(many(14), None)
    window.bound["show_runs"].trigger()
    qtbot.waitUntil(lambda: not document.junction_is_old, timeout=30_000)
    assert panel.empty.text() == "Working out the test runs…"
    window.grab()
    runs_may_go_on.set()
    qtbot.waitUntil(lambda: not panel.book.is_old, timeout=30_000)
    assert len(rows(panel)) > 42
    faults_may_go_on = hold_up(monkeypatch, "diagnose")
    panel.book.answer(rows(panel)[0], STAYS)
    qtbot.waitUntil(lambda: panel.book.looks_old)
    assert panel.verdict.text() == "Looking for what explains it…"
    click(panel, qtbot, 1, NUMBER)
    assert len(panel.book.observed) == 2
    assert document.edit(lay_track, [Cell(0, 64, 40), Cell(1, 64, 40)])
    window.grab()
    faults_may_go_on.set()


@pytest.mark.parametrize(("width", "height"), [(1440, 900), (1024, 640)])
def test_nothing_in_the_panel_is_cut(window: MainWindow, width: int, height: int) -> None:
    window.resize(width, height)
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    run = asked.tests[0]
    panel.book.answer(run, STAYS)
    settle_runs(window)
    parts = [panel.coverage, panel.table, panel.another_button, panel.verdict, panel.list, panel.next_button]
    tops = [part.geometry().top() for part in parts if part.isVisible()]
    ends = [part.geometry().bottom() for part in parts if part.isVisible()]
    assert all(end < top for end, top in zip(ends, tops[1:], strict=False))
    assert ends[-1] <= panel.height()
    for button in (panel.another_button, panel.clear_button, panel.limits_button):
        assert button.width() >= button.sizeHint().width(), button.text()
