"""Panels around the map: drawn wider, hidden, kept for the next start, put back."""

from __future__ import annotations

from PySide6.QtWidgets import QApplication

from app.network.frame import NETWORK_PANEL_SET, SHARES, WIDE_SIDE
from app.network.window import NetworkWindow
from app.panels.arrangement import read_arrangement
from tests.app.network.conftest import MakeWindow
from tests.app.window.test_panels import draw, splitter_of


def test_sizes_are_kept_for_the_next_window_and_can_be_put_back(make_network: MakeWindow) -> None:
    first = make_network()
    assert first.side.width() == WIDE_SIDE
    draw(splitter_of(first, holds=first.side), -100)
    draw(splitter_of(first, holds=first.side.upper_tabs), -60)
    wide, shares = first.side.width(), first.side.shares
    assert abs(wide - WIDE_SIDE - 100) < 4, "a line of one px is grabbed beside it, too"
    second = make_network()
    QApplication.processEvents()
    assert (second.side.width(), second.side.shares) == (wide, shares)
    second.bound["reset_panels"].trigger()
    assert (second.side.width(), second.frame.arrangement.shares) == (WIDE_SIDE, SHARES)
    assert read_arrangement(second.settings, NETWORK_PANEL_SET) == NETWORK_PANEL_SET.first


def test_a_panel_is_hidden_and_stays_so_until_it_is_asked_for(make_network: MakeWindow) -> None:
    window = make_network()
    before = window.view.size()
    for name in NETWORK_PANEL_SET.hideable:
        window.bound[f"panel_{name}"].trigger()
        assert not window.bound[f"panel_{name}"].isChecked()
    QApplication.processEvents()
    assert not window.panels.summary.isVisible()
    assert window.view.width() > before.width()
    assert window.view.height() > before.height()
    other = make_network()
    assert not other.side.isVisible()
    other.bound["show_trips"].trigger()
    assert other.side.isVisible(), "who asks for a list wants to see it"
    assert other.bound["panel_side"].isChecked()


def test_plans_and_networks_keep_their_panels_apart(network_window: NetworkWindow) -> None:
    network_window.bound["panel_side"].trigger()
    assert "side" in read_arrangement(network_window.settings, NETWORK_PANEL_SET).hidden
    assert "side" not in read_arrangement(network_window.settings).hidden
