"""Markers are kept in tiles: mended after edits they are as if painted anew; far out one stands for many."""

from __future__ import annotations

import random

import pytest
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QApplication

from app import theme as themes
from app.canvas.findings_layer import SMALL_BELOW
from app.canvas.geometry import ZOOM_STEPS, Area, Viewport
from app.canvas.index import PieceIndex
from app.canvas.markers import Markers, marked_cells
from app.canvas.patience import Patience
from app.canvas.scene import Manners, Scene
from app.canvas.symbols.markers import SMALL
from model.grid import Cell
from model.plan import EMPTY_PLAN
from model.rules import Finding, Severity
from model.rules.local import Difference
from model.track.layout import Layout
from tests.app.canvas.conftest import LEVEL

SIZE = 600
CELLS = 60
FAR_OUT = [scale for scale in ZOOM_STEPS if scale < SMALL]


def found(x: int, z: int, severity: Severity, waived: bool = False, rule: str = "unsupported") -> Finding:
    return Finding(rule, severity, (Cell(x, LEVEL, z),), (), "", waived)


def drawn_by_lot(chance: random.Random, count: int) -> list[Finding]:
    return [
        found(
            chance.randrange(-CELLS, CELLS),
            chance.randrange(-CELLS, CELLS),
            chance.choice(list(Severity)),
            rule=chance.choice(("unsupported", "booster-unpowered")),
        )
        for _ in range(count)
    ]


def scene_with(markers: Markers) -> Scene:
    scene = Scene(Layout(EMPTY_PLAN), PieceIndex())
    scene.show_markers(markers)
    return scene


def frame(scene: Scene, view: Viewport) -> QImage:
    image = QImage(SIZE, SIZE, QImage.Format.Format_RGB32)
    image.fill(0xFFFFFFFF)
    painter = QPainter(image)
    seen, manners = view.area(0, 0, SIZE, SIZE), Manners(themes.theme("light"), True, True, 1.0)
    scene.prepare(view, seen, LEVEL, manners, Patience())
    scene.paint_markers(painter, view, seen, LEVEL, manners)
    painter.end()
    return image


@pytest.mark.parametrize("scale", ZOOM_STEPS)
def test_mended_markers_equal_markers_painted_anew(qapp: QApplication, scale: int) -> None:
    chance = random.Random(scale)
    findings = drawn_by_lot(chance, 1_500)
    markers, view = Markers(findings), Viewport(scale, SIZE // 2, SIZE // 2)
    scene = scene_with(markers)
    before = first = frame(scene, view)
    for _ in range(3):
        near = [each for each in findings if abs(each.cells[0].x) + abs(each.cells[0].z) < SIZE / scale / 2]
        gone, come = chance.sample(near, min(60, len(near))), drawn_by_lot(chance, 40)
        difference = Difference(tuple(gone), tuple(come))
        for each in gone:
            findings.remove(each)
        findings += come
        markers.follow(difference)
        scene.follow_markers(marked_cells(difference))
        before = frame(scene, view)
        assert before == frame(scene_with(Markers(findings)), view)
    assert before != first  # control


@pytest.mark.parametrize("scale", FAR_OUT)
def test_far_out_the_gravest_of_many_stands_for_them(qapp: QApplication, scale: int) -> None:
    """Two errors among warnings, one of them far from the other: both are seen, as if alone."""
    graver = [found(1, 1, Severity.ERROR), found(45, 33, Severity.ERROR)]
    view = Viewport(scale, 20, 20)
    near = [
        found(x, z, Severity.WARNING)
        for error in graver
        for x, z in ((error.cells[0].x ^ dx, error.cells[0].z ^ dz) for dx, dz in ((0, 1), (1, 0), (1, 1)))
    ]
    assert frame(scene_with(Markers(near + graver)), view) == frame(scene_with(Markers(graver)), view)
    assert frame(scene_with(Markers(near)), view) != frame(scene_with(Markers(graver)), view)  # control


@pytest.mark.parametrize("scale", [scale for scale in ZOOM_STEPS if scale < SMALL_BELOW])
def test_notes_and_what_is_set_aside_are_not_seen_from_afar(qapp: QApplication, scale: int) -> None:
    quiet = [found(3, 3, Severity.NOTE), found(5, 5, Severity.ERROR, waived=True)]
    view = Viewport(scale, 20, 20)
    assert frame(scene_with(Markers(quiet)), view) == frame(scene_with(Markers()), view)


def test_buckets_hold_what_is_in_an_area(qapp: QApplication) -> None:
    findings = drawn_by_lot(random.Random(5), 400)
    markers, area = Markers(findings), Area(-20, -3, 11, 30)
    marked = dict(each for bucket in markers.buckets_in(area, LEVEL) for each in bucket.near())
    here = {cell: marker for cell, marker in marked.items() if area.holds(cell.x, cell.z)}
    everywhere = markers.on_level(LEVEL).items()
    assert here == {cell: marker for cell, marker in everywhere if area.holds(cell.x, cell.z)}
    assert len(here) > 10
