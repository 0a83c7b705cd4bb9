"""Cells that are watched carry a mark, in the cell and nowhere else."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from app.canvas.view import PlanView
from model.grid import Cell

WATCHED = Cell(2, 64, 0)


def look_at(view: PlanView, scale: int) -> None:
    """At once, so that nothing moves between two pictures."""
    view.resize(420, 320)
    view.navigator.show(view.navigator.view.zoomed(scale, 0, 0).centred(WATCHED.x, WATCHED.z, 224, 171))


def picture(view: PlanView) -> QImage:
    QApplication.processEvents()
    return view.grab().toImage()


def differing(view: PlanView, one: QImage, other: QImage) -> set[tuple[int, int]]:
    """The x and z of the cells in which two pictures differ."""
    viewport = view.navigator.view
    cells = set()
    for x in range(one.width()):
        for y in range(one.height()):
            if one.pixel(x, y) != other.pixel(x, y):
                cell = viewport.cell_at(x, y, view.level)
                cells.add((cell.x, cell.z))
    return cells


@pytest.mark.parametrize("scale", [12, 24, 48])
def test_the_mark_stays_in_its_cell_and_goes_with_the_probe(shown_wye: PlanView, scale: int) -> None:
    view, runner = shown_wye, shown_wye.dry_run.runner
    look_at(view, scale)
    bare = picture(view)
    runner.add_probe(WATCHED)
    assert differing(view, bare, picture(view)) == {(WATCHED.x, WATCHED.z)}
    view.level = WATCHED.y + 1
    elsewhere = picture(view)
    runner.remove_probe(WATCHED)
    assert picture(view) == elsewhere, "other levels carry no mark of it"
    view.level = WATCHED.y
    assert picture(view) == bare


def test_very_small_cells_carry_none(shown_wye: PlanView) -> None:
    look_at(shown_wye, 8)
    bare = picture(shown_wye)
    shown_wye.dry_run.runner.add_probe(WATCHED)
    assert picture(shown_wye) == bare
