"""A plan drawn very small: in lines, or in dots where it has too many rails for these to be told apart."""

from __future__ import annotations

from math import ceil
from typing import Final, NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPainterPath, QPen, QTransform

from model.grid import VECTORS, Cell, Turn
from model.pauses import with_pauses
from model.routing.junction import Junction
from model.track.layout import Layout
from model.track.rails import unpack
from model.track.shapes import Shape

LINE: Final = 1.6
LARGEST: Final = 9.0
"""px a cell at most."""
LINES_UP_TO: Final = 400
"""More rails than this can hardly be told apart at this size, and their lines take long to draw."""
DOTS_ACROSS: Final = 128
"""As many dots the longer side of a picture has at most."""


class MiniPlan(NamedTuple):
    """What is drawn of a plan, x to the right and z downward."""

    box: QRectF
    """All of it, in cells."""
    lines: QPainterPath
    dots: QImage | None = None
    """In place of the lines: 1 where a rail is."""


NOTHING: Final = MiniPlan(QRectF(), QPainterPath())


def mini_plan(layout: Layout) -> MiniPlan:
    """The rails of a plan."""
    if not layout.rails:
        return NOTHING
    if len(layout.rails) > LINES_UP_TO:
        return _in_dots([unpack(key) for key in with_pauses(layout.rails)])
    path = QPainterPath()
    for key, shape in layout.rails.items():
        _add_rail(path, unpack(key), shape)
    return in_lines(path)


def in_lines(path: QPainterPath) -> MiniPlan:
    """Any lines, in cells."""
    return MiniPlan(path.boundingRect(), path)


def mini_plan_of(junction: Junction) -> MiniPlan:
    """The rails of the plan of a junction."""
    return mini_plan(junction.layout)


def paint_mini_plan(painter: QPainter, plan: MiniPlan, turn: Turn, room: QRectF, colour: QColor) -> None:
    """Draw the plan turned, as large as the room lets it be, in its middle."""
    if plan == NOTHING:
        return
    turned = _transform(turn)
    box = turned.mapRect(plan.box)
    scale = min(room.width() / max(box.width(), 1), room.height() / max(box.height(), 1), LARGEST)
    placed = QTransform()
    placed.translate(room.center().x(), room.center().y())
    placed.scale(scale, scale)
    placed.translate(-box.center().x(), -box.center().y())
    painter.save()
    if plan.dots is None:
        _paint_lines(painter, (turned * placed).map(plan.lines), colour)
    else:
        painter.setTransform(turned * placed, True)
        _paint_dots(painter, plan.box, plan.dots, colour)
    painter.restore()


def _paint_lines(painter: QPainter, path: QPainterPath, colour: QColor) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(
        QPen(colour, LINE, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap, Qt.PenJoinStyle.MiterJoin)
    )
    painter.drawPath(path)


def _paint_dots(painter: QPainter, box: QRectF, dots: QImage, colour: QColor) -> None:
    coloured = QImage(dots)
    coloured.setColorTable([0, colour.rgba()])
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    painter.drawImage(box, coloured)


def _in_dots(cells: list[Cell]) -> MiniPlan:
    west, north = min(cell.x for cell in cells), min(cell.z for cell in cells)
    across = max(cell.x for cell in cells) - west + 1
    down = max(cell.z for cell in cells) - north + 1
    step = ceil(max(across, down) / DOTS_ACROSS)
    wide, high = ceil(across / step), ceil(down / step)
    dots = bytearray(wide * high)
    for x, _, z in with_pauses(cells):
        dots[(z - north) // step * wide + (x - west) // step] = 1
    # The copy owns its dots; the image made of them only borrows them.
    image = QImage(bytes(dots), wide, high, wide, QImage.Format.Format_Indexed8).copy()
    image.setColorTable([0, 0xFF000000])  # comparing images without one crashes Qt
    return MiniPlan(QRectF(west, north, wide * step, high * step), QPainterPath(), image)


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
