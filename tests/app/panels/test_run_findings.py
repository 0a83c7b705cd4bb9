"""What the dry run found: the rows, and that choosing one goes to its cells and its tick."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from PySide6.QtCore import QAbstractItemModel, QModelIndex, QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.panels.findings_model import PLACE_ROLE, SECOND_ROLE
from app.panels.run_findings import TROUBLES, RunRow, rows_of
from app.panels.run_findings_panel import NEVER_RUN, NOTHING_FOUND, RunFindingsPanel
from app.window import MainWindow
from model.dry_run import Drop, DryRun, Event, Lever, Send, Trouble, Watch
from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Held, Piece, new_piece
from model.plan import Arm, ArmEnd, Details, Plan, plan_of
from tests.app.windows import settle, track

QUAY, FEN = Cell(0, 64, 0), Cell(6, 64, 0)


def line(*more: Piece, end: Cell = FEN) -> Plan:
    """Seven rails from Quay in the west to Fen in the east."""
    pieces = track(*((x, 0) for x in range(end.x + 1)))
    taken = {piece.at for piece in more}
    arms = (
        Arm("Quay", enter=ArmEnd(QUAY, Heading.EAST)),
        Arm("Fen", leave=ArmEnd(FEN, Heading.EAST)),
    )
    return plan_of([*(piece for piece in pieces if piece.at not in taken), *more], Details("Line", arms=arms))


def ran(plan: Plan, *events: Event, ticks: int = 60) -> list[RunRow]:
    """What is found when these events come in tick 0."""
    run = DryRun(plan)
    watch = Watch(run)
    for tick in range(ticks):
        run.step(events if tick == 0 else ())
        watch.note()
    return rows_of(run, watch.findings())


def said(rows: Sequence[RunRow]) -> list[tuple[str, str, str]]:
    return [(row.severity.value, row.title, row.place) for row in rows]


def test_carts_that_arrive_are_notes() -> None:
    """Cell 6 is left at ceil(2.5 · 7) = 18; the next cart follows two cells behind."""
    rows = ran(line(), Send("Quay", ((), (("Salt", 3),))))
    assert said(rows) == [
        ("note", "Cart 1 left by Fen", "tick 18"),
        ("note", "Cart 2 left by Fen", "tick 23"),
    ]
    assert [row.message for row in rows] == ["After 0.9 s, empty.", "After 1.15 s, with 3 Salt."]
    assert all(row.cells == (FEN,) for row in rows)


def test_a_cart_that_leaves_the_track_is_an_error_where_it_was() -> None:
    """Cell 3 is left at 2.5 · 4 = 10."""
    rows = ran(line(end=Cell(3, 64, 0)), Send("Quay"))
    assert said(rows) == [("error", "Cart 1 left the track", "tick 10")]
    assert rows[0].cells == (Cell(3, 64, 0),)


def test_a_cart_that_is_stopped_by_a_block_is_an_error() -> None:
    rows = ran(line(new_piece(Part.SOLID_BLOCK, FEN)), Send("Quay"))
    assert said(rows) == [("error", "Cart 1 was stopped by a block", "tick 15")]
    assert rows[0].cells == (Cell(5, 64, 0),)


def test_carts_that_meet_are_one_row() -> None:
    meeting = Drop(Cell(1, 64, 0), Heading.EAST), Drop(Cell(3, 64, 0), Heading.WEST)
    rows = ran(line(), *meeting)
    assert said(rows) == [("error", "Carts 1 and 2 collided", "tick 3")]
    assert rows[0].cells == (Cell(2, 64, 0),)


def test_a_cart_that_no_signal_will_free_waits_without_end() -> None:
    booster = Piece(Part.BOOSTER_RAIL, Cell(2, 64, 0), Facing.EAST)
    rows = ran(line(booster), Send("Quay"))
    assert said(rows) == [("warning", "Cart 1 waits without end", "tick 5")]
    assert rows[0].cells == (booster.at,)


def test_dust_without_strength_and_readers_with_a_wrong_count_are_found() -> None:
    """Dust falls by 1 a cell from 15 beside its source, so the 16th has none (common practice, no source)."""
    cells = [Cell(x, 64, 5) for x in range(17)]
    below = [new_piece(Part.SOLID_BLOCK, cell.moved(dy=-1)) for cell in cells]
    dust = [new_piece(Part.DUST, cell) for cell in cells[1:]]
    plan = plan_of([*below, new_piece(Part.LEVER, cells[0]), *dust])
    rows = ran(plan, Lever(cells[0], True))
    assert said(rows) == [("warning", "Dust out of reach", "tick 0")]
    assert rows[0].cells == (cells[16],)


def reader(first: int) -> tuple[Piece, ...]:
    """A hopper under the track, a waybill in all slots, so many in the first, and a comparator behind it."""
    holds = tuple(Held("waybill:Salt", count) for count in (first, 1, 1, 1, 1))
    return (
        Piece(Part.HOPPER, Cell(2, 63, 0), Facing.DOWN, holds=holds),
        Piece(Part.COMPARATOR, Cell(2, 63, 1), Facing.SOUTH),
        new_piece(Part.SOLID_BLOCK, Cell(2, 62, 1)),
    )


def test_a_reader_with_a_wrong_count_is_an_error_from_the_start() -> None:
    """22 in all five slots is common practice, no source; here are 23."""
    rows = ran(line(*reader(19)), ticks=1)
    assert said(rows) == [("error", "A reader with the wrong count", "2 63 0")]
    assert "must hold 22" in rows[0].message


def test_a_pair_that_is_unsure_again_and_again_is_one_row() -> None:
    """A repeater comes due in the tick in which another one comes on to lock it, twice."""
    locked, lock, levers = Cell(2, 64, 5), Cell(2, 64, 6), (Cell(1, 64, 5), Cell(2, 64, 7))
    pieces = [new_piece(Part.SOLID_BLOCK, cell.moved(dy=-1)) for cell in (locked, lock, *levers)]
    pieces += [Piece(Part.REPEATER, locked, Facing.EAST), Piece(Part.REPEATER, lock, Facing.NORTH)]
    run = DryRun(plan_of([*pieces, *(new_piece(Part.LEVER, cell) for cell in levers)]))
    found = []
    for tick in range(60):
        pulled = [Lever(cell, tick % 40 == 0) for cell in levers] if tick % 20 == 0 else []
        run.step(pulled)
        found.append(rows_of(run))
    assert said(found[10]) == said(found[-1]) == [("warning", "Order within a tick decides", "tick 2")]
    assert found[10][0].key == found[-1][0].key
    assert found[10][0].cells == (locked, lock)
    assert found[-1][0].message.startswith("Repeater 2 64 5 and Repeater 2 64 6 change in one tick")
    assert found[-1][0].message.endswith("So it was 2 times.")


def test_every_trouble_has_a_title_and_a_severity() -> None:
    assert TROUBLES.keys() == set(Trouble)


def test_the_gravest_come_first_then_the_time() -> None:
    """The carts that arrive do so before and after the crash."""
    rows = ran(line(), Send("Quay"), Drop(Cell(4, 64, 0), Heading.WEST), Drop(Cell(6, 64, 0), Heading.EAST))
    assert said(rows) == [
        ("error", "Carts 1 and 2 collided", "tick 5"),
        ("note", "Cart 3 left by Fen", "tick 3"),
    ]


@pytest.fixture
def panel(window: MainWindow) -> RunFindingsPanel:
    """A window with the line and the diagram open; the list of what is found in it."""
    window.document.load(line(), None)
    settle(window)
    window.bound["show_timing"].trigger()
    QApplication.processEvents()
    return window.panels.timing.found


def go(window: MainWindow, ticks: int, *events: Event) -> None:
    runner = window.view.dry_run.runner
    if not runner.is_on:
        window.bound["dry_run"].trigger()
        runner.pause()
    for event in events:
        assert runner.give(event)
    for _ in range(ticks):
        runner.step()


def titles(panel: RunFindingsPanel) -> list[str]:
    return [str(panel.model.index(row).data()) for row in range(panel.model.rowCount())]


def test_the_list_fills_as_the_run_goes_on_and_the_button_counts(
    window: MainWindow, panel: RunFindingsPanel
) -> None:
    button = window.panels.timing.found_button
    assert panel.isVisible()
    assert panel.empty.text() == NEVER_RUN
    go(window, 10, Send("Quay"))
    assert panel.empty.text() == NOTHING_FOUND
    assert panel.empty.isVisible()
    assert button.text() == "Found  0"
    go(window, 10)
    assert titles(panel) == ["Cart 1 left by Fen"]
    assert panel.model.index(0).data(PLACE_ROLE) == "tick 18"
    assert panel.model.index(0).data(SECOND_ROLE) == "After 0.9 s, empty."
    assert button.text() == "Found  1"
    window.bound["run_back"].trigger()
    assert titles(panel) == []


def test_trouble_stands_in_the_log_of_the_plan_view_too(window: MainWindow) -> None:
    """23 in a reader: 22 is common practice, no source."""
    window.document.load(line(*reader(19)), None)
    settle(window)
    assert not window.panels.timing.isVisible()
    go(window, 3)
    lines = [str(index.data()) for index in rows_in(window.view.run_bar.model)]
    assert [words.startswith("Tick 0: The reader at 2 63 0 holds 23") for words in lines] == [True]


def rows_in(model: QAbstractItemModel) -> list[QModelIndex]:
    return [model.index(row, 0) for row in range(model.rowCount())]


def test_choosing_a_row_goes_to_its_cells_and_its_tick(
    window: MainWindow, panel: RunFindingsPanel, qtbot: QtBot
) -> None:
    window.view.dry_run.runner.add_probe(FEN)
    go(window, 60, Send("Quay"), Drop(Cell(4, 64, 0), Heading.EAST))
    assert titles(panel) == ["Cart 2 left by Fen", "Cart 1 left by Fen"]
    window.view.level = 70
    place = panel.list.visualRect(panel.model.index(1)).center()
    qtbot.mouseClick(panel.list.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert window.view.selection == {FEN}
    assert window.view.level == 64
    assert window.panels.timing.view.tick == 18
    assert panel.said.text() == "After 0.9 s, empty."
    QTest.keyClick(panel.list, Qt.Key.Key_Up)
    assert window.panels.timing.view.tick == 8


def test_a_row_that_is_added_moves_neither_choice_nor_view(
    window: MainWindow, panel: RunFindingsPanel, qtbot: QtBot
) -> None:
    go(window, 30, Send("Quay"))
    panel.list.setCurrentIndex(panel.model.index(0))
    window.panels.timing.view.put_cursor(3)
    window.view.selection = frozenset()
    go(window, 30, Drop(Cell(1, 64, 0), Heading.EAST), Drop(Cell(3, 64, 0), Heading.WEST))
    assert titles(panel) == ["Carts 2 and 3 collided", "Cart 1 left by Fen"]
    row = panel.row
    assert row is not None
    assert row.title == "Cart 1 left by Fen", "the choice stays with its row"
    assert window.view.selection == frozenset(), "nobody asked to go anywhere"


def test_the_list_can_be_put_away(window: MainWindow, panel: RunFindingsPanel, qtbot: QtBot) -> None:
    button = window.panels.timing.found_button
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton, pos=QPoint(5, 5))
    assert not panel.isVisible()
    window.resize(1300, 800)
    QApplication.processEvents()
    assert not panel.isVisible(), "it stays as the user left it"
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton, pos=QPoint(5, 5))
    assert panel.isVisible()


def test_what_was_found_stays_until_the_next_run(window: MainWindow, panel: RunFindingsPanel) -> None:
    go(window, 30, Send("Quay"))
    window.view.clear_preview()
    assert not window.view.dry_run.is_on
    assert titles(panel) == ["Cart 1 left by Fen"]
    go(window, 1)
    assert titles(panel) == []
    go(window, 30, Send("Quay"))
    window.document.load(line(), None)
    settle(window)
    assert titles(panel) == [], "another plan: nothing of the old one is listed"
    assert panel.empty.text() == NEVER_RUN
