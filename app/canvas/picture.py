"""A picture of some pieces, for the clipboard."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QImage, QPainter

from app.canvas.geometry import Area, Viewport, fitting_step
from app.canvas.scene import Scene
from app.canvas.symbols import draw_piece
from app.theme import Theme
from model.parts import RAILS
from model.pauses import with_pauses
from model.pieces import Piece

LARGEST: Final = 4096
"""px along a side, at most; larger pictures are drawn at a smaller zoom step."""

SQUARE: Final = 4
"""px along the side of a square that stands for a piece, at most."""


def picture_of_pieces(scene: Scene, pieces: tuple[Piece, ...], theme: Theme) -> QImage:
    """The pieces of the highest level among them, from above, in their present shapes."""
    shown, area = _highest(pieces)
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


def squares_of_pieces(pieces: tuple[Piece, ...], theme: Theme) -> QImage:
    """The same of very many pieces: a square each, as they are seen from far out. Needs no screen."""
    shown, area = _highest(pieces)
    part = min(1.0, LARGEST / area.width, LARGEST / area.height)
    wide, deep = (max(1, int(length * part)) for length in (area.width, area.height))
    image = QImage(wide, deep, QImage.Format.Format_RGB32)
    image.fill(theme.paper)
    rail, other = theme.ink.rgb(), theme.dim.rgb()
    for piece in with_pauses(shown):
        x, z = int((piece.at.x - area.west) * part), int((piece.at.z - area.north) * part)
        image.setPixel(min(x, wide - 1), min(z, deep - 1), rail if piece.part in RAILS else other)
    times = max(1, min(SQUARE, LARGEST // max(wide, deep)))
    return image.scaled(wide * times, deep * times)


def _highest(pieces: tuple[Piece, ...]) -> tuple[list[Piece], Area]:
    """The pieces of the highest level, and where they lie."""
    level = max(piece.at.y for piece in pieces)
    shown = [piece for piece in pieces if piece.at.y == level]
    xs, zs = [piece.at.x for piece in shown], [piece.at.z for piece in shown]
    return shown, Area(min(xs), min(zs), max(xs), max(zs))
