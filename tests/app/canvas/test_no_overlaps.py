"""Tags, names and markers of the three examples overlap nowhere at 12, 24, 32 and 48 px a cell."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtWidgets import QApplication

import resources
from app.canvas.arms import shown_tags
from app.canvas.findings_layer import NAMES_FROM, SMALL_BELOW, marker_middle
from app.canvas.geometry import Viewport
from app.canvas.looks import name_sides
from app.canvas.markers import Markers
from app.canvas.symbols.markers import LARGE, SMALL
from app.canvas.symbols.rails import NAME_PLACES, free_side
from model.files.plan_file import read_plan
from model.grid import Cell
from model.routing.junction import Junction
from model.rules import Severity, find_all

EXAMPLES = sorted((Path(resources.__file__).parent / "examples").glob("*.plan.json"))
EM = 0.20
"""Height of a name's letters, in cells."""


def test_there_are_three_examples() -> None:
    assert len(EXAMPLES) == 3


@pytest.mark.parametrize("scale", [12, 24, 32, 48])
@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.name)
def test_nothing_overlaps(qapp: QApplication, path: Path, scale: int) -> None:
    junction = Junction(read_plan(path))
    view = Viewport(scale, 5000, 5000)
    levels = {piece.at.y for piece in junction.plan.pieces}
    for level in levels:
        boxes = [(tag.tag.arm, tag.rect) for tag in shown_tags(junction.plan.arms, level, view)]
        boxes += marker_boxes(junction, level, view)
        if scale >= NAMES_FROM:
            boxes += name_boxes(junction, level, view)
        for (one, a), (other, b) in combinations(boxes, 2):
            assert not a.intersects(b), f"{one} over {other} at {scale} px"


def marker_boxes(junction: Junction, level: int, view: Viewport) -> list[tuple[str, QRectF]]:
    small = view.scale < SMALL_BELOW
    side = SMALL if small else LARGE
    boxes = []
    for cell, marker in Markers(find_all(junction)).on_level(level).items():
        if not (small and (marker.severity is Severity.NOTE or marker.aside)):
            middle = marker_middle(cell, name_sides(junction), view)
            # The triangle, the diamond and the circle leave the corners of their square free.
            half = 0.44 * side
            box = QRectF(middle.x() - half, middle.y() - half, 2 * half, 2 * half)
            boxes.append((f"marker at {cell}", box))
    return boxes


def name_boxes(junction: Junction, level: int, view: Viewport) -> list[tuple[str, QRectF]]:
    boxes = []
    for switch in junction.switches:
        if switch.at.y == level:
            x, z, widest = NAME_PLACES[free_side(switch.resting, switch.powered)]
            boxes.append((switch.name, in_cell(view, switch.at, x, z, widest, EM)))
    return boxes


def in_cell(view: Viewport, cell: Cell, x: float, z: float, wide: float, high: float) -> QRectF:
    left, top = view.corner(cell.x, cell.z)
    c = view.scale
    return QRectF(left + (x - wide / 2) * c, top + (z - high / 2) * c, wide * c, high * c)
