"""What takes long is done beside the window and can be cancelled at any time; then nothing was changed."""

from __future__ import annotations

import threading
from collections.abc import Callable, Generator, Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QAbstractButton, QApplication, QMessageBox
from pytestqt.qtbot import QtBot

from app.canvas.clipboard import pieces_in
from app.commands import files
from app.commands.plan import CLOCKWISE
from app.dialogs.cell import CellDialog
from app.dialogs.working import WorkingDialog
from app.followed import Followed, Laid, followed
from app.tools.events import Buttons, Key, Modifiers, PointerEvent
from app.tools.select import QUARTER
from app.window import MainWindow
from model.comparing import compare_as_built
from model.dry_run import DryRun
from model.edits import copy_pieces, move_plan, set_title, turn_plan
from model.files.plan_file import plan_bytes, read_plan
from model.grid import Cell
from model.pauses import pause
from model.pieces import Piece
from model.plan import EMPTY_PLAN, Plan
from model.track.layout import Layout
from tests.app.windows import settle, straight_plan

Act = Callable[[WorkingDialog], object]


class Work:
    """Whether work may come to its end, and what happens when its dialog comes into sight."""

    def __init__(self) -> None:
        self.may_end = threading.Event()
        self.act: Act = lambda _dialog: self.may_end.set()
        self.dialogs = 0

    def wait(self) -> None:
        """In the work itself, which ends here where it is dropped."""
        while not self.may_end.wait(0.002):
            pause()

    def shown(self, dialog: WorkingDialog) -> None:
        self.dialogs += 1
        QTimer.singleShot(0, dialog, lambda: self.act(dialog))


@pytest.fixture
def work(monkeypatch: pytest.MonkeyPatch) -> Iterator[Work]:
    """All edits and all files are large, and none is done before its dialog has come into sight."""
    made, show = Work(), WorkingDialog.show

    def held_up(before: Laid, make: Callable[[Plan], Any]) -> Generator[Any, None, Followed]:
        yield
        made.wait()
        return (yield from followed(before, make))

    def connected_late(plan: Plan, layout: Layout) -> Generator[Any, None, DryRun]:
        yield
        made.wait()
        return DryRun(plan, layout)

    def read_late(path: Path) -> Plan:
        made.wait()
        return read_plan(path)

    monkeypatch.setattr("app.document.followed", held_up)
    monkeypatch.setattr("app.document.BESIDE_FROM", 1)
    monkeypatch.setattr(DryRun, "of", connected_late)

    def copied_late(plan: Plan, cells: frozenset[Cell]) -> tuple[Piece, ...]:
        made.wait()
        return copy_pieces(plan, cells)

    def pasted_late(document: bytes) -> tuple[Piece, ...]:
        made.wait()
        return pieces_in(document)

    monkeypatch.setattr("app.canvas.view.copy_pieces", copied_late)
    monkeypatch.setattr("app.canvas.clipboard.pieces_in", pasted_late)
    monkeypatch.setattr("app.canvas.view.MUCH_TEXT", 1)
    for module in ("app.canvas.dry_running", "app.canvas.view", "app.comparing.comparing"):
        monkeypatch.setattr(f"{module}.BESIDE_FROM", 1)
    monkeypatch.setattr("app.commands.files.plan_in", read_late)
    monkeypatch.setattr("app.commands.comparing.plan_in", read_late)
    monkeypatch.setattr(files, "MANY_BYTES", 1)
    monkeypatch.setattr("app.dialogs.working.PATIENCE_MS", 0)
    monkeypatch.setattr(WorkingDialog, "show", lambda dialog: (show(dialog), made.shown(dialog)))
    yield made
    made.may_end.set()


@pytest.fixture
def file(tmp_path: Path, window: MainWindow) -> Path:
    """What is open in the window."""
    path = tmp_path / "straight.plan.json"
    path.write_bytes(plan_bytes(straight_plan()))
    window.document.load(straight_plan(), path)
    return path


