"""The list of all pieces: another way to read a plan and to move on it."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QModelIndex, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.document import Document
from app.panels.pieces_model import PART, STATE, PiecesModel
from app.window import MainWindow
from model.edits import erase, place
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import plan_of
from tests.app.canvas.conftest import SWITCH, wye
from tests.app.windows import settle, straight_plan

K = Qt.Key


def opened(window: MainWindow) -> None:
    window.document.load(wye(), None)
    settle(window)
    window.activateWindow()
    window.bound["show_pieces"].trigger()


def rows(window: MainWindow) -> list[tuple[str, ...]]:
    model = window.panels.pieces.model
    return [
        tuple(model.index(row, column).data() for column in range(model.columnCount()))
        for row in range(model.rowCount())
    ]


def test_every_piece_has_a_row_with_its_place_and_shape(window: MainWindow) -> None:
    opened(window)
    found = rows(window)
    assert len(found) == len(window.document.plan.pieces)
    assert ("64", "0 0", "Plain rail", "", "switch, south-east") in found
    assert ("64", "\u22121 0", "Plain rail", "", "east-west") in found


def test_a_row_says_all_of_its_cell(window: MainWindow) -> None:
    opened(window)
    model = window.panels.pieces.model
    said = model.index(model.row_of(SWITCH), 0).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said.startswith("x 0, y 64, z 0: switch, rests south-east, powered south-west")


def test_words_and_figures_find_rows(window: MainWindow) -> None:
    opened(window)
    panel = window.panels.pieces
    QTest.keyClicks(panel.line, "plain west -4")
    QTest.keyClick(panel.line, K.Key_Return)
    assert [row[1] for row in rows(window)] == ["\u22124 0"]
    assert panel.summary.text().startswith("1 of ")
    assert QApplication.focusWidget() is panel.table


def test_choosing_a_row_goes_there_and_enter_leads_to_the_plan(window: MainWindow) -> None:
    opened(window)
    window.bound["level_up"].trigger()
    table, model = window.panels.pieces.table, window.panels.pieces.model
    table.setFocus()
    QTest.keyClick(table, K.Key_Down)
    QTest.keyClick(table, K.Key_Down)
    assert window.view.cursor == model.cell_of(1)
    assert window.view.level == 64
    assert window.view.selection == {model.cell_of(1)}
    QTest.keyClick(table, K.Key_Return)
    assert QApplication.focusWidget() is window.view
    assert window.view.cursor_is_by_key


def test_the_row_of_what_is_chosen_on_the_plan_is_chosen(window: MainWindow) -> None:
    opened(window)
    window.view.selection = frozenset({SWITCH})
    (row,) = window.panels.pieces.table.selectionModel().selectedRows()
    assert window.panels.pieces.model.cell_of(row.row()) == SWITCH


def test_rows_follow_edits_and_stay_in_order(qapp: QApplication) -> None:
    document = Document()
    model = PiecesModel(document)
    model.wake(True)
    for at in (Cell(5, 64, 1), Cell(0, 64, 2), Cell(9, 63, 7)):
        document.apply(place(document.plan, Piece(Part.GLASS, at)))
    assert [model.cell_of(row) for row in range(3)] == [Cell(9, 63, 7), Cell(5, 64, 1), Cell(0, 64, 2)]
    document.apply(place(document.plan, Piece(Part.REPEATER, Cell(0, 64, 2), Facing.EAST, delay=4)))
    assert model.index(2, PART).data() == "Repeater"
    assert model.index(2, STATE).data() == "delay 4 ticks"
    document.apply(erase(document.plan, [Cell(5, 64, 1)]))
    document.undo_stack.undo()
    assert model.rowCount() == 3
    document.close()


def test_nothing_is_worked_out_of_rows_that_nobody_sees(qapp: QApplication, monkeypatch) -> None:
    document = Document()
    document.load(plan_of([Piece(Part.GLASS, Cell(x, 64, z)) for x in range(100) for z in range(100)]), None)
    model = PiecesModel(document)
    asked: list[QModelIndex] = []
    monkeypatch.setattr(model, "_text", lambda piece, _column: asked.append(piece) or "")
    assert model.rowCount() == 0, "asleep"
    model.wake(True)
    document.apply(place(document.plan, Piece(Part.SLAB, Cell(3, 64, 3))))
    assert model.rowCount() == 10_000
    assert asked == []
    document.close()


def test_rails_that_an_edit_bends_are_found_by_their_new_shape(qapp: QApplication) -> None:
    document = Document()
    document.load(plan_of([Piece(Part.RAIL, Cell(x, 64, 0), Facing.EAST) for x in range(2)]), None)
    model = PiecesModel(document)
    model.wake(True)
    model.look_for("south-west")
    assert model.rowCount() == 0
    document.apply(place(document.plan, Piece(Part.RAIL, Cell(1, 64, 1), Facing.SOUTH)))
    assert [model.cell_of(row) for row in range(model.rowCount())] == [Cell(1, 64, 0)]
    document.undo_stack.undo()
    assert model.rowCount() == 0
    document.close()


def test_a_row_shows_as_a_whole_that_the_pointer_is_over_it(window: MainWindow) -> None:
    window.document.load(straight_plan(), None)
    window.side.lower_tabs.show_panel("Pieces")
    settle(window)
    table = window.panels.pieces.table
    rect = table.visualRect(table.model().index(1, 0))
    QTest.mouseMove(table.viewport(), rect.center())
    assert table.row_under == 1
    QApplication.sendEvent(table, QEvent(QEvent.Type.Leave))
    assert table.row_under == -1
