"""Where the names on the map stand: beside their nodes, clear of lines and of each other where they can be.

All in px of the map view.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import Final, NamedTuple

from PySide6.QtCore import QLineF, QPointF, QRectF

GAP: Final = 5.0
"""px between a symbol and its name."""
LINE: Final = 3.0
"""px that a name keeps clear of the middle of a line."""
ON_A_LABEL: Final = 8
ON_A_NODE: Final = 8
ON_A_LINE: Final = 3
GRID: Final = 96
"""px of the squares in which lines and boxes are looked up."""


class Label(NamedTuple):
    """A text with the room that it takes."""

    text: str
    rect: QRectF
    bold: bool


class Room:
    """What is taken already: boxes and lines, found again by the squares that they touch."""

    def __init__(self) -> None:
        self._nodes: dict[tuple[int, int], list[QRectF]] = {}
        self._labels: dict[tuple[int, int], list[QRectF]] = {}
        self._lines: dict[tuple[int, int], list[QLineF]] = {}

    def take_node(self, rect: QRectF) -> None:
        """The symbol of a node stands there."""
        for square in _squares(rect):
            self._nodes.setdefault(square, []).append(rect)

    def take_label(self, rect: QRectF) -> None:
        """A text stands there."""
        for square in _squares(rect):
            self._labels.setdefault(square, []).append(rect)

    def take_line(self, points: Sequence[QPointF]) -> None:
        """A link runs there."""
        for a, b in pairwise(points):
            line = QLineF(a, b)
            for square in _squares_along(line):
                self._lines.setdefault(square, []).append(line)

    def cost(self, rect: QRectF) -> int:
        """How much a text would cover there."""
        squares = _squares(rect)
        nodes = {id(box) for square in squares for box in self._nodes.get(square, ()) if box.intersects(rect)}
        labels = {
            id(box) for square in squares for box in self._labels.get(square, ()) if box.intersects(rect)
        }
        wider = rect.adjusted(-LINE, -LINE, LINE, LINE)
        lines = {
            id(line) for square in squares for line in self._lines.get(square, ()) if _meets(line, wider)
        }
        return ON_A_NODE * len(nodes) + ON_A_LABEL * len(labels) + ON_A_LINE * len(lines)

    def is_free(self, rect: QRectF) -> bool:
        """Whether neither a symbol nor a text stands there; lines are not asked, which is quick."""
        squares = _squares(rect)
        boxes = (
            box for square in squares for held in (self._nodes, self._labels) for box in held.get(square, ())
        )
        return not any(box.intersects(rect) for box in boxes)

    def best(self, options: Iterable[QRectF]) -> QRectF:
        """The first of the rooms that cover the least; it is taken then."""
        best = min(options, key=self.cost)
        self.take_label(best)
        return best


def around(middle: QPointF, reach: float, wide: float, high: float) -> list[QRectF]:
    """The rooms for a name beside a node that reaches so far: right, left, below, above, then the corners."""
    x, y, far = middle.x(), middle.y(), reach + GAP
    near = reach * 0.75 + GAP / 2
    corners = [
        (x + far, y - high / 2),
        (x - far - wide, y - high / 2),
        (x - wide / 2, y + far),
        (x - wide / 2, y - far - high),
        (x + near, y - near - high + 3),
        (x + near, y + near - 3),
        (x - near - wide, y + near - 3),
        (x - near - wide, y - near - high + 3),
        (x - wide / 2, y + far + high),
        (x - wide / 2, y - far - 2 * high),
    ]
    return [QRectF(left, top, wide, high) for left, top in corners]


def _squares(rect: QRectF) -> list[tuple[int, int]]:
    return [
        (column, row)
        for column in range(int(rect.left() // GRID), int(rect.right() // GRID) + 1)
        for row in range(int(rect.top() // GRID), int(rect.bottom() // GRID) + 1)
    ]


def _squares_along(line: QLineF) -> set[tuple[int, int]]:
    """The squares near a line; one that is only touched at a corner may be left out."""
    steps = int(line.length() / GRID * 4) + 1
    points = (line.pointAt(step / steps) for step in range(steps + 1))
    return {(int(point.x() // GRID), int(point.y() // GRID)) for point in points}


def _meets(line: QLineF, rect: QRectF) -> bool:
    if rect.contains(line.p1()) or rect.contains(line.p2()):
        return True
    sides = (
        QLineF(rect.topLeft(), rect.topRight()),
        QLineF(rect.topRight(), rect.bottomRight()),
        QLineF(rect.bottomRight(), rect.bottomLeft()),
        QLineF(rect.bottomLeft(), rect.topLeft()),
    )
    bounded = QLineF.IntersectionType.BoundedIntersection
    return any(line.intersects(side)[0] == bounded for side in sides)
