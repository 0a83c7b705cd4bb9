"""The whole first sketch in the window: once by mouse, once by keyboard, and how it is put away."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractItemView, QApplication, QComboBox, QWidget
from pytestqt.qtbot import QtBot

from app.dialogs.build_sheet import BuildSheetDialog
from app.first_sketch import card as card_module
from app.first_sketch.card import SketchCard
from app.first_sketch.hints import HINTS
from app.first_sketch.sketch import has_ended
from app.panels.routes_model import CALLED
from app.window import MainWindow
from model.grid import Cell
from tests.app.windows import settle, straight_plan

K = Qt.Key
LEFT = Qt.MouseButton.LeftButton
NAMES = ("Quay", "Fen", "Mill")


@pytest.fixture
def told(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What screen readers are told."""
    said: list[str] = []
    monkeypatch.setattr(card_module, "announce", lambda _widget, text: said.append(text))
    return said


@pytest.fixture
def begun(window: MainWindow, told: list[str]) -> MainWindow:
    """A window in which the first sketch has begun."""
    window.activateWindow()
    window.bound["first_sketch"].trigger()
    assert len(told) == 1
    return window


def card_of(window: MainWindow) -> SketchCard:
    (card,) = window.view.findChildren(SketchCard)
    return card


def number(window: MainWindow) -> int:
    """Of the hint that the card shows, from 1; 0 where it is away, 7 where all is done."""
    assert card_of(window).isVisible() is window.first_sketch.is_on
    return window.first_sketch.number + 1 if window.first_sketch.is_on else 0


def refuse_next_dialog() -> None:
    """Cancel the next question, which would wait for an answer without end."""

    def cancel() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, BuildSheetDialog)
        dialog.reject()

    QTimer.singleShot(0, cancel)


