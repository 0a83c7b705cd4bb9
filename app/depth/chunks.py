"""The lines of a plan on screen, kept in squares of 16 by 16 cells until something in them changes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Final, NamedTuple

from PySide6.QtGui import QColor, QImage

from app.canvas.geometry import Area
from app.canvas.index import BUCKET
from app.canvas.scene import Scene
from app.canvas.symbols import Look, Size, screen
from app.canvas.symbols.size import Detail
from app.depth.lines import LevelLines
from app.depth.ties import ties
from app.theme import Theme
from model.grid import Cell
from model.parts import RAILS
from model.pieces import Piece

REACH: Final = 2
"""Levels over which a tie or a torch looks: what changes there, changes the lines."""
SIDE: Final = 256
"""Cells along the side of a picture of dots."""


class Chunk(NamedTuple):
    """A square of a level."""

    level: int
    column: int
    row: int

    @property
    def area(self) -> Area:
        """Its cells."""
        west, north = self.column * BUCKET, self.row * BUCKET
        return Area(west, north, west + BUCKET - 1, north + BUCKET - 1)


class Dots(NamedTuple):
    """A square of a level from far out, a pixel a cell: rails in ink, the rest dim."""

    image: QImage
    area: Area


class Chunks:
    """Makes the lines of chunks as the scene of the plan view has the pieces look."""

    def __init__(self, scene: Scene) -> None:
        self._scene = scene
        self._kept: dict[Chunk, LevelLines] = {}
        self._dots: dict[Chunk, Dots | None] = {}
        """``None`` where nothing stands: pieces may lie millions of cells apart."""
        self._size = size_at(24)
        self._theme: Theme | None = None

    def use(self, size: Size, theme: Theme) -> None:
        """Draws in this size from now on."""
        if (size, theme) != (self._size, self._theme):
            if theme != self._theme:
                self._dots.clear()
            self._size, self._theme = size, theme
            self._kept.clear()

    def known(self, chunk: Chunk) -> LevelLines | None:
        """The lines, where they are made already."""
        return self._kept.get(chunk)

    def made(self, chunk: Chunk) -> LevelLines:
        """The lines; makes them where that is still to be done."""
        lines = self._kept.get(chunk)
        if lines is None:
            lines = self._kept[chunk] = self._make(chunk)
        return lines

    def dots(self, seen: Area, level: int) -> Iterator[Dots]:
        """The pictures of dots that show an area of a level."""
        for column, row in self._scene.index.squares_in(seen, level, SIDE):
            square = Chunk(level, column, row)
            if square not in self._dots:
                self._dots[square] = self._dotted(square)
            dots = self._dots[square]
            if dots is not None:
                yield dots

    def forget(self, cells: Iterable[Cell]) -> None:
        """What shows these cells, or looks at them from beside, above or below, is made anew."""
        for cell in cells:
            self._dots.pop(Chunk(cell.y, cell.x // SIDE, cell.z // SIDE), None)
            for dx, dz in _AROUND:
                column, row = (cell.x + dx) // BUCKET, (cell.z + dz) // BUCKET
                for level in range(cell.y - REACH, cell.y + REACH + 1):
                    self._kept.pop(Chunk(level, column, row), None)

    def clear(self) -> None:
        """All is made anew."""
        self._kept.clear()
        self._dots.clear()

    def _make(self, chunk: Chunk) -> LevelLines:
        assert self._theme is not None, "use() comes first"
        area = chunk.area
        lines = LevelLines(area.west, area.north, self._size, self._theme)
        pieces = list(self._scene.index.pieces_in(area, chunk.level))
        looks = [self._look(piece) for piece in pieces]
        for piece, look in zip(pieces, looks, strict=True):
            lines.add(piece.at, look)
        if self._size.detail > Detail.LINES:
            switches = (
                piece.at for piece, look in zip(pieces, looks, strict=True) if look.other_shape is not None
            )
            lines.ties += ties(pieces, self._scene.layout.plan.pieces, switches)
        return lines

    def _dotted(self, square: Chunk) -> Dots | None:
        assert self._theme is not None, "use() comes first"
        west, north = square.column * SIDE, square.row * SIDE
        area = Area(west, north, west + SIDE - 1, north + SIDE - 1)
        pieces = list(self._scene.index.pieces_in(area, square.level))
        if not pieces:
            return None
        cells = bytearray(SIDE * SIDE)
        for piece in pieces:
            x, _, z = piece.at
            cells[(z - north) * SIDE + x - west] = 1 if piece.part in RAILS else 2
        image = QImage(bytes(cells), SIDE, SIDE, SIDE, QImage.Format.Format_Indexed8)
        clear = QColor(0, 0, 0, 0)
        image.setColorTable([colour.rgba() for colour in (clear, self._theme.ink, self._theme.dim)])
        # The image only borrows the bytes; what it is made into owns its own.
        return Dots(image.convertToFormat(QImage.Format.Format_ARGB32_Premultiplied), area)

    def _look(self, piece: Piece) -> Look:
        scene = self._scene
        if self._size.detail <= Detail.LINES:
            return scene.looks.bare(piece)
        live = None if scene.live is None else scene.live.looks.get(piece.at)
        return scene.looks.look(piece) if live is None else live


def size_at(c: float) -> Size:
    """The measures of a cell on a tilted plane, in px: nothing there falls on whole pixels."""
    return replace(screen(c), c=c, snaps=False)


def chunks_in(area: Area, level: int) -> Iterator[Chunk]:
    """The chunks that hold cells of an area."""
    for row in range(area.north // BUCKET, area.south // BUCKET + 1):
        for column in range(area.west // BUCKET, area.east // BUCKET + 1):
            yield Chunk(level, column, row)


_AROUND: Final = ((0, 0), (1, 0), (-1, 0), (0, 1), (0, -1))
