"""The markers of findings on the plan view."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache, partial
from math import ceil
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPixmap

from app.canvas.geometry import Area, Viewport
from app.canvas.markers import BUCKET, Marked, Marker, Markers
from app.canvas.symbols import draw_marker
from app.canvas.symbols.markers import LARGE, SMALL, marker_rect
from app.canvas.tiles import Stroke, Tile
from app.theme import Theme
from model.grid import Cell, Heading
from model.rules import Finding

NAMES_FROM: Final = 40
"""px a cell from which switches carry their names."""
SMALL_BELOW: Final = 20
"""px a cell below which markers are small, and only errors and warnings are marked."""
INWARD: Final = 4
"""px from the cell's north-east corner to the middle of the marker."""
CLEAR_OF_NAME: Final = 12
"""px instead, where a switch's name begins beside that corner."""
FURTHEST: Final = 40
"""px from the cell's north-east corner that a marker with its count reaches at most."""
KINDS_KEPT: Final = 256
"""Pictures of markers, a few hundred bytes each."""

Named = Mapping[Cell, Heading]
"""The switches that carry a name, with the side on which their drive stands."""


def reach(scale: int) -> int:
    """How many cells away from its own it is seen that a marker is there."""
    return ceil(FURTHEST / scale) + _side(scale)


def marker_strokes(tile: Tile, part: Area, markers: Markers, named: Named, theme: Theme) -> Iterator[Stroke]:
    """Draw all markers that are seen in a part of a tile."""
    area, side = part.grown(reach(tile.scale)), _side(tile.scale)
    for bucket in markers.buckets_in(area, tile.level):
        if tile.scale < SMALL_BELOW:
            shown = bucket.from_afar(side)
        else:
            shown = [(cell, marker) for cell, marker in bucket.near() if area.holds(cell.x, cell.z)]
        if shown:
            yield partial(_paint_markers, tile, shown, named, theme)


def _side(scale: int) -> int:
    """Cells along the side of a square of which one marker is shown, so that markers cover no others."""
    return next(side for side in (1, 2, 4, 8, BUCKET) if side * scale >= SMALL)


def _paint_markers(tile: Tile, shown: list[Marked], named: Named, theme: Theme, painter: QPainter) -> None:
    view = Viewport(tile.scale, -tile.area.west * tile.scale, -tile.area.north * tile.scale)
    px = SMALL if tile.scale < SMALL_BELOW else LARGE
    for cell, marker in shown:
        middle = marker_middle(cell, named, view)
        draw_kept_marker(painter, middle.x(), middle.y(), marker, theme, px)


def draw_kept_marker(
    painter: QPainter, x: float, y: float, marker: Marker, theme: Theme, px: float = LARGE
) -> None:
    """A marker with its middle at (x, y), drawn once and then kept."""
    picture, corner = _marker_pixmap(marker, px, painter.device().devicePixelRatioF(), theme)
    painter.drawPixmap(QPointF(x, y) + corner, picture)


@lru_cache(maxsize=KINDS_KEPT)
def _marker_pixmap(marker: Marker, px: float, ratio: float, theme: Theme) -> tuple[QPixmap, QPointF]:
    """A marker on nothing, and where its corner stands from its middle."""
    room = QRectF(marker_rect(px, marker.count).toAlignedRect())
    picture = QPixmap(ceil(room.width() * ratio), ceil(room.height() * ratio))
    picture.setDevicePixelRatio(ratio)
    picture.fill(Qt.GlobalColor.transparent)
    painter = QPainter(picture)
    severity = marker.severity.value
    middle = -room.topLeft()
    draw_marker(painter, middle.x(), middle.y(), severity, theme, px, aside=marker.aside, count=marker.count)
    painter.end()
    return picture, room.topLeft()


def paint_leaders(
    painter: QPainter, finding: Finding, named: Named, level: int, view: Viewport, theme: Theme
) -> None:
    """Narrow lines from the marker of the chosen finding to its other cells."""
    if finding.at is None or finding.at.y != level:
        return
    start = marker_middle(finding.at, named, view)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setPen(QPen(theme.ink, 1))
    for cell in finding.cells[1:]:
        if cell.y == level:
            left, top = view.corner(cell.x, cell.z)
            painter.drawLine(start, QPointF(left + view.scale / 2, top + view.scale / 2))
    painter.restore()


def marker_middle(cell: Cell, named: Named, view: Viewport) -> QPointF:
    """The middle of a cell's marker, in widget pixels."""
    right, top = view.corner(cell.x + 1, cell.z)
    inward = CLEAR_OF_NAME if view.scale >= NAMES_FROM and _begins_a_name(cell, named) else INWARD
    return QPointF(right - inward, top + INWARD)


def _begins_a_name(cell: Cell, named: Named) -> bool:
    """Whether a name stands just east of a cell's north-east corner, below it or above it."""
    east = cell.step(Heading.EAST)
    return named.get(east) is Heading.NORTH or named.get(east.step(Heading.NORTH)) is Heading.SOUTH
