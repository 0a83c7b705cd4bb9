"""A picture of some pieces, for the clipboard."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QImage, QPainter

from app.canvas.geometry import Area, Viewport, fitting_step
from app.canvas.scene import Scene
from app.canvas.symbols import draw_piece
from app.theme import Theme
from model.pieces import Piece

LARGEST: Final = 4096
"""px along a side, at most; larger pictures are drawn at a smaller zoom step."""


def picture_of_pieces(scene: Scene, pieces: tuple[Piece, ...], theme: Theme) -> QImage:
    """The pieces of the highest level among them, from above, in their present shapes."""
    level = max(piece.at.y for piece in pieces)
    shown = [piece for piece in pieces if piece.at.y == level]
    xs, zs = [piece.at.x for piece in shown], [piece.at.z for piece in shown]
    area = Area(min(xs), min(zs), max(xs), max(zs))
    scale = fitting_step(area, LARGEST, LARGEST)
    view = Viewport(scale, -area.west * scale, -area.north * scale)
    corner = QPoint(min(area.width * scale, LARGEST), min(area.height * scale, LARGEST))
    image = QImage(corner.x(), corner.y(), QImage.Format.Format_RGB32)
    image.fill(theme.paper)
    painter = QPainter(image)
    painter.setPen(Qt.PenStyle.NoPen)
    for piece in shown:
        draw_piece(painter, *view.corner(piece.at.x, piece.at.z), scale, scene.looks.look(piece), theme)
    painter.end()
    return image
