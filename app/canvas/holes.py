"""Tiles without the pieces that a ghost hides, kept as long as it hides the same ones."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPixmap

from app.canvas.geometry import Area
from app.canvas.tiles import CELLS_ACROSS, Tile, TileCache, without
from model.grid import Cell

_Place = tuple[int, int, int]
"""Level, column and row of a tile."""


class Holes:
    """Gives the tiles of a layer with holes in them."""

    def __init__(self, tiles: TileCache) -> None:
        self._tiles = tiles
        self._hidden: frozenset[Cell] = frozenset()
        self._scale = 0
        self._by_place: dict[_Place, list[Cell]] = {}
        self._made: dict[Tile, tuple[QPixmap, QPixmap]] = {}

    def shown(self, tile: Tile, hidden: frozenset[Cell]) -> QPixmap | None:
        """The tile's picture without the hidden cells; ``None`` where it is not painted yet."""
        whole = self._tiles.shown(tile)
        if whole is None:
            return None
        if hidden is not self._hidden or tile.scale != self._scale:
            self._hide(hidden, tile.scale)
        cells = self._by_place.get((tile.level, tile.column, tile.row))
        return whole if cells is None else self._with_holes(tile, whole, cells)

    def _hide(self, hidden: frozenset[Cell], scale: int) -> None:
        self._hidden, self._scale = hidden, scale
        self._by_place, self._made = {}, {}
        side = CELLS_ACROSS[scale]
        for cell in hidden:
            place = cell.y, cell.x // side, cell.z // side
            self._by_place.setdefault(place, []).append(cell)

    def _with_holes(self, tile: Tile, whole: QPixmap, cells: list[Cell]) -> QPixmap:
        made_of, made = self._made.get(tile, (None, whole))
        if made_of is not whole:
            areas = [Area(cell.x, cell.z, cell.x, cell.z) for cell in cells]
            made = without(whole, tile, areas, QColor(Qt.GlobalColor.transparent))
            self._made[tile] = whole, made
        return made
