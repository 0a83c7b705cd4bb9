"""The ring of the chosen, and the square of the keyboard's cursor."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from app.theme import Theme

GAP = 1
"""px between a cell and its ring."""
BRACKET = 2
TICK = 7

Square = tuple[int, int]
"""A cell of the shown level, as (x, z)."""


def draw_ring(
    painter: QPainter, origin_x: float, origin_y: float, c: float, cells: Iterable[Square], theme: Theme
) -> None:
    """A ring about the union of the cells, and ink brackets about its bounds; on paper the brackets only."""
    chosen = set(cells)
    if not chosen:
        return
    ring = max(2, round(c / 12))
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    if theme.pick is not None:
        for side in _sides(chosen, c, ring):
            painter.fillRect(side.translated(origin_x, origin_y), theme.pick)
    out = GAP + (ring if theme.pick is not None else 0)
    west, east = min(x for x, _ in chosen), max(x for x, _ in chosen) + 1
    north, south = min(z for _, z in chosen), max(z for _, z in chosen) + 1
    bounds = QRectF(origin_x + west * c, origin_y + north * c, (east - west) * c, (south - north) * c)
    for bracket in _brackets(bounds.adjusted(-out, -out, out, out), min(10.0, max(4.0, round(0.22 * c)))):
        painter.fillRect(bracket, theme.ink)
    painter.restore()


def _sides(chosen: set[Square], c: float, ring: int) -> Iterable[QRectF]:
    """A bar outside each side that has no chosen neighbour, long enough to close the corners."""
    for x, z in chosen:
        left, top = x * c, z * c
        for dx, dz in ((0, -1), (1, 0), (0, 1), (-1, 0)):
            if (x + dx, z + dz) in chosen:
                continue
            low = _reach(chosen, x, z, dx, dz, -1, ring)
            high = _reach(chosen, x, z, dx, dz, 1, ring)
            if dz:
                y = top - GAP - ring if dz < 0 else top + c + GAP
                yield QRectF(left - low, y, c + low + high, ring)
            else:
                y = left - GAP - ring if dx < 0 else left + c + GAP
                yield QRectF(y, top - low, ring, c + low + high)


def _reach(chosen: set[Square], x: int, z: int, dx: int, dz: int, way: int, ring: int) -> int:
    """How far a bar goes past the end of its side: round an outer corner, up to an inner one, or nowhere."""
    ahead = (x + way, z) if dz else (x, z + way)
    if (ahead[0] + dx, ahead[1] + dz) in chosen:
        return -GAP
    return 0 if ahead in chosen else GAP + ring


def _brackets(bounds: QRectF, length: float) -> Iterable[QRectF]:
    for right in (False, True):
        for low in (False, True):
            corner_x = bounds.right() if right else bounds.left()
            corner_y = bounds.bottom() if low else bounds.top()
            outer_x = corner_x if right else corner_x - BRACKET
            outer_y = corner_y if low else corner_y - BRACKET
            yield QRectF(corner_x - length if right else outer_x, outer_y, length + BRACKET, BRACKET)
            yield QRectF(outer_x, corner_y - length if low else outer_y, BRACKET, length + BRACKET)


def draw_cursor(painter: QPainter, x: float, y: float, c: float, theme: Theme) -> None:
    """The cursor on the cell with its corner at (x, y): a square, and a tick outward on each side."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    middle = round(c / 2) - 1
    for rect in (
        QRectF(x, y, c, 2),
        QRectF(x, y + c - 2, c, 2),
        QRectF(x, y, 2, c),
        QRectF(x + c - 2, y, 2, c),
        QRectF(x + middle, y - TICK, 2, TICK),
        QRectF(x + middle, y + c, 2, TICK),
        QRectF(x - TICK, y + middle, TICK, 2),
        QRectF(x + c, y + middle, TICK, 2),
    ):
        painter.fillRect(rect, theme.ink)
    painter.restore()
