"""Opening, saving, leaving and recovering a network; and plans and networks side by side."""

from __future__ import annotations

import shutil
from pathlib import Path

import networkx as nx
import pytest
from PySide6.QtCore import QEvent, QTimer
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox

from app import desk
from app.network.files import read, to_bytes
from app.network.items import Item, Kind
from app.network.window import NetworkWindow
from app.recovery import COPIES
from app.window import MainWindow, first_network_window
from model.files.network_file import network_bytes, read_network
from model.files.writer import write_bytes
from model.network.network import EMPTY_NETWORK, Network, Station
from tests.app.conftest import MakeWindow as MakePlanWindow
from tests.app.network.conftest import MakeWindow
from tests.app.network.networks import EXAMPLE, load, settle, small_network


def choose_file(monkeypatch: pytest.MonkeyPatch, method: str, path: Path) -> None:
    """The answer of the file dialog that comes next; the dialog is the system's own."""
    monkeypatch.setattr(QFileDialog, method, lambda *_args, **_options: (str(path), ""))


def press(text: str) -> None:
    """Press the button of that text in the question that comes next."""

    def act() -> None:
        box = QApplication.activeModalWidget()
        assert isinstance(box, QMessageBox)
        next(button for button in box.buttons() if button.text().replace("&", "") == text).click()

    QTimer.singleShot(0, act)


@pytest.fixture
def network_file(tmp_path: Path) -> Path:
    """A network in a file."""
    path = tmp_path / "small.network.json"
    write_bytes(path, network_bytes(small_network()))
    return path


def move(window: NetworkWindow) -> None:
    """One change."""
    window.commands.move({Item(Kind.STATION, 0): (-2.0, 0.0)})


