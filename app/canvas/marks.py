"""Marks over the plan: the ring of the chosen, the band, the keyboard's cursor."""

from __future__ import annotations

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter, QPen

from app.canvas.geometry import Area, Viewport, area_between
from app.canvas.symbols import draw_cursor, draw_ring
from app.theme import Theme
from model.grid import Cell


def paint_ring(
    painter: QPainter, cells: frozenset[Cell], level: int, seen: Area, view: Viewport, theme: Theme
) -> None:
    """The ring about the chosen cells of a level, as far as they are in sight."""
    near = seen.grown(1)
    squares = [(cell.x, cell.z) for cell in cells if cell.y == level and near.holds(cell.x, cell.z)]
    draw_ring(painter, view.origin_x, view.origin_y, view.scale, squares, theme)


def paint_band(painter: QPainter, corners: tuple[Cell, Cell], view: Viewport, theme: Theme) -> None:
    """The band around what is being chosen."""
    area = area_between(*corners)
    left, top = view.corner(area.west, area.north)
    painter.save()
    painter.setPen(QPen(theme.ink, 1))
    painter.drawRect(QRect(left, top, area.width * view.scale - 1, area.height * view.scale - 1))
    painter.restore()


def paint_cursor(painter: QPainter, cell: Cell, view: Viewport, theme: Theme) -> None:
    """The keyboard's cursor."""
    draw_cursor(painter, *view.corner(cell.x, cell.z), view.scale, theme)
