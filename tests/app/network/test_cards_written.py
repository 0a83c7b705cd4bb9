"""Departure cards from the window: they wait for the plan, tell how far they are, and can be cancelled."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QDialogButtonBox, QFileDialog, QPushButton
from pytestqt.qtbot import QtBot

from app.dialogs.working import WorkingDialog
from app.network.window import NetworkWindow
from model.network.network import Network
from model.network.planning import plan_network
from model.network.result import NetworkPlan
from model.pauses import pause
from model.progress import Progress
from tests.app.network.networks import settle, small_network
from tests.app.working import hear

OLD = b"what stood here before"
Watch = Callable[[str, Callable[[WorkingDialog], object]], list[str]]


@pytest.fixture
def cards(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The file that is chosen; there is one already."""
    path = tmp_path / "cards.pdf"
    path.write_bytes(OLD)
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
    return path


@pytest.fixture
def goes_on(monkeypatch: pytest.MonkeyPatch) -> Iterator[threading.Event]:
    """Until it is set no network has its last plan."""
    event = threading.Event()

    def slow(network: Network) -> Iterator[Progress | NetworkPlan]:
        yield Progress("Looking for better", 1, 2)
        while not event.wait(0.01):
            pause()  # as the planning does: it ends where nobody wants it any more
        yield from plan_network(network)

    monkeypatch.setattr("app.network.document.plan_network", slow)
    yield event
    event.set()


@pytest.fixture
def watch(monkeypatch: pytest.MonkeyPatch) -> Watch:
    """Does something when the working dialog says what begins so; gives all that it says."""

    def watched(begin: str, act: Callable[[WorkingDialog], object]) -> list[str]:
        def heard(dialog: WorkingDialog, words: str) -> None:
            if words.startswith(begin):
                QTimer.singleShot(0, dialog, lambda: act(dialog))

        return hear(monkeypatch, heard)

    return watched


def cancel(dialog: WorkingDialog) -> None:
    """Press the button."""
    button = dialog.findChild(QDialogButtonBox).button(QDialogButtonBox.StandardButton.Cancel)
    assert isinstance(button, QPushButton)
    button.click()


def test_they_wait_for_the_plan_of_now(
    network_window: NetworkWindow, cards: Path, goes_on: threading.Event, watch: Watch
) -> None:
    network_window.document.load(small_network(), None)
    said = watch("Looking for better", lambda _dialog: goes_on.set())
    network_window.bound["cards"].trigger()
    assert cards.read_bytes().startswith(b"%PDF")
    assert said[0] == "Planning the network…"
    assert said[-1].startswith("Drawing page ")


@pytest.mark.parametrize("when", ["Looking for better", "Drawing page 2 of "])
def test_cancelling_leaves_the_old_cards(
    network_window: NetworkWindow,
    cards: Path,
    goes_on: threading.Event,
    watch: Watch,
    when: str,
) -> None:
    if when.startswith("Drawing"):
        goes_on.set()
    network_window.document.load(small_network(), None)
    said = watch(when, cancel)
    network_window.bound["cards"].trigger()
    assert said[-1].startswith(when)
    assert cards.read_bytes() == OLD
    assert network_window.panels.status.here.text() == "Cancelled: no cards were written."
    assert QApplication.activeModalWidget() is None
    goes_on.set()
    settle(network_window)


def test_the_window_may_be_closed_meanwhile(
    network_window: NetworkWindow, cards: Path, goes_on: threading.Event, watch: Watch, qtbot: QtBot
) -> None:
    network_window.document.load(small_network(), None)
    watch("Looking for better", lambda _dialog: network_window.close())
    network_window.bound["cards"].trigger()
    assert cards.read_bytes() == OLD
    assert not network_window.isVisible()
