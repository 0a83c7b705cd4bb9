"""Levels that are locked or hidden."""

from __future__ import annotations

from PySide6.QtWidgets import QApplication

from app.window import MainWindow
from model.edits import lay_track
from model.grid import Cell
from model.parts import Part
from tests.app.windows import straight_plan


def lay(window: MainWindow, level: int) -> bool:
    """Whether two rails could be laid on a level, apart from the others."""
    return window.document.edit(lay_track, [Cell(8, level, 8), Cell(9, level, 8)])


def test_nothing_on_a_locked_level_is_changed(window: MainWindow) -> None:
    document, view = window.document, window.view
    document.load(straight_plan(), None)
    before = document.plan
    window.bound["lock_level"].trigger()
    assert view.level == 64
    assert not lay(window, 64)
    view.select_all()
    chosen = view.selection
    window.bound["delete"].trigger()
    window.bound["turn_chosen"].trigger()
    QApplication.processEvents()
    assert "Level 64 is locked" in window.panels.status.here.text()
    assert document.plan is before
    assert document.undo_stack.count() == 0
    assert view.selection == chosen
    assert lay(window, 70), "Other levels are not locked."

    window.bound["lock_level"].trigger()
    assert lay(window, 64)


def test_what_was_done_before_a_level_was_locked_can_be_undone(window: MainWindow) -> None:
    assert lay(window, 64)
    window.bound["lock_level"].trigger()
    window.bound["undo"].trigger()
    assert not len(window.document.plan.pieces)


def test_the_menu_tells_what_holds_of_the_level_drawn_on(window: MainWindow) -> None:
    window.bound["hide_level"].trigger()
    window.go_to_level(65)
    assert not window.bound["hide_level"].isChecked()
    window.go_to_level(64)
    assert window.bound["hide_level"].isChecked()
    assert "hidden" in window.panels.levels.accessibleName()
    lock, hide = window.panels.levels.menu_of(64).actions()
    assert (lock.isChecked(), hide.isChecked()) == (False, True)
    lock.trigger()
    assert window.document.levels.locked == {64}
    window.document.load(straight_plan(), None)
    assert not window.bound["lock_level"].isChecked(), "Another plan has nothing locked."


def test_a_hidden_level_is_left_out_beside_the_one_drawn_on(window: MainWindow) -> None:
    window.document.load(straight_plan(), None)
    view = window.view
    assert {piece.at.y for piece in window.document.plan.pieces if piece.part is Part.RAIL} == {64}
    window.go_to_level(65)
    shown = view.grab().toImage()
    window.document.levels.toggle_hidden(64)
    hidden = view.grab().toImage()
    assert hidden != shown
    view.solo = True
    assert view.grab().toImage() == hidden, "Nothing lies above, so that solo leaves out no more."
    view.solo = False
    window.document.levels.toggle_hidden(64)
    assert view.grab().toImage() == shown
