"""A frame does not wait for tiles: it shows stand-ins, and frame by frame the picture becomes whole."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QApplication

from app import theme as themes
from app.canvas.geometry import ZOOM_STEPS, Viewport
from app.canvas.index import PieceIndex
from app.canvas.patience import Patience
from app.canvas.scene import Manners, Scene
from app.canvas.view import PlanView
from app.document import Document
from model.edits import erase, place_all
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.track.layout import Layout
from tests.app.canvas.conftest import LEVEL

SIZE = 400
NO_PATIENCE = 0.0


def crossings() -> Plan:
    """Rails in a lattice, so that many are switches, with blocks under them and lamps above."""
    rails = [(x, z) for x in range(40) for z in range(40) if x % 5 == 0 or z % 3 == 0]
    return plan_of(
        [Piece(Part.SOLID_BLOCK, Cell(x, LEVEL - 1, z)) for x, z in rails]
        + [Piece(Part.RAIL, Cell(x, LEVEL, z), Facing.NORTH) for x, z in rails]
        + [Piece(Part.LAMP, Cell(x, LEVEL + 1, x), Facing.NORTH) for x in range(40)]
    )


def scene_of(layout: Layout) -> Scene:
    return Scene(layout, PieceIndex(layout.plan.pieces))


def frame(scene: Scene, view: Viewport, seconds: float | None = None) -> QImage:
    image = QImage(SIZE, SIZE, QImage.Format.Format_RGB32)
    image.fill(0)
    painter = QPainter(image)
    seen, manners = view.area(0, 0, SIZE, SIZE), Manners(themes.theme("light"), True, True, 1.0)
    patience = Patience() if seconds is None else Patience(seconds)
    scene.prepare(view, seen, LEVEL, manners, patience)
    scene.paint_ground(painter, view, seen, LEVEL, manners)
    scene.paint_pieces(painter, view, seen, LEVEL, manners, frozenset())
    painter.end()
    return image


@pytest.mark.parametrize("scale", [2, 6, 24])
def test_hasty_frames_end_in_the_picture_of_a_patient_one(qapp: QApplication, scale: int) -> None:
    layout = Layout(crossings())
    view = Viewport(scale, -7, 5)
    whole = frame(scene_of(layout), view)
    scene = scene_of(layout)
    hasty = frame(scene, view, NO_PATIENCE)
    assert not scene.is_whole
    assert hasty != whole  # control: a stand-in is seen
    frames = 0
    while not scene.is_whole:
        # A few strokes a frame.
        hasty = frame(scene, view, 0.0002)
        frames += 1
        assert frames < 10_000
    assert hasty == whole


@pytest.mark.parametrize("scale", ZOOM_STEPS)
def test_mended_tiles_equal_tiles_painted_anew(qapp: QApplication, scale: int) -> None:
    layout = Layout(crossings())
    scene = scene_of(layout)
    view = Viewport(scale, 3, 5)
    before = frame(scene, view)
    for change in (
        erase(layout.plan, [Cell(0, LEVEL, 2), Cell(0, LEVEL - 1, 2)]),
        place_all(layout.plan, [Piece(Part.RAIL, Cell(1, LEVEL, 1)), Piece(Part.GLASS, Cell(2, LEVEL, 2))]),
    ):
        scene.index.follow(change)
        scene.follow(change, layout.follow(change))
        after = frame(scene, view)
        assert after == frame(scene_of(layout), view)
        assert after != before  # control
        before = after


def test_a_picture_taken_of_the_view_is_whole(view: PlanView, document: Document) -> None:
    document.load(crossings(), None)
    view.navigator.show(Viewport(8, 40, 40))
    view.grab()
    assert view.scene.is_whole
