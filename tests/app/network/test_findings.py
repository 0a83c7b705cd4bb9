"""A finding of a network is set aside in the window, and taken up again."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.network.found import markers_of
from app.network.items import Item, Kind
from app.network.panels import findings_panel
from app.network.window import NetworkWindow
from app.panels.findings_model import SECOND_ROLE
from model.files.network_file import read_network
from model.network.network import Station
from tests.app.network.networks import load, settle, small_network


@pytest.fixture
def lonely(network_window: NetworkWindow) -> NetworkWindow:
    """A window with a station to which no link leads: the only finding."""
    network = small_network()
    load(network_window, network.replace(stations=(*network.stations, Station("Orchard", (0.0, 80.0)))))
    return network_window


def click_aside(window: NetworkWindow) -> None:
    """Choose the finding, and press its button with the mouse."""
    panel = window.panels.findings
    panel.list.setCurrentIndex(panel.model.index(0, 0))
    QTest.mouseClick(panel.aside_button, Qt.MouseButton.LeftButton)
    settle(window)


def test_a_finding_is_set_aside_undone_and_saved(
    lonely: NetworkWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    panel, document = lonely.panels.findings, lonely.document
    station = Item(Kind.STATION, 3)
    assert [found.waived for found in document.findings] == [False]
    assert station in markers_of(document.findings)
    monkeypatch.setattr(findings_panel, "ask_reason", lambda _parent, _title: "in spring")
    click_aside(lonely)
    assert [found.waived for found in document.findings] == [True]
    assert station not in markers_of(document.findings)
    index = panel.model.index(0, 0)
    assert index.data(SECOND_ROLE) == "Set aside: “in spring”"
    assert index.data(Qt.ItemDataRole.AccessibleTextRole).startswith("set aside: ")
    assert panel.aside_button.text() == "Take up again"

    file = tmp_path / "lonely.network.json"
    document.save(file)
    assert [waiver.reason for waiver in read_network(file).waivers] == ["in spring"]
    lonely.bound["undo"].trigger()
    settle(lonely)
    assert [found.waived for found in document.findings] == [False]
    lonely.bound["redo"].trigger()
    settle(lonely)
    click_aside(lonely)
    assert [found.waived for found in document.findings] == [False]
    document.undo_stack.setClean()


def test_without_a_reason_nothing_is_set_aside(
    lonely: NetworkWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(findings_panel, "ask_reason", lambda _parent, _title: None)
    click_aside(lonely)
    assert [found.waived for found in lonely.document.findings] == [False]
    assert not lonely.document.is_dirty
