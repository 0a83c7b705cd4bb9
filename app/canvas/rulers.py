"""The rulers along the top (x) and the left (z), the corner between them, and the north arrow."""

from __future__ import annotations

from functools import lru_cache
from math import ceil
from typing import Final

from PySide6.QtCore import QPointF, QRect, Qt
from PySide6.QtGui import QColor, QPainter, QPixmap

from app.canvas.geometry import Area, Viewport
from app.canvas.symbols import draw_north
from app.canvas.symbols.lettering import draw_centred, width
from app.theme import Theme
from model.grid import Cell

TOP: Final = 22
"""Height of the ruler of x, in px."""
LEFT: Final = 28
"""Width of the ruler of z, in px."""
FIGURE: Final = 11
FIGURES_KEPT: Final = 2_000
"""A few hundred bytes each; panning far goes over thousands."""
NORTH_ROOM: Final = 34
"""px from the middle of the north arrow that it needs, with its letter."""
STEPS: Final[tuple[int, ...]] = (1, *(4**n for n in range(1, 13)))
"""Cells from one figure to the next."""


def paint_rulers(painter: QPainter, size: QRect, view: Viewport, own: Cell, theme: Theme) -> None:
    """Both rulers over the edges of the widget, the figures of ``own`` in reverse."""
    painter.fillRect(QRect(0, 0, size.width(), TOP), theme.panel)
    painter.fillRect(QRect(0, 0, LEFT, size.height()), theme.panel)
    seen = view.area(LEFT, TOP, size.width(), size.height())
    _paint_columns(painter, size, view, seen, own.x, theme)
    _paint_rows(painter, size, view, seen, own.z, theme)
    painter.fillRect(QRect(0, 0, LEFT, TOP), theme.panel)
    draw_centred(painter, QPointF(LEFT / 2, TOP / 2), "z x", 9, theme.ink2)
    painter.fillRect(QRect(0, TOP - 1, size.width(), 1), theme.edge)
    painter.fillRect(QRect(LEFT - 1, 0, 1, size.height()), theme.edge)


def paint_north(painter: QPainter, size: QRect, theme: Theme) -> None:
    """The north arrow at the top right."""
    picture = _north(painter.device().devicePixelRatioF(), theme)
    painter.drawPixmap(size.width() - 35 - NORTH_ROOM, TOP + 41 - NORTH_ROOM, picture)


@lru_cache(maxsize=4)
def _north(ratio: float, theme: Theme) -> QPixmap:
    """The north arrow in the middle of a square, drawn once and then kept."""
    picture = _nothing(2 * NORTH_ROOM, 2 * NORTH_ROOM, ratio)
    painter = QPainter(picture)
    draw_north(painter, NORTH_ROOM, NORTH_ROOM, 15, 1.5, theme)
    painter.end()
    return picture


@lru_cache(maxsize=FIGURES_KEPT)
def _figure(number: int, stands: bool, rgba: int, ratio: float) -> QPixmap:
    """A figure in the middle of a picture, drawn once; one that stands is read from the right."""
    long, high = 2 * ceil(_wide(number) / 2) + 2, 2 * FIGURE
    picture = _nothing(*((high, long) if stands else (long, high)), ratio)
    painter = QPainter(picture)
    painter.translate(
        picture.deviceIndependentSize().width() / 2, picture.deviceIndependentSize().height() / 2
    )
    painter.rotate(-90 if stands else 0)
    draw_centred(painter, QPointF(0, 0), figures(number), FIGURE, QColor.fromRgba(rgba))
    painter.end()
    return picture


def _nothing(wide: int, high: int, ratio: float) -> QPixmap:
    picture = QPixmap(round(wide * ratio), round(high * ratio))
    picture.setDevicePixelRatio(ratio)
    picture.fill(Qt.GlobalColor.transparent)
    return picture