def drag_chosen(window: MainWindow) -> None:
    tool = window.view.hands.tool
    at = [PointerEvent(Cell(x, 64, 0), (0.5, 0.5), Buttons.LEFT, Modifiers.NONE) for x in (1, 9)]
    tool.press(at[0])
    tool.release(at[1])


def paste(window: MainWindow) -> None:
    window.view.hands.carry(copy_pieces(window.document.plan, window.view.selection))
    window.view.hands.tool.complete()


def move(window: MainWindow) -> None:
    def answer() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, CellDialog)
        dialog.x_field.setValue(5)
        dialog.accept()

    QTimer.singleShot(0, answer)
    window.plan_commands.move()


def cancel(dialog: WorkingDialog) -> None:
    button = dialog.findChild(QAbstractButton)
    assert button is not None
    button.click()


LARGE: dict[str, Callable[[MainWindow], object]] = {
    "turn the plan": lambda window: window.turn_plan(CLOCKWISE),
    "move the plan": move,
    "turn the chosen": lambda window: window.view.turn_selection(QUARTER),
    "nudge the chosen": lambda window: window.view.hands.tool.key(Key.RIGHT, Modifiers.CTRL),
    "drag the chosen": drag_chosen,
    "paste": paste,
    "delete": lambda window: window.view.delete(),
    "undo": lambda window: window.bound["undo"].trigger(),
    "redo": lambda window: window.bound["redo"].trigger(),
}


@pytest.fixture
def prepared(window: MainWindow, file: Path, work: Work) -> MainWindow:
    """A window with all chosen, a step to undo and one to redo."""
    work.may_end.set()
    for x in (1, 2):
        window.document.make(lambda plan, x=x: move_plan(plan, x, 0, 0), 1, "Moving…")
    window.document.undo()
    window.view.choose(piece.at for piece in window.document.plan.pieces)
    settle(window)
    work.may_end.clear()
    work.dialogs = 0
    return window


def state_of(window: MainWindow) -> tuple[object, ...]:
    document, stack = window.document, window.document.undo_stack
    steps = tuple(stack.text(step) for step in range(stack.count()))
    return document.plan, plan_bytes(document.plan), steps, stack.index(), document.is_dirty, document.path


def follows_its_plan(window: MainWindow) -> bool:
    document = window.document
    lies = {piece.at for level in document.index.levels() for piece in pieces_on(window, level)}
    plan = document.plan
    return document.layout.rails == Layout(plan).rails and lies == {piece.at for piece in plan.pieces}


def pieces_on(window: MainWindow, level: int) -> Iterator[Piece]:
    index = window.document.index
    area = index.extent(level)
    assert area is not None
    return index.pieces_in(area, level)


@pytest.mark.parametrize("name", LARGE)
def test_a_large_edit_is_one_step_that_the_window_waits_for(
    prepared: MainWindow, work: Work, name: str
) -> None:
    before, stack = prepared.document.plan, prepared.document.undo_stack
    LARGE[name](prepared)
    assert work.dialogs == 1
    assert prepared.document.plan != before
    assert follows_its_plan(prepared)
    if name not in ("undo", "redo"):
        assert (stack.count(), stack.index()) == (2, 2), "one more step, in place of the one to redo"
        work.may_end.set()
        prepared.document.undo()
        assert prepared.document.plan == before
        assert follows_its_plan(prepared)
    settle(prepared)
    assert not prepared.document.junction_is_old


@pytest.mark.parametrize("end", ["cancelling", "closing the window"])
@pytest.mark.parametrize("name", LARGE)
def test_a_large_edit_that_is_cancelled_changes_nothing(
    prepared: MainWindow, file: Path, work: Work, monkeypatch: pytest.MonkeyPatch, name: str, end: str
) -> None:
    before, written = state_of(prepared), file.read_bytes()
    chosen = prepared.view.selection
    is_closing = end != "cancelling"
    monkeypatch.setattr(QMessageBox, "exec", lambda _box: QMessageBox.StandardButton.Discard)
    work.act = lambda dialog: prepared.close() if is_closing else cancel(dialog)
    LARGE[name](prepared)
    assert work.dialogs == 1
    assert state_of(prepared) == before
    assert file.read_bytes() == written
    assert follows_its_plan(prepared)
    assert prepared.isVisible() is not is_closing
    work.may_end.set()
    if is_closing:
        return
    assert prepared.panels.status.here.text() == "Cancelled: the plan is as it was."
    assert prepared.view.selection == chosen
    settle(prepared)
    assert state_of(prepared) == before
    assert not prepared.document.junction_is_old, "what was held up goes on"
    work.act = lambda _dialog: work.may_end.set()
    LARGE[name](prepared)
    assert prepared.document.plan != before[0]  # control: nothing stands in the way now


