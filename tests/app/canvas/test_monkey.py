"""Random hands: whatever is done to the view, no error, and undoing all leads back to the start."""

from __future__ import annotations

import random

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.canvas.view import PlanView
from app.document import Document
from app.tools.table import TOOLS
from model.parts import Part
from model.track.layout import Layout
from tests.app.canvas.conftest import wye

KEYS = (
    *("Left", "Right", "Up", "Down", "Return", "Escape", "R", "D", "M", "W", "PageUp", "PageDown", "Space"),
)
BUTTONS = (Qt.MouseButton.LeftButton, Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton)
MODIFIERS = (
    *(Qt.KeyboardModifier.NoModifier,) * 3,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.ControlModifier,
)


def act(view: PlanView, document: Document, rng: random.Random) -> None:
    at = QPoint(rng.randrange(view.width()), rng.randrange(view.height()))
    button, held = rng.choice(BUTTONS), rng.choice(MODIFIERS)
    rng.choice(
        (
            lambda: QTest.mousePress(view, button, held, at),
            lambda: QTest.mouseMove(view, at),
            lambda: QTest.mouseMove(view, at),
            lambda: QTest.mouseRelease(view, button, held, at),
            lambda: QTest.keyClick(view, getattr(Qt.Key, f"Key_{rng.choice(KEYS)}"), held),
            lambda: view.use(rng.choice(list(TOOLS))),
            lambda: view.navigator.zoom(rng.choice((-1, 1))),
            lambda: rng.choice((view.copy, view.paste, view.delete, view.select_all, view.fit_all))(),
            lambda: view.take_in_hand(view.hand.holding(rng.choice(list(Part)))),
            lambda: answer(view, rng),
            document.undo_stack.undo,
            document.undo_stack.redo,
            lambda: view.grab(),
        )
    )()


def answer(view: PlanView, rng: random.Random) -> None:
    if view.name_entry.question is not None:
        view.name_entry.line.setText(rng.choice(("Quay", "Orchard", "", "a/b")))
        QTest.keyClick(view.name_entry.line, Qt.Key.Key_Return)


def run(document: Document, view: PlanView, seed: int, events: int) -> None:
    rng = random.Random(seed)
    for step in range(events):
        act(view, document, rng)
        if step % 50 == 0:
            QApplication.processEvents()
    view.hands.interrupt()
    assert dict(document.layout.shapes) == dict(Layout(document.plan).shapes)
    assert {piece.at for piece in document.plan.pieces} == {
        piece.at
        for level in view.scene.index.levels()
        for piece in view.scene.index.pieces_in(view.scene.index.extent(level), level)
    }
    document.undo_stack.setIndex(0)
    assert document.plan == wye()


@pytest.mark.parametrize("seed", range(4))
def test_random_hands(document: Document, shown_wye: PlanView, seed: int) -> None:
    run(document, shown_wye, seed, 600)


@pytest.mark.slow
@pytest.mark.timeout(900)
@pytest.mark.parametrize("seed", range(100, 120))
def test_random_hands_for_long(document: Document, shown_wye: PlanView, seed: int) -> None:
    run(document, shown_wye, seed, 2_500)
