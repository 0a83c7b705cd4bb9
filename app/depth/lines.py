"""What is drawn of some pieces of one level, before it is laid on a tilted plane.

The symbols that lie flat are gathered into one path a style. They are drawn in the order in which a symbol
draws its own strokes; cells do not overlap, so it does not matter which of two cells comes first.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import lru_cache
from typing import Final, NamedTuple

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from app.canvas.symbols import Look, Size
from app.canvas.symbols.size import Detail
from app.depth.recording import Letters, Recording, Style, recorded, recorded_fitting
from app.depth.ties import Tie
from app.theme import Theme
from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.track.shapes import Shape

KEPT_SYMBOLS: Final = 4096
STANDING: Final = frozenset({Part.TORCH, Part.LEVER, Part.BUTTON})
"""Parts that are drawn upright where they stand on a block; on a wall or under a block they lie flat."""
STANDING_SIDE: Final = 0.72
"""Of an upright symbol, as part of a cell: the cell behind it stays in sight."""
LEVEL_SHAPES: Final = {True: Shape.NORTH_SOUTH, False: Shape.EAST_WEST}
"""By whether a rising rail runs north and south."""


class Slope(NamedTuple):
    """A rail that leads up to the next level."""

    at: Cell
    rises_to: Heading
    fitting: Recording | None
    """What a booster or detector has on its line."""


class Upright(NamedTuple):
    """A symbol that stands on its cell and faces who looks."""

    at: Cell
    symbol: Recording


class LevelLines:
    """The marks of some pieces of one level, in units from the north-west corner of ``west``, ``north``."""

    def __init__(self, west: int, north: int, size: Size, theme: Theme) -> None:
        self.west, self.north = west, north
        self._size, self._theme = size, theme
        self._paths: dict[tuple[int, Style], QPainterPath] = {}
        self.cover = QPainterPath()
        """The cells in which something stands: they hide what is below them."""
        self.letters: list[Letters] = []
        self.slopes: list[Slope] = []
        self.uprights: list[Upright] = []
        self.ties: list[Tie] = []

    def add(self, at: Cell, look: Look) -> None:
        """A piece as it looks."""
        c = self._size.c
        corner = QPointF((at.x - self.west) * c, (at.z - self.north) * c)
        self.cover.addRect(QRectF(corner.x(), corner.y(), c, c))
        rises_to = None if look.shape is None else look.shape.rises_to
        if rises_to is not None:
            self.slopes.append(self._slope(at, rises_to, look))
        elif self._stands(look):
            self.uprights.append(Upright(at, _upright(look, self._size, self._theme)))
        else:
            self._lay(corner, _flat(look, self._size, self._theme))

    def in_order(self) -> Iterable[tuple[Style, QPainterPath]]:
        """The flat paths, the lowest first."""
        ranked = sorted(self._paths, key=lambda key: key[0])
        return ((key[1], self._paths[key]) for key in ranked)

    def _lay(self, corner: QPointF, symbol: Recording) -> None:
        for rank, (path, style) in enumerate(symbol.strokes):
            self._paths.setdefault((rank, style), QPainterPath()).addPath(path.translated(corner))
        self.letters += (letters._replace(at=letters.at + corner) for letters in symbol.letters)

    def _stands(self, look: Look) -> bool:
        return look.part in STANDING and look.facing is Facing.UP and self._size.detail > Detail.LINES

    def _slope(self, at: Cell, rises_to: Heading, look: Look) -> Slope:
        if look.part is Part.RAIL or self._size.detail <= Detail.LINES:
            return Slope(at, rises_to, None)
        level = replace(look, shape=LEVEL_SHAPES[rises_to.lies_north_south])
        return Slope(at, rises_to, _fitting(level, self._size, self._theme))


@lru_cache(maxsize=KEPT_SYMBOLS)
def _flat(look: Look, size: Size, theme: Theme) -> Recording:
    return recorded(look, size, theme)


@lru_cache(maxsize=KEPT_SYMBOLS)
def _upright(look: Look, size: Size, theme: Theme) -> Recording:
    """The symbol as if it faced north, north being up: a torch gives its signal upward."""
    return recorded(replace(look, facing=_FRONT[look.part]), replace(size, c=STANDING_SIDE * size.c), theme)


_FRONT: Final = {Part.TORCH: Facing.NORTH, Part.LEVER: Facing.UP, Part.BUTTON: Facing.UP}
"""A lever or a button that stands has no wall behind it."""


@lru_cache(maxsize=KEPT_SYMBOLS)
def _fitting(look: Look, size: Size, theme: Theme) -> Recording:
    return recorded_fitting(look, size, theme)
