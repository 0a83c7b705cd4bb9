"""What the plan says, as the panels and the map show it."""

from __future__ import annotations

import threading
from collections.abc import Iterator

import pytest
from msgspec import structs
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from app.canvas.symbols import WayKind
from app.network.items import Item, Kind
from app.network.lit import calls_of, passing
from app.network.panels.readers_model import CALL, DEFAULT, NAME, PASS
from app.network.panels.trips_model import CELLS, FROM, TIME, TO, WAYBILLS, WEEK
from app.network.panels.trips_panel import price_words
from app.network.times import clock_words, time_words
from app.network.window import NetworkWindow
from model.network import edits
from model.network.network import Network, ReaderPin, Trip
from model.network.planning import plan_network
from model.network.result import NetworkPlan, Price
from model.progress import Progress
from tests.app.network.networks import EXAMPLE, load, settle, small_network


def said(window: NetworkWindow, row: int, column: int) -> str:
    return str(window.panels.trips.model.index(row, column).data())


def reader(window: NetworkWindow, key: str, column: int) -> str:
    model = window.panels.readers.model
    row = model.row_of(key)
    assert row is not None
    return str(model.index(row, column).data())


def test_a_trip_says_what_to_take_how_far_and_how_long(network_window: NetworkWindow) -> None:
    """Ten ride to Mill and three to Fen: the default leads to Mill, and only riders to Fen need a waybill."""
    window = network_window
    load(window)
    assert (said(window, 0, WEEK), said(window, 0, WAYBILLS)) == ("10", "none")
    assert said(window, 1, WAYBILLS) == reader(window, "Wye/Quay", NAME)
    # 64 + 160 cells at 8 cells a second.
    assert (said(window, 1, CELLS), said(window, 1, TIME)) == ("224", "0:28")
    assert reader(window, "Wye/Quay", DEFAULT) == "Mill"
    assert (reader(window, "Wye/Quay", PASS), reader(window, "Wye/Quay", CALL)) == ("10", "3")
    assert reader(window, "Wye/Mill", NAME) == "not called"
    assert window.panels.summary.figures[0] == ("3", "waybills a week")


