"""A plan view on the screen, and a hand that works it with real events."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app import theme as themes
from app.canvas.view import PlanView
from app.document import Document
from model.edits import lay_track
from model.grid import Cell, Heading
from model.plan import EMPTY_PLAN, Arm, ArmEnd, Details, Plan, Route

LEVEL = 64
LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier
SWITCH = Cell(0, LEVEL, 0)


def wye() -> Plan:
    """Track from the south meets track from the west and the east; the rail in the middle is a switch."""
    plan = EMPTY_PLAN
    for cells in (
        [(0, z) for z in range(4, 0, -1)],
        [(x, 0) for x in range(-4, 0)],
        [(x, 0) for x in range(4, 0, -1)],
        [(0, 0)],
    ):
        plan = lay_track(plan, [Cell(x, LEVEL, z) for x, z in cells]).applied(plan)
    arms = tuple(
        Arm(name, ArmEnd(cell, inward), ArmEnd(cell, inward.opposite))
        for name, cell, inward in (
            ("Mill", Cell(0, LEVEL, 4), Heading.NORTH),
            ("Quay", Cell(-4, LEVEL, 0), Heading.EAST),
            ("Fen", Cell(4, LEVEL, 0), Heading.WEST),
        )
    )
    return Plan(plan.pieces, Details(arms=arms, routes=(Route("Mill", "Fen", "Quay", "Salt"),)))


class User:
    """Works the view with the mouse and the keys."""

    def __init__(self, view: PlanView) -> None:
        self.view = view

    def pixel(self, x: int, z: int, fx: float = 0.5, fz: float = 0.5) -> QPoint:
        """A pixel over a cell."""
        left, top = self.view.navigator.view.corner(x, z)
        scale = self.view.navigator.view.scale
        return QPoint(int(left + fx * scale), int(top + fz * scale))

    def press(self, x: int, z: int, mods: Qt.KeyboardModifier = NONE) -> None:
        QTest.mousePress(self.view, LEFT, mods, self.pixel(x, z))

    def move(self, x: int, z: int) -> None:
        QTest.mouseMove(self.view, self.pixel(x, z))

    def release(self, x: int, z: int, mods: Qt.KeyboardModifier = NONE) -> None:
        QTest.mouseRelease(self.view, LEFT, mods, self.pixel(x, z))

    def drag(self, *places: tuple[int, int], mods: Qt.KeyboardModifier = NONE) -> None:
        """Presses on the first place, goes over the others, and lets go on the last."""
        self.press(*places[0], mods)
        for place in places[1:]:
            self.move(*place)
        self.release(*places[-1], mods)

    def click(self, x: int, z: int, mods: Qt.KeyboardModifier = NONE) -> None:
        self.drag((x, z), mods=mods)

    def keys(self, *keys: Qt.Key, mods: Qt.KeyboardModifier = NONE) -> None:
        for key in keys:
            QTest.keyClick(self.view, key, mods)


@pytest.fixture
def document(qapp: QApplication) -> Iterator[Document]:
    document = Document()
    yield document
    document.close()


@pytest.fixture
def view(document: Document, qtbot: QtBot) -> PlanView:
    view = PlanView(document)
    qtbot.addWidget(view)
    view.set_theme(themes.theme("light"))
    view.resize(900, 700)
    view.show()
    view.setFocus()
    qtbot.waitExposed(view)
    return view


@pytest.fixture
def user(view: PlanView) -> User:
    return User(view)


@pytest.fixture
def shown_wye(document: Document, view: PlanView, qtbot: QtBot) -> PlanView:
    """The view with the wye, everything worked out."""
    document.load(wye(), None)
    qtbot.waitUntil(lambda: not document.junction_is_old)
    return view
