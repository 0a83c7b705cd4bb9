"""Placing all nodes of a large network anew does not hold the window, and can be cancelled."""

from __future__ import annotations

import threading
from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication

from app.dialogs.working import WorkingDialog
from app.network import commands
from app.network.items import Item
from app.network.window import NetworkWindow
from model.network.network import Network, Spot, Station
from tests.app.network.networks import load

NODES = 40
"""More than are placed at once."""


def many() -> Network:
    """Stations on one spot, of which none is linked."""
    return Network("Many", tuple(Station(f"Stop {number}", (0.0, 0.0)) for number in range(NODES)))


@pytest.fixture
def may_end(monkeypatch: pytest.MonkeyPatch) -> Iterator[threading.Event]:
    """Places are found once this is set, and not in the thread of the window."""
    event, place = threading.Event(), commands.first_spots

    def place_late(network: Network) -> dict[Item, Spot]:
        assert threading.current_thread() is not threading.main_thread()
        event.wait(20)
        return place(network)

    monkeypatch.setattr(commands, "first_spots", place_late)
    monkeypatch.setattr("app.dialogs.working.PATIENCE_MS", 0)
    yield event
    event.set()


@pytest.mark.parametrize("is_cancelled", [False, True])
def test_a_large_network_is_placed_beside_the_window(
    network_window: NetworkWindow,
    may_end: threading.Event,
    monkeypatch: pytest.MonkeyPatch,
    is_cancelled: bool,
) -> None:
    load(network_window, many())
    document, show = network_window.document, WorkingDialog.show

    def act(dialog: WorkingDialog) -> None:
        show(dialog)
        if is_cancelled:
            dialog.reject()
        else:
            may_end.set()

    monkeypatch.setattr(WorkingDialog, "show", act)
    network_window.bound["place_anew"].trigger()
    spots = {station.at for station in document.network.stations}
    assert len(spots) == (1 if is_cancelled else NODES)
    assert document.undo_stack.count() == (0 if is_cancelled else 1)
    said = network_window.panels.status.here.text()
    assert (said == "Cancelled: all stands where it stood.") is is_cancelled
    assert QApplication.activeModalWidget() is None
