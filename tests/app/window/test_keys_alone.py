"""A plan drawn, checked, exported and saved by keys alone; what has the focus gets them, no mouse is used."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog

from app.dialogs.build_sheet import BuildSheetDialog
from app.dialogs.waiver import WaiverDialog
from app.window import MainWindow
from model.files.plan_file import read_plan
from model.grid import Cell
from model.parts import Part
from tests.app.by_keys import ALT, CTRL, K, Watcher, answer, come_back, focus, press, tab_to, write
from tests.app.windows import settle


def lay_a_wye() -> None:
    """Track from the south, the west and the east; the last rail, in the middle, becomes a switch."""
    press(K.Key_L, K.Key_Down, K.Key_Down)
    press(K.Key_Return, K.Key_Up, K.Key_Return)
    press(K.Key_Up, K.Key_Left, K.Key_Left, K.Key_Return, K.Key_Right, K.Key_Return)
    press(K.Key_Right, K.Key_Right, K.Key_Right, K.Key_Return, K.Key_Left, K.Key_Return)
    press(K.Key_Left, K.Key_Return, K.Key_Return)


def place_blocks_under_it() -> None:
    """On the level below, in two drags; the block in the middle serves both."""
    shift = Qt.KeyboardModifier.ShiftModifier
    press(K.Key_PageDown, K.Key_P, K.Key_Left, K.Key_Left)
    press(K.Key_Return, held=shift)
    press(*[K.Key_Right] * 4, K.Key_Return, K.Key_Left, K.Key_Left)
    press(K.Key_Return, held=shift)
    press(K.Key_Down, K.Key_Down, K.Key_Return)


def name_arms() -> None:
    """Enter twice at a track's end makes an arm with both ends, then its name is typed."""
    press(K.Key_PageUp, K.Key_A)
    for steps, name in (
        ((), "Mill"),
        ((K.Key_Up, K.Key_Up, K.Key_Left, K.Key_Left), "Quay"),
        ((K.Key_Right,) * 4, "Fen"),
    ):
        press(*steps, K.Key_Return, K.Key_Return)
        write(name)
        press(K.Key_Return)


def want_a_route() -> None:
    """A row is added, and its cells are chosen from and typed into."""
    press(K.Key_4, held=ALT)
    tab_to("Add route")
    press(K.Key_Space)
    press(K.Key_Right, K.Key_F2)
    QApplication.processEvents()
    press(K.Key_Down, K.Key_Down, K.Key_Return)
    QApplication.processEvents()
    press(K.Key_Right, K.Key_F2)
    write("Salt")
    press(K.Key_Return)


def test_a_mouse_would_be_seen(window: MainWindow, no_mouse: Watcher) -> None:
    """The control that must fail."""
    QTest.mouseClick(window.view, Qt.MouseButton.LeftButton)
    assert no_mouse.seen


def test_a_plan_is_made_from_beginning_to_end_without_a_mouse(
    window: MainWindow, no_mouse: Watcher, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    window.activateWindow()
    press(K.Key_N, held=CTRL)
    lay_a_wye()
    place_blocks_under_it()
    name_arms()
    settle(window)
    document = window.document
    assert [piece.part for piece in document.plan.pieces].count(Part.SOLID_BLOCK) == 7
    assert "unsupported" not in {finding.rule for finding in document.findings}
    assert len(document.junction.switches) == 1
    assert [arm.name for arm in document.plan.arms] == ["Mill", "Quay", "Fen"]
    assert all(arm.enter and arm.leave for arm in document.plan.arms)

    want_a_route()
    settle(window)
    (route,) = document.plan.routes
    assert (route.start, route.idle, route.called, route.waybill) == ("Mill", "Quay", "Fen", "Salt")

    # Another part is taken from the tray by typing its name, turned, and placed beside the track.
    press(K.Key_0, held=ALT)
    press(K.Key_Backtab, K.Key_Backtab, held=Qt.KeyboardModifier.ShiftModifier)
    assert focus().accessibleName() == "Parts"
    write("rep")
    press(K.Key_0, held=ALT)
    press(K.Key_R, K.Key_D, K.Key_Up, K.Key_Return)
    assert document.plan.pieces.get(Cell(2, 64, -1)).part is Part.REPEATER

    # A finding is looked at and set aside with its reason.
    settle(window)
    before = window.panels.status.counts.words
    press(K.Key_1, held=ALT)
    press(K.Key_Down)
    assert window.view.selection
    tab_to("Set aside…")
    answer(WaiverDialog, K.Key_Return, text="built so on purpose")
    press(K.Key_Space)
    come_back(window)
    assert [waiver.reason for waiver in document.plan.details.waivers] == ["built so on purpose"]
    assert window.panels.status.counts.words != before

    # A test cart is set on the track and leaves.
    press(K.Key_0, held=ALT)
    press(K.Key_C, K.Key_Down, *[K.Key_Left] * 2, K.Key_Return, K.Key_Down, K.Key_Return)
    assert window.view.previews.is_on
    press(K.Key_Escape)

    for name, key in (("sheet.pdf", K.Key_B), ("wye.plan.json", K.Key_S)):
        path = str(tmp_path / name)
        monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, path=path: (path, ""))
        if key is K.Key_B:
            answer(BuildSheetDialog, K.Key_Return)
        press(key, held=CTRL)
        come_back(window)
    assert (tmp_path / "sheet.pdf").read_bytes().startswith(b"%PDF-")
    assert read_plan(tmp_path / "wye.plan.json") == document.plan
    assert no_mouse.seen == []
