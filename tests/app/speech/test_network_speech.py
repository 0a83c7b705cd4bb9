"""What a screen reader hears of the network window."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible

from app.network.items import Item, Kind
from app.network.window import NetworkWindow
from app.speech.deeds import done_verbs
from tests.app.network.conftest import make_network, network_window  # noqa: F401
from tests.app.network.networks import keys, load, small_network

K = Qt.Key


def test_places_and_steps_are_told(network_window: NetworkWindow) -> None:  # noqa: F811
    window = network_window
    load(window)
    heard: list[str] = []
    window.speech.speaker.spoken.connect(heard.append)
    window.speech.speaker.speak()
    heard.clear()
    window.view.setFocus()
    keys(window, K.Key_Right)
    window.speech.speaker.speak()
    x, y = window.view.cursor_spot
    (said,) = heard
    assert said.startswith(f"x {int(x)}, y {int(y)}: ")
    found = QAccessible.queryAccessibleInterface(window.view)
    assert found.text(QAccessible.Text.Description) == said
    name = small_network().stations[0].name
    window.commands.remove(frozenset({Item(Kind.STATION, 0)}))
    window.bound["undo"].trigger()
    window.speech.speaker.speak()
    assert f"Removed {name}" in heard[-1]
    assert f"Undid: Remove {name}" in heard[-1]


def test_the_words_of_network_steps_are_known() -> None:
    for word in ("Add", "Remove", "Rename", "Move", "Pin", "Unpin", "Set"):
        assert word in done_verbs()
