"""The ring of the chosen, and the square of the keyboard's cursor."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Set
from typing import NamedTuple

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from app.theme import Theme

GAP = 1
"""px between a cell and its ring."""
CLOSE_UP_TO = 4
"""px a cell up to which the ring is one px, close about its cells: a wider one would hide those beside."""
BRACKET = 2
TICK = 7

Square = tuple[int, int]
"""A cell of the shown level, as (x, z)."""


class Side(NamedTuple):
    """Cells in a line, none of which has a chosen neighbour on that side."""

    x: int
    z: int
    length: int
    dx: int
    dz: int
    """Outward."""
    opens_low: bool
    """Whether the ring turns inward where the line begins: another chosen cell lies slantwise outward."""
    opens_high: bool


class Ring(NamedTuple):
    """What is drawn about some cells, at whatever size."""

    sides: tuple[Side, ...]
    west: int
    north: int
    east: int
    south: int


def ring_of(chosen: Set[Square]) -> Ring:
    """The ring about the union of the cells, of which there must be one."""
    xs, zs = {x for x, _ in chosen}, {z for _, z in chosen}
    return Ring(tuple(_sides(chosen)), min(xs), min(zs), max(xs) + 1, max(zs) + 1)


def draw_ring(
    painter: QPainter, origin_x: float, origin_y: float, c: float, ring: Ring, theme: Theme
) -> None:
    """A ring about the union of the cells, and ink brackets about its bounds; on paper the brackets only."""
    gap, width = (0, 1) if c <= CLOSE_UP_TO else (GAP, max(2, round(c / 12)))
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    if theme.pick is not None:
        for side in ring.sides:
            painter.fillRect(_bar(side, c, gap, width).translated(origin_x, origin_y), theme.pick)
    out = gap + (width if theme.pick is not None else 0)
    wide, deep = (ring.east - ring.west) * c, (ring.south - ring.north) * c
    bounds = QRectF(origin_x + ring.west * c, origin_y + ring.north * c, wide, deep)
    for bracket in _brackets(bounds.adjusted(-out, -out, out, out), min(10.0, max(4.0, round(0.22 * c)))):
        painter.fillRect(bracket, theme.ink)
    painter.restore()


def _sides(chosen: Set[Square]) -> Iterator[Side]:
    for dx, dz in ((0, -1), (1, 0), (0, 1), (-1, 0)):
        bare = {(x, z) for x, z in chosen if (x + dx, z + dz) not in chosen}
        ax, az = abs(dz), abs(dx)
        for x, z in bare:
            if (x - ax, z - az) in bare:
                continue
            length = 1
            while (x + length * ax, z + length * az) in bare:
                length += 1
            low, high = (x - ax, z - az), (x + length * ax, z + length * az)
            opens = [(end[0] + dx, end[1] + dz) in chosen for end in (low, high)]
            yield Side(x, z, length, dx, dz, *opens)


def _bar(side: Side, c: float, gap: int, width: int) -> QRectF:
    """Outside its cells, long enough to close the corners."""
    left, top = side.x * c, side.z * c
    low, high = (-gap if opens else gap + width for opens in (side.opens_low, side.opens_high))
    long = low + side.length * c + high
    if side.dz:
        return QRectF(left - low, top - gap - width if side.dz < 0 else top + c + gap, long, width)
    return QRectF(left - gap - width if side.dx < 0 else left + c + gap, top - low, width, long)


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
