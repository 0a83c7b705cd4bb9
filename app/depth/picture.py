"""Draws a plan in depth: the lowest level first, each hiding what lies below its pieces.

Line work on plain paper, on screen and on the build sheet alike: the track wide, all else narrow, no shading.
The painter's unit is the px or the mm.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final, NamedTuple

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPainterPath, QPen, QPolygonF, QTransform

from app.canvas.geometry import Area
from app.canvas.symbols import Size
from app.canvas.symbols.lettering import capital, draw_centred, draw_text, width
from app.canvas.symbols.ways import WayMark
from app.depth.lines import STANDING_SIDE, LevelLines, Slope, Upright
from app.depth.projection import Isometric
from app.depth.stack import Stack, corners
from app.depth.ties import Tie
from app.theme import Theme
from model.grid import VECTORS

TIE_DASH: Final = (4.0, 3.0)
"""On and off, in widths of the line."""
FOOT: Final = 0.12
"""How far before the middle of its cell an upright symbol stands, in cells."""
NAME_EM: Final = 0.9
"""Of the names of arms, as part of that of the labels."""
LABEL_GAP: Final = 0.5
"""From the left corner of a level to its label, in ems of the label."""
NUMBERED_FROM, COUNTED_FROM = 1.6, 3.0
"""Ems from one level to the next from which each has its number, and its pieces."""


@dataclass(frozen=True)
class Frame:
    """Where everything lies on the painter."""

    view: Isometric
    stack: Stack
    area: Area
    """The cells within the outline of each level."""
    size: Size
    left: float
    """Where the point x = z = 0 of the lowest level lies, in the painter's units."""
    top: float
    theme: Theme
    em: float
    """Of the labels of levels."""

    def at(self, x: float, height: float, z: float) -> QPointF:
        """A point of space on the painter; ``height`` in cells."""
        right, down = self.view.point(x, height, z)
        return QPointF(self.left + right * self.size.c, self.top + down * self.size.c)

    def on(self, level: int, x: float, z: float) -> QPointF:
        """A point of a level on the painter."""
        return self.at(x, self.stack.height(level), z)

    def plane(self, level: int, x: float, z: float) -> QTransform:
        """Lays what is drawn flat from a point of a level on, in the painter's units."""
        corner = self.on(level, x, z)
        return QTransform(*self.view.plane, corner.x(), corner.y())


class Name(NamedTuple):
    """The name of an arm, about a point of its level."""

    x: float
    z: float
    text: str


class Level(NamedTuple):
    """A level as it is drawn."""

    number: int
    title: str
    note: str
    """Below the title: how many pieces."""
    is_own: bool
    lines: Sequence[LevelLines]
    """The furthest first."""
    names: Sequence[Name] = ()
    chosen: QPainterPath | None = None
    """Squares of the chosen cells, in cells."""
    dots: Sequence[tuple[QImage, Area]] = ()
    """In place of lines, from far out: a pixel a cell, with the cells that it shows."""
    bands: Sequence[WayMark] = ()
    """Of the ways of carts, what lies under the symbols; in the painter's units from x = z = 0."""
    chevrons: Sequence[WayMark] = ()
    """And what lies over them."""


