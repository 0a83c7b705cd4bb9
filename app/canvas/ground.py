"""The ground of the plan view: paper, grid, and the levels below and above, in tiles."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Final

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter

from app.canvas.geometry import Area
from app.canvas.symbols import Look, Manner, symbol_pixmap
from app.canvas.tiles import Tile
from app.theme import Theme
from model.parts import RAILS
from model.pieces import Piece

GRID_FROM: Final = 6
"""px a cell from which each grid line is drawn; below it each fourth, below 4 px none."""
DOTS_UP_TO: Final = 4
"""px a cell up to which a piece is a single square."""

LookOf = Callable[[Piece], Look]


def paint_grid(painter: QPainter, area: Area, scale: int, theme: Theme) -> None:
    """Paper, and grid lines on the north and west edge of each cell; each fourth stronger."""
    painter.fillRect(QRect(0, 0, area.width * scale, area.height * scale), theme.paper)
    for every, colour in ((1, theme.grid), (4, theme.grid4)):
        if scale * every < GRID_FROM * (2 if every == 4 else 1):
            continue
        for x in range(area.west + (-area.west) % every, area.east + 1, every):
            painter.fillRect((x - area.west) * scale, 0, 1, area.height * scale, colour)
        for z in range(area.north + (-area.north) % every, area.south + 1, every):
            painter.fillRect(0, (z - area.north) * scale, area.width * scale, 1, colour)


def paint_pieces(
    painter: QPainter,
    tile: Tile,
    pieces: Iterable[Piece],
    look: LookOf,
    theme: Theme,
    manner: Manner = Manner.OWN,
) -> None:
    """The pieces of one level, from the tile's north-west corner on; far out a square each."""
    scale, area = tile.scale, tile.area
    if scale <= DOTS_UP_TO:
        _paint_dots(painter, tile, pieces, theme, manner)
        return
    ratio = painter.device().devicePixelRatio()
    for piece in pieces:
        pixmap = symbol_pixmap(look(piece), scale, ratio, theme, manner)
        cell = piece.at
        painter.drawPixmap((cell.x - area.west) * scale, (cell.z - area.north) * scale, pixmap)


def _paint_dots(painter: QPainter, tile: Tile, pieces: Iterable[Piece], theme: Theme, manner: Manner) -> None:
    """Only the level itself is drawn so far out: rails in ink, all else dim."""
    if manner is not Manner.OWN:
        return
    scale, area = tile.scale, tile.area
    for piece in pieces:
        colour = theme.ink if piece.part in RAILS else theme.dim
        painter.fillRect(
            (piece.at.x - area.west) * scale, (piece.at.z - area.north) * scale, scale, scale, colour
        )
