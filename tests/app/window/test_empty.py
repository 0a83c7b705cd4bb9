"""Empty lists say in one sentence what would stand there."""

from __future__ import annotations

from functools import partial

import pytest
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from app.network.window import NetworkWindow
from app.panels.side_panel import Tabs
from app.window import MainWindow
from tests.app.windows import settle


def sentences(panel: QWidget) -> list[str]:
    """What is said in a panel, but for headings."""
    said = (label.text() for label in panel.findChildren(QLabel) if label.isVisible())
    return [text for text in said if len(text.split()) > 4 and text.endswith(".")]


def says_something(panel: QWidget) -> bool:
    return bool(sentences(panel))


def wait_for_sentences(qtbot: QtBot, *groups: Tabs) -> None:
    """Every panel says something, as soon as what works beside the window has found nothing."""
    for tabs in groups:
        for index in range(tabs.count()):
            tabs.setCurrentIndex(index)
            qtbot.waitUntil(partial(says_something, tabs.widget(index)), timeout=2_000)


def test_every_list_of_an_empty_plan_says_what_would_stand_there(window: MainWindow, qtbot: QtBot) -> None:
    settle(window)
    wait_for_sentences(qtbot, window.side.upper_tabs, window.side.lower_tabs)
    window.bound["show_timing"].trigger()
    assert sentences(window.panels.timing)


def test_every_list_of_an_empty_network_does_too(window: MainWindow, qtbot: QtBot) -> None:
    network = NetworkWindow(window.settings, window.recovery.folder)
    network.show()
    wait_for_sentences(qtbot, network.side.upper_tabs, network.side.lower_tabs)
    network.close()
    network.deleteLater()


@pytest.mark.parametrize("words", ["", "no action is called so"])
def test_a_silent_panel_would_be_found(window: MainWindow, words: str) -> None:
    """The control that must fail: a heading or a word is no sentence."""
    panel = QWidget(window)
    QLabel(words, panel)
    panel.show()
    assert sentences(panel) == []
