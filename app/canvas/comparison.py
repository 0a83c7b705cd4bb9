"""What differs from another plan, as marks over the open one.

Placed: an unbroken frame and a plus. Taken away: dashed, crossed, and a minus. Turned, changed, lying
otherwise: a dashed frame, the other plan's rail dashed as the other state of a switch, and a sign.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Final

from PySide6.QtCore import QLineF, Qt
from PySide6.QtGui import QPainter, QPen

from app.canvas.geometry import Area, Viewport
from app.canvas.ground import DOTS_UP_TO
from app.canvas.looks import Looks
from app.canvas.symbols import Look, draw_cross, draw_former, screen
from app.canvas.symbols.differences import draw_difference_sign
from app.canvas.symbols.stage import OTHER_DASH
from app.theme import Theme
from model.comparing import Difference, Kind
from model.grid import Cell
from model.track.layout import Layout

SIGNS_FROM: Final = 32
"""px a cell from which cells carry signs."""
SIGN: Final = (0.27, 8, 13)
"""The width of a sign, in cells, and its least and greatest in px."""
INWARD: Final = 2
"""px from the cell's north-west corner to its sign."""
SIDES: Final = ((0, -1), (1, 0), (0, 1), (-1, 0))


@dataclass(frozen=True)
class ComparisonPicture:
    """What is drawn of a comparison."""

    title: str = ""
    """Of the chip; empty while none is shown."""
    levels: Mapping[int, Mapping[Cell, Difference]] = field(default_factory=dict)
    former: Mapping[Cell, Look] = field(default_factory=dict)
    """How the pieces of the other plan look in these cells."""


NO_COMPARISON: Final = ComparisonPicture()


def comparison_picture(title: str, differences: Iterable[Difference], other: Layout) -> ComparisonPicture:
    """What to draw of these differences; ``other`` is the plan with which the open one is compared."""
    levels: dict[int, dict[Cell, Difference]] = {}
    looks, former = Looks(other, {}, {}), {}
    for each in differences:
        levels.setdefault(each.at.y, {})[each.at] = each
        piece = other.plan.pieces.get(each.at)
        if piece is not None:
            former[each.at] = looks.bare(piece)
    return ComparisonPicture(title, levels, former)


def paint_comparison(
    painter: QPainter, picture: ComparisonPicture, level: int, seen: Area, view: Viewport, theme: Theme
) -> None:
    """The marks of a level that are in sight."""
    here = picture.levels.get(level, {})
    found = {cell: each for cell, each in here.items() if seen.holds(cell.x, cell.z)}
    if not found:
        return
    if view.scale > DOTS_UP_TO:
        for cell, each in found.items():
            corner = view.corner(cell.x, cell.z)
            _paint_former(painter, picture.former.get(cell), each, corner, view.scale, theme)
    placed = {cell for cell, each in found.items() if each.kind is Kind.PLACED}
    # On cells that are mere dots a cross has no room; what is taken away is framed there like the rest.
    unframed = {Kind.PLACED, Kind.TAKEN} if view.scale > DOTS_UP_TO else {Kind.PLACED}
    altered = {cell for cell, each in found.items() if each.kind not in unframed}
    _paint_frames(painter, placed, view, _pen(view, theme, dashed=False))
    _paint_frames(painter, altered, view, _pen(view, theme, dashed=True))
    if view.scale >= SIGNS_FROM:
        _paint_signs(painter, found, view, theme)


def _paint_former(
    painter: QPainter,
    look: Look | None,
    found: Difference,
    corner: tuple[int, int],
    scale: int,
    theme: Theme,
) -> None:
    """The piece as the other plan has it, over the one that is drawn; crossed where it goes.

    What is only turned is not drawn twice over itself: nobody could read it.
    """
    if look is not None and not (found.kind is Kind.TURNED and look.shape is None):
        draw_former(painter, *corner, scale, look, theme)
    if found.kind is Kind.TAKEN:
        draw_cross(painter, *corner, scale, theme)


def _paint_signs(painter: QPainter, found: Mapping[Cell, Difference], view: Viewport, theme: Theme) -> None:
    share, least, most = SIGN
    px = max(least, min(most, round(share * view.scale)))
    at = INWARD + px / 2
    for cell, each in found.items():
        left, top = view.corner(cell.x, cell.z)
        draw_difference_sign(painter, left + at, top + at, each.kind, theme, px)


def _pen(view: Viewport, theme: Theme, *, dashed: bool) -> QPen:
    width = screen(view.scale).narrow
    pen = QPen(theme.ink2 if dashed else theme.ink, width, c=Qt.PenCapStyle.SquareCap)
    if dashed:
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        pen.setDashPattern([max(3.0, part * view.scale) / width for part in OTHER_DASH])
    return pen


def _paint_frames(painter: QPainter, cells: set[Cell], view: Viewport, pen: QPen) -> None:
    """The outline of the union of the cells, on the lines of the grid."""
    painter.save()
    painter.setPen(pen)
    painter.drawLines(list(_outline(cells, view)))
    painter.restore()


def _outline(cells: set[Cell], view: Viewport) -> Iterator[QLineF]:
    c = view.scale
    for cell in cells:
        left, top = view.corner(cell.x, cell.z)
        for dx, dz in SIDES:
            if cell.moved(dx, 0, dz) in cells:
                continue
            if dz:
                yield QLineF(left, top + (c if dz > 0 else 0), left + c, top + (c if dz > 0 else 0))
            else:
                yield QLineF(left + (c if dx > 0 else 0), top, left + (c if dx > 0 else 0), top + c)
