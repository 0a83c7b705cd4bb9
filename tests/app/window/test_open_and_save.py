"""Opening, saving and leaving a plan as a user does."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox
from pytestqt.qtbot import QtBot

from app.settings import Settings
from app.window import MainWindow
from model.edits import erase, lay_track, set_title
from model.files.network_file import network_bytes
from model.files.plan_file import parse_plan, plan_bytes, read_plan
from model.files.writer import write_bytes
from model.grid import Cell
from model.network.network import EMPTY_NETWORK
from model.plan import EMPTY_PLAN, Plan
from tests.app.conftest import MakeWindow
from tests.app.windows import drop, settle, straight_plan


def answer(text: str) -> None:
    """Press the button of that text in the question that comes next."""

    def press() -> None:
        box = QApplication.activeModalWidget()
        assert isinstance(box, QMessageBox)
        next(button for button in box.buttons() if button.text().replace("&", "") == text).click()

    QTimer.singleShot(0, press)


def choose_file(monkeypatch: pytest.MonkeyPatch, method: str, path: Path | None) -> None:
    """The answer of the file dialog that comes next; the dialog is the system's own."""
    said = "" if path is None else str(path)
    monkeypatch.setattr(QFileDialog, method, lambda *_args, **_options: (said, ""))


@pytest.fixture
def plan_file(tmp_path: Path) -> Path:
    """A plan in a file."""
    path = tmp_path / "straight.plan.json"
    write_bytes(path, plan_bytes(straight_plan()))
    return path


def lay(window: MainWindow, z: int = 5) -> None:
    """One change."""
    window.document.edit(lay_track, [Cell(0, 64, z), Cell(1, 64, z)])


