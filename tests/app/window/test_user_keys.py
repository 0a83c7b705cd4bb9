"""Other keys for actions: given, named where they clash, remembered, and obeyed by both kinds of window."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from shiboken6 import isValid

from app import user_keys
from app.actions import ACTIONS
from app.canvas.keys import ARROWS, KEYS
from app.dialogs.keys import ActionFinder, KeysDialog
from app.network.window import NetworkWindow
from app.window import MainWindow
from tests.app.conftest import MakeWindow
from tests.app.windows import straight_plan

K = Qt.Key
CTRL = Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def dialog(window: MainWindow) -> Iterator[KeysDialog]:
    """The sheet of keys, and afterwards the keys of the table."""
    sheet = KeysDialog(window, window.change_keys)
    sheet.show()
    yield sheet
    if isValid(sheet):  # what was closed is gone
        sheet.close()
    user_keys.take({})


def press(dialog: KeysDialog, name: str, key: K, held: Qt.KeyboardModifier = CTRL) -> None:
    """Go to an action and press a key in the field."""
    dialog.choose(name)
    dialog.editor.field.setFocus()
    QTest.keyClick(dialog.editor.field, key, held)


def test_a_free_key_is_given(window: MainWindow, dialog: KeysDialog) -> None:
    press(dialog, "fit_all", K.Key_7)
    assert "Ctrl+7 is free" in dialog.editor.told.text()
    dialog.editor.give.click()
    assert window.bound["fit_all"].shortcut() == QKeySequence("Ctrl+7")
    assert "(Ctrl+7)" in window.bound["fit_all"].toolTip()
    assert dialog.words_of("fit_all") == "Ctrl+7"
    finder = ActionFinder(window, window.bound)
    finder.line.setText("fit all")
    assert finder.list.item(0).data(Qt.ItemDataRole.AccessibleTextRole) == "Fit all, Ctrl+7"
    finder.deleteLater()


def test_the_new_key_works_and_the_old_one_does_not(window: MainWindow, dialog: KeysDialog) -> None:
    window.document.load(straight_plan(), None)
    press(dialog, "select_all", K.Key_7)
    dialog.editor.give.click()
    dialog.close()
    window.activateWindow()
    window.view.setFocus()
    QApplication.processEvents()
    QTest.keyClick(window.view, K.Key_A, CTRL)
    assert not window.view.selection
    QTest.keyClick(window.view, K.Key_7, CTRL)
    assert window.view.selection


def test_its_own_key_is_not_called_free(dialog: KeysDialog) -> None:
    press(dialog, "select_all", K.Key_A)
    assert dialog.editor.told.text() == "Ctrl+A means Choose all already."


def test_a_key_that_means_something_is_named_and_taken_only_when_asked_to(
    window: MainWindow, dialog: KeysDialog
) -> None:
    press(dialog, "fit_all", K.Key_S)
    assert dialog.editor.told.text() == "Ctrl+S means Save already."
    assert window.bound["save"].shortcut() == QKeySequence("Ctrl+S")
    assert dialog.editor.give.text() == "Take it over"
    dialog.editor.give.click()
    assert window.bound["fit_all"].shortcut() == QKeySequence("Ctrl+S")
    assert window.bound["save"].shortcuts() == []
    dialog.choose("save")
    dialog.editor.reset.click()
    assert window.bound["save"].shortcuts() == [], "nor is it taken back in silence"
    dialog.reset_all()
    assert window.bound["save"].shortcut() == QKeySequence("Ctrl+S")
    assert window.bound["fit_all"].shortcut() == QKeySequence("Ctrl+0")


def test_the_keys_of_the_drawing_cannot_be_given_away(dialog: KeysDialog) -> None:
    press(dialog, "fit_all", K.Key_R, Qt.KeyboardModifier.NoModifier)
    assert "cannot be given away" in dialog.editor.told.text()
    assert not dialog.editor.give.isEnabled()
    for key in (*KEYS, *ARROWS):
        assert QKeySequence(key).toString() in user_keys.OF_THE_DRAWING
    press(dialog, "fit_all", K.Key_Enter, Qt.KeyboardModifier.KeypadModifier)
    assert not dialog.editor.give.isEnabled()


def test_the_keys_that_open_menus_cannot_be_given_away(window: MainWindow, dialog: KeysDialog) -> None:
    letter = window.menu_row.bar.actions()[0].text().partition("&")[2][0]
    press(dialog, "fit_all", K[f"Key_{letter.upper()}"], Qt.KeyboardModifier.AltModifier)
    assert "opens a menu" in dialog.editor.told.text()
    assert not dialog.editor.give.isEnabled()
    press(dialog, "fit_all", K.Key_6, Qt.KeyboardModifier.AltModifier)
    assert dialog.editor.give.isEnabled(), "figures are no letters of menus"


def test_keys_are_taken_away_and_given_back(window: MainWindow, dialog: KeysDialog) -> None:
    dialog.choose("redo")
    dialog.editor.take.click()
    assert window.bound["redo"].shortcuts() == []
    assert dialog.words_of("redo") == ""
    dialog.editor.reset.click()
    assert [key.toString() for key in window.bound["redo"].shortcuts()] == ["Ctrl+Shift+Z", "Ctrl+Y"]
    assert user_keys.chosen() == {}


def test_both_kinds_of_window_obey_and_remember(
    window: MainWindow, dialog: KeysDialog, make_window: MakeWindow, tmp_path: object
) -> None:
    network = NetworkWindow(window.settings, window.recovery.folder)
    press(dialog, "fit_all", K.Key_7)
    dialog.editor.give.click()
    assert network.bound["fit_all"].shortcut() == QKeySequence("Ctrl+7")
    # A key of the other window's table clashes where both windows have the action.
    press(dialog, "fit_all", K.Key_J, Qt.KeyboardModifier.NoModifier)
    assert "means Junction already" in dialog.editor.told.text()
    network.close()
    network.deleteLater()
    user_keys.take({})
    assert make_window().bound["fit_all"].shortcut() == QKeySequence("Ctrl+7")


def test_spoiled_settings_leave_the_keys_of_the_table(window: MainWindow) -> None:
    window.settings.choose("keys", '{"save": 7')
    assert window.settings.keys == {}


def test_tab_leads_through_the_sheet(dialog: KeysDialog) -> None:
    dialog.activateWindow()
    dialog.choose("fit_all")
    dialog.list.setFocus()
    met = []
    for _ in range(8):
        QTest.keyClick(QApplication.focusWidget(), K.Key_Tab)
        met.append(QApplication.focusWidget())
    assert dialog.editor.field in met or dialog.editor.field.findChild(type(met[0])) in met
    assert dialog.list in met, "and round again"


def test_no_key_of_the_table_is_one_of_the_drawing() -> None:
    taken = {QKeySequence(key).toString() for entry in ACTIONS for key in entry.keys}
    assert not taken & user_keys.OF_THE_DRAWING.keys()