def test_while_an_edit_is_worked_out_no_other_is_made(prepared: MainWindow, work: Work) -> None:
    before, document = prepared.document.plan, prepared.document
    made: list[bool] = []

    def try_others(_dialog: WorkingDialog) -> None:
        made.append(document.edit(set_title, "Another"))
        document.undo()
        work.may_end.set()

    work.act = try_others
    prepared.turn_plan(CLOCKWISE)
    assert made == [False]
    assert document.plan == turn_plan(before, CLOCKWISE).applied(before)


def test_another_plan_that_is_opened_meanwhile_stays(prepared: MainWindow, work: Work) -> None:
    document = prepared.document

    def load(_dialog: WorkingDialog) -> None:
        document.load(EMPTY_PLAN, None)
        work.may_end.set()

    work.act = load
    prepared.turn_plan(CLOCKWISE)
    assert document.plan == EMPTY_PLAN
    assert not document.undo_stack.count()


def test_what_is_done_at_once_shows_no_dialog(
    window: MainWindow, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shown: list[WorkingDialog] = []
    monkeypatch.setattr("app.document.BESIDE_FROM", 1)
    monkeypatch.setattr("app.dialogs.working.PATIENCE_MS", 60_000)
    monkeypatch.setattr(WorkingDialog, "show", shown.append)
    before = window.document.plan
    window.turn_plan(CLOCKWISE)
    assert window.document.plan != before
    assert not shown


def test_a_refused_edit_says_why(prepared: MainWindow, work: Work) -> None:
    before = state_of(prepared)
    work.may_end.set()
    moved = prepared.document.make(lambda plan: move_plan(plan, 0, 10_000, 0), 1, "Moving…")
    assert moved is None
    assert "out of reach" in prepared.panels.status.here.text()
    assert state_of(prepared) == before


def test_a_large_file_is_opened_beside_the_window(window: MainWindow, file: Path, work: Work) -> None:
    window.document.load(EMPTY_PLAN, None)
    assert window.files.open_path(file)
    assert work.dialogs == 1
    assert window.document.plan == straight_plan()
    assert window.document.path == file
    assert not window.document.is_dirty
    assert follows_its_plan(window)


@pytest.mark.parametrize("end", ["cancelling", "closing the window"])
def test_opening_that_is_cancelled_leaves_what_was_open(
    prepared: MainWindow, tmp_path: Path, work: Work, monkeypatch: pytest.MonkeyPatch, end: str
) -> None:
    other = tmp_path / "other.plan.json"
    other.write_bytes(plan_bytes(EMPTY_PLAN))
    before, recent = state_of(prepared), prepared.settings.recent
    is_closing = end != "cancelling"
    monkeypatch.setattr(QMessageBox, "exec", lambda _box: QMessageBox.StandardButton.Discard)
    work.act = lambda dialog: prepared.close() if is_closing else cancel(dialog)
    assert not prepared.files.open_path(other)
    assert work.dialogs == 1
    assert state_of(prepared) == before
    assert prepared.settings.recent == recent
    if not is_closing:
        assert prepared.panels.status.here.text() == "Cancelled: other.plan.json was not opened."


def test_a_large_file_that_cannot_be_read_is_told_of(window: MainWindow, tmp_path: Path, work: Work) -> None:
    path = tmp_path / "spoilt.plan.json"
    path.write_bytes(b"{")
    before = window.document.plan
    work.may_end.set()
    assert not window.files.open_path(path)
    assert "spoilt.plan.json was not opened" in window.panels.message.text
    assert window.document.plan is before


def test_a_large_plan_is_compared_beside_the_window(prepared: MainWindow, file: Path, work: Work) -> None:
    comparing = prepared.view.comparing
    prepared.comparison.with_saved()
    assert work.dialogs == 1
    assert comparing.other.plan == straight_plan()
    assert set(comparing.differences) == {*compare_as_built(comparing.other, prepared.document.layout)}
    assert len(comparing.differences) > 0


def test_a_comparison_that_is_cancelled_is_none(prepared: MainWindow, file: Path, work: Work) -> None:
    before = state_of(prepared)
    work.act = cancel
    prepared.comparison.with_saved()
    assert work.dialogs == 1
    assert not prepared.view.comparing.is_on
    assert prepared.panels.status.here.text() == "Cancelled: nothing is compared."
    assert state_of(prepared) == before


def test_a_large_dry_run_is_made_ready_beside_the_window(prepared: MainWindow, work: Work) -> None:
    prepared.view.start_dry_run()
    assert work.dialogs == 1
    engine = prepared.view.dry_run.runner.engine
    assert engine is not None
    assert engine.plan is prepared.document.plan
    assert prepared.view.scene.live is not None


@pytest.mark.parametrize("end", ["cancelling", "closing the window"])
def test_a_dry_run_that_is_cancelled_does_not_begin(
    prepared: MainWindow, work: Work, monkeypatch: pytest.MonkeyPatch, end: str
) -> None:
    before, is_closing = state_of(prepared), end != "cancelling"
    monkeypatch.setattr(QMessageBox, "exec", lambda _box: QMessageBox.StandardButton.Discard)
    work.act = lambda dialog: prepared.close() if is_closing else cancel(dialog)
    prepared.view.start_dry_run()
    assert work.dialogs == 1
    assert not prepared.view.dry_run.is_on
    assert state_of(prepared) == before
    if not is_closing:
        assert prepared.panels.status.here.text() == "Cancelled: no dry run was begun."


def test_after_a_large_edit_plans_are_compared_anew(prepared: MainWindow, work: Work, qtbot: QtBot) -> None:
    comparing, panel = prepared.view.comparing, prepared.panels.comparison
    work.may_end.set()
    prepared.comparison.with_saved()
    seen: list[tuple[bool, int, str]] = []
    comparing.changed.connect(
        lambda: seen.append((comparing.is_old, len(comparing.differences), comparing.title))
    )
    prepared.turn_plan(CLOCKWISE)
    assert seen[0] == (True, 0, "Comparing with the saved file · the plans are being compared")
    comparing.swap()
    prepared.document.edit(set_title, "Turned")
    qtbot.waitUntil(lambda: not comparing.is_old)
    here, there = prepared.document.layout, Layout(straight_plan())
    assert set(comparing.differences) == {*compare_as_built(here, there)}
    assert len(comparing.differences) > 0
    assert "being compared" not in panel.said.text()
    prepared.turn_plan(CLOCKWISE)
    comparing.end()
    assert not comparing.is_old
    settle(prepared)
    assert not comparing.differences


def test_copying_and_pasting_very_many_pieces_can_be_cancelled(prepared: MainWindow, work: Work) -> None:
    clipboard, view = QApplication.clipboard(), prepared.view
    clipboard.setText("before")
    before = state_of(prepared)
    work.act = cancel
    view.cut()
    assert (work.dialogs, clipboard.text()) == (1, "before")
    assert prepared.panels.status.here.text() == "Cancelled: nothing was copied."
    assert state_of(prepared) == before, "what is not copied is not cut away"
    work.act = lambda _dialog: work.may_end.set()
    view.copy()
    assert clipboard.text().startswith("{")
    assert clipboard.mimeData().hasImage()
    work.may_end.clear()
    work.act = cancel
    view.paste()
    assert prepared.panels.status.here.text() == "Cancelled: nothing is pasted."
    assert not view.hands.tool.is_busy
    assert state_of(prepared) == before