def test_open_edit_save_and_open_again(
    window: MainWindow, plan_file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    choose_file(monkeypatch, "getOpenFileName", plan_file)
    window.bound["open"].trigger()
    assert window.document.path == plan_file
    assert window.menu_row.title == "Straight"

    lay(window)
    assert window.menu_row.title == "Straight — changed"
    copy = tmp_path / "copy.plan.json"
    choose_file(monkeypatch, "getSaveFileName", copy)
    window.bound["save_as"].trigger()
    assert window.menu_row.title == "Straight"
    assert read_plan(copy) == window.document.plan
    assert read_plan(plan_file) == straight_plan()

    window.document.new()
    assert window.files.open_path(copy)
    assert len(window.document.plan.pieces) == len(straight_plan().pieces) + 2


def test_a_name_without_an_ending_gets_one(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    lay(window)
    choose_file(monkeypatch, "getSaveFileName", tmp_path / "named")
    window.bound["save"].trigger()
    assert (tmp_path / "named.plan.json").exists()


def test_a_dot_in_a_name_is_not_taken_for_its_ending(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    lay(window)
    for name, written in (("Quay 2.0", "Quay 2.0.plan.json"), ("other.json", "other.json")):
        choose_file(monkeypatch, "getSaveFileName", tmp_path / name)
        window.bound["save_as"].trigger()
        assert window.document.path == tmp_path / written


def test_a_file_keeps_its_name_whatever_that_ends_in(
    window: MainWindow, plan_file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plain = plan_file.rename(plan_file.with_name("straight.txt"))
    window.files.open_path(plain)
    choose_file(monkeypatch, "getSaveFileName", plain)
    window.bound["save_as"].trigger()
    assert window.document.path == plain


def test_a_broken_file_is_told_of_with_its_place_and_costs_nothing(
    window: MainWindow, plan_file: Path, tmp_path: Path
) -> None:
    window.files.open_path(plan_file)
    before = window.document.plan
    broken = tmp_path / "broken.plan.json"
    piece = '{"part": "rail", "at": [0, 64]}'
    broken.write_text(f'{{"format": "platelayer-plan", "version": 1, "pieces": [{piece}]}}')
    assert not window.files.open_path(broken)
    bar = window.panels.message
    assert bar.isVisible()
    assert str(broken) in bar.text
    assert "pieces[0].at" in bar.text
    assert "expected" in bar.text
    assert window.document.plan is before
    bar.close_button.click()
    assert not bar.isVisible()


def test_a_network_under_the_name_of_a_plan_is_called_by_its_name(window: MainWindow, tmp_path: Path) -> None:
    before = window.document.plan
    path = tmp_path / "brine.plan.json"
    path.write_bytes(network_bytes(EMPTY_NETWORK))
    assert not window.files.open_path(path)
    said = window.panels.message.text
    assert said.startswith(f"{path} was not opened: format: expected ")
    assert "this is a network file" in said
    assert "under a name that ends in .network.json" in said
    assert window.document.plan is before


def test_names_are_never_markup(window: MainWindow, tmp_path: Path) -> None:
    path = tmp_path / "<b>bold<img src=x>.plan.json"
    assert not window.files.open_path(path)
    label = window.panels.message._text
    assert label.textFormat() == Qt.TextFormat.PlainText
    assert "<img src=x>" in label.text()


@pytest.mark.parametrize(
    ("button", "closed", "saved"),
    [("Save", True, True), ("Don't save", True, False), ("Cancel", False, False)],
)
def test_closing_with_changes_asks(
    window: MainWindow, plan_file: Path, button: str, closed: bool, saved: bool
) -> None:
    window.files.open_path(plan_file)
    lay(window)
    answer(button)
    assert window.close() is closed
    assert window.isVisible() is not closed
    assert (read_plan(plan_file) != straight_plan()) is saved


def test_each_button_of_a_question_has_a_letter_of_its_own(window: MainWindow) -> None:
    lay(window)
    keys = []

    def look() -> None:
        box = QApplication.activeModalWidget()
        assert isinstance(box, QMessageBox)
        keys.extend(button.shortcut().toString() for button in box.buttons())
        box.reject()

    QTimer.singleShot(0, look)
    assert not window.files.may_leave()
    assert sorted(keys) == ["Alt+C", "Alt+D", "Alt+S"]


def test_closing_without_changes_asks_nothing(window: MainWindow, plan_file: Path) -> None:
    window.files.open_path(plan_file)
    assert window.close()


def test_changes_undone_are_no_changes(window: MainWindow, plan_file: Path) -> None:
    window.files.open_path(plan_file)
    lay(window)
    window.bound["undo"].trigger()
    assert not window.document.is_dirty
    assert window.close()


def test_a_file_that_cannot_be_written_leaves_the_plan_unsaved(
    window: MainWindow, plan_file: Path, tmp_path: Path
) -> None:
    window.files.open_path(plan_file)
    lay(window)
    window.document.path = tmp_path / "no such folder" / "plan.plan.json"
    window.bound["save"].trigger()
    assert window.document.is_dirty
    assert "not saved" in window.panels.message.text


@pytest.mark.parametrize(
    ("button", "kept", "saved"),
    [("Write over it", False, True), ("Cancel", True, False), ("Save as…", True, True)],
)
def test_a_file_changed_outside_is_not_written_over_unasked(
    window: MainWindow,
    plan_file: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    button: str,
    kept: bool,
    saved: bool,
) -> None:
    window.files.open_path(plan_file)
    lay(window)
    outside = plan_bytes(EMPTY_PLAN)
    write_bytes(plan_file, outside)
    choose_file(monkeypatch, "getSaveFileName", tmp_path / "other.plan.json")
    answer(button)
    window.bound["save"].trigger()
    assert (plan_file.read_bytes() == outside) is kept
    assert window.document.is_dirty is not saved


def test_recent_plans_come_newest_first_with_what_was_found(
    window: MainWindow, plan_file: Path, tmp_path: Path, settings: Settings
) -> None:
    other = tmp_path / "other.plan.json"
    write_bytes(other, plan_bytes(straight_plan()))
    window.files.open_path(plan_file)
    window.files.open_path(other)
    settle(window)
    assert [entry.path for entry in settings.recent] == [other, plan_file]
    assert settings.recent[0].title == "Straight"
    found = [finding for finding in window.document.findings if not finding.waived]
    assert settings.recent[0].gravest == (found[0].severity.value if found else "")


@pytest.mark.skipif(os.name != "posix", reason="elsewhere names of files are text")
def test_a_file_whose_name_is_no_text_is_opened_saved_and_remembered(
    window: MainWindow, settings: Settings, tmp_path: Path
) -> None:
    path = Path(os.fsdecode(os.fsencode(tmp_path / "old") + b"\xff.plan.json"))
    write_bytes(path, plan_bytes(straight_plan()))
    window.files.open_path(path)
    lay(window)
    assert window.files.save()
    assert not window.document.is_dirty
    assert read_plan(path) == window.document.plan
    assert [entry.path for entry in settings.recent] == [path]
    window.show_start().close()


@pytest.mark.parametrize(
    "spoilt",
    [
        {"theme": "purple"},
        {"recent": '[{"file": "a.plan.json", "seconds": 1e300}]'},
        {"recent": '[{"file": "a.plan.json", "seconds": NaN, "gravest": "dire", "count": 1}]'},
        {"recent": '[{"file": "a\\u0000.plan.json", "seconds": 1, "gravest": "note", "count": 1}]'},
        {"panels": '{"shares": [100000000000, 1], "diagram": 100000000000}'},
    ],
)
def test_settings_that_were_spoilt_cost_no_start(
    make_window: MakeWindow, settings: Settings, spoilt: dict[str, str]
) -> None:
    for key, value in spoilt.items():
        settings.choose(key, value)
    window = make_window()
    screen = window.show_start()
    assert not screen.grab().isNull()
    for row in screen.recent_rows:
        window.files.open_path(row.entry.path)
    screen.reject()
    assert settings.theme == "system"


def test_a_recent_plan_that_is_gone_is_taken_off_the_list(
    window: MainWindow, plan_file: Path, settings: Settings
) -> None:
    window.files.open_path(plan_file)
    window.document.new()
    plan_file.unlink()
    assert not window.files.open_path(plan_file)
    assert settings.recent == []


def test_a_file_dropped_on_the_window_opens(window: MainWindow, plan_file: Path, qtbot: QtBot) -> None:
    # Whoever hands a file over to be moved takes it away once that is done.
    assert drop(window, [plan_file]) is Qt.DropAction.CopyAction
    qtbot.waitUntil(lambda: window.document.path == plan_file)


def test_a_file_that_another_window_has_open_is_told_of(make_window: MakeWindow, plan_file: Path) -> None:
    first, second = make_window(), make_window()
    first.files.open_path(plan_file)
    assert not first.panels.message.isVisible()
    second.files.open_path(plan_file)
    assert "straight.plan.json is open in another window" in second.panels.message.text
    assert second.document.path == plan_file
    first.files.new()
    second.files.new()
    second.files.open_path(plan_file)
    assert not second.panels.message.isVisible()


def test_a_window_that_is_closed_has_no_file_open(make_window: MakeWindow, plan_file: Path) -> None:
    first, second = make_window(), make_window()
    first.files.open_path(plan_file)
    first.files.save()
    first.close()
    second.files.open_path(plan_file)
    assert not second.panels.message.isVisible()


def test_a_name_that_is_being_typed_is_not_lost_to_the_key_of_another_level(window: MainWindow) -> None:
    lay(window)
    window.view.use("arm")
    window.view.put_cursor(Cell(1, 64, 5), by_key=True)
    QTest.keyClick(window.view, Qt.Key.Key_Return)
    QTest.keyClick(window.view, Qt.Key.Key_Return)
    line = window.view.name_entry.line
    QTest.keyClicks(line, "Mill")
    window.activateWindow()
    QTest.keyClick(line, Qt.Key.Key_PageUp)
    assert window.view.level == 64
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert [arm.name for arm in window.document.plan.arms] == ["Mill"]
    QTest.keyClick(window.view, Qt.Key.Key_PageUp)
    assert window.view.level == 65, "where no name is typed, the key is that of the level"


def test_a_name_of_an_arm_that_is_being_typed_is_saved(window: MainWindow, tmp_path: Path) -> None:
    lay(window)
    window.view.use("arm")
    end = Cell(1, 64, 5)
    window.view.put_cursor(end, by_key=True)
    QTest.keyClick(window.view, Qt.Key.Key_Return)
    QTest.keyClick(window.view, Qt.Key.Key_Return)
    assert window.view.name_entry.question is not None
    QTest.keyClicks(window.view.name_entry.line, "Mill")
    window.document.save(tmp_path / "typed.plan.json")
    window.bound["save"].trigger()
    assert [arm.name for arm in read_plan(tmp_path / "typed.plan.json").arms] == ["Mill"]


def test_a_long_title_leaves_the_question_on_the_screen(window: MainWindow) -> None:
    window.document.edit(set_title, "T" * 3000)
    wide: list[int] = []

    def look() -> None:
        box = QApplication.activeModalWidget()
        assert isinstance(box, QMessageBox)
        wide.append(len(box.text()))
        box.reject()

    QTimer.singleShot(0, look)
    assert not window.files.may_leave()
    assert wide[0] < 100


def test_a_file_that_another_program_writes_is_told_of_and_read_again(
    window: MainWindow, plan_file: Path, qtbot: QtBot
) -> None:
    window.files.open_path(plan_file)
    write_bytes(plan_file, plan_bytes(EMPTY_PLAN))
    bar = window.panels.message
    qtbot.waitUntil(bar.isVisible)
    assert "changed by something else" in bar.text
    assert bar.offer_button.isVisible()
    bar.offer_button.click()
    assert window.document.plan == EMPTY_PLAN
    assert not bar.isVisible()

    write_bytes(plan_file, plan_bytes(straight_plan()))
    qtbot.waitUntil(bar.isVisible)
    bar.close_button.click()
    window.files.look_outside()
    assert not bar.isVisible(), "It is told once."


def test_an_offer_to_read_again_goes_with_what_it_was_about(
    window: MainWindow, plan_file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    other = tmp_path / "other.plan.json"
    write_bytes(other, plan_bytes(EMPTY_PLAN))
    bar = window.panels.message
    for leave in ("read_again", "save", "new", "open"):
        window.files.open_path(plan_file)
        write_bytes(plan_file, plan_bytes(EMPTY_PLAN))
        write_bytes(plan_file, plan_bytes(straight_plan()))
        qtbot.waitUntil(bar.isVisible)
        choose_file(monkeypatch, "getOpenFileName", other)
        if leave == "save":
            answer("Write over it")
        window.bound[leave].trigger()
        assert not bar.isVisible(), leave


def test_own_changes_can_be_had_back_after_the_file_was_read_again(
    window: MainWindow, plan_file: Path
) -> None:
    window.files.open_path(plan_file)
    lay(window)
    own = window.document.plan
    write_bytes(plan_file, plan_bytes(EMPTY_PLAN))
    window.bound["read_again"].trigger()
    assert window.document.plan == EMPTY_PLAN
    assert not window.document.is_dirty
    window.bound["undo"].trigger()
    assert window.document.plan == own
    assert window.document.is_dirty
    window.bound["undo"].trigger()
    assert window.document.plan == read_plan_again(straight_plan())
    window.bound["redo"].trigger()
    window.bound["redo"].trigger()
    assert not window.document.is_dirty


def read_plan_again(plan: Plan) -> Plan:
    """As it comes out of a file."""
    return parse_plan(plan_bytes(plan), "again")


def test_reading_again_keeps_the_view_the_level_the_locks_and_what_is_chosen(
    window: MainWindow, plan_file: Path
) -> None:
    window.files.open_path(plan_file)
    settle(window)
    view, levels = window.view, window.document.levels
    rails = [piece.at for piece in window.document.plan.pieces]
    view.go_to(Cell(3, 63, 0))
    view.navigator.zoom(2)
    view.choose(rails[:2])
    levels.toggle_lock(64)
    levels.toggle_hidden(66)
    before = (view.level, view.cursor, view.navigator.view)
    written = erase(straight_plan(), rails[1:2]).applied(straight_plan())
    write_bytes(plan_file, plan_bytes(written))
    window.bound["read_again"].trigger()
    settle(window)
    assert rails[1] not in window.document.plan.pieces, "a lock keeps out hands, not what is in the file"
    assert (view.level, view.cursor, view.navigator.view) == before
    assert view.selection == {rails[0]}
    assert (levels.locked, levels.hidden) == ({64}, {66})


def test_saving_is_no_change_from_outside(window: MainWindow, plan_file: Path) -> None:
    window.files.open_path(plan_file)
    lay(window)
    window.bound["save"].trigger()
    window.files.look_outside()
    assert not window.panels.message.isVisible()


def test_a_plan_whose_file_is_gone_counts_as_changed(
    window: MainWindow, plan_file: Path, qtbot: QtBot
) -> None:
    window.files.open_path(plan_file)
    plan_file.unlink()
    qtbot.waitUntil(lambda: window.document.is_dirty)
    assert "is gone" in window.panels.message.text
    window.bound["save"].trigger()
    assert read_plan(plan_file) == straight_plan()
    assert not window.panels.message.isVisible()


def test_an_ending_that_is_added_writes_over_no_file_unasked(
    window: MainWindow, plan_file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    lay(window)
    choose_file(monkeypatch, "getSaveFileName", plan_file.with_name("straight"))
    answer("Cancel")
    window.bound["save"].trigger()
    assert read_plan(plan_file) == straight_plan()
    answer("Write over it")
    window.bound["save"].trigger()
    assert read_plan(plan_file) == window.document.plan


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no pipes with names")
@pytest.mark.parametrize("name", ["pipe.plan.json", "pipe.network.json"])
def test_a_pipe_is_refused_and_not_waited_for(window: MainWindow, tmp_path: Path, name: str) -> None:
    os.mkfifo(tmp_path / name)
    assert not window.files.open_path(tmp_path / name)
    assert "an ordinary file" in window.panels.message.text
