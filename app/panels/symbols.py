"""The symbols of the drawing where panels show them; there is no second set."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter

from app.canvas.symbols.look import Look, look_of
from app.canvas.symbols.pieces import draw_piece
from app.theme import Theme
from model.parts import Part
from model.pieces import Piece
from model.track.shapes import Shape


def paint_part(painter: QPainter, rect: QRect, piece: Piece, theme: Theme) -> None:
    """A part at rest in a square; a plain rail as the curve that it alone can be."""
    look = look_of(piece)
    if piece.part is Part.RAIL:
        look = replace(look, shape=Shape.SOUTH_EAST)
    draw_piece(painter, rect.left(), rect.top(), rect.width(), look, theme)


def paint_shape(painter: QPainter, rect: QRect, shape: Shape, theme: Theme) -> None:
    """A plain rail in a shape, in a cell with a thin edge."""
    painter.setPen(theme.edge)
    painter.drawRect(rect.adjusted(-1, -1, 0, 0))
    draw_piece(painter, rect.left(), rect.top(), rect.width(), Look(Part.RAIL, shape=shape), theme)
