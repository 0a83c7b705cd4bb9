"""A plan drawn very small, in lines only."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import islice
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QTransform

from model.grid import VECTORS, Cell, Turn
from model.track.layout import Layout
from model.track.rails import unpack
from model.track.shapes import Shape

LINE: Final = 1.6
RAIL_LIMIT: Final = 4_000
"""More rails than this cannot be told apart at this size, and take too long to draw."""


def thinned_shapes(layout: Layout) -> dict[Cell, Shape]:
    """All rails of a plan; of a very large one every n-th, which still shows where its track runs."""
    every = max(1, len(layout.rails) // RAIL_LIMIT)
    return {unpack(key): shape for key, shape in islice(layout.rails.items(), 0, None, every)}


def line_path(shapes: Mapping[Cell, Shape]) -> QPainterPath:
    """The middle lines of rails, in cells, x to the right and z downward."""
    path = QPainterPath()
    for cell, shape in shapes.items():
        _add_rail(path, cell, shape)
    return path


def paint_line_path(painter: QPainter, path: QPainterPath, turn: Turn, room: QRectF, colour: QColor) -> None:
    """Draw the lines turned, as large as the room lets them, in its middle."""
    turned = _transform(turn).map(path)
    box = turned.boundingRect()
    if path.isEmpty():
        return
    scale = min(room.width() / max(box.width(), 1), room.height() / max(box.height(), 1), 9.0)
    placed = QTransform()
    placed.translate(room.center().x(), room.center().y())
    placed.scale(scale, scale)
    placed.translate(-box.center().x(), -box.center().y())
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(
        QPen(colour, LINE, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap, Qt.PenJoinStyle.MiterJoin)
    )
    painter.drawPath(placed.map(turned))
    painter.restore()


def _add_rail(path: QPainterPath, cell: Cell, shape: Shape) -> None:
    (ax, az), (bx, bz) = (VECTORS[end.heading] for end in shape.ends)
    middle = QPointF(cell.x + 0.5, cell.z + 0.5)
    start = middle + QPointF(ax / 2, az / 2)
    goal = middle + QPointF(bx / 2, bz / 2)
    path.moveTo(start)
    if shape.is_curve:
        path.quadTo(middle, goal)
    else:
        path.lineTo(goal)


def _transform(turn: Turn) -> QTransform:
    """The same turn as for cells, for points."""
    mirror = QTransform.fromScale(-1 if turn.mirror else 1, 1)
    return mirror * QTransform().rotate(90 * turn.quarter)
