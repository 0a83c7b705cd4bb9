"""The tags of arms: a pentagon whose point shows which way the carts run there."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from app.canvas.symbols.lettering import draw_centred, elided, printable, width
from app.theme import Theme
from model.grid import VECTORS, Heading

WIDEST_EMS = 14.0
"""A longer name is cut."""


class Way(Enum):
    """Whether carts come in or leave at the tag."""

    IN = "in"
    OUT = "out"


@dataclass(frozen=True, slots=True)
class TagSize:
    """The measures of a tag, in the painter's units, from the em of its letters."""

    em: float
    line: float
    """Width of the outline."""

    @property
    def gap(self) -> float:
        """From the end of the track to the tag."""
        return self.em / 3

    @property
    def height(self) -> float:
        """Of the box that holds the letters."""
        return self.em * 5 / 3

    @property
    def point(self) -> float:
        """How far the point stands out of the box."""
        return self.em * 2 / 3


def tag_size(c: float, ratio: float = 1.0) -> TagSize:
    """Letters of 12 px, 9 px below 20 px a cell; measured in px of the painter."""
    return TagSize(9.0 if c < 20 else 12.0, max(1.0, round(1.2 * ratio)) / ratio)


def tag_rect(name: str, x: float, y: float, outward: Heading, size: TagSize) -> QRectF:
    """The space that the tag of a track's end at (x, y) takes, the tag lying in the heading ``outward``."""
    text = width(_shown(name, size), size.em, bold=True)
    wide, high = text + size.em, size.height
    if outward.lies_north_south:
        high += size.point
    else:
        wide += size.point
    dx, dy = VECTORS[outward]
    middle_x = x + dx * (size.gap + wide / 2)
    middle_y = y + dy * (size.gap + high / 2)
    return QRectF(middle_x - wide / 2, middle_y - high / 2, wide, high)


def draw_arm_tag(
    painter: QPainter, x: float, y: float, outward: Heading, name: str, way: Way, size: TagSize, theme: Theme
) -> QRectF:
    """The tag at a track's end at (x, y); returns the space that it takes."""
    rect = tag_rect(name, x, y, outward, size)
    pointing = outward.opposite if way is Way.IN else outward
    points, letters = _pentagon(rect, pointing, size.point)
    filled = way is Way.IN
    _draw_outline(painter, points, size, theme, theme.ink if filled else theme.paper)
    colour = theme.paper if filled else theme.ink
    draw_centred(painter, letters.center(), _shown(name, size), size.em, colour, bold=True)
    return rect


def joined_tag_rect(name: str, x: float, y: float, outward: Heading, size: TagSize) -> QRectF:
    """The space of a joined tag, its middle in line with x, beyond y."""
    wide = width(_shown(name, size), size.em, bold=True) + 3.6 * size.em
    top = y + size.gap if outward is Heading.SOUTH else y - size.gap - size.height
    return QRectF(x - wide / 2, top, wide, size.height)


def draw_joined_tag(
    painter: QPainter,
    x: float,
    y: float,
    outward: Heading,
    name: str,
    in_on: Heading,
    size: TagSize,
    theme: Theme,
) -> QRectF:
    """Both tags of an arm to the north or south in one, (x, y) lying between its two ends of track.

    A filled head stands on the side (``in_on``, east or west) where carts come in, an open one opposite.
    """
    rect = joined_tag_rect(name, x, y, outward, size)
    corners = [rect.topLeft(), rect.topRight(), rect.bottomRight(), rect.bottomLeft()]
    _draw_outline(painter, corners, size, theme, theme.paper)
    draw_centred(painter, rect.center(), _shown(name, size), size.em, theme.ink, bold=True)
    from_edge = 0.9 * size.em
    for side, edge in ((Heading.WEST, rect.left() + from_edge), (Heading.EAST, rect.right() - from_edge)):
        comes_in = side is in_on
        _draw_head(painter, QPointF(edge, rect.center().y()), outward, comes_in, size, theme)
    return rect


def _draw_head(
    painter: QPainter, middle: QPointF, outward: Heading, comes_in: bool, size: TagSize, theme: Theme
) -> None:
    down = (outward is Heading.SOUTH) != comes_in
    r = 0.36 * size.em * (1 if down else -1)
    points = [QPointF(-abs(r), -r), QPointF(abs(r), -r), QPointF(0, r)]
    _draw_outline(
        painter, [middle + point for point in points], size, theme, theme.ink if comes_in else theme.paper
    )


def _shown(name: str, size: TagSize) -> str:
    return elided(printable(name), size.em, WIDEST_EMS * size.em, bold=True)


def _pentagon(rect: QRectF, pointing: Heading, point: float) -> tuple[list[QPointF], QRectF]:
    """The five corners, and the box that is left for the letters."""
    left, top, right, bottom = rect.left(), rect.top(), rect.right(), rect.bottom()
    if pointing is Heading.EAST:
        box = rect.adjusted(0, 0, -point, 0)
        corners = [
            (left, top),
            (right - point, top),
            (right, rect.center().y()),
            (right - point, bottom),
            (left, bottom),
        ]
    elif pointing is Heading.WEST:
        box = rect.adjusted(point, 0, 0, 0)
        corners = [
            (right, top),
            (left + point, top),
            (left, rect.center().y()),
            (left + point, bottom),
            (right, bottom),
        ]
    elif pointing is Heading.NORTH:
        box = rect.adjusted(0, point, 0, 0)
        corners = [
            (left, bottom),
            (left, top + point),
            (rect.center().x(), top),
            (right, top + point),
            (right, bottom),
        ]
    else:
        box = rect.adjusted(0, 0, 0, -point)
        corners = [
            (left, top),
            (left, bottom - point),
            (rect.center().x(), bottom),
            (right, bottom - point),
            (right, top),
        ]
    return [QPointF(x, y) for x, y in corners], box


def _draw_outline(
    painter: QPainter, points: list[QPointF], size: TagSize, theme: Theme, fill: QColor
) -> None:
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setPen(QPen(theme.ink, size.line, j=Qt.PenJoinStyle.MiterJoin))
    painter.setBrush(fill)
    painter.drawPolygon(QPolygonF(points))
    painter.restore()
