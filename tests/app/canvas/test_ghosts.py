"""What a ghost tells of cells that cannot take it, and of what lies out of sight."""

from __future__ import annotations

from app.canvas.ghosts import picture_of
from app.tools.host import Ghost
from model.edits import erase, lay_track
from model.grid import Cell
from model.track.layout import Layout
from tests.app.canvas.conftest import LEVEL, SWITCH, wye

NEW = [Cell(8, LEVEL, 8), Cell(9, LEVEL, 8)]


def test_what_would_be_laid_on_a_locked_level_is_crossed() -> None:
    plan = wye()
    ghost = Ghost(lay_track(plan, NEW))
    assert picture_of(ghost, Layout(plan)).crossed == frozenset()
    assert picture_of(ghost, Layout(plan), {LEVEL + 1}).crossed == frozenset(), "Other levels are not locked."
    assert picture_of(ghost, Layout(plan), {LEVEL}).crossed == set(NEW)


def test_what_stays_on_a_locked_level_is_not_crossed_as_if_it_went() -> None:
    plan = wye()
    ghost = Ghost(erase(plan, [SWITCH]), crossed=frozenset({SWITCH}))
    assert picture_of(ghost, Layout(plan)).crossed == {SWITCH}
    assert picture_of(ghost, Layout(plan), {LEVEL}).crossed == frozenset()


def test_a_note_goes_with_an_outline_about_all_levels() -> None:
    plan = wye()
    change = lay_track(plan, NEW)
    assert picture_of(Ghost(change), Layout(plan)).footprint == frozenset()
    assert picture_of(Ghost(change, note="x"), Layout(plan)).footprint == {(8, 8), (9, 8)}
