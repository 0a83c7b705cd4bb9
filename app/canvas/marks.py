"""Marks over the plan: the ring of the chosen, the band, the probes, the keyboard's cursor."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import Final

from PySide6.QtCore import QPointF, QRect, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from app.canvas.geometry import Area, Viewport, area_between
from app.canvas.symbols import Ring, draw_cursor, draw_ring, ring_of
from app.theme import Theme
from model.grid import Cell

PROBES_FROM: Final = 12
"""px a cell from which probes are marked."""
PROBE: Final = ((0.0, 0.0), (-12.0, 5.0), (-5.0, 12.0))
"""px from the point of a probe's mark to its corners."""
PROBE_AT: Final = 15.0
"""px from the cell's south-west corner to the point, in both directions."""


def paint_probes(
    painter: QPainter, cells: Iterable[Cell], level: int, seen: Area, view: Viewport, theme: Theme
) -> None:
    """A point that comes in from the south-west corner of each cell that is watched."""
    if view.scale < PROBES_FROM:
        return
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    # On small cells the mark must leave the symbol to be seen.
    size = min(1.0, max(0.5, view.scale / 40))
    painter.setPen(QPen(theme.paper, 2 * size, j=Qt.PenJoinStyle.RoundJoin))
    painter.setBrush(theme.ink)
    for cell in cells:
        if cell.y == level and seen.holds(cell.x, cell.z):
            left, top = view.corner(cell.x, cell.z)
            x, y = left + PROBE_AT * size, top + view.scale - PROBE_AT * size
            painter.drawPolygon(QPolygonF([QPointF(x + dx * size, y + dy * size) for dx, dy in PROBE]))
    painter.restore()


def paint_ring(painter: QPainter, cells: frozenset[Cell], level: int, view: Viewport, theme: Theme) -> None:
    """The ring about the chosen cells of a level."""
    ring = _ring(cells, level)
    if ring is not None:
        draw_ring(painter, view.origin_x, view.origin_y, view.scale, ring, theme)


@lru_cache(maxsize=2)
def _ring(cells: frozenset[Cell], level: int) -> Ring | None:
    """What is chosen may be very many cells, and stays the same for many frames."""
    squares = {(cell.x, cell.z) for cell in cells if cell.y == level}
    return ring_of(squares) if squares else None


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
