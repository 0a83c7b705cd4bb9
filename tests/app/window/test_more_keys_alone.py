"""Beside drawing, by keys alone: a module put down, a comparison gone through, the view in depth."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog

from app.depth.window import DepthWindow
from app.window import MainWindow
from model.parts import Part
from tests.app.by_keys import CTRL, K, Watcher, come_back, focus, press, tab_to
from tests.app.windows import settle, straight_plan

SHIFT = Qt.KeyboardModifier.ShiftModifier


def test_a_module_is_chosen_turned_and_put_down(window: MainWindow, no_mouse: Watcher) -> None:
    window.activateWindow()
    press(K.Key_N)
    settle(window)
    tab_to("Modules")
    before = window.view.module_hand.name
    press(K.Key_Down, K.Key_Return)
    assert focus() is window.view, "the keys go on where the module is put down"
    assert window.view.module_hand.name != before
    press(K.Key_R, K.Key_Right, K.Key_Return)
    assert len(window.document.plan.pieces) > 1
    assert window.document.undo_stack.count() == 1
    press(K.Key_Escape)
    assert window.view.tool == "select"
    assert no_mouse.seen == []


def test_a_comparison_is_gone_through_and_ended(
    window: MainWindow, no_mouse: Watcher, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    window.activateWindow()
    window.document.load(straight_plan(), None)
    path = str(tmp_path / "straight.plan.json")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (path, ""))
    press(K.Key_S, held=CTRL)
    press(K.Key_P, *[K.Key_Down] * 3, K.Key_Return, K.Key_Down, K.Key_Down, K.Key_Return)
    press(K.Key_E, held=CTRL | SHIFT)
    settle(window)
    assert [piece.part for piece in window.document.plan.pieces].count(Part.SOLID_BLOCK) == 5
    press(K.Key_F8)
    first = window.panels.comparison.row
    press(K.Key_F8)
    assert first is not None
    assert window.panels.comparison.row not in (None, first)
    press(K.Key_F8, held=SHIFT)
    assert window.panels.comparison.row == first
    press(*[K.Key_Escape] * 3)
    assert not window.panels.comparison.isVisible()
    assert no_mouse.seen == []


def test_the_view_in_depth_comes_and_goes(window: MainWindow, no_mouse: Watcher) -> None:
    window.activateWindow()
    press(K.Key_D, held=CTRL)
    settle(window)
    shown = next(iter(window.findChildren(DepthWindow)))
    assert shown.isVisible()
    shown.activateWindow()
    settle(window)
    press(K.Key_Left, K.Key_Plus, K.Key_Escape)
    come_back(window)
    assert not shown.isVisible()
    assert focus() is window.view
    assert no_mouse.seen == []
