"""What is worked out beside the window comes ready to be shown, and waits while a frame is painted."""

from __future__ import annotations

import threading

from PySide6.QtGui import QPaintEvent
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from app import window_first
from app.document import Document
from app.window import MainWindow
from model.edits import place
from model.grid import Cell
from model.parts import Part
from model.pieces import new_piece
from model.routing.junction import Junction
from tests.app.windows import straight_plan


def test_what_a_panel_shows_of_a_junction_is_made_beside_the_window_and_once(qapp: QApplication) -> None:
    document = Document()
    made_by: list[str] = []

    def pieces_of(junction: Junction) -> int:
        made_by.append(threading.current_thread().name)
        return len(junction.plan.pieces)

    document.work_out_beside(pieces_of)
    assert document.shown(pieces_of) is None
    document.load(straight_plan(), None)
    for more in range(3):
        document.wait()
        qapp.processEvents()
        assert document.shown(pieces_of) == len(document.plan.pieces)
        assert len(made_by) == more + 1
        document.edit(place, new_piece(Part.GLASS, Cell(more, 90, 0)))
    assert threading.current_thread().name not in made_by
    document.close()


def test_what_nobody_asked_for_in_time_is_made_when_it_is_wanted(qapp: QApplication) -> None:
    document = Document()
    document.load(straight_plan(), None)
    document.wait()
    qapp.processEvents()
    assert document.shown(lambda junction: len(junction.plan.pieces)) == len(document.plan.pieces)
    document.close()


class Witness(QWidget):
    """Notes whether work beside the window may go on while it is painted."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.seen: list[bool] = []

    def paintEvent(self, event: QPaintEvent) -> None:
        self.seen.append(window_first._gate.is_open.is_set())


def test_work_beside_the_window_waits_while_any_panel_is_painted(window: MainWindow, qtbot: QtBot) -> None:
    witness = Witness(window.side)
    witness.resize(20, 20)
    witness.show()
    qtbot.waitUntil(lambda: bool(witness.seen))
    witness.seen.clear()
    witness.update()
    qtbot.waitUntil(lambda: bool(witness.seen))
    assert witness.seen == [False]
    assert window_first._gate.is_open.is_set()
