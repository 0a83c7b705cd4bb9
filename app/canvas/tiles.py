"""Square pixmaps of a layer of the plan, painted once and kept until something in them changes."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Collection, Hashable, Iterable, Iterator
from dataclasses import dataclass
from typing import Final, NamedTuple

from PySide6.QtCore import QRect
from PySide6.QtGui import QColor, QPainter, QPixmap

from app.canvas.geometry import Area
from app.canvas.patience import Patience
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
CLEAR_ALL_FROM: Final = 500
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


Stroke = Callable[[QPainter], None]
"""Paints a few pieces of a tile, from the tile's north-west corner on."""


@dataclass
class _Picture:
    """A tile's picture, and what becomes of it while it is painted anew."""

    shown: QPixmap | None = None
    """As it was when it was last complete."""
    drawn: QPixmap | None = None
    """What is being painted, to take its place."""
    part: Area | None = None
    """The cells that are to be painted; ``None``: nothing is missing."""
    strokes: Iterator[Stroke] | None = None
    """What of that is still to be painted; ``None``: it has not begun."""


class TileCache:
    """The tiles of one layer, the least recently seen dropped first.

    A tile is painted stroke by stroke, so that a frame need not wait for all of it; of a tile that
    changed only the changed cells are painted anew.
    """

    def __init__(
        self, strokes: Callable[[Tile, Area], Iterator[Stroke]], fill: Callable[[Tile], QColor]
    ) -> None:
        self._strokes_of = strokes
        self._fill = fill
        self._pictures: OrderedDict[Tile, _Picture] = OrderedDict()
        self._bytes = 0

    def shown(self, tile: Tile) -> QPixmap | None:
        """The tile's picture; while it is painted anew that of before, if there was one."""
        picture = self._pictures.get(tile)
        return None if picture is None else picture.shown

    def work(self, tile: Tile, ratio: float, patience: Patience) -> bool:
        """Paints what is missing of a tile while the patience lasts; whether all of it is there."""
        picture = self._pictures.get(tile)
        if picture is None:
            picture = self._pictures[tile] = _Picture(part=tile.area)
        self._pictures.move_to_end(tile)
        if picture.part is None:
            return True
        if patience.is_over:
            return False
        if picture.strokes is None:
            self._begin(tile, picture, picture.part, ratio)
        if self._is_finished(tile, picture, patience):
            self._show(picture)
            return True
        return False

    def forget(self, cells: Collection[Cell], levels: range) -> None:
        """Has the tiles in which one of these cells, or a cell beside one, is drawn painted anew there.

        ``levels`` are added to the cells' own: the levels on which they show.
        """
        if len(cells) > CLEAR_ALL_FROM:
            self.clear()
            return
        columns = {(cell.x + dx, cell.z + dz) for cell in cells for dx, dz in _AROUND}
        heights = {cell.y + level for cell in cells for level in levels}
        touched = _touched_areas(columns, {tile.scale for tile in self._pictures})
        for tile in list(self._pictures):
            part = touched.get((tile.scale, tile.column, tile.row))
            if part is not None and tile.level in heights:
                self._spoil(tile, part)

    def clear(self) -> None:
        """Drops all tiles."""
        self._pictures.clear()
        self._bytes = 0

    def _spoil(self, tile: Tile, part: Area) -> None:
        picture = self._pictures[tile]
        if picture.shown is None:
            del self._pictures[tile]
            return
        picture.part = part if picture.part is None else picture.part.with_area(part)
        picture.drawn = picture.strokes = None

    def _begin(self, tile: Tile, picture: _Picture, part: Area, ratio: float) -> None:
        fill = self._fill(tile)
        shown = picture.shown
        drawn = _blank(tile, ratio, fill) if shown is None else without(shown, tile, (part,), fill)
        # With fractional ratios a symbol reaches a part of a pixel into the next cell.
        around = part.grown(1).within(tile.area)
        picture.drawn, picture.strokes = drawn, self._strokes_of(tile, around)

    def _is_finished(self, tile: Tile, picture: _Picture, patience: Patience) -> bool:
        assert picture.drawn is not None
        assert picture.strokes is not None
        assert picture.part is not None
        painter = _painter_on(picture.drawn, tile, picture.part)
        try:
            for stroke in picture.strokes:
                stroke(painter)
                if patience.is_over:
                    return False
            return True
        finally:
            painter.end()

    def _show(self, picture: _Picture) -> None:
        assert picture.drawn is not None
        if picture.shown is None:
            self._bytes += _size(picture.drawn)
        picture.shown = picture.drawn
        picture.drawn = picture.part = picture.strokes = None
        self._drop_oldest()

    def _drop_oldest(self) -> None:
        while self._bytes > KEPT_BYTES and len(self._pictures) > 1:
            shown = self._pictures.popitem(last=False)[1].shown
            self._bytes -= 0 if shown is None else _size(shown)


_AROUND: Final = ((0, 0), (1, 0), (-1, 0), (0, 1), (0, -1))


def _touched_areas(
    columns: Iterable[tuple[int, int]], scales: Iterable[int]
) -> dict[tuple[int, int, int], Area]:
    """What of which tiles the columns touch, by zoom step, column and row of the tile."""
    touched: dict[tuple[int, int, int], Area] = {}
    for scale in scales:
        side = CELLS_ACROSS[scale]
        for x, z in columns:
            key = scale, x // side, z // side
            here = Area(x, z, x, z)
            before = touched.get(key)
            touched[key] = here if before is None else before.with_area(here)
    return touched


def without(pixmap: QPixmap, tile: Tile, parts: Iterable[Area], fill: QColor) -> QPixmap:
    """A copy of a tile's picture without what is drawn in some parts of it."""
    copy = pixmap.copy()
    painter = QPainter(copy)
    painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_Source)
    for part in parts:
        painter.fillRect(rect_of(tile, part), fill)
    painter.end()
    return copy


def rect_of(tile: Tile, part: Area) -> QRect:
    """A part of a tile, in px from its north-west corner."""
    scale, area = tile.scale, tile.area
    left, top = (part.west - area.west) * scale, (part.north - area.north) * scale
    return QRect(left, top, part.width * scale, part.height * scale)


def _blank(tile: Tile, ratio: float, fill: QColor) -> QPixmap:
    side = round(CELLS_ACROSS[tile.scale] * tile.scale * ratio)
    pixmap = QPixmap(side, side)
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(fill)
    return pixmap


def _painter_on(pixmap: QPixmap, tile: Tile, part: Area) -> QPainter:
    painter = QPainter(pixmap)
    painter.setClipRect(rect_of(tile, part))
    return painter


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
