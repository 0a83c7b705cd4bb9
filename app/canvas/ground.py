"""The ground of the plan view: paper, grid, and the pieces on it, stroke by stroke."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from itertools import islice
from typing import Final

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter

from app.canvas.geometry import Area
from app.canvas.symbols import Look, Manner, symbol_pixmap
from app.canvas.tiles import Stroke, Tile
from app.theme import Theme
from model.pieces import Piece

GRID_FROM: Final = 6
"""px a cell from which each grid line is drawn; below it each fourth, below 4 px none."""
DOTS_UP_TO: Final = 4
"""px a cell up to which a piece is a single square."""
AT_ONCE: Final = 16
"""Pieces in one stroke, which takes less than a millisecond."""

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


def piece_strokes(
    tile: Tile, pieces: Iterable[Piece], look: LookOf, theme: Theme, manner: Manner = Manner.OWN
) -> Iterator[Stroke]:
    """Draw pieces of one level."""
    left = iter(pieces)
    while some := tuple(islice(left, AT_ONCE)):
        yield partial(_paint_pieces, tile, some, look, theme, manner)


def _paint_pieces(
    tile: Tile, pieces: Iterable[Piece], look: LookOf, theme: Theme, manner: Manner, painter: QPainter
) -> None:
    scale, west, north = tile.scale, tile.area.west, tile.area.north
    ratio = painter.device().devicePixelRatio()
    for piece in pieces:
        pixmap = symbol_pixmap(look(piece), scale, ratio, theme, manner)
        x, _, z = piece.at
        painter.drawPixmap((x - west) * scale, (z - north) * scale, pixmap)
