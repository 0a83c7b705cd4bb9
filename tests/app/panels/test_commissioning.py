"""The test runs, what was seen of each, and what may be wrong: the window says what the model says."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication, QListView
from pytestqt.qtbot import QtBot

from app.dialogs.another_run import AnotherRunDialog
from app.panels.commissioning_model import FROM, MUST, NUMBER, SAW, WAYBILL
from app.panels.commissioning_words import NO_ROUTES, NO_RUNS, UNEXPLAINED, turned_words
from app.window import MainWindow
from model.commissioning import STAYS, Kind, Observed, diagnose
from model.edits import erase, remove_route
from model.grid import ALL_TURNS, Turn
from model.plan import Plan
from tests.app.commissioning import (
    commissioning_of,
    example_plan,
    hold_up,
    rows,
    say_what_is_seen,
    settle_runs,
    show_runs,
    shown,
    words,
)
from tests.app.windows import straight_plan

SALTERN = example_plan("saltern-junction")


@pytest.mark.parametrize("name", ["saltern-junction", "fen-ring", "beacon-wye"])
def test_the_fewest_runs_are_listed_with_what_each_must_do(window: MainWindow, name: str) -> None:
    plan = example_plan(name)
    panel, asked = show_runs(window, plan), commissioning_of(plan)
    assert rows(panel) == list(asked.tests)
    for row, run in enumerate(asked.tests):
        told = [panel.model.index(row, column).data() for column in (NUMBER, FROM, WAYBILL, MUST, SAW)]
        assert told == [str(row + 1), run.start, run.waybill or "empty", asked.outcome(run), "not run"]
    shown_faults = len(asked.faults) - len(asked.hidden)
    assert panel.coverage.text() == (
        f"{len(asked.tests)} runs show {shown_faults} of {len(asked.faults)} faults."
    )
    assert window.side.upper_tabs.tabText(2) == f"Test runs  {len(asked.tests)}"


@pytest.mark.parametrize("kind", list(Kind))
def test_what_was_seen_is_explained_as_the_model_explains_it(window: MainWindow, kind: Kind) -> None:
    plan = example_plan("fen-ring") if kind is Kind.INVERTER_MISSING else SALTERN
    panel, asked = show_runs(window, plan), commissioning_of(plan)
    fault = next(fault for fault in asked.faults if fault.kind is kind and fault not in asked.hidden)
    say_what_is_seen(window, asked, (fault,))
    observed = [Observed(run, asked.outcome(run, (fault,))) for run in asked.tests]
    found = diagnose(asked, observed)
    assert (fault,) in found.diagnoses
    turned = [()] if found.built_otherwise else []
    assert shown(panel) == [*turned, *found.diagnoses]
    assert panel.next_run == found.next_run


def test_each_answer_is_told_in_words(window: MainWindow) -> None:
    panel = show_runs(window, SALTERN)
    first, second, third, *_ = rows(panel)
    panel.book.answer(first, panel.book.must(first))
    panel.book.answer(second, STAYS)
    panel.book.answer(third, "Fen")
    assert [panel.model.index(row, SAW).data() for row in range(4)] == [
        "as it must",
        "stays",
        "Fen",
        "not run",
    ]
    said = panel.model.index(2, SAW).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said == "run 3: from Fen, with Reed, must leave by Quay; came out by Fen"


def test_all_as_it_must_be_says_that_nothing_is_wrong(window: MainWindow) -> None:
    panel = show_runs(window, SALTERN)
    for row in range(panel.model.rowCount()):
        assert "no single fault" not in panel.verdict.text()
        panel.model.tick(row)
    assert (
        panel.verdict.text() == "Every cart did as it must: there is no single fault that a run could show."
    )
    assert not panel.list.isVisible()
    assert not panel.next_button.isVisible()


def test_a_plan_built_turned_is_said_first(window: MainWindow) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    run = asked.tests[0]
    found = next(
        (saw, told)
        for saw in ("Quay", "Mill", "Fen", STAYS)
        if saw != asked.outcome(run) and (told := diagnose(asked, [Observed(run, saw)])).built_otherwise
    )
    saw, told = found
    panel.book.answer(run, saw)
    settle_runs(window)
    assert words(panel)[0] == turned_words(told.built_otherwise)
    assert shown(panel) == [(), *told.diagnoses]
    assert panel.verdict.text() == f"{1 + len(told.diagnoses)} explanations, the smallest first:"


def test_every_way_of_building_otherwise_has_its_words() -> None:
    """Clockwise is seen from above: one quarter takes north to east; a mirror takes east to west."""
    told = [turned_words([turn]) for turn in ALL_TURNS[1:]]
    assert len(set(told)) == 7
    assert turned_words([Turn(1)]) == "It looks as if it was built otherwise than drawn: a quarter clockwise."
    assert turned_words([Turn(2), Turn(0, True)]) == (
        "It looks as if it was built otherwise than drawn: half round; or mirrored."
    )


def test_what_nothing_explains_is_said_plainly(window: MainWindow) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    observed = [Observed(run, run.start) for run in asked.tests]
    told = diagnose(asked, observed)
    assert told.diagnoses == told.built_otherwise == ()
    for seen in observed:
        panel.book.answer(seen.run, seen.saw)
    settle_runs(window)
    assert panel.verdict.text() == UNEXPLAINED
    assert not panel.list.isVisible()


def test_the_next_run_is_listed_and_chosen_by_its_button(window: MainWindow, qtbot: QtBot) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    run, saw, told = next(
        (run, saw, told)
        for run in asked.tests
        for saw in ("Quay", "Mill", "Fen", STAYS)
        if (told := diagnose(asked, [Observed(run, saw)])).next_run not in (None, *asked.tests)
    )
    assert told.next_run is not None
    panel.book.answer(run, saw)
    settle_runs(window)
    assert panel.next_button.text() == f"Next: send an empty cart in at {told.next_run.start}"
    qtbot.mouseClick(panel.next_button, Qt.MouseButton.LeftButton)
    assert rows(panel) == [*asked.tests, told.next_run]
    assert panel.table.currentIndex().row() == len(asked.tests)
    assert window.focusWidget() is panel.table
    qtbot.keyClick(panel.table, Qt.Key.Key_Space)
    assert panel.book.saw(told.next_run) == asked.outcome(told.next_run)


def test_another_run_is_chosen_from_those_that_are_not_listed(window: MainWindow, qtbot: QtBot) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    others = [run for run in asked.runs if run not in asked.tests]

    def choose() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, AnotherRunDialog)
        assert [dialog.start.itemText(n) for n in range(dialog.start.count())] == [others[0].start]
        qtbot.keyClick(dialog, Qt.Key.Key_Return)

    QTimer.singleShot(0, choose)
    qtbot.mouseClick(panel.another_button, Qt.MouseButton.LeftButton)
    assert rows(panel) == [*asked.tests, others[0]]
    assert not panel.another_button.isEnabled(), "every run is listed"


def test_cleared_answers_can_be_brought_back(window: MainWindow, qtbot: QtBot) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    assert not panel.clear_button.isEnabled()
    say_what_is_seen(window, asked, (asked.faults[0],))
    before, explained = panel.book.observed, words(panel)
    assert explained
    qtbot.mouseClick(panel.clear_button, Qt.MouseButton.LeftButton)
    assert panel.book.observed == ()
    assert not panel.list.isVisible()
    qtbot.mouseClick(panel.clear_button, Qt.MouseButton.LeftButton)
    settle_runs(window)
    assert panel.book.observed == before
    assert words(panel) == explained


def test_what_the_runs_miss_is_listed_on_demand(window: MainWindow, qtbot: QtBot) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    assert not panel.list.isVisible()
    qtbot.mouseClick(panel.limits_button, Qt.MouseButton.LeftButton)
    assert shown(panel) == [*((fault,) for fault in asked.hidden), *asked.alike]
    assert words(panel)[0] == f"Whether {asked.hidden[0].words}."
    qtbot.mouseClick(panel.limits_button, Qt.MouseButton.LeftButton)
    assert not panel.list.isVisible()


def test_an_edit_keeps_the_answers_of_runs_that_are_still_there(window: MainWindow) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    say_what_is_seen(window, asked, (asked.faults[0],))
    before = panel.book.observed
    gone = before[0].run.start
    window.document.edit(remove_route, gone)
    settle_runs(window)
    assert {seen.run.start for seen in panel.book.observed} == {seen.run.start for seen in before} - {gone}
    assert [seen for seen in before if seen.run.start != gone] == list(panel.book.observed)
    window.bound["undo"].trigger()
    settle_runs(window)
    assert panel.book.observed == before, "undo brings the run back, and what was seen of it"


def test_what_is_known_of_an_older_plan_is_marked_until_it_is_worked_out_anew(
    window: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    say_what_is_seen(window, asked, (asked.faults[0],))
    heading = panel.verdict.text()
    may_go_on = hold_up(monkeypatch, "Commissioning")
    window.document.edit(erase, [next(iter(SALTERN.pieces)).at])
    qtbot.waitUntil(lambda: panel.book.looks_old)
    assert panel.coverage.text().endswith("Being worked out…")
    assert panel.list.sentences.is_old
    assert panel.next_run is None
    assert window.side.upper_tabs.tabText(2) == "Test runs", "how many there are is not known"
    may_go_on.set()
    settle_runs(window)
    assert not panel.book.looks_old
    assert panel.verdict.text() == heading
    assert not panel.list.sentences.is_old


def test_an_answer_that_was_taken_back_explains_nothing_when_it_comes(
    window: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    first, second, *_ = asked.tests
    panel.book.answer(first, STAYS)
    settle_runs(window)
    explained = shown(panel)
    may_go_on = hold_up(monkeypatch, "diagnose")
    panel.book.answer(second, STAYS)
    qtbot.waitUntil(lambda: panel.book.looks_old)
    assert "Being worked out" not in panel.coverage.text(), "the runs are of this plan"
    assert window.side.upper_tabs.tabText(2) == f"Test runs  {len(panel.book.rows)}"
    panel.book.answer(second, None)
    may_go_on.set()
    settle_runs(window)
    assert shown(panel) == explained
    assert panel.book.is_explained


def test_another_plan_clears_the_answers(window: MainWindow) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    say_what_is_seen(window, asked, (asked.faults[0],))
    window.document.load(SALTERN, None)
    settle_runs(window)
    assert panel.book.observed == ()
    assert not panel.clear_button.isEnabled()


def test_an_answer_counts_only_while_its_arm_lets_carts_out(window: MainWindow) -> None:
    panel = show_runs(window, SALTERN)
    run = rows(panel)[0]
    panel.book.answer(run, "Nowhere")
    assert panel.book.saw(run) is None
    assert panel.book.observed == ()


def _without(plan: Plan, what: str) -> Plan:
    details = plan.details
    if what == "routes":
        return Plan(plan.pieces, details.replace(routes=()))
    arms = tuple(type(arm)(arm.name, None, arm.leave) for arm in details.arms)
    return Plan(plan.pieces, details.replace(arms=arms))


@pytest.mark.parametrize(("what", "said"), [("routes", NO_ROUTES), ("entries", NO_RUNS)])
def test_an_empty_list_says_why_in_one_sentence(window: MainWindow, what: str, said: str) -> None:
    panel = show_runs(window, _without(SALTERN, what))
    assert panel.empty.isVisible()
    assert panel.empty.text() == said
    assert window.side.upper_tabs.tabText(2) == "Test runs"


def test_a_plan_in_which_nothing_can_be_wrong_needs_no_run(window: MainWindow) -> None:
    panel = show_runs(window, straight_plan())
    assert panel.coverage.text() == "No single fault is possible here, so no run is needed."
    assert not panel.table.isVisible()
    assert panel.another_button.isEnabled(), "who wants to send a cart may"


def test_names_are_shown_as_they_are(window: MainWindow) -> None:
    plan = straight_plan()
    name = "<b>Q&A</b>"
    arms = tuple(type(a)(name if a.name == "Quay" else a.name, a.enter, a.leave) for a in plan.arms)
    routes = tuple(type(r)(name, r.idle) for r in plan.routes)
    panel = show_runs(window, Plan(plan.pieces, plan.details.replace(arms=arms, routes=routes)))
    panel.book.add(panel.book.others[0])
    tip = panel.model.index(0, FROM).data(Qt.ItemDataRole.ToolTipRole)
    assert tip.startswith("<qt>run 1: from &lt;b&gt;Q&amp;A&lt;/b&gt;, empty")
    assert panel.model.index(0, FROM).data() == name


def test_a_list_of_choices_opened_by_a_key_shows_the_last_one(window: MainWindow, qtbot: QtBot) -> None:
    panel = show_runs(window, SALTERN)
    panel.table.setFocus()
    qtbot.keyClick(panel.table, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: QApplication.activePopupWidget() is not None)
    popup = QApplication.activePopupWidget()
    assert popup is not None
    view = popup.findChild(QListView)
    assert view is not None
    last = view.model().index(view.model().rowCount() - 1, 0)
    assert last.data() == STAYS
    assert view.visualRect(last).bottom() < view.viewport().height()


def test_an_added_run_is_cleared_and_brought_back_too(window: MainWindow, qtbot: QtBot) -> None:
    panel, asked = show_runs(window, SALTERN), commissioning_of(SALTERN)
    panel.book.add(panel.book.others[0])
    assert panel.clear_button.isEnabled()
    qtbot.mouseClick(panel.clear_button, Qt.MouseButton.LeftButton)
    assert rows(panel) == list(asked.tests)
    qtbot.mouseClick(panel.clear_button, Qt.MouseButton.LeftButton)
    assert len(rows(panel)) == len(asked.tests) + 1


def test_a_sentence_takes_no_more_room_than_its_lines(window: MainWindow) -> None:
    panel = show_runs(window, SALTERN)
    two_lines = panel.verdict.height()
    panel.model.tick(0)
    QApplication.processEvents()
    assert panel.verdict.height() < two_lines


def test_a_plan_that_does_not_serve_its_routes_says_so(window: MainWindow) -> None:
    plan = straight_plan()
    there_and_back = (type(plan.routes[0])("Quay", "Quay"),)
    panel = show_runs(window, Plan(plan.pieces, plan.details.replace(routes=there_and_back)))
    assert panel.coverage.text().endswith("Not every wanted route arrives as drawn; the findings say why.")