def paint_depth(painter: QPainter, frame: Frame, levels: Iterable[Level]) -> None:
    """All levels, the lowest first."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    shown = list(levels)
    tied = [tie for level in shown for lines in level.lines for tie in lines.ties]
    for index, level in enumerate(shown):
        _paint_outline(painter, frame, level)
        _paint_dots(painter, frame, level)
        _paint_pieces(painter, frame, level)
        _paint_names(painter, frame, level)
        for lines in level.lines:
            for slope in lines.slopes:
                _paint_slope(painter, frame, slope)
        if index + 1 < len(shown):
            _paint_ties(painter, frame, level.number, shown[index + 1].number, tied)
        _paint_label(painter, frame, level)
    painter.restore()


def _paint_outline(painter: QPainter, frame: Frame, level: Level) -> None:
    theme = frame.theme
    colour = theme.ink if level.is_own else theme.dim
    painter.setPen(_pen(colour, frame.size.narrow))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolygon(QPolygonF([frame.on(level.number, x, z) for x, z in corners(frame.area)]))


def _paint_dots(painter: QPainter, frame: Frame, level: Level) -> None:
    for image, area in level.dots:
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, True)
        plane = frame.plane(level.number, area.west, area.north)
        painter.setTransform(QTransform.fromScale(frame.size.c, frame.size.c) * plane, True)
        painter.drawImage(0, 0, image)
        painter.restore()


def _paint_names(painter: QPainter, frame: Frame, level: Level) -> None:
    """Where the arms lead, on patches of paper."""
    em = NAME_EM * frame.em
    for name in level.names:
        at = frame.on(level.number, name.x, name.z)
        wide, high = width(name.text, em, bold=True) + 0.6 * em, 1.5 * em
        painter.fillRect(QRectF(at.x() - wide / 2, at.y() - high / 2, wide, high), frame.theme.paper)
        draw_centred(painter, at, name.text, em, frame.theme.ink, bold=True)


def _paint_pieces(painter: QPainter, frame: Frame, level: Level) -> None:
    planes = [(lines, frame.plane(level.number, lines.west, lines.north)) for lines in level.lines]
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(frame.theme.paper)
    for lines, plane in planes:
        painter.drawPath(plane.map(lines.cover))
    _paint_chosen(painter, frame, level)
    whole = frame.plane(level.number, 0, 0)
    for mark in level.bands:
        mark.draw(painter, whole)
    for lines, plane in planes:
        for style, path in lines.in_order():
            style.use(painter)
            painter.drawPath(plane.map(path))
    for mark in level.chevrons:
        mark.draw(painter, whole)
    for lines, plane in planes:
        for letters in lines.letters:
            at, em = plane.map(letters.at), letters.em
            draw_centred(
                painter, at, letters.text, em, letters.colour, bold=letters.bold, widest=letters.widest
            )
    for lines in level.lines:
        for upright in sorted(lines.uprights, key=lambda one: frame.on(*_place(one)).y()):
            _paint_upright(painter, frame, upright)


def _paint_chosen(painter: QPainter, frame: Frame, level: Level) -> None:
    """A ring about what is chosen, and ink about the ring; what lies inside is paper again."""
    if level.chosen is None:
        return
    size, theme = frame.size, frame.theme
    plane = QTransform.fromScale(size.c, size.c) * frame.plane(level.number, 0, 0)
    path = plane.map(level.chosen)
    rings = [(theme.ink, 3 * size.wide)]
    if theme.pick is not None:
        rings.append((theme.pick, 2 * size.wide))
    for colour, wide in rings:
        painter.setPen(_pen(colour, wide))
        painter.setBrush(theme.paper)
        painter.drawPath(path)
    painter.fillPath(path, theme.paper)


def _place(upright: Upright) -> tuple[int, float, float]:
    """Where it stands: its level, x and z."""
    return upright.at.y, upright.at.x + 0.5, upright.at.z + 0.5


def _paint_upright(painter: QPainter, frame: Frame, upright: Upright) -> None:
    side = STANDING_SIDE * frame.size.c
    foot = frame.on(*_place(upright)) + QPointF(-side / 2, FOOT * frame.size.c - side)
    for path, style in upright.symbol.strokes:
        style.use(painter)
        painter.drawPath(path.translated(foot))
    for letters in upright.symbol.letters:
        at = letters.at + foot
        draw_centred(painter, at, letters.text, letters.em, letters.colour, bold=letters.bold)


def _paint_slope(painter: QPainter, frame: Frame, slope: Slope) -> None:
    """The line of the rail as it leads up, and its trace on the level below it."""
    cell, size = slope.at, frame.size
    dx, dz = VECTORS[slope.rises_to]
    low = frame.on(cell.y, cell.x + 0.5 - dx / 2, cell.z + 0.5 - dz / 2)
    high = frame.on(cell.y + 1, cell.x + 0.5 + dx / 2, cell.z + 0.5 + dz / 2)
    foot = frame.on(cell.y, cell.x + 0.5 + dx / 2, cell.z + 0.5 + dz / 2)
    painter.setPen(_pen(frame.theme.ink2, size.narrow))
    painter.drawLine(QLineF(low, foot))
    painter.setPen(_tie_pen(frame))
    painter.drawLine(QLineF(foot, high))
    painter.setPen(_pen(frame.theme.ink, size.wide))
    painter.drawLine(QLineF(low, high))
    if slope.fitting is not None:
        middle = (frame.stack.height(cell.y) + frame.stack.height(cell.y + 1)) / 2
        corner = frame.at(cell.x, middle, cell.z)
        plane = QTransform(*frame.view.plane, corner.x(), corner.y())
        for path, style in slope.fitting.strokes:
            style.use(painter)
            painter.drawPath(plane.map(path))


def _paint_ties(painter: QPainter, frame: Frame, level: int, above: int, tied: Iterable[Tie]) -> None:
    """From a level to the next one: uprights at the corners in sight, and from what works on what."""
    painter.setPen(_tie_pen(frame))
    places = sorted(corners(frame.area), key=lambda corner: frame.on(level, *corner).y())[1:]
    places += [(t.low.x + 0.5, t.low.z + 0.5) for t in tied if t.low.y <= level < above <= t.high.y]
    painter.drawLines([QLineF(frame.on(level, x, z), frame.on(above, x, z)) for x, z in places])


def _paint_label(painter: QPainter, frame: Frame, level: Level) -> None:
    """At the left corner: the level's number, in reverse for the one drawn on, and its pieces.

    Where levels lie too close for that, only the one drawn on has its number.
    """
    theme, em, apart = frame.theme, frame.em, frame.stack.gap * frame.size.c
    if apart < NUMBERED_FROM * em and not level.is_own:
        return
    point = min((frame.on(level.number, x, z) for x, z in corners(frame.area)), key=QPointF.x)
    right = point.x() - LABEL_GAP * em
    wide, high = width(level.title, em, bold=True), capital(em, bold=True)
    if level.is_own:
        pad = 0.35 * em
        box = QRectF(right - wide - pad, point.y() - high - pad, wide + 2 * pad, high + 2 * pad)
        painter.fillRect(box.translated(-pad, 0), theme.ink)
        right -= pad
    colour = theme.paper if level.is_own else theme.ink
    draw_text(painter, right - wide, point.y(), level.title, em, colour, bold=True)
    if apart >= COUNTED_FROM * em:
        small = 0.85 * em
        left = right - width(level.note, small)
        draw_text(painter, left, point.y() + 1.45 * em, level.note, small, theme.ink2)


def label_width(titles: Iterable[str], em: float) -> float:
    """How much room the widest label takes to the left of its level."""
    return max((width(title, em, bold=True) for title in titles), default=0.0) + 1.5 * em


def paint_north(
    painter: QPainter, middle: QPointF, r: float, line: float, view: Isometric, theme: Theme
) -> None:
    """A needle in a circle that lies as the levels do, and an N that stands beyond its point."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    plane = QTransform(*view.plane, middle.x(), middle.y())
    ring = QPainterPath()
    ring.addEllipse(QPointF(0, 0), r, r)
    painter.setPen(_pen(theme.ink, line))
    painter.setBrush(theme.paper)
    painter.drawPath(plane.map(ring))
    tip, notch = QPointF(0, -0.85 * r), QPointF(0, 0.3 * r)
    for side, fill in ((-1, theme.paper), (1, theme.ink)):
        painter.setBrush(fill)
        painter.drawPolygon(plane.map(QPolygonF([tip, QPointF(side * 0.5 * r, 0.66 * r), notch])))
    beyond = plane.map(QPointF(0, -1.5 * r))
    draw_centred(painter, beyond, "N", 0.85 * r, theme.ink, bold=True)
    painter.restore()


def _pen(colour: QColor, wide: float) -> QPen:
    return QPen(colour, wide, c=Qt.PenCapStyle.FlatCap, j=Qt.PenJoinStyle.MiterJoin)


def _tie_pen(frame: Frame) -> QPen:
    pen = _pen(frame.theme.ink2, frame.size.narrow)
    pen.setDashPattern(list(TIE_DASH))
    return pen