class Mouse:
    """Nothing but presses, moves and clicks; letters are typed only for names."""

    def __init__(self, window: MainWindow) -> None:
        self.window, self.view = window, window.view

    def at(self, cell: Cell) -> QPoint:
        viewport = self.view.navigator.view
        left, top = viewport.corner(cell.x, cell.z)
        return QPoint(left + viewport.scale // 2, top + viewport.scale // 2)

    def take(self, tool: str) -> None:
        self.click(self.window.frame.tools.tools[tool])

    def click(self, widget: QWidget, pos: QPoint | None = None) -> None:
        QTest.mouseClick(widget, LEFT, pos=widget.rect().center() if pos is None else pos)

    def click_cell(self, cell: Cell) -> None:
        self.click(self.view, self.at(cell))

    def drag(self, *cells: Cell) -> None:
        QTest.mousePress(self.view, LEFT, pos=self.at(cells[0]))
        for cell in cells[1:]:
            QTest.mouseMove(self.view, self.at(cell))
        QTest.mouseRelease(self.view, LEFT, pos=self.at(cells[-1]))

    def click_row(self, listed: QAbstractItemView, row: int = 0) -> None:
        place = listed.visualRect(listed.model().index(row, 0)).center()
        self.click(listed.viewport(), place)

    def tab(self, title: str) -> None:
        tabs = self.window.side.lower_tabs
        bar = tabs.tabBar()
        index = next(i for i in range(bar.count()) if bar.tabText(i).startswith(title))
        self.click(bar, bar.tabRect(index).center())

    def edit_called(self, goal: str) -> None:
        table = self.window.panels.routes.table
        index = self.window.panels.routes.model.index(0, CALLED)
        place = table.visualRect(index).center()
        self.click(table.viewport(), place)
        QTest.mouseDClick(table.viewport(), LEFT, pos=place)
        box = table.indexWidget(index)
        assert isinstance(box, QComboBox)
        box.showPopup()
        chosen = box.model().index(box.findText(goal), 0)
        self.click(box.view().viewport(), box.view().visualRect(chosen).center())
        QApplication.processEvents()


def ends_of(window: MainWindow) -> list[Cell]:
    """West and east end of the straight, and the end of the branch, as the outlines show them."""
    middle = window.first_sketch.middle
    return [middle.moved(dx=-3), middle.moved(dx=3), middle.moved(dx=3, dz=3)]


def test_all_six_by_mouse(begun: MainWindow, told: list[str], qtbot: QtBot) -> None:
    window, mouse, middle = begun, Mouse(begun), begun.first_sketch.middle
    west, east, south = ends_of(window)
    mouse.take("lay")
    mouse.drag(west, middle, east)
    assert number(window) == 2
    mouse.drag(south, middle.moved(dz=3), middle.moved(dz=1))
    assert number(window) == 3
    mouse.take("arm")
    for name, cell in zip(NAMES, (west, east, south), strict=True):
        mouse.click_cell(cell)
        QTest.keyClicks(window.view.name_entry.line, name)
        QTest.keyClick(window.view.name_entry.line, K.Key_Return)
    assert number(window) == 4
    settle(window)
    mouse.tab("Routes")
    mouse.click(window.panels.routes.add_button)
    assert window.first_sketch.progress.done == 1
    mouse.edit_called("Mill")
    assert number(window) == 5
    settle(window)
    mouse.take("throw")
    mouse.click_cell(middle)
    mouse.take("cart")
    mouse.drag(west, west.moved(dx=1))
    assert number(window) == 6
    mouse.click_row(window.panels.findings.list)
    mouse.tab("Switches")
    mouse.click_row(window.panels.switches.table)
    refuse_next_dialog()
    mouse.click(window.frame.tools.main)
    assert number(window) == 7
    assert has_ended(window.settings)
    assert len(told) == 7
    mouse.click(card_of(window).enough)
    assert number(window) == 0


def go(window: MainWindow, cell: Cell) -> None:
    """Move the cursor to a cell by arrows alone."""
    view = window.view
    while view.cursor.x != cell.x:
        QTest.keyClick(view, K.Key_Right if cell.x > view.cursor.x else K.Key_Left)
    while view.cursor.z != cell.z:
        QTest.keyClick(view, K.Key_Down if cell.z > view.cursor.z else K.Key_Up)


def focus() -> QWidget:
    widget = QApplication.focusWidget()
    assert widget is not None
    return widget


def keys(*pressed: Qt.Key, mods: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
    for key in pressed:
        QTest.keyClick(focus(), key, mods)


def test_all_six_by_keyboard(begun: MainWindow, told: list[str]) -> None:
    window, middle = begun, begun.first_sketch.middle
    west, east, south = ends_of(window)
    keys(K.Key_L)
    go(window, west)
    keys(K.Key_Return)
    go(window, east)
    keys(K.Key_Return)
    assert number(window) == 2
    go(window, south)
    keys(K.Key_Return)
    go(window, middle.moved(dz=3))
    go(window, middle.moved(dz=1))
    keys(K.Key_Return)
    assert number(window) == 3
    keys(K.Key_A)
    for name, cell in zip(NAMES, (west, east, south), strict=True):
        go(window, cell)
        keys(K.Key_Return, K.Key_Return)
        QTest.keyClicks(focus(), name)
        keys(K.Key_Return)
    assert number(window) == 4
    settle(window)
    keys(K.Key_4, mods=Qt.KeyboardModifier.AltModifier)
    for _ in range(10):
        if focus() is window.panels.routes.add_button:
            break
        keys(K.Key_Tab)
    keys(K.Key_Space)
    keys(K.Key_Right, K.Key_F2)
    box = focus()
    assert isinstance(box, QComboBox)
    keys(K.Key_Down, K.Key_Down, K.Key_Return)
    QApplication.processEvents()
    assert number(window) == 5
    settle(window)
    keys(K.Key_0, mods=Qt.KeyboardModifier.AltModifier)
    keys(K.Key_T)
    go(window, middle)
    keys(K.Key_Return)
    keys(K.Key_C)
    go(window, west)
    keys(K.Key_Return, K.Key_Right, K.Key_Return)
    assert number(window) == 6
    keys(K.Key_1, mods=Qt.KeyboardModifier.AltModifier)
    keys(K.Key_Down)
    keys(K.Key_3, mods=Qt.KeyboardModifier.AltModifier)
    keys(K.Key_Down)
    refuse_next_dialog()
    keys(K.Key_B, mods=Qt.KeyboardModifier.ControlModifier)
    assert number(window) == 7
    assert [text.partition(".")[0] for text in told[:6]] == [f"First sketch, {n} of 6" for n in range(1, 7)]


def test_each_hint_can_be_skipped_and_every_text_names_its_keys(begun: MainWindow, told: list[str]) -> None:
    for hint, key in zip(HINTS, ("(L)", "Enter", "(A)", "(Alt+4)", "(T)", "(Ctrl+B)"), strict=True):
        card = card_of(begun)
        assert card.title.text() == hint.title
        assert key in card.text.text() or key in hint.text
        assert "{" not in card.text.text()
        card.skip.click()
    assert number(begun) == 7
    assert len(told) == 7
    assert not card_of(begun).skip.isVisible()


def test_what_is_undone_is_asked_for_again(begun: MainWindow, told: list[str]) -> None:
    window, mouse = begun, Mouse(begun)
    middle = window.first_sketch.middle
    straight = [middle.moved(dx=dx) for dx in range(-3, 4)]
    branch = [middle.moved(dx=3, dz=3), middle.moved(dz=3), middle.moved(dz=1)]
    mouse.take("lay")
    mouse.drag(*straight)
    mouse.drag(*branch)
    assert number(window) == 3
    window.bound["undo"].trigger()
    assert number(window) == 2
    window.bound["undo"].trigger()
    assert number(window) == 1
    window.bound["redo"].trigger()
    window.bound["redo"].trigger()
    assert number(window) == 3
    card_of(window).skip.click()
    window.bound["undo"].trigger()
    assert number(window) == 4, "what was skipped is not asked for again"


def test_escape_unwinds_and_then_puts_the_sketch_away_where_help_takes_it_up(begun: MainWindow) -> None:
    view = begun.view
    card_of(begun).skip.click()
    view.use("lay")
    keys(K.Key_Return, K.Key_Right, K.Key_Escape)
    assert (number(begun), view.tool) == (2, "lay")
    keys(K.Key_Escape)
    assert (number(begun), view.tool) == (2, "select")
    keys(K.Key_Escape)
    assert number(begun) == 0
    assert not has_ended(begun.settings)
    begun.bound["first_sketch"].trigger()
    assert number(begun) == 2


def test_enough_is_remembered_and_what_is_done_already_is_passed_over(begun: MainWindow) -> None:
    QTest.mouseClick(card_of(begun).enough, LEFT)
    assert number(begun) == 0
    assert has_ended(begun.settings)
    assert begun.focusWidget() is begun.view or not begun.view.isAncestorOf(focus())
    begun.bound["first_sketch"].trigger()
    assert number(begun) == 1, "it begins again when it is asked for"


def test_another_plan_ends_it_and_a_plan_with_pieces_is_left_for_a_new_one(begun: MainWindow) -> None:
    begun.document.load(straight_plan(), None)
    assert number(begun) == 0
    begun.bound["first_sketch"].trigger()
    assert number(begun) == 1
    assert len(begun.document.plan.pieces) == 0


def test_the_card_and_what_is_fitted_stay_apart(begun: MainWindow) -> None:
    card, view = card_of(begun), begun.view
    for size in ((1440, 900), (1024, 640)):
        begun.resize(*size)
        QApplication.processEvents()
        assert view.rect().contains(card.geometry())
        view.fit_all()
        foot = view.navigator.view.corner(0, 1)[1]
        assert foot < card.y()


def test_what_stands_at_the_end_of_a_track_is_in_sight(begun: MainWindow) -> None:
    """The cursor of the keyboard never goes under the card."""
    view, card = begun.view, card_of(begun)
    keys(*[K.Key_Down] * 12)
    bottom = view.navigator.view.corner(view.cursor.x, view.cursor.z + 1)[1]
    assert bottom <= card.y()
