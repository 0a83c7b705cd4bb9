"""What the window says of the plan is true of the plan as it is now."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialogButtonBox, QLabel, QStyle

from app.dialogs.about import AboutDialog, CautionsDialog, version_words
from app.dialogs.build_sheet import BuildSheetDialog
from app.dialogs.keys import KeysDialog
from app.sheet_presets import SheetChoice, SheetPresets
from app.window import MainWindow
from model.edits import erase, lay_track, move_plan
from model.grid import Cell, Turn
from model.parts import Part
from tests.app.windows import EAST_END, settle, straight_plan


def lay(window: MainWindow) -> None:
    window.document.edit(lay_track, [Cell(0, 64, 5), Cell(1, 64, 5)])


def test_a_plan_without_a_file_is_never_called_saved(window: MainWindow) -> None:
    lay(window)
    window.bound["undo"].trigger()
    assert window.panels.status.recovery.text() == ""


def test_a_changed_plan_is_not_called_saved(window: MainWindow, tmp_path: Path) -> None:
    window.document.save(tmp_path / "a.plan.json")
    lay(window)
    window.document.save(tmp_path / "a.plan.json")
    assert window.panels.status.recovery.text() == "saved"
    lay(window)
    window.document.edit(erase, [Cell(0, 64, 5)])
    assert window.panels.status.recovery.text() != "saved"


def test_what_was_said_of_an_edit_goes_with_the_edit(window: MainWindow) -> None:
    lay(window)
    window.panels.status.say("Taken away by hand, 2 rails keep their shapes.")
    window.bound["undo"].trigger()
    assert "by hand" not in window.panels.status.here.text()


def test_undoing_a_move_of_the_plan_shows_where_it_is(window: MainWindow) -> None:
    window.document.load(straight_plan(), None)
    window.document.edit(move_plan, 500, 6, -300)
    window.view.go_to(EAST_END.moved(500, 6, -300))
    window.bound["undo"].trigger()
    assert window.view.level == EAST_END.y or window.view.level == EAST_END.y - 1
    assert window.view.selection == frozenset(piece.at for piece in window.document.plan.pieces)


def test_undoing_what_was_laid_shows_where_it_was(window: MainWindow) -> None:
    lay(window)
    window.bound["undo"].trigger()
    assert window.view.selection == {Cell(0, 64, 5), Cell(1, 64, 5)}


def test_in_hand_is_what_will_be_laid(window: MainWindow) -> None:
    hand, tray = window.panels.in_hand, window.panels.tray
    assert "Solid block" in hand.accessibleName()
    window.bound["tool_lay"].trigger()
    assert "Plain rail" in hand.accessibleName()
    assert tray.currentItem().text() == "Plain rail"
    window.view.setFocus()
    QTest.keyClick(window.view, Qt.Key.Key_R)
    assert "a click: east" in hand.accessibleName()
    window.view.take_in_hand(window.view.hand.holding(Part.BOOSTER_RAIL))
    assert "Booster rail" in hand.accessibleName()


def test_another_part_is_in_hand_again_when_placing(window: MainWindow) -> None:
    window.bound["tool_lay"].trigger()
    window.bound["tool_place"].trigger()
    assert "Solid block" in window.panels.in_hand.accessibleName()
    assert window.panels.tray.currentItem().text() == "Solid block"


def test_the_keys_are_read_without_scrolling_sideways(window: MainWindow) -> None:
    dialog = KeysDialog(window, window.change_keys)
    dialog.show()
    settle(window)
    assert dialog.list.horizontalScrollBar().maximum() == 0
    dialog.deleteLater()


def test_help_leads_to_the_start_screen_and_the_cautions(window: MainWindow) -> None:
    actions = window.menus["Help"].actions()
    assert window.bound["start"] in actions
    assert window.bound["cautions"] in actions
    dialog = CautionsDialog(window)
    said = " ".join(told.text() for told in dialog.findChildren(QLabel))
    for words in ("from memory", "may run by others", "A test cart before the first passenger"):
        assert words in said
    dialog.deleteLater()


def test_about_needs_no_installed_package(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    from importlib import metadata

    def missing(name: str) -> str:
        raise metadata.PackageNotFoundError(name)

    monkeypatch.setattr(metadata, "version", missing)
    assert version_words() == "Platelayer"
    AboutDialog(window).deleteLater()


def test_what_is_chosen_follows_the_plan_when_it_is_turned(window: MainWindow) -> None:
    window.document.load(straight_plan(), None)
    window.view.selection = frozenset({EAST_END})
    window.plan_commands.turn(Turn(1))
    (chosen,) = window.view.selection
    assert chosen == Turn(1).cell(EAST_END)
    assert window.document.plan.pieces.part_at(chosen) is Part.RAIL


def test_only_a_preview_can_be_ended(window: MainWindow) -> None:
    button = window.panels.readers.end_button
    assert not button.isEnabled()
    window.document.load(straight_plan(), None)
    settle(window)
    window.view.run_cart("Quay", False)
    assert button.isEnabled()
    window.view.clear_preview()
    assert not button.isEnabled()


def test_a_plan_that_is_turned_stays_in_sight(window: MainWindow) -> None:
    far = move_plan(straight_plan(), 4000, 0, 0).applied(straight_plan())
    window.document.load(far, None)
    window.view.fit_all()
    window.bound["turn_chosen"].trigger()
    seen = window.view.navigator.seen
    for piece in window.document.plan.pieces:
        assert seen.west <= piece.at.x <= seen.east
        assert seen.north <= piece.at.z <= seen.south


def test_answers_are_words_without_pictures(window: MainWindow) -> None:
    dialog = BuildSheetDialog(window, SheetChoice(), SheetPresets(window.settings))
    box = dialog.findChild(QDialogButtonBox)
    assert isinstance(box, QDialogButtonBox)
    assert not box.style().styleHint(QStyle.StyleHint.SH_DialogButtonBox_ButtonsHaveIcons, None, box)
    dialog.deleteLater()
