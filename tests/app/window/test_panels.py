"""Panels around the plan: drawn to other sizes, hidden, kept for the next start, put back."""

from __future__ import annotations

from PySide6.QtWidgets import QApplication, QSplitter

from app.network.window import NetworkWindow
from app.panels.arrangement import PLAN_PANELS, Arrangement, keep_arrangement, read_arrangement
from app.panels.side_panel import WIDTH
from app.settings import Settings
from app.window import MainWindow
from tests.app.conftest import MakeWindow


def draw(splitter: QSplitter, by: int) -> None:
    """Move its line as a hand does."""
    splitter.moveSplitter(splitter.handle(1).pos().x() + splitter.handle(1).pos().y() + by, 1)


def splitter_of(window: MainWindow | NetworkWindow, *, holds: object) -> QSplitter:
    return next(
        each
        for each in window.frame.findChildren(QSplitter)
        if any(each.widget(place) is holds for place in range(each.count()))
    )


def test_a_new_window_is_no_larger_than_the_screen(window: MainWindow) -> None:
    room = window.screen().availableSize()
    window.resize(room.width() + 500, room.height() + 500)
    window.fit_screen()
    assert window.size() == room.expandedTo(window.minimumSize())


def test_sizes_are_kept_for_the_next_window_and_can_be_put_back(make_window: MakeWindow) -> None:
    first = make_window()
    across = splitter_of(first, holds=first.side)
    draw(across, -120)
    draw(splitter_of(first, holds=first.side.upper_tabs), 60)
    wide, shares = first.side.width(), first.side.shares
    assert abs(wide - WIDTH - 120) < 4, "a line of one px is grabbed beside it, too"
    second = make_window()
    QApplication.processEvents()
    assert (second.side.width(), second.side.shares) == (wide, shares)
    second.bound["reset_panels"].trigger()
    assert second.side.width() == WIDTH
    assert read_arrangement(second.settings) == Arrangement()


def test_a_panel_is_hidden_and_shown_and_stays_so(make_window: MakeWindow) -> None:
    window = make_window()
    parts = (window.panels.tray, window.panels.levels, window.panels.orientations, window.side)
    for name, panel in zip(PLAN_PANELS.hideable, parts, strict=True):
        before = window.view.size()
        window.bound[f"panel_{name}"].trigger()
        QApplication.processEvents()
        assert not panel.isVisible()
        assert not window.bound[f"panel_{name}"].isChecked()
        after = window.view.size()
        grows = (after.width() > before.width(), after.height() > before.height())
        assert grows == ((False, True) if name == "orientations" else (True, False)), "the plan has the room"
    other = make_window()
    assert not any(other.bound[f"panel_{name}"].isChecked() for name in PLAN_PANELS.hideable)
    assert not other.side.isVisible()
    window.bound["reset_panels"].trigger()
    assert all(panel.isVisible() for panel in parts)
    assert all(window.bound[f"panel_{name}"].isChecked() for name in PLAN_PANELS.hideable)


def test_the_focus_does_not_stay_in_what_is_hidden(window: MainWindow) -> None:
    window.activateWindow()
    window.bound["show_findings"].trigger()
    window.bound["panel_side"].trigger()
    assert QApplication.focusWidget() is window.view
    window.bound["show_materials"].trigger()
    assert window.side.isVisible(), "who asks for a list wants to see it"
    assert window.bound["panel_side"].isChecked()


def test_modules_come_and_go_without_a_hidden_tray(window: MainWindow) -> None:
    window.bound["panel_tray"].trigger()
    window.bound["tool_module"].trigger()
    assert window.panels.modules.isVisible()
    window.bound["tool_select"].trigger()
    assert not window.panels.modules.isVisible()
    assert not window.panels.tray.isVisible()


def test_settings_that_cannot_be_understood_leave_the_panels_as_they_come(settings: Settings) -> None:
    wide, deep = f'{{"side": {2**40}}}', f'{{"shares": [1, {2**40}]}}'
    for spoiled in ("{", '{"side": "wide"}', '{"shares": [1]}', '{"side": -5}', wide, deep):
        settings.choose("panels", spoiled)
        assert read_arrangement(settings) == Arrangement()
    keep_arrangement(settings, Arrangement(hidden=frozenset({"tray", "of a later version"})))
    assert read_arrangement(settings).hidden == {"tray"}


def test_the_status_bar_tells_how_large_the_plan_is_shown(window: MainWindow) -> None:
    window.view.zoom_100()
    assert window.panels.status.zoom.text() == "100 %"
    window.view.zoom_out()
    assert window.panels.status.zoom.text() == "67 %"
