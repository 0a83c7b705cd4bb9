"""A plan of the help, drawn with the symbols of the canvas."""

from __future__ import annotations

from functools import cache
from typing import Final, NamedTuple

from PySide6.QtCore import QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from app import theme as themes
from app.canvas.arms import paint_tags, shown_tags
from app.canvas.geometry import Viewport
from app.canvas.looks import Looks, switch_marks
from app.canvas.symbols import Look, draw_piece
from app.help.entries import Drawing
from model.grid import Cell
from model.parts import RAILS
from model.plan import Arm
from model.routing.junction import Junction
from model.text_drawing import plan_from_drawing

CELLS: Final = (24, 16, 12, 8)
"""px a cell: the largest at which a drawing has room."""
WIDEST: Final = 500
BESIDE: Final = 76
"""px on the left and right for the tags of arms."""
ABOVE: Final = 38
BARE: Final = 6
"""px around a drawing without arms."""


class _Drawn(NamedTuple):
    looks: tuple[tuple[Cell, Look], ...]
    arms: tuple[Arm, ...]
    level: int
    west: int
    north: int
    scale: int
    size: QSize


class DrawingView(QWidget):
    """The level on which the track lies, at 24 px a cell where there is room."""

    def __init__(self, drawing: Drawing) -> None:
        super().__init__()
        self._drawn = _drawn(drawing.text)
        self.setFixedSize(self._drawn.size)
        # Who cannot see it can have it read in the notation of the drawing.
        self.setAccessibleName(f"{drawing.caption}: {drawing.text}")

    def paintEvent(self, event: QPaintEvent) -> None:
        theme, drawn = themes.current(), self._drawn
        painter = QPainter(self)
        painter.fillRect(self.rect(), theme.paper)
        painter.setPen(theme.edge)
        painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
        view = Viewport(drawn.scale, drawn.west, drawn.north)
        for cell, look in drawn.looks:
            draw_piece(painter, *view.corner(cell.x, cell.z), drawn.scale, look, theme)
        paint_tags(painter, shown_tags(drawn.arms, drawn.level, view), drawn.scale, theme)


@cache
def _drawn(text: str) -> _Drawn:
    """What is seen of a plan in the notation; worked out once, for it never changes."""
    plan = plan_from_drawing(text)
    junction = Junction(plan)
    looks = Looks(junction.layout, switch_marks(junction), {})
    pieces = list(plan.pieces)
    level = next((piece.at.y for piece in pieces if piece.part in RAILS), pieces[-1].at.y)
    shown = [piece for piece in pieces if piece.at.y == level]
    xs, zs = [piece.at.x for piece in shown], [piece.at.z for piece in shown]
    beside, above = (BESIDE, ABOVE) if plan.arms else (BARE, BARE)
    wide, high = max(xs) - min(xs) + 1, max(zs) - min(zs) + 1
    scale = next((cell for cell in CELLS if wide * cell + 2 * beside <= WIDEST), CELLS[-1])
    return _Drawn(
        tuple((piece.at, looks.look(piece)) for piece in shown),
        plan.arms,
        level,
        beside - min(xs) * scale,
        above - min(zs) * scale,
        scale,
        QSize(wide * scale + 2 * beside, high * scale + 2 * above),
    )