def _draw_figure(painter: QPainter, middle: QPointF, number: int, theme: Theme, stands: bool = False) -> None:
    picture = _figure(number, stands, theme.ink2.rgba(), painter.device().devicePixelRatioF())
    size = picture.deviceIndependentSize()
    painter.drawPixmap(round(middle.x() - size.width() / 2), round(middle.y() - size.height() / 2), picture)


def figures(number: int) -> str:
    """A coordinate with the true minus sign."""
    return f"{number}".replace("-", "\u2212")


def _paint_columns(
    painter: QPainter, size: QRect, view: Viewport, seen: Area, own: int, theme: Theme
) -> None:
    every = _step(view.scale, max(_wide(seen.west), _wide(seen.east)) + 6, view.scale < 12)
    for x in range(seen.west + (-seen.west) % every, seen.east + 1, every):
        middle = QPointF(view.corner(x, 0)[0] + view.scale / 2, TOP / 2 - 0.5)
        if _is_whole(middle.x(), _wide(x), LEFT, size.width()):
            _draw_figure(painter, middle, x, theme)
    if seen.west <= own <= seen.east:
        left = view.corner(own, 0)[0]
        wide = max(view.scale, round(_wide(own)) + 10)
        box = QRect(left + (view.scale - wide) // 2, 0, wide, TOP - 1)
        _paint_own(painter, box.intersected(QRect(LEFT, 0, size.width(), TOP)), own, theme)


def _paint_rows(painter: QPainter, size: QRect, view: Viewport, seen: Area, own: int, theme: Theme) -> None:
    longest = max(_wide(seen.north), _wide(seen.south))
    # Figures too long for the ruler stand on end; they would shrink to dots.
    stands = longest > LEFT - 3
    every = _step(view.scale, longest + 6 if stands else FIGURE + 5, view.scale < 12)
    for z in range(seen.north + (-seen.north) % every, seen.south + 1, every):
        middle = QPointF((LEFT - 1) / 2, view.corner(0, z)[1] + view.scale / 2)
        if _is_whole(middle.y(), _wide(z) if stands else FIGURE, TOP, size.height()):
            _draw_figure(painter, middle, z, theme, stands)
    if seen.north <= own <= seen.south:
        top = view.corner(0, own)[1]
        high = max(view.scale, round(_wide(own)) + 10 if stands else FIGURE + 5)
        box = QRect(0, top + (view.scale - high) // 2, LEFT - 1, high)
        box = box.intersected(QRect(0, TOP, LEFT, size.height()))
        painter.fillRect(box, theme.ink)
        _draw_own_row(painter, _middle(box), own, theme.paper, stands)


def _draw_own_row(painter: QPainter, middle: QPointF, z: int, colour: QColor, stands: bool) -> None:
    painter.save()
    painter.translate(middle)
    if stands:
        painter.rotate(-90)
    widest = None if stands else LEFT - 3
    draw_centred(painter, QPointF(0, 0), figures(z), FIGURE, colour, bold=True, widest=widest)
    painter.restore()


def _paint_own(painter: QPainter, box: QRect, own: int, theme: Theme) -> None:
    painter.fillRect(box, theme.ink)
    draw_centred(painter, _middle(box), figures(own), FIGURE, theme.paper, bold=True, widest=box.width() - 2)


def _is_whole(middle: float, extent: float, low: int, high: int) -> bool:
    """Whether a figure lies all on its ruler; of one that is cut, the rest would be read as another."""
    return middle - extent / 2 >= low and middle + extent / 2 <= high


def _middle(box: QRect) -> QPointF:
    return QPointF(box.x() + box.width() / 2, box.y() + box.height() / 2)


def _wide(number: int) -> float:
    return width(figures(number), FIGURE)


def _step(scale: int, room: float, far_out: bool) -> int:
    """The closest figures that do not touch; far out no closer than each fourth cell."""
    return next(step for step in STEPS if step * scale >= room and not (far_out and step == 1))
