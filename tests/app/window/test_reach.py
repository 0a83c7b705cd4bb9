"""Keyboard and screen reader: everything can be reached, and says what it is."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QPushButton, QSpinBox, QTabBar, QToolButton, QWidget
from pytestqt.qtbot import QtBot

from app.dialogs.build_sheet import BuildSheetDialog
from app.dialogs.cell import CellDialog
from app.dialogs.details import sheet_dialog
from app.dialogs.keys import ActionFinder, KeysDialog
from app.dialogs.waiver import WaiverDialog
from app.sheet_presets import SheetChoice, SheetPresets
from app.window import MainWindow
from model.files.plan_file import read_plan
from model.grid import Cell
from model.plan import SheetData
from tests.app.windows import example, settle, straight_plan


def spoken(widget: QWidget) -> str:
    """What a screen reader says: the name given, or the text on a button."""
    if isinstance(widget, QPushButton | QToolButton):
        return widget.accessibleName() or widget.text()
    return widget.accessibleName()


def unnamed(root: QWidget) -> list[str]:
    """What can have the focus and says nothing of itself; parts inside a named widget speak through it."""
    found = []
    for widget in root.findChildren(QWidget):
        inside = widget.parentWidget() is not None and spoken(widget.parentWidget())
        takes_focus = widget.focusPolicy() != Qt.FocusPolicy.NoFocus
        if takes_focus and not spoken(widget) and not inside and not isinstance(widget, QLabel):
            found.append(f"{type(widget).__name__} in {type(widget.parentWidget()).__name__}")
    return found


def test_everything_that_takes_the_focus_has_a_name(window: MainWindow) -> None:
    window.document.load(read_plan(example("fen-ring")), None)
    settle(window)
    assert unnamed(window) == []


def test_every_question_has_names_too(window: MainWindow) -> None:
    questions = (
        BuildSheetDialog(window, SheetChoice(), SheetPresets(window.settings)),
        CellDialog(window, "Go to x y z", "Shows the cell.", "Go", Cell(0, 0, 0)),
        sheet_dialog(window, SheetData()),
        WaiverDialog(window, "A loose end"),
        KeysDialog(window, window.change_keys),
        ActionFinder(window, window.bound),
        window.show_start(),
    )
    for question in questions:
        assert unnamed(question) == [], type(question).__name__
        question.deleteLater()


def test_an_unnamed_widget_would_be_found(window: MainWindow) -> None:
    """The control that must fail."""
    holder = QWidget(window)
    QPushButton(holder)
    assert unnamed(window) == ["QPushButton in QWidget"]


def test_tab_goes_all_around_the_window_as_the_eye_does(window: MainWindow, qtbot: QtBot) -> None:
    window.document.load(straight_plan(), None)
    settle(window)
    window.activateWindow()
    window.frame.tools.tools["select"].setFocus()
    seen: list[QWidget] = []
    for _ in range(200):
        widget = window.focusWidget()
        assert widget is not None
        if widget in seen:
            break
        seen.append(widget)
        qtbot.keyClick(widget, Qt.Key.Key_Tab)
    panels = window.panels
    stops = [panels.tray, panels.levels, window.view, panels.orientations.tiles[0], panels.findings.list]
    stops += [tabs.tabBar() for tabs in (window.side.upper_tabs, window.side.lower_tabs)]
    missing = [type(stop).__name__ for stop in stops if stop not in seen and stop.isVisible()]
    assert missing == []
    order = [seen.index(stop) for stop in stops[:4]]
    assert order == sorted(order)
    assert sum(isinstance(widget, QTabBar) for widget in seen) == 2
    assert window.frame.tools.tools["cart"] in seen


@pytest.mark.parametrize(
    ("keys", "tool"),
    [("L", "lay"), ("P", "place"), ("E", "erase"), ("T", "throw"), ("V", "survey"), ("S", "select")],
)
def test_a_letter_takes_up_a_tool(window: MainWindow, qtbot: QtBot, keys: str, tool: str) -> None:
    window.activateWindow()
    window.view.setFocus()
    qtbot.keyClick(window.view, keys)
    assert window.view.tool == tool
    assert window.frame.tools.tools[tool].isChecked()


def test_a_plan_is_drawn_without_a_pointer(window: MainWindow, qtbot: QtBot) -> None:
    window.view.setFocus()
    qtbot.keyClick(window.view, "L")
    qtbot.keyClick(window.view, Qt.Key.Key_Return)
    for _ in range(3):
        qtbot.keyClick(window.view, Qt.Key.Key_Right)
    qtbot.keyClick(window.view, Qt.Key.Key_Return)
    assert len(window.document.plan.pieces) == 4
    assert window.document.undo_stack.count() == 1


def test_deleting_in_a_list_deletes_no_pieces(window: MainWindow, qtbot: QtBot) -> None:
    window.document.load(straight_plan(), None)
    settle(window)
    window.view.select_all()
    window.panels.tray.setFocus()
    qtbot.keyClick(window.panels.tray, Qt.Key.Key_Delete)
    assert window.document.plan == straight_plan()
    window.view.setFocus()
    qtbot.keyClick(window.view, Qt.Key.Key_Delete)
    assert len(window.document.plan.pieces) == 3


def test_all_text_is_shown_as_it_is(window: MainWindow) -> None:
    window.show_start()
    for top in QApplication.topLevelWidgets():
        for label in top.findChildren(QLabel):
            assert label.textFormat() == Qt.TextFormat.PlainText, label.text()


@pytest.mark.parametrize(
    ("width", "height"), [(1440, 900), (1439, 900), (1280, 720), (1279, 720), (1024, 640)]
)
def test_nothing_in_the_window_is_cut_or_covered(window: MainWindow, width: int, height: int) -> None:
    window.document.load(read_plan(example("saltern-junction")), None)
    window.resize(width, height)
    settle(window)
    assert (window.width(), window.height()) == (width, height)
    panels, tools = window.panels, window.frame.tools
    assert panels.tray.width() == (204 if width >= 1280 else 48)
    assert panels.orientations.is_folded is (width < 1100)
    assert window.view.width() > 300
    for button in [*tools.findChildren(QToolButton), *tools.findChildren(QPushButton)]:
        assert button.width() >= button.sizeHint().width(), button.text()
        assert tools.rect().contains(button.geometry()), button.text()
    parts = [panels.tray, panels.levels, window.view, panels.orientations, window.side, panels.status]
    places = [part.rect().translated(part.mapTo(window, QPoint(0, 0))) for part in parts]
    for one, place in enumerate(places):
        assert window.rect().contains(place)
        assert not any(place.intersects(other) for other in places[one + 1 :])


def test_a_theme_is_chosen_and_remembered(window: MainWindow) -> None:
    window.bound["theme_dark"].trigger()
    dark = window.grab().toImage().pixelColor(window.width() - 5, window.height() - 40).lightness()
    window.bound["theme_light"].trigger()
    light = window.grab().toImage().pixelColor(window.width() - 5, window.height() - 40).lightness()
    assert dark < 60 < 200 < light
    assert window.settings.theme == "light"
    window.bound["theme_system"].trigger()


def test_tab_leads_round_the_window_and_back_to_the_plan(window: MainWindow) -> None:
    window.document.load(read_plan(example("fen-ring")), None)
    settle(window)
    window.activateWindow()
    window.view.setFocus()
    met: list[QWidget] = []
    for _ in range(60):
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        now = QApplication.focusWidget()
        assert now is not None
        met.append(now)
        if now is window.view:
            break
    assert met[-1] is window.view, "Tab never came back"
    assert len(set(met)) == len(met), "Tab came to something twice"
    names = [spoken(widget) for widget in met]
    for name in ("Select", "Build sheet…", "Parts", "Findings", "Switches"):
        assert name in names


def test_the_first_arrow_chooses_the_first_finding(window: MainWindow) -> None:
    window.document.load(read_plan(example("fen-ring")), None)
    settle(window)
    window.activateWindow()
    window.bound["show_findings"].trigger()
    focus = QApplication.focusWidget()
    assert focus is window.panels.findings.list
    QTest.keyClick(focus, Qt.Key.Key_Down)
    assert window.panels.findings.finding == window.document.findings[0]
    QTest.keyClick(focus, Qt.Key.Key_Down)
    assert window.panels.findings.finding == window.document.findings[1]


def test_figures_stand_clear_of_the_outline_of_their_field(window: MainWindow) -> None:
    """Qt knows no padding inside a field for numbers: the stylesheet has to keep them off the outline."""
    dialog = CellDialog(window, "Go to x y z", "Shows the cell.", "Go", Cell(-1_234_567, 64, 0))
    dialog.show()
    x, y, _ = dialog.findChildren(QSpinBox)
    for field, other in ((x, y), (y, x)):
        other.setFocus()
        QApplication.processEvents()
        left, room = field.lineEdit().x(), field.lineEdit().width()
        field.setFocus()
        QApplication.processEvents()
        assert field.lineEdit().x() == left >= 6, "nor do they move when the field is chosen"
        assert field.width() - left - room >= 6
    dialog.close()
    dialog.deleteLater()
