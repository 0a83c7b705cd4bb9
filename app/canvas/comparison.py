"""What differs from another plan, as marks over the open one.

Placed: an unbroken frame and a plus. Taken away: dashed, crossed, and a minus. Turned, changed, lying
otherwise: a dashed frame, the other plan's rail dashed as the other state of a switch, and a sign.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
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
from app.comparing.differences import Differences
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
FRAMED: Final = {Kind.PLACED}
ALTERED: Final = {Kind.TURNED, Kind.CHANGED, Kind.RESHAPED}

Square = tuple[int, int]
"""A cell of the shown level, as (x, z)."""


@dataclass(frozen=True)
class ComparisonPicture:
    """What is drawn of a comparison."""

    title: str = ""
    """Of the chip; empty while none is shown."""
    differences: Differences = field(default_factory=Differences)
    other: Layout | None = None
    """The other plan as built."""

    def former(self, cell: Cell) -> Look | None:
        """How the piece of the other plan looks; ``None`` where it has none."""
        piece = None if self.other is None else self.other.plan.pieces.get(cell)
        return None if self.other is None or piece is None else Looks(self.other, {}, {}).bare(piece)


NO_COMPARISON: Final = ComparisonPicture()


def paint_comparison(
    painter: QPainter, picture: ComparisonPicture, level: int, seen: Area, view: Viewport, theme: Theme
) -> None:
    """The marks of a level that are in sight."""
    here = picture.differences.on_level(level)
    found = {cell: each for cell, each in here.items() if seen.holds(cell.x, cell.z)}
    if not found:
        return
    if view.scale > DOTS_UP_TO:
        for cell, each in found.items():
            corner = view.corner(cell.x, cell.z)
            _paint_former(painter, picture.former(cell), each, corner, view.scale, theme)
    _paint_frames(painter, _squares(found, FRAMED), view, _pen(view, theme, dashed=False))
    # On cells that are mere dots a cross has no room; what is taken away is framed there like the rest.
    altered = ALTERED if view.scale > DOTS_UP_TO else {*ALTERED, Kind.TAKEN}
    _paint_frames(painter, _squares(found, altered), view, _pen(view, theme, dashed=True))
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


def _squares(found: Mapping[Cell, Difference], kinds: set[Kind]) -> set[Square]:
    return {(cell.x, cell.z) for cell, each in found.items() if each.kind in kinds}


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


def _paint_frames(painter: QPainter, squares: set[Square], view: Viewport, pen: QPen) -> None:
    """The outline of the union of the cells, on the lines of the grid."""
    painter.save()
    painter.setPen(pen)
    painter.drawLines(list(_outline(squares, view)))
    painter.restore()


def _outline(squares: set[Square], view: Viewport) -> Iterator[QLineF]:
    for x, z in squares:
        left, top = view.corner(x, z)
        right, bottom = left + view.scale, top + view.scale
        if (x, z - 1) not in squares:
            yield QLineF(left, top, right, top)
        if (x + 1, z) not in squares:
            yield QLineF(right, top, right, bottom)
        if (x, z + 1) not in squares:
            yield QLineF(left, bottom, right, bottom)
        if (x - 1, z) not in squares:
            yield QLineF(left, top, left, bottom)
