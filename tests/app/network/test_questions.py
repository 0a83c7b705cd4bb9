"""The questions by keys, and what they say to answers that cannot be."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from msgspec import structs
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog, QListWidget, QPushButton, QWidget

from app.network.dialogs import Question, TripDialog
from app.network.items import Item, Kind
from app.network.junction_dialog import JunctionDialog
from app.network.panels.trips_model import WEEK
from app.network.ways import ways_offered
from app.network.window import NetworkWindow
from model.network import edits
from model.network.network import LENGTH_LIMIT, JunctionSpec
from tests.app.answering import answering, dialogs_of
from tests.app.network.networks import EXAMPLE, answer, load, small_network

QUAY, WYE, LINK = Item(Kind.STATION, 0), Item(Kind.JUNCTION, 0), Item(Kind.LINK, 0)
Key = Qt.Key


def meet(act: Callable[[QDialog], object]) -> None:
    """Do something with the next question, then drop it if it is still there."""

    def go() -> None:
        dialog = QApplication.activeModalWidget()
        if not isinstance(dialog, QDialog):
            QTimer.singleShot(1, go)
            return
        act(dialog)
        if dialog.isVisible():
            dialog.reject()

    QTimer.singleShot(0, go)


def said(window: NetworkWindow) -> str:
    return window.panels.status.here.text()


def press(widget: QWidget, key: Key) -> None:
    widget.setFocus()
    QTest.keyClick(widget, key)


@pytest.mark.parametrize("place", [0, 1])
def test_return_in_the_name_changes_the_junction(network_window: NetworkWindow, place: int) -> None:
    """One by its readers, and one with a plan, whose button must not take the key."""
    window = network_window
    window.files.open_example(EXAMPLE)

    def act(dialog: QDialog) -> None:
        assert isinstance(dialog, JunctionDialog)
        dialog.name.setText("Heron")
        press(dialog.name, Key.Key_Return)

    meet(act)
    window.commands.change(Item(Kind.JUNCTION, place))
    assert window.document.network.junctions[place].name == "Heron"


def test_return_in_the_arms_fills_the_list_and_asks_on(network_window: NetworkWindow) -> None:
    load(network_window)

    def act(dialog: QDialog) -> None:
        assert isinstance(dialog, JunctionDialog)
        dialog.arms.setText("North, East, South")
        press(dialog.arms, Key.Key_Return)
        assert dialog.isVisible()
        assert dialog.table.rowCount() == 3
        press(dialog.name, Key.Key_Return)

    meet(act)
    network_window.commands.add_node(Kind.JUNCTION, (30.0, 30.0))
    assert [reader.start for reader in network_window.document.network.junctions[1].readers] == [
        "North",
        "East",
        "South",
    ]


def test_return_on_cancel_cancels(network_window: NetworkWindow) -> None:
    load(network_window)

    def act(dialog: QDialog) -> None:
        press(next(b for b in dialog.findChildren(QPushButton) if "Cancel" in b.text()), Key.Key_Return)
        assert not dialog.isVisible()

    meet(act)
    before = network_window.document.network
    network_window.commands.add_trip()
    assert network_window.document.network == before


@pytest.mark.parametrize(("end", "field"), [(None, "start"), (Item(Kind.STATION, 1), "per_week")])
def test_a_trip_begins_with_what_is_not_known_yet(
    network_window: NetworkWindow, end: Item | None, field: str
) -> None:
    load(network_window)
    focused = []

    def act(dialog: QDialog) -> None:
        assert isinstance(dialog, TripDialog)
        focused.append(dialog.focusWidget() is getattr(dialog, field))

    meet(act)
    network_window.commands.add_trip(QUAY, end)
    assert focused == [True]


def test_a_trip_to_where_it_begins_is_refused(network_window: NetworkWindow) -> None:
    load(network_window)
    before = network_window.document.network
    problems = answer({"From": "Quay", "To": "Quay"})
    network_window.commands.add_trip()
    assert problems == ["A trip runs from one station to another."]
    assert network_window.document.network == before


def test_a_missing_plan_is_told_and_not_what_was_wrong_before(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    assert not window.document.edit(edits.add_junction, JunctionSpec("Wye"))
    told = []

    def act(dialog: QDialog) -> None:
        assert isinstance(dialog, JunctionDialog)
        dialog.by_plan.setChecked(True)
        QTimer.singleShot(0, lambda: meet(lambda again: told.append(again.problem)))  # type: ignore[attr-defined]
        dialog.accept()

    meet(act)
    window.commands.add_node(Kind.JUNCTION, (30.0, 30.0))
    assert told == ["Choose the plan file first."]


@pytest.mark.parametrize("text", ["9" * 5_000, "0", "-3", "2.5", "2,5", "", "far"])
def test_a_length_that_cannot_be_is_told(network_window: NetworkWindow, text: str) -> None:
    load(network_window)
    before = network_window.document.network
    answer({f"Cells from {before.links[0].start} to {before.links[0].end}": text})
    network_window.commands.change(LINK)
    assert f"{LENGTH_LIMIT:,}" in said(network_window)
    assert network_window.document.network == before


@pytest.mark.parametrize(("text", "trips"), [("2.5", 2.5), ("1,250", 1250), ("2,5", 10), ("12,50", 10)])
def test_a_comma_that_divides_no_thousands_is_not_passed_over(
    network_window: NetworkWindow, text: str, trips: float
) -> None:
    load(network_window)
    model = network_window.panels.trips.model
    assert model.setData(model.index(0, WEEK), text) is (trips != 10)
    assert network_window.document.network.trips[0].per_week == trips


def test_of_two_junctions_the_plan_of_that_which_has_one_is_opened(
    network_window: NetworkWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    window = network_window
    window.files.open_example(EXAMPLE)
    junctions = window.document.network.junctions
    assert [each.plan is None for each in junctions[:2]] == [True, False]
    opened: list[int] = []
    monkeypatch.setattr(window, "open_plan_of", opened.append)
    window.view.choose(frozenset({Item(Kind.JUNCTION, 0), Item(Kind.JUNCTION, 1)}))
    window.bound["open_plan"].trigger()
    assert opened == [1]


def test_it_is_told_which_plan_is_gone(network_window: NetworkWindow, tmp_path: Path) -> None:
    window = network_window
    plan = tmp_path / "gone.plan.json"
    shutil.copy(EXAMPLE.parent / "beacon-wye.plan.json", plan)
    load(window)
    with_plan = structs.replace(window.document.network.junctions[0], plan=str(plan))
    window.document.load(window.document.network.replace(junctions=(with_plan,)), None)
    plan.unlink()
    window.bound["read_plans"].trigger()
    assert said(window).startswith(f"The plan of {with_plan.name} was not read: ")
    assert str(plan) in said(window)


def test_it_is_told_once_that_a_file_was_not_written(
    network_window: NetworkWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    load(network_window)
    path = tmp_path / "nowhere" / "small.graphml"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_options: (str(path), ""))
    network_window.bound["graphml"].trigger()
    told = network_window.panels.message.text
    assert told.startswith(f"The graph could not be written to {path}: ")
    assert told.count("could not be written") == 1


def test_every_question_has_its_answer_for_return(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    for ask in (
        lambda: window.commands.add_link(QUAY, WYE),
        window.commands.add_trip,
        lambda: window.commands.change(WYE),
        lambda: window.commands.pin_way(0),
    ):
        found: list[bool] = []

        def act(dialog: QDialog, found: list[bool] = found) -> None:
            assert isinstance(dialog, Question)
            found.append([b for b in dialog.findChildren(QPushButton) if b.isDefault()] == [dialog.ok])

        meet(act)
        ask()
        assert found == [True]


def test_a_way_is_chosen_by_the_arrows_and_return(network_window: NetworkWindow) -> None:
    window = network_window
    window.files.open_example(EXAMPLE)
    network = window.document.network
    offers = [ways_offered(network, trip.start, trip.end) for trip in network.trips]
    trip = next(place for place, ways in enumerate(offers) if len(ways) > 1)

    def act(dialog: QDialog) -> None:
        focused = dialog.focusWidget()
        assert isinstance(focused, QListWidget)
        QTest.keyClick(focused, Key.Key_Down)
        QTest.keyClick(focused, Key.Key_Return)
        assert not dialog.isVisible()

    meet(act)
    window.commands.pin_way(trip)
    assert [way.via for way in window.document.network.ways] == [offers[trip][1].via]


def test_names_that_nobody_has_are_not_called_pinned(network_window: NetworkWindow) -> None:
    load(network_window, small_network().replace(trips=()))
    network_window.bound["pin_names"].trigger()
    assert said(network_window) == "No reader is called, so none has a name."


def test_what_was_said_of_one_network_goes_with_it(network_window: NetworkWindow) -> None:
    load(network_window)
    network_window.bound["read_plans"].trigger()
    assert said(network_window) == "No junction of this network has a plan."
    network_window.bound["new_network"].trigger()
    assert "plan" not in said(network_window)


@pytest.mark.parametrize("name", ["title", "add_trip", "properties", "find_action", "shortcuts", "about"])
def test_a_dialog_goes_once_it_is_answered(network_window: NetworkWindow, name: str) -> None:
    load(network_window)
    network_window.view.choose(frozenset({WYE}))
    before = dialogs_of(network_window)
    with answering() as answered:
        for _ in range(3):
            network_window.bound[name].trigger()
    assert len(answered) >= 3
    assert dialogs_of(network_window) == before
