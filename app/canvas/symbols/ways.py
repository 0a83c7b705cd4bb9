"""The way of a cart: a band along its path, with chevrons in its heading."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from enum import Enum
from itertools import pairwise
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QPolygonF, QTransform

from app.canvas.symbols.size import Detail, Size
from app.theme import Theme
from model.grid import VECTORS, Cell, Heading

HALF_BAND = 0.22
CALLED_DASH = (0.125, 0.083)
CHEVRON_EVERY = 4
"""Cells from one chevron to the next, at least."""


class WayKind(Enum):
    """Whose way it is."""

    IDLE = "idle"
    CALLED = "called"


class Lane(Enum):
    """Which part of the band a way takes: from and to, in cells to the right of its heading."""

    WHOLE = (-HALF_BAND, HALF_BAND)
    LEFT = (-HALF_BAND, 0.0)
    RIGHT = (0.0, HALF_BAND)


class WayStep(NamedTuple):
    """A cell of a way, with the cart's heading as it comes in and as it leaves."""

    cell: Cell
    enter: Heading
    leave: Heading
    plain: bool
    """Whether a chevron may stand here: no switch, booster or detector."""
    lane: Lane = Lane.WHOLE


class Ground(NamedTuple):
    """What a way is drawn on: where x = z = 0 lies, the size of a cell, the level shown."""

    painter: QPainter
    origin_x: float
    origin_y: float
    size: Size
    theme: Theme
    level: int

    def point(self, cell: Cell, x: float, y: float) -> QPointF:
        """A point in a cell, given in cells from the cell's middle."""
        c = self.size.c
        return QPointF(self.origin_x + (cell.x + 0.5 + x) * c, self.origin_y + (cell.z + 0.5 + y) * c)


def way_steps(
    path: Sequence[Cell], enter: Heading, leave: Heading, plain: Callable[[Cell], bool]
) -> list[WayStep]:
    """The steps of a path that is entered in the heading ``enter`` and left in ``leave``."""
    between = [_heading(a, b) for a, b in pairwise(path)]
    headings = [enter, *between, leave]
    return [WayStep(cell, headings[i], headings[i + 1], plain(cell)) for i, cell in enumerate(path)]


def side_by_side(idle: list[WayStep], called: list[WayStep]) -> tuple[list[WayStep], list[WayStep]]:
    """The two ways, sharing the cells that both pass: the called one on the right of its heading."""
    by_cell = {step.cell: step for step in idle}
    shared = {step.cell: step for step in called if step.cell in by_cell}
    lanes = [
        step._replace(lane=_other_lane(step, shared[step.cell])) if step.cell in shared else step
        for step in idle
    ]
    return lanes, [step._replace(lane=Lane.RIGHT) if step.cell in shared else step for step in called]


class WayMark(NamedTuple):
    """A path that belongs to a way, with how it is drawn."""

    path: QPainterPath
    pen: QPen | None = None
    fill: QColor | None = None

    def draw(self, painter: QPainter, plane: QTransform | None = None) -> None:
        """Draws it, tilted onto a plane where one is given; the pen is never tilted."""
        painter.setPen(Qt.PenStyle.NoPen if self.pen is None else self.pen)
        painter.setBrush(Qt.BrushStyle.NoBrush if self.fill is None else self.fill)
        painter.drawPath(self.path if plane is None else plane.map(self.path))


def draw_way(ground: Ground, steps: Sequence[WayStep], kind: WayKind, *, barred: bool = False) -> None:
    """The band: wash and two edges. ``barred``: a bar across its end, as the way ends off an arm."""
    _draw(ground.painter, band_marks(ground, steps, kind, barred=barred))


def draw_chevrons(ground: Ground, steps: Sequence[WayStep], kind: WayKind) -> None:
    """One chevron for an empty cart, two for a called one; on straight plain cells, from 20 px."""
    _draw(ground.painter, chevron_marks(ground, steps, kind))


def _draw(painter: QPainter, marks: Iterable[WayMark]) -> None:
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    for mark in marks:
        mark.draw(painter)
    painter.restore()


def band_marks(
    ground: Ground, steps: Sequence[WayStep], kind: WayKind, *, barred: bool = False
) -> Iterator[WayMark]:
    """What ``draw_way`` draws, the lowest first."""
    yield wash_mark(ground, [step for step in steps if step.cell.y == ground.level], kind)
    if ground.size.detail > Detail.LINES:
        yield from _edges(ground, steps, kind)
    if barred and steps and steps[-1].cell.y == ground.level:
        yield _bar(ground, steps[-1])


def chevron_marks(ground: Ground, steps: Sequence[WayStep], kind: WayKind) -> Iterator[WayMark]:
    """What ``draw_chevrons`` draws, the lowest first."""
    if ground.size.detail < Detail.FIGURES:
        return
    for step in _chevron_steps(steps):
        if step.cell.y == ground.level:
            yield from _chevron(ground, step, (0.0,) if kind is WayKind.IDLE else (-0.11, 0.11))


def _hue(ground: Ground, kind: WayKind) -> QColor:
    return ground.theme.idle if kind is WayKind.IDLE else ground.theme.called


def _heading(a: Cell, b: Cell) -> Heading:
    return Heading(VECTORS.index((b.x - a.x, b.z - a.z)))


