"""Every menu that a right click opens, opened without a mouse: on the drawings, the levels and every list."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QAbstractItemView, QApplication, QMenu, QWidget

from app.help.dialog import HelpDialog
from app.network.window import NetworkWindow
from app.panels.row_menu import RowMenu
from app.panels.side_panel import Tabs
from app.window import MainWindow
from model.files.plan_file import read_plan
from model.network.edits import add_station
from tests.app.commissioning import settle_runs
from tests.app.network.networks import load as load_network
from tests.app.network.networks import settle as settle_network
from tests.app.windows import example, settle

PLAN_LISTS = ["Findings", "Readers", "Test runs", "Wanted routes", "What may be wrong"]
NETWORK_LISTS = ["Findings", "Readers", "Stations", "Trips"]


@pytest.fixture
def plan(window: MainWindow) -> MainWindow:
    """A window with a plan that has something in every list."""
    window.document.load(read_plan(example("saltern-junction")), None)
    settle(window)
    return window


@pytest.fixture
def network(window: MainWindow) -> Iterator[NetworkWindow]:
    """A network window beside the plan's."""
    made = NetworkWindow(window.settings, window.recovery.folder)
    made.show()
    load_network(made)
    made.document.edit(add_station, "Orchard", (0.0, 0.0))  # which no link leads to
    settle_network(made)
    made.document.undo_stack.setClean()
    yield made
    made.close()
    made.deleteLater()


def lists_of(window: QWidget) -> dict[str, QAbstractItemView]:
    """The lists that have a menu, by what they are called."""
    views = [menu.parent() for menu in window.findChildren(RowMenu)]
    return {view.accessibleName(): view for view in views if isinstance(view, QAbstractItemView)}


def open_menu(window: MainWindow | NetworkWindow, widget: QWidget) -> QMenu | None:
    """What comes of the key while the focus is there."""
    window.activateWindow()
    QApplication.processEvents()
    widget.setFocus()
    assert QApplication.focusWidget() is widget
    window.bound["menu_here"].trigger()
    menu = QApplication.activePopupWidget()
    assert menu is None or isinstance(menu, QMenu)
    return menu


def shown_tabs(window: MainWindow | NetworkWindow, widget: QWidget) -> None:
    """Brings the tab to the front on which the list stands."""
    for tabs in window.findChildren(Tabs):
        for index in range(tabs.count()):
            if tabs.widget(index).isAncestorOf(widget):
                tabs.setCurrentIndex(index)
    settle(window)


def test_every_list_with_buttons_beside_it_has_a_menu(plan: MainWindow, network: NetworkWindow) -> None:
    assert sorted(lists_of(plan)) == PLAN_LISTS
    assert sorted(lists_of(network)) == NETWORK_LISTS


@pytest.mark.parametrize("name", ["Findings", "Readers", "Test runs", "Wanted routes"])
def test_the_key_opens_the_menu_of_a_list_of_a_plan(plan: MainWindow, name: str) -> None:
    check(plan, name)


@pytest.mark.parametrize("name", NETWORK_LISTS)
def test_the_key_opens_the_menu_of_a_list_of_a_network(network: NetworkWindow, name: str) -> None:
    check(network, name)


def check(window: MainWindow | NetworkWindow, name: str) -> None:
    """The menu says what the buttons say, and is at the row that it is about."""
    view = lists_of(window)[name]
    shown_tabs(window, view)
    if isinstance(window, MainWindow):
        settle_runs(window)
    view.setCurrentIndex(view.model().index(0, 0))
    menu = open_menu(window, view)
    assert menu is not None
    entries = [entry.text().replace("&", "") for entry in menu.actions()]
    menu.close()
    panel = view.parentWidget()
    assert panel is not None
    buttons = [button.text() for button in panel.findChildren(QAbstractButton) if button.isVisible()]
    assert entries
    assert set(entries) <= set(buttons)
    assert view.currentIndex().row() == 0


def test_an_entry_does_what_its_button_does(plan: MainWindow) -> None:
    view = lists_of(plan)["Findings"]
    shown_tabs(plan, view)
    menu = open_menu(plan, view)
    assert menu is not None
    entry = next(entry for entry in menu.actions() if "What is this" in entry.text().replace("&", ""))
    menu.setActiveAction(entry)
    QTest.keyClick(menu, Qt.Key.Key_Return)
    assert any(dialog.isVisible() for dialog in plan.findChildren(HelpDialog))


def test_a_right_click_chooses_the_row_that_it_is_on(plan: MainWindow) -> None:
    view = lists_of(plan)["Findings"]
    shown_tabs(plan, view)
    index = view.model().index(1, 0)
    at = view.visualRect(index).center()
    event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, at, view.viewport().mapToGlobal(at))
    QApplication.sendEvent(view.viewport(), event)
    assert view.currentIndex() == index
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    menu.close()


def test_the_key_opens_the_menus_of_the_drawings_and_of_the_levels(
    plan: MainWindow, network: NetworkWindow
) -> None:
    for window, widget in ((plan, plan.view), (plan, plan.panels.levels), (network, network.view)):
        menu = open_menu(window, widget)
        assert menu is not None
        assert menu.actions()
        menu.close()


def test_without_a_focus_nothing_opens(plan: MainWindow) -> None:
    focus = QApplication.focusWidget()
    if focus is not None:
        focus.clearFocus()
    plan.bound["menu_here"].trigger()
    assert QApplication.activePopupWidget() is None


def test_the_menu_of_the_plan_is_at_its_cursor(plan: MainWindow) -> None:
    cell = next(iter(plan.document.plan.pieces)).at
    plan.view.go_to(cell)
    menu = open_menu(plan, plan.view)
    assert menu is not None
    left, top = plan.view.navigator.view.corner(cell.x, cell.z)
    at = plan.view.mapFromGlobal(menu.pos()) - QPoint(round(left), round(top))
    menu.close()
    assert at.x() <= 3 * plan.view.navigator.view.scale
    assert plan.view.selection == {cell}