def test_open_edit_save_and_open_again(
    network_window: NetworkWindow, network_file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    window = network_window
    choose_file(monkeypatch, "getOpenFileName", network_file)
    window.bound["open"].trigger()
    assert window.menu_row.title == "Small"
    move(window)
    assert window.menu_row.title == "Small — changed"
    copy = tmp_path / "copy"
    choose_file(monkeypatch, "getSaveFileName", copy)
    window.bound["save_as"].trigger()
    assert window.menu_row.title == "Small"
    assert read_network(tmp_path / "copy.network.json") == window.document.network
    assert read_network(network_file) == small_network()


def test_what_is_not_changed_is_saved_byte_for_byte(network_window: NetworkWindow, tmp_path: Path) -> None:
    for each in EXAMPLE.parent.iterdir():
        shutil.copy(each, tmp_path / each.name)
    path = tmp_path / EXAMPLE.name
    assert network_window.files.open_path(path)
    network_window.bound["save"].trigger()
    assert path.read_bytes() == EXAMPLE.read_bytes()


def test_plans_are_found_from_wherever_the_network_is_saved(tmp_path: Path) -> None:
    network = read(EXAMPLE)
    folder = tmp_path / "far" / "away"
    folder.mkdir(parents=True)
    target = folder / "moved.network.json"
    target.write_bytes(to_bytes(network, target))
    assert read(target) == network
    assert to_bytes(network, EXAMPLE) == EXAMPLE.read_bytes()


def test_a_plan_under_the_name_of_a_network_is_called_by_its_name(
    network_window: NetworkWindow, tmp_path: Path
) -> None:
    path = tmp_path / "wye.network.json"
    shutil.copy(EXAMPLE.parent / "beacon-wye.plan.json", path)
    assert not network_window.files.open_path(path)
    assert "this is a plan file" in network_window.panels.message.text
    assert "under a name that ends in .plan.json" in network_window.panels.message.text


def test_no_network_is_written_under_the_name_of_a_plan(
    network_window: NetworkWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It would be opened as one, and may be that of a junction."""
    window = network_window
    load(window)
    plan = tmp_path / "wye.plan.json"
    plan.write_bytes(b"{}")
    choose_file(monkeypatch, "getSaveFileName", plan)
    assert not window.files.save_as()
    assert plan.read_bytes() == b"{}"
    assert "wye.plan.json" in window.panels.message.text
    assert ".network.json" in window.panels.message.text
    assert window.document.path is None


def test_leaving_asks_and_cancel_keeps_the_window(network_window: NetworkWindow, network_file: Path) -> None:
    window = network_window
    window.files.open_path(network_file)
    move(window)
    press("Cancel")
    assert not window.close()
    assert window.isVisible()
    press("Save")
    assert window.close()
    assert read_network(network_file).stations[0].at == (-40.0, 0.0)


def test_a_change_from_outside_is_asked_about(network_window: NetworkWindow, network_file: Path) -> None:
    window = network_window
    window.files.open_path(network_file)
    move(window)
    other = network_bytes(EMPTY_NETWORK)
    write_bytes(network_file, other)
    press("Cancel")
    assert not window.files.save()
    assert network_file.read_bytes() == other
    assert window.document.is_dirty


def test_a_file_that_cannot_be_read_is_told_and_what_is_open_stays(
    network_window: NetworkWindow, tmp_path: Path
) -> None:
    load(network_window)
    broken = tmp_path / "broken.network.json"
    broken.write_text('{"format": "platelayer-network", "version": 1, "stations": 3}')
    assert not network_window.files.open_path(broken)
    assert "broken.network.json" in network_window.panels.message.text
    assert "The network that was open is unchanged." in network_window.panels.message.text
    assert network_window.document.network == small_network()


def test_a_copy_is_kept_and_taken_up_after_a_crash(make_network: MakeWindow) -> None:
    first = make_network()
    load(first)
    move(first)
    first.recovery.write_now()
    assert first.recovery.copy.name.endswith(COPIES[1])
    # The lock goes with the process; what it kept stays.
    first.recovery._lock.unlock()
    second = make_network()
    (left,) = second.recovery.left_over()
    assert left.title == "Small"
    assert second.files.take_up(left)
    assert second.document.network == first.document.network
    assert second.document.is_dirty


def test_each_kind_of_file_opens_in_its_own_kind_of_window(
    make_window: MakePlanWindow, network_file: Path
) -> None:
    window: MainWindow = make_window()
    before = window.document.plan
    assert not window.files.open_path(network_file)
    assert window.document.plan is before
    opened = [w for w in QApplication.topLevelWidgets() if isinstance(w, NetworkWindow) and w.isVisible()]
    assert [w.document.path for w in opened] == [network_file]
    # Asked for once more, the same window comes to the front.
    window.files.open_path(network_file)
    assert len([w for w in QApplication.topLevelWidgets() if isinstance(w, NetworkWindow)]) == 1
    plan = EXAMPLE.parent / "fen-ring.plan.json"
    assert not opened[0].files.open_path(plan)
    plans = [
        w for w in QApplication.topLevelWidgets() if isinstance(w, MainWindow) and w.document.path == plan
    ]
    assert len(plans) == 1
    for each in (*plans, *opened):
        each.close()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert desk._held == {}


def test_a_junction_leads_to_its_plan(network_window: NetworkWindow) -> None:
    window = network_window
    window.files.open_example(EXAMPLE)
    network = window.document.network
    place = next(at for at, junction in enumerate(network.junctions) if junction.plan is not None)
    window.view.choose(frozenset({Item(Kind.JUNCTION, place)}))
    assert window.bound["open_plan"].isEnabled()
    window.bound["open_plan"].trigger()
    opened = [w for w in QApplication.topLevelWidgets() if isinstance(w, MainWindow)]
    assert [str(w.document.path) for w in opened] == [network.junctions[place].plan]
    opened[0].close()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


def test_a_network_without_one_of_its_plans_is_opened_and_loses_nothing(
    network_window: NetworkWindow, tmp_path: Path
) -> None:
    window = network_window
    for each in EXAMPLE.parent.iterdir():
        shutil.copy(each, tmp_path / each.name)
    (tmp_path / "fen-ring.plan.json").unlink()
    (tmp_path / "beacon-wye.plan.json").write_bytes(b"{")
    file = tmp_path / EXAMPLE.name
    assert window.files.open_path(file)
    settle(window)
    unread = [found for found in window.document.findings if found.finding.rule == "plan-unread"]
    assert [found.place for found in unread] == ["Fen Ring", "Beacon Wye"]
    assert "fen-ring.plan.json: the file itself" in unread[0].message
    assert not any(found.finding.rule == "unknown-end" for found in window.document.findings)
    window.bound["save"].trigger()
    assert file.read_bytes() == EXAMPLE.read_bytes()

    shutil.copy(EXAMPLE.parent / "fen-ring.plan.json", tmp_path)
    window.bound["read_plans"].trigger()
    settle(window)
    unread = [found for found in window.document.findings if found.finding.rule == "plan-unread"]
    assert [found.place for found in unread] == ["Beacon Wye"]
    assert window.document.network.junctions[3].readers


def test_a_plan_that_goes_while_its_network_is_open_takes_nothing_with_it(
    network_window: NetworkWindow, tmp_path: Path
) -> None:
    window = network_window
    for each in EXAMPLE.parent.iterdir():
        shutil.copy(each, tmp_path / each.name)
    window.files.open_path(tmp_path / EXAMPLE.name)
    before = window.document.network.junctions[3]
    (tmp_path / "fen-ring.plan.json").unlink()
    window.bound["read_plans"].trigger()
    after = window.document.network.junctions[3]
    assert (after.readers, after.arms) == (before.readers, before.arms)
    assert after.unread
    window.bound["undo"].trigger()
    assert window.document.network.junctions[3] == before


def test_a_network_is_read_again_as_a_step_and_all_stays_where_it_stood(
    network_window: NetworkWindow, network_file: Path
) -> None:
    window = network_window
    window.files.open_path(network_file)
    settle(window)
    move(window)
    before, view = window.document.network, window.view.navigator.view
    written = network_with_station(small_network(), "Orchard")
    write_bytes(network_file, network_bytes(written))
    window.bound["read_again"].trigger()
    settle(window)
    assert window.document.network == written
    assert not window.document.is_dirty
    assert window.view.navigator.view == view
    assert window.document.picture.spots[Item(Kind.STATION, len(written.stations) - 1)]
    window.bound["undo"].trigger()
    assert window.document.network == before


def network_with_station(network: Network, name: str) -> Network:
    """One that has no place on the map yet."""
    return network.replace(stations=(*network.stations, Station(name)))


def test_the_program_starts_with_a_network(
    network_file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qapp: QApplication
) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    window = first_network_window(network_file)
    assert window.isVisible()
    assert window.document.network == small_network()
    window.close()
    window.deleteLater()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    qapp.setStyleSheet("")


def test_no_cards_are_written_over_that_the_dialog_did_not_ask_about(
    network_window: NetworkWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    load(network_window)
    cards = tmp_path / "cards.pdf"
    cards.write_bytes(b"before")
    choose_file(monkeypatch, "getSaveFileName", tmp_path / "cards")
    monkeypatch.setattr(QMessageBox, "exec", lambda _box: QMessageBox.StandardButton.Cancel)
    network_window.bound["cards"].trigger()
    assert cards.read_bytes() == b"before"
    monkeypatch.setattr(QMessageBox, "exec", lambda _box: QMessageBox.StandardButton.Yes)
    network_window.bound["cards"].trigger()
    assert cards.read_bytes().startswith(b"%PDF")


def test_cards_and_graph_are_written(
    network_window: NetworkWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    window = network_window
    load(window)
    cards = tmp_path / "cards.pdf"
    choose_file(monkeypatch, "getSaveFileName", cards)
    window.bound["cards"].trigger()
    assert cards.read_bytes().startswith(b"%PDF")
    graph = tmp_path / "small.graphml"
    choose_file(monkeypatch, "getSaveFileName", graph)
    window.bound["graphml"].trigger()
    settle(window)
    read_back = nx.read_graphml(graph)
    assert read_back.number_of_edges() >= len(small_network().links)
