"""The symbols of the drawing where panels show them; there is no second set."""

from __future__ import annotations

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter

from app.canvas.symbols import Look, draw_piece, look_of
from app.theme import Theme
from model.parts import Part
from model.pieces import Piece
from model.track.shapes import Shape


def paint_piece(painter: QPainter, rect: QRect, piece: Piece, theme: Theme) -> None:
    """A piece at rest in a square, as it is set."""
    draw_piece(painter, rect.left(), rect.top(), rect.width(), look_of(piece), theme)


def paint_shape(painter: QPainter, rect: QRect, shape: Shape, theme: Theme) -> None:
    """A plain rail in a shape, in a cell with a thin edge."""
    painter.setPen(theme.edge)
    painter.drawRect(rect.adjusted(-1, -1, 0, 0))
    draw_piece(painter, rect.left(), rect.top(), rect.width(), Look(Part.RAIL, shape=shape), theme)
