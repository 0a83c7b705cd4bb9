"""Switches, readers, orientations, materials, levels, the tray: what they show and what choosing does."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.panels.materials_panel import ALL_LEVELS
from app.panels.orientation_tile import tile_words
from app.panels.switches_model import CALLED_BY, IDLE, NAME
from app.panels.tray import part_of
from app.window import MainWindow
from model.edits import erase, place, turn_plan
from model.files.plan_file import read_plan
from model.grid import ALL_TURNS, Cell, Turn
from model.parts import Part
from model.pieces import new_piece
from model.routing.orientations import orientations
from model.sheet import materials
from tests.app.windows import example, settle, straight_plan


@pytest.fixture
def ring(window: MainWindow) -> MainWindow:
    """A window with the one-way ring of the examples."""
    window.document.load(read_plan(example("fen-ring")), None)
    settle(window)
    return window


def test_a_switch_row_says_what_the_junction_says_and_choosing_it_chooses_the_cell(
    ring: MainWindow, qtbot: QtBot
) -> None:
    panel, junction = ring.panels.switches, ring.document.junction
    assert junction is not None
    assert panel.model.rowCount() == len(junction.switches)
    for row, switch in enumerate(junction.switches):
        assert panel.model.index(row, NAME).data() == switch.name
        expected = "—" if switch.idle is None else "inverter" if switch.inverter else "rests"
        assert panel.model.index(row, IDLE).data() == expected
        if switch.idle is not None and switch.called_by:
            assert panel.model.index(row, CALLED_BY).data() == ", ".join(switch.called_by)
    place = panel.table.visualRect(panel.model.index(1, NAME)).center()
    qtbot.mouseClick(panel.table.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert ring.view.selection == {junction.switches[1].at}


def test_choosing_a_switch_on_the_plan_marks_its_row(ring: MainWindow) -> None:
    junction = ring.document.junction
    assert junction is not None
    ring.view.choose({junction.switches[2].at})
    assert [index.row() for index in ring.panels.switches.table.selectionModel().selectedRows()] == [2]
    ring.view.choose(())
    assert not ring.panels.switches.table.selectionModel().selectedRows()


def test_a_reader_row_previews_what_the_reader_throws(ring: MainWindow, qtbot: QtBot) -> None:
    ring.bound["show_readers"].trigger()
    junction = ring.document.junction
    assert junction is not None
    panel = ring.panels.readers
    assert [reader.arm for reader in panel.readers] == [r.start for r in junction.routes if r.called]
    said: list[str] = []
    ring.view.preview_text_changed.connect(said.append)
    place = panel.list.visualRect(panel.model.index(0, 0)).center()
    qtbot.mouseClick(panel.list.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert panel.readers[0].arm in said[-1]
    thrown = junction.choice.setting((panel.readers[0].arm,))
    assert ring.view.previews.shown.powered == thrown
    qtbot.mouseClick(panel.end_button, Qt.MouseButton.LeftButton)
    assert said[-1] == ""


def test_the_tiles_show_the_eight_orientations(ring: MainWindow) -> None:
    junction = ring.document.junction
    assert junction is not None
    for tile, found in zip(ring.panels.orientations.tiles, orientations(junction), strict=True):
        assert tile.turn == found.turn
        words = "not served" if found.inverters is None else str(found.inverters or "none")
        assert tile_words(found) == words
        assert f"Orientation {found.turn.number}" in tile.accessibleName()


def test_a_tile_turns_the_plan_as_one_undo_step(ring: MainWindow, qtbot: QtBot) -> None:
    before = ring.document.plan
    tile = ring.panels.orientations.tiles[5]
    assert tile.turn == Turn(1, mirror=True)
    qtbot.mouseClick(tile, Qt.MouseButton.LeftButton)
    assert ring.document.plan == turn_plan(before, tile.turn).applied(before)
    assert ring.document.undo_stack.count() == 1
    ring.bound["undo"].trigger()
    assert ring.document.plan == before


def test_the_present_orientation_turns_nothing(ring: MainWindow, qtbot: QtBot) -> None:
    qtbot.mouseClick(ring.panels.orientations.tiles[0], Qt.MouseButton.LeftButton)
    assert ring.document.undo_stack.count() == 0


def test_a_line_of_counts_turns_the_plan_too(ring: MainWindow, qtbot: QtBot) -> None:
    ring.resize(1024, 640)
    strip = ring.panels.orientations
    assert strip.is_folded
    before = ring.document.plan
    qtbot.mouseClick(strip.counts[3], Qt.MouseButton.LeftButton)
    assert ring.document.plan == turn_plan(before, ALL_TURNS[3]).applied(before)


def test_the_materials_are_counted_by_part_and_by_level(ring: MainWindow) -> None:
    ring.bound["show_materials"].trigger()
    panel = ring.panels.materials
    panel.wait()
    QApplication.processEvents()
    found = materials(ring.document.plan)
    assert panel.model.rowCount() == len(found.parts)
    assert panel.model.pieces == len(ring.document.plan.pieces)
    assert panel.levels.itemText(0) == ALL_LEVELS
    panel.levels.setCurrentIndex(1)
    level = panel.levels.currentData()
    assert panel.model.pieces == sum(piece.at.y == level for piece in ring.document.plan.pieces)
    rails = next(material for material in found.parts if material.part is Part.RAIL)
    assert str(rails.stacks) == f"{rails.pieces // 64} + {rails.pieces % 64}"


def test_the_materials_follow_edits_at_once(ring: MainWindow) -> None:
    ring.bound["show_materials"].trigger()
    panel, document = ring.panels.materials, ring.document
    panel.wait()
    QApplication.processEvents()
    lone = new_piece(Part.LAMP, Cell(500, 90, 500))
    gone = [piece.at for piece in document.plan.pieces][:3]
    steps = (lambda: document.edit(place, lone), lambda: document.edit(erase, gone), document.undo_stack.undo)
    for step in steps:
        step()
        shown = {row.part: row.pieces for row in panel.model.rows()}
        assert shown == {material.part: material.pieces for material in materials(document.plan).parts}
        assert panel.levels.itemData(1) == 90
    document.undo_stack.undo()
    assert panel.levels.itemData(1) != 90


def test_the_ladder_counts_pieces_through_edits_and_goes_to_levels(window: MainWindow, qtbot: QtBot) -> None:
    window.document.load(straight_plan(), None)
    strip = window.panels.levels
    assert [strip.pieces_on(level) for level in (62, 63, 64, 65)] == [0, 3, 3, 0]
    assert strip.accessibleName() == "Level 64: 3 pieces"
    window.view.select_all()
    window.bound["delete"].trigger()
    assert strip.pieces_on(64) == 0
    assert strip.accessibleName() == "Level 64: 0 pieces"
    window.bound["undo"].trigger()
    assert strip.pieces_on(64) == 3
    window.bound["level_up"].trigger()
    assert window.view.level == 65
    strip.setFocus()
    qtbot.keyClick(strip, Qt.Key.Key_Down)
    qtbot.keyClick(strip, Qt.Key.Key_Down)
    assert window.view.level == 63
    qtbot.mouseClick(strip, Qt.MouseButton.LeftButton, pos=QPoint(28, 50))
    assert window.view.level > 63


def test_the_tray_has_every_part_and_puts_it_in_hand(window: MainWindow, qtbot: QtBot) -> None:
    tray = window.panels.tray
    items = {part_of(tray.item(row)): tray.item(row) for row in range(tray.count())}
    assert set(items) - {None} == set(Part)
    repeater = items[Part.REPEATER]
    place = tray.visualItemRect(repeater).center()
    qtbot.mouseClick(tray.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert window.view.hand.part is Part.REPEATER
    assert window.view.tool == "place"
    assert "delay 2 ticks" in window.panels.in_hand.accessibleName()
    place = tray.visualItemRect(items[Part.RAIL]).center()
    qtbot.mouseClick(tray.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert window.view.tool == "lay"


def test_results_of_an_older_plan_are_marked_as_old(ring: MainWindow) -> None:
    assert not ring.document.junction_is_old
    ring.document.edit(turn_plan, Turn(1))
    assert ring.document.junction_is_old
    # As when the background takes longer than a moment.
    ring.document.junction_updated.emit()
    assert "worked out anew" in ring.panels.switches.summary.text()
    settle(ring)
    assert not ring.document.junction_is_old
    assert "worked out anew" not in ring.panels.switches.summary.text()
    assert ring.document.junction is not None
    assert ring.document.junction.plan == ring.document.plan