def test_a_chosen_trip_lights_its_way(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    window.panels.trips.choose(1)
    lit = window.view.lit
    assert lit.links == {0: WayKind.CALLED, 5: WayKind.IDLE}
    assert [call.reader for call in lit.calls] == ["Wye/Quay"]
    assert lit.ends == {Item(Kind.STATION, 0), Item(Kind.STATION, 2)}
    assert "28 s" in lit.title
    assert "1 " in window.panels.trips.facts.text
    window.view.hands.escape()
    assert window.view.lit.title == ""
    assert window.panels.trips.chosen == -1


def test_a_chosen_reader_lights_who_passes_and_who_calls(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    window.panels.readers.choose("Wye/Quay")
    assert window.view.lit.links == {0: WayKind.CALLED, 3: WayKind.IDLE, 5: WayKind.CALLED}
    told = window.panels.readers.facts.text
    assert "Call: Quay → Fen" in told
    assert "Pass: Quay → Mill" in told


def test_a_pinned_default_is_kept_and_its_price_is_said(network_window: NetworkWindow) -> None:
    """With the default to Fen ten need a waybill in place of three: seven more."""
    window = network_window
    load(window)
    window.panels.readers.choose("Wye/Quay")
    box = window.panels.readers.default
    box.setCurrentText("Fen")
    box.activated.emit(box.currentIndex())
    settle(window)
    assert window.document.network.pins == (ReaderPin("Wye/Quay", default="Fen"),)
    assert reader(window, "Wye/Quay", DEFAULT) == "Fen"
    assert "7 waybills a week" in window.panels.readers.facts.text
    window.panels.readers.unpin_button.click()
    settle(window)
    assert window.document.network == small_network()


def test_a_pinned_name_is_taken(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    window.panels.readers.choose("Wye/Quay")
    window.panels.readers.name.setText("Lamp oil")
    window.panels.readers.name.editingFinished.emit()
    settle(window)
    assert reader(window, "Wye/Quay", NAME) == "Lamp oil"
    assert said(window, 1, WAYBILLS) == "Lamp oil"


def test_how_many_ride_is_edited_in_place_and_changes_the_plan(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    model = window.panels.trips.model
    assert model.setData(model.index(1, WEEK), "30")
    assert window.document.plan_is_old
    settle(window)
    assert window.document.network.trips[1] == Trip("Quay", "Fen", 30)
    assert reader(window, "Wye/Quay", DEFAULT) == "Fen"
    assert not model.setData(model.index(1, WEEK), "many")


def test_the_newest_network_wins(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    model = window.panels.trips.model
    for number in (20, 2, 40, 1):
        model.setData(model.index(1, WEEK), str(number))
    settle(window)
    assert not window.document.plan_is_old
    assert window.document.planned == window.document.network
    assert window.document.plan is not None
    assert window.document.plan.waybills_per_week == 1


def test_a_finding_leads_to_what_it_is_about(network_window: NetworkWindow) -> None:
    window = network_window
    cut = small_network()
    load(window, cut.replace(links=cut.links[:4]))
    found = window.document.findings
    assert found
    assert window.side.lower_tabs.tabText(0) == f"Findings  {len(found)}"
    row = next(at for at, each in enumerate(found) if each.items)
    window.panels.findings.list.setCurrentIndex(window.panels.findings.model.index(row))
    assert window.view.selection == found[row].items
    assert said(window, 1, WAYBILLS) == "no way"


def test_the_lists_agree_with_the_plan_of_the_example(network_window: NetworkWindow) -> None:
    window = network_window
    window.files.open_example(EXAMPLE)
    settle(window)
    plan, network = window.document.plan, window.document.planned
    assert plan is not None
    for row, trip in enumerate(plan.trips):
        assert said(window, row, WAYBILLS) == (", ".join(trip.waybills) or "none")
        assert tuple(call.waybill for call in calls_of(network, plan, trip)) == trip.waybills
    for key in plan.readers:
        through = passing(network, plan, key)
        weight = sum(network.trips[each.trip].per_week for each in through if each.calls)
        assert reader(window, key, CALL) == f"{weight:,}"


@pytest.mark.parametrize(
    ("cells", "words", "clock"),
    [(8, "1 s", "0:01"), (472, "59 s", "0:59"), (480, "1 min 00 s", "1:00"), (None, "—", "—")],
)
def test_times_at_eight_cells_a_second(cells: int | None, words: str, clock: str) -> None:
    """The speed is common practice, no source."""
    assert (time_words(cells), clock_words(cells)) == (words, clock)


def test_it_is_said_what_a_change_means_for_readers_and_travellers(network_window: NetworkWindow) -> None:
    """Thirty to Fen turn the default of the one reader that is called, so both trips change."""
    window = network_window
    load(window)
    model = window.panels.trips.model
    model.setData(model.index(1, WEEK), "30")
    settle(window)
    assert window.document.news.startswith("1 reader changes")
    assert window.document.news in window.panels.status.here.text()


@pytest.mark.parametrize("list_name", ["trips", "readers"])
def test_esc_in_the_list_puts_the_light_out(network_window: NetworkWindow, list_name: str) -> None:
    window = network_window
    load(window)
    panel = getattr(window.panels, list_name)
    window.side.upper_tabs.bring_forward(list_name.capitalize())
    window.activateWindow()
    panel.table.setFocus()
    panel.table.selectRow(0)
    assert window.view.lit.title
    QTest.keyClick(panel.table, Qt.Key.Key_Escape)
    assert not window.view.lit.title


def test_a_cell_that_is_edited_has_a_name_and_esc_leaves_it_only(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    panel = window.panels.trips
    panel.choose(0)
    window.activateWindow()
    panel.table.setFocus()
    panel.table.edit(panel.model.index(0, WEEK))
    editor = panel.table.viewport().findChild(QLineEdit)
    assert editor is not None
    assert editor.accessibleName() == "a week"
    QTest.keyClicks(editor, "77")
    QTest.keyClick(editor, Qt.Key.Key_Escape)
    assert window.document.network == small_network()
    assert window.view.lit.title


def test_names_that_are_cut_are_told_in_full(network_window: NetworkWindow) -> None:
    load(network_window)
    model = network_window.panels.trips.model
    tips = [model.index(1, column).data(Qt.ItemDataRole.ToolTipRole) for column in (FROM, TO, WAYBILLS)]
    assert tips[:2] == ["Quay", "Fen"]
    assert tips[2] == said(network_window, 1, WAYBILLS)


def test_another_name_is_no_news_for_readers_and_travellers(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    for rename, name in ((edits.rename_junction, "Heron"), (edits.rename_station, "Harbour")):
        assert window.document.edit(rename, 0, name)
        settle(window)
        assert window.document.news == ""
    window.document.undo_stack.undo()
    settle(window)
    assert window.document.news == ""


def test_readers_of_one_junction_are_told_apart_in_the_smallest_window(network_window: NetworkWindow) -> None:
    window = network_window
    window.resize(window.minimumSize())
    window.files.open_example(EXAMPLE)
    window.side.upper_tabs.bring_forward("Readers")
    settle(window)
    panel = window.panels.readers
    pictures = []
    for key in ("Quay Gate/Town", "Quay Gate/Pans"):
        row = panel.model.row_of(key)
        assert row is not None
        cell = panel.table.visualRect(panel.model.index(row, 0))
        pictures.append(panel.table.viewport().grab(cell).toImage())
    assert pictures[0] != pictures[1]


def test_all_names_are_pinned_as_one_step(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    name = reader(window, "Wye/Quay", NAME)
    window.bound["pin_names"].trigger()
    assert window.document.network.pins == (ReaderPin("Wye/Quay", name=name),)
    assert window.document.undo_stack.count() == 1
    window.bound["undo"].trigger()
    assert window.document.network == small_network()


def test_a_first_plan_is_shown_as_not_yet_the_last(
    network_window: NetworkWindow, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    """Where the search for a better plan takes long, the first one is there meanwhile, marked as old."""
    window = network_window
    goes_on = threading.Event()

    def slow(network: Network) -> Iterator[Progress | NetworkPlan]:
        *_, found = (step for step in plan_network(network) if isinstance(step, NetworkPlan))
        yield structs.replace(found, proved=False, names_bound=0)
        yield Progress("Looking for better", 1, 2)
        goes_on.wait(10)
        yield found

    monkeypatch.setattr("app.network.document.plan_network", slow)
    window.document.load(small_network(), None)
    qtbot.waitUntil(lambda: window.document.plan is not None)
    assert window.document.plan is not None
    assert not window.document.plan.proved
    assert window.document.plan_is_old
    assert said(window, 1, CELLS) == "224"
    goes_on.set()
    settle(window)
    assert window.document.plan.proved
    assert not window.document.plan_is_old


@pytest.mark.parametrize(
    ("price", "words"),
    [
        ((0, 0, 0), "It costs nothing."),
        ((7, 1, 0), "It costs 7 waybills a week and 1 name."),
        ((-36, -1, 0), "It saves 36 waybills a week and 1 name."),
        ((1, -2, 420), "It costs 1 waybill a week and 420 cells a trip, and saves 2 names."),
    ],
)
def test_the_price_of_a_pin_in_words(price: tuple[int, int, int], words: str) -> None:
    waybills, names, length = price
    assert price_words(Price(ReaderPin("Wye/Quay"), waybills, names, length)) == words
