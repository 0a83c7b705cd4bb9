"""Square pixmaps of a layer of the plan, painted once and kept until something in them changes."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable, Iterable
from typing import Final, NamedTuple

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QPainter, QPixmap

from app.canvas.geometry import Area, Viewport
from model.grid import Cell

CELLS_ACROSS: Final = {
    1: 512,
    2: 256,
    4: 128,
    6: 64,
    8: 64,
    12: 32,
    16: 32,
    24: 16,
    32: 16,
    48: 8,
    64: 8,
    96: 4,
}
"""Cells along the side of a tile, by zoom step: 384 or 512 px, a multiple of the fourth grid line."""
KEPT_BYTES: Final = 96_000_000
"""Memory for the tiles of one layer; one screen of 1920 × 1080 px takes about 10 MB."""
CLEAR_ALL_FROM: Final = 2_000
"""From so many changed cells on, finding their tiles costs more than painting what is seen again."""


class Tile(NamedTuple):
    """A tile's place, and what else its picture depends on."""

    level: int
    column: int
    row: int
    scale: int
    look: Hashable
    """Theme, device pixel ratio and the like."""

    @property
    def area(self) -> Area:
        """The cells in it."""
        side = CELLS_ACROSS[self.scale]
        west, north = self.column * side, self.row * side
        return Area(west, north, west + side - 1, north + side - 1)


class TileCache:
    """The tiles of one layer, the least recently seen dropped first."""

    def __init__(self, paint: Callable[[QPainter, Tile], None]) -> None:
        self._paint = paint
        self._pixmaps: OrderedDict[Tile, QPixmap] = OrderedDict()
        self._bytes = 0

    def get(self, tile: Tile, ratio: float) -> QPixmap:
        """The tile's picture."""
        pixmap = self._pixmaps.get(tile)
        if pixmap is None:
            pixmap = self._painted(tile, ratio)
            self._pixmaps[tile] = pixmap
            self._bytes += _size(pixmap)
            self._drop_oldest()
        else:
            self._pixmaps.move_to_end(tile)
        return pixmap

    def forget(self, cells: Iterable[Cell], levels: range) -> None:
        """Drops the tiles in which one of these cells, or a cell beside one, is drawn.

        ``levels`` are added to the cells' own: the levels on which they show.
        """
        columns = {(cell.x + dx, cell.z + dz) for cell in cells for dx, dz in _AROUND}
        heights = {cell.y + level for cell in cells for level in levels}
        if len(columns) > CLEAR_ALL_FROM:
            self.clear()
            return
        touched = {(scale, x // side, z // side) for scale, side in CELLS_ACROSS.items() for x, z in columns}
        for tile in list(self._pixmaps):
            if tile.level in heights and (tile.scale, tile.column, tile.row) in touched:
                self._bytes -= _size(self._pixmaps.pop(tile))

    def clear(self) -> None:
        """Drops all tiles."""
        self._pixmaps.clear()
        self._bytes = 0

    def _painted(self, tile: Tile, ratio: float) -> QPixmap:
        side = round(CELLS_ACROSS[tile.scale] * tile.scale * ratio)
        pixmap = QPixmap(side, side)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        self._paint(painter, tile)
        painter.end()
        return pixmap

    def _drop_oldest(self) -> None:
        while self._bytes > KEPT_BYTES and len(self._pixmaps) > 1:
            self._bytes -= _size(self._pixmaps.popitem(last=False)[1])


_AROUND: Final = ((0, 0), (1, 0), (-1, 0), (0, 1), (0, -1))


def _size(pixmap: QPixmap) -> int:
    return pixmap.width() * pixmap.height() * 4


def tiles_in(area: Area, level: int, scale: int, look: Hashable) -> list[Tile]:
    """The tiles that hold a part of an area."""
    side = CELLS_ACROSS[scale]
    return [
        Tile(level, column, row, scale, look)
        for row in range(area.north // side, area.south // side + 1)
        for column in range(area.west // side, area.east // side + 1)
    ]


def corner_of(tile: Tile, view: Viewport) -> QPoint:
    """Where the tile's north-west corner lies, in widget pixels."""
    return QPoint(*view.corner(tile.area.west, tile.area.north))