def _other_lane(idle: WayStep, called: WayStep) -> Lane:
    """The lane that the called way leaves free, seen in the idle cart's own heading."""
    return Lane.RIGHT if idle.enter is called.enter.opposite else Lane.LEFT


def wash_mark(ground: Ground, steps: Iterable[WayStep], kind: WayKind) -> WayMark:
    """The inside of the band alone."""
    band = QPainterPath()
    band.setFillRule(Qt.FillRule.WindingFill)
    for step in steps:
        left, right = step.lane.value
        cell = QPainterPath()
        _add_edge(cell, ground, step, left)
        back = QPainterPath()
        _add_edge(back, ground, step, right)
        cell.connectPath(back.toReversed())
        cell.closeSubpath()
        band.addPath(cell)
    wash = QColor(_hue(ground, kind))
    wash.setAlphaF(ground.theme.wash)
    return WayMark(band, fill=wash)


def _edges(ground: Ground, steps: Sequence[WayStep], kind: WayKind) -> Iterator[WayMark]:
    """Both edges of the band, each as one stroke so that dashes run on from cell to cell."""
    width = 0.75 * ground.size.narrow if not ground.size.snaps else max(0.75 * ground.size.narrow, 1.0)
    pen = QPen(
        _hue(ground, kind), width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap, Qt.PenJoinStyle.MiterJoin
    )
    if kind is WayKind.CALLED:
        pen.setDashPattern([max(part * ground.size.c, 3 * ground.size.unit) / width for part in CALLED_DASH])
    for side in (0, 1):
        edge = QPainterPath()
        before: WayStep | None = None
        for step in steps:
            if step.cell.y == ground.level:
                joined = before is not None and before.cell.y == ground.level and before.lane is step.lane
                _add_edge(edge, ground, step, step.lane.value[side], joined)
            before = step
        yield WayMark(edge, pen)


def _add_edge(path: QPainterPath, ground: Ground, step: WayStep, right: float, joined: bool = False) -> None:
    """The line through a cell that runs ``right`` cells to the right of the cart."""
    enter, leave = VECTORS[step.enter], VECTORS[step.leave]
    enter_side, leave_side = VECTORS[step.enter.clockwise], VECTORS[step.leave.clockwise]
    start = (-0.5 * enter[0] + right * enter_side[0], -0.5 * enter[1] + right * enter_side[1])
    if not joined:
        path.moveTo(ground.point(step.cell, *start))
    if step.leave in (step.enter, step.enter.opposite):
        path.lineTo(
            ground.point(
                step.cell, 0.5 * leave[0] + right * leave_side[0], 0.5 * leave[1] + right * leave_side[1]
            )
        )
        return
    turns_right = step.leave is step.enter.clockwise
    corner = ground.point(step.cell, 0.5 * (leave[0] - enter[0]), 0.5 * (leave[1] - enter[1]))
    r = (0.5 - right if turns_right else 0.5 + right) * ground.size.c
    rect = QRectF(corner.x() - r, corner.y() - r, 2 * r, 2 * r)
    path.arcTo(rect, _angle(step.leave) + 180, -90 if turns_right else 90)


def _angle(heading: Heading) -> int:
    """Counted as Qt counts arcs: from the east, against the clock."""
    return 90 - 90 * heading


def _bar(ground: Ground, step: WayStep) -> WayMark:
    heading, side = VECTORS[step.leave], VECTORS[step.leave.clockwise]
    ends = [
        ground.point(step.cell, 0.5 * heading[0] + reach * side[0], 0.5 * heading[1] + reach * side[1])
        for reach in (-0.3, 0.3)
    ]
    path = QPainterPath(ends[0])
    path.lineTo(ends[1])
    return WayMark(path, QPen(ground.theme.ink, ground.size.wide, c=Qt.PenCapStyle.FlatCap))


def _chevron_steps(steps: Sequence[WayStep]) -> Iterator[WayStep]:
    since = CHEVRON_EVERY // 2
    for step in steps:
        since += 1
        if since >= CHEVRON_EVERY and step.plain and step.enter is step.leave:
            since = 0
            yield step


def _chevron(ground: Ground, step: WayStep, places: Sequence[float]) -> Iterator[WayMark]:
    heading, side = VECTORS[step.enter], VECTORS[step.enter.clockwise]
    left, right = step.lane.value
    aside, scale = (left + right) / 2, 1.0 if step.lane is Lane.WHOLE else 0.6
    w, path = ground.size.wide, QPainterPath()
    for place in places:
        points = ((place - 0.065, -0.15), (place + 0.065, 0.0), (place - 0.065, 0.15))
        path.addPolygon(
            QPolygonF(
                [
                    ground.point(
                        step.cell,
                        along * heading[0] + (across * scale + aside) * side[0],
                        along * heading[1] + (across * scale + aside) * side[1],
                    )
                    for along, across in points
                ]
            )
        )
    for colour, width in ((ground.theme.paper, 1.9 * w), (ground.theme.ink, 0.8 * w)):
        pen = QPen(colour, width * scale, j=Qt.PenJoinStyle.MiterJoin, c=Qt.PenCapStyle.FlatCap)
        yield WayMark(path, pen)
