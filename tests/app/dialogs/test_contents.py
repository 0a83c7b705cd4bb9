"""What a container holds: seen, changed by keyboard and mouse, one step, within the limits of plan files."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.dialogs.contents import ContentsDialog
from app.window import MainWindow
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Held, Piece
from model.plan import EMPTY_PLAN, Details, Plan, Route, plan_of

HERE = Cell(0, 64, 0)
K = Qt.Key
Ask = Callable[..., ContentsDialog]


@pytest.fixture
def ask(qapp: QApplication) -> Iterator[Ask]:
    """Asks about a container that holds this."""
    asked: list[ContentsDialog] = []

    def make(part: Part, *holds: Held, plan: Plan = EMPTY_PLAN) -> ContentsDialog:
        piece = Piece(part, HERE, Facing.DOWN if part is Part.HOPPER else Facing.NORTH, holds=holds)
        asked.append(ContentsDialog(None, Plan(plan_of([piece]).pieces, plan.details), piece))
        return asked[-1]

    yield make
    for dialog in asked:
        dialog.deleteLater()


def test_it_says_what_comparators_read(ask: Ask) -> None:
    # A hopper has 5 · 64 places; 22 filled read 1 + floor(14 · 22 / 320) = 1: common practice, no source.
    dialog = ask(Part.HOPPER, Held("waybill:Salt", 22))
    assert dialog.told.text().startswith("5 of 5 slots; a comparator reads 1.")
    assert "One lies in each slot but the first" in dialog.told.text()
    dialog.rows[0].count.setValue(23)
    assert dialog.told.text().startswith("5 of 5 slots; a comparator reads 2.")


def test_more_than_the_slots_take_is_not_set(ask: Ask) -> None:
    dialog = ask(Part.HOPPER, Held("ingot", 64), Held("nugget", 64 * 4))
    assert dialog.ok.isEnabled()
    dialog.rows[0].count.setValue(65)
    assert not dialog.ok.isEnabled()
    assert dialog.told.text() == "A hopper has 5 slots of 64 items."


@pytest.mark.parametrize("word", ["", "waybill:", "waybill:a,b", "x" * 200])
def test_words_that_no_file_could_have_are_not_set(ask: Ask, word: str) -> None:
    dialog = ask(Part.BARREL, Held("ingot", 1))
    dialog.rows[0].item.setCurrentText(word)
    assert not dialog.ok.isEnabled()
    assert dialog.told.text()


def test_the_waybills_of_the_plan_are_offered_first(ask: Ask) -> None:
    plan = Plan(EMPTY_PLAN.pieces, Details(routes=(Route("Quay", "Fen", "Mill", "Salt"),)))
    dialog = ask(Part.HOPPER, plan=plan)
    dialog.add_button.click()
    box = dialog.rows[0].item
    assert [box.itemText(at) for at in range(box.count())] == ["waybill:Salt", "ingot", "nugget"]


def test_keys_of_other_versions_stay_with_an_item_that_stays(ask: Ask) -> None:
    dialog = ask(Part.BARREL, Held("ingot", 3, (("worn", "true"),)), Held("nugget", 3, (("worn", "1"),)))
    dialog.rows[0].count.setValue(4)
    dialog.rows[1].item.setCurrentText("lamp")
    assert dialog.piece.holds == (Held("ingot", 4, (("worn", "true"),)), Held("lamp", 3))


def test_it_is_done_by_keys_alone_as_one_step(window: MainWindow) -> None:
    window.document.load(plan_of([Piece(Part.HOPPER, HERE, Facing.DOWN)]), None)
    before = window.document.plan
    window.view.go_to(HERE)

    def answer() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, ContentsDialog)
        for key in (K.Key_Space, K.Key_Tab):
            QTest.keyClick(dialog.focusWidget(), key)
        QTest.keyClick(dialog.focusWidget(), K.Key_A, Qt.KeyboardModifier.ControlModifier)
        QTest.keyClicks(dialog.focusWidget(), "22")
        QTest.keyClick(dialog.focusWidget(), K.Key_Return)

    QTimer.singleShot(0, answer)
    QTest.keyClick(window.view, K.Key_F2)
    assert window.document.plan.pieces.get(HERE).holds == (Held("ingot", 22),)
    assert window.document.undo_stack.count() == 1
    assert window.document.undo_stack.text(0) == "Set what hopper holds"
    window.bound["undo"].trigger()
    assert window.document.plan == before


def test_what_holds_nothing_is_not_asked_about(window: MainWindow) -> None:
    window.bound["contents"].trigger()
    assert "Choose a hopper" in window.panels.status.here.text()


def test_d_sets_chosen_pieces_to_what_comes_next(window: MainWindow) -> None:
    repeater, lever = Piece(Part.REPEATER, HERE), Piece(Part.LEVER, HERE.moved(2), Facing.DOWN)
    glass = Piece(Part.GLASS, HERE.moved(4))
    window.document.load(plan_of([repeater, lever, glass]), None)
    window.view.go_to(HERE)
    window.view.selection = frozenset({repeater.at, lever.at, glass.at})
    QTest.keyClick(window.view, K.Key_D)
    pieces = window.document.plan.pieces
    assert pieces.get(repeater.at).delay == 4
    assert pieces.get(lever.at).facing is Facing.NORTH
    assert window.document.undo_stack.text(0) == "Set 2 pieces"
    assert window.view.selection == {repeater.at, lever.at, glass.at}
    window.view.selection = frozenset({repeater.at})
    QTest.keyClick(window.view, K.Key_D)
    assert window.document.undo_stack.text(1) == "Set delay of repeater to 6 ticks"
