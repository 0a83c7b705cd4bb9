"""Square pixmaps of a layer of the plan, painted once and kept until something in them changes."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Collection, Hashable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import chain
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
        return _area(self.scale, self.column, self.row)


def _area(scale: int, column: int, row: int) -> Area:
    side = CELLS_ACROSS[scale]
    west, north = column * side, row * side
    return Area(west, north, west + side - 1, north + side - 1)


Stroke = Callable[[QPainter], None]
"""Paints a few pieces of a tile, from the tile's north-west corner on."""


@dataclass
class _Picture:
    """A tile's picture, and what becomes of it while it is painted anew."""

    shown: QPixmap | None = None
    """As it was when it was last complete; ``None`` also where nothing is drawn in it."""
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
        self,
        strokes: Callable[[Tile, Area], Iterator[Stroke]],
        fill: Callable[[Tile], QColor],
        reach: Callable[[int], int] = lambda _scale: 1,
    ) -> None:
        """``reach``: how many cells beside its own, by zoom step, a changed cell is seen in."""
        self._strokes_of = strokes
        self._fill = fill
        self._reach = reach
        self._pictures: OrderedDict[Tile, _Picture] = OrderedDict()
        self._bytes = 0

    def shown(self, tile: Tile) -> QPixmap | None:
        """The tile's picture; while it is painted anew that of before, if there was one."""
        picture = self._pictures.get(tile)
        return None if picture is None else picture.shown

    def is_bare(self, tile: Tile) -> bool:
        """Whether all of a tile is there, and nothing is drawn in it."""
        picture = self._pictures.get(tile)
        return picture is not None and picture.shown is None and picture.part is None

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
        if picture.drawn is None or self._is_finished(tile, picture, patience):
            self._show(picture)
            return True
        return False

    def forget(self, cells: Collection[Cell], levels: range) -> None:
        """Has the tiles in which one of these cells, or a cell within reach, is drawn painted anew there.

        ``levels`` are added to the cells' own: the levels on which they show.
        """
        if len(cells) > CLEAR_ALL_FROM:
            self.clear()
            return
        columns = {(cell.x, cell.z) for cell in cells}
        heights = {cell.y + level for cell in cells for level in levels}
        scales = {tile.scale for tile in self._pictures}
        touched = _touched_areas(columns, {scale: self._reach(scale) for scale in scales})
        for tile in list(self._pictures):
            part = touched.get((tile.scale, tile.column, tile.row))
            if part is not None and tile.level in heights:
                self._spoil(tile, part)

    def renew(self, cells: Collection[Cell] | None = None) -> None:
        """Has all tiles, or those of these cells, painted anew; until then they are shown as they are."""
        if cells is not None and len(cells) <= CLEAR_ALL_FROM:
            self.forget(cells, range(1))
            return
        for tile in list(self._pictures):
            self._spoil(tile, tile.area)

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
        # With fractional ratios a symbol reaches a part of a pixel into the next cell.
        strokes = self._strokes_of(tile, part.grown(1).within(tile.area))
        first = next(strokes, None)
        shown = None if part == tile.area else picture.shown
        if first is None and shown is None:
            return
        fill = self._fill(tile)
        picture.drawn = _blank(tile, ratio, fill) if shown is None else without(shown, tile, (part,), fill)
        picture.strokes = strokes if first is None else chain((first,), strokes)

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
        self._bytes += _size(picture.drawn) - _size(picture.shown)
        picture.shown = picture.drawn
        picture.drawn = picture.part = picture.strokes = None
        self._drop_oldest()

    def _drop_oldest(self) -> None:
        while self._bytes > KEPT_BYTES and len(self._pictures) > 1:
            self._bytes -= _size(self._pictures.popitem(last=False)[1].shown)


def _touched_areas(
    columns: Iterable[tuple[int, int]], reach: Mapping[int, int]
) -> dict[tuple[int, int, int], Area]:
    """What of which tiles the columns touch that reach so far, by zoom step, column and row of the tile."""
    touched: dict[tuple[int, int, int], Area] = {}
    for scale, far in reach.items():
        side = CELLS_ACROSS[scale]
        for x, z in columns:
            here = Area(x - far, z - far, x + far, z + far)
            for column in range(here.west // side, here.east // side + 1):
                for row in range(here.north // side, here.south // side + 1):
                    key = scale, column, row
                    before = touched.get(key)
                    touched[key] = here if before is None else before.with_area(here)
    return {key: area.within(_area(*key)) for key, area in touched.items()}


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


def _size(pixmap: QPixmap | None) -> int:
    """In bytes."""
    return 0 if pixmap is None else pixmap.width() * pixmap.height() * 4


def tiles_in(area: Area, level: int, scale: int, look: Hashable) -> list[Tile]:
    """The tiles that hold a part of an area."""
    side = CELLS_ACROSS[scale]
    return [
        Tile(level, column, row, scale, look)
        for row in range(area.north // side, area.south // side + 1)
        for column in range(area.west // side, area.east // side + 1)
    ]
