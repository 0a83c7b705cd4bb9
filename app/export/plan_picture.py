"""A plan drawn on paper: a window of cells with grid, pieces, marks of placing and tags. Lengths in mm."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Final

from PySide6.QtCore import QPointF, QRectF

from app.canvas.symbols import Look, Manner, Stage, look_of, paint, paper
from app.canvas.symbols.lettering import draw_centred, em_for, width
from app.canvas.symbols.rails import draw_facing_mark
from app.export.marks import arrow_place, number_place
from app.export.pencil import HAIR, Pencil
from model.grid import Cell, Heading
from model.parts import Part
from model.pieces import Pieces
from model.sheet.drawn import DrawnPiece, RailMarks
from model.sheet.footprint import Bounds
from model.signals.dust import links
from model.track.shapes import Shape

GRID_STRONG: Final = 0.25
GRID_EACH: Final = 4
NUMBER_HEIGHT, SMALL_NUMBER_HEIGHT = 1.8, 1.5
"""Capital height of the numbers of placing, at 10 mm a cell and below; shrunk where the cell has no room."""


@dataclass(frozen=True)
class Window:
    """The cells that a picture shows and where it lies on the page."""

    west: int
    north: int
    columns: int
    rows: int
    left: float
    """mm, of the west edge."""
    top: float
    """mm, of the north edge."""
    cell: float
    """mm."""

    @property
    def rect(self) -> QRectF:
        """The space that the cells take on the page."""
        return QRectF(self.left, self.top, self.columns * self.cell, self.rows * self.cell)

    def corner(self, x: float, z: float) -> QPointF:
        """Where the north-west corner of a cell lies on the page."""
        return QPointF(self.left + (x - self.west) * self.cell, self.top + (z - self.north) * self.cell)

    def space(self, cell: Cell) -> QRectF:
        """What a cell takes on the page."""
        return QRectF(self.corner(cell.x, cell.z), self.corner(cell.x + 1, cell.z + 1))

    def holds(self, cell: Cell) -> bool:
        """Whether the cell's column is shown."""
        return (
            self.west <= cell.x < self.west + self.columns and self.north <= cell.z < self.north + self.rows
        )


def window_about(bounds: Bounds, rect: QRectF, cell: float) -> Window:
    """As many whole cells as a space holds, with the bounds in their middle."""
    columns, rows = int(rect.width() / cell + 1e-6), int(rect.height() / cell + 1e-6)
    west = bounds.west - (columns - bounds.width) // 2
    north = bounds.north - (rows - bounds.depth) // 2
    left = rect.left() + (rect.width() - columns * cell) / 2
    top = rect.top() + (rect.height() - rows * cell) / 2
    return Window(west, north, columns, rows, left, top, cell)


def draw_grid(pencil: Pencil, window: Window) -> None:
    """Thin lines between the cells, each fourth stronger."""
    rect, theme = window.rect, pencil.theme
    for x in range(window.west, window.west + window.columns + 1):
        at, strong = window.corner(x, 0).x(), x % GRID_EACH == 0
        colour = theme.grid4 if strong else theme.grid
        pencil.line(at, rect.top(), at, rect.bottom(), GRID_STRONG if strong else HAIR, colour)
    for z in range(window.north, window.north + window.rows + 1):
        at, strong = window.corner(0, z).y(), z % GRID_EACH == 0
        colour = theme.grid4 if strong else theme.grid
        pencil.line(rect.left(), at, rect.right(), at, GRID_STRONG if strong else HAIR, colour)


Squares = Mapping[tuple[int, int], DrawnPiece]
"""The pieces of one level by x and z."""


def by_square(pieces: Iterable[DrawnPiece]) -> Squares:
    """The pieces of one level, to be found by their place."""
    return {(one.piece.at.x, one.piece.at.z): one for one in pieces}


def shown(window: Window, squares: Squares) -> list[DrawnPiece]:
    """What a window shows of a level: the work is that of the window, however large the level."""
    columns = range(window.west, window.west + window.columns)
    rows = range(window.north, window.north + window.rows)
    return [squares[x, z] for z in rows for x in columns if (x, z) in squares]


class PiecePainter:
    """Draws the pieces of one plan into windows."""

    def __init__(self, pencil: Pencil, pieces: Pieces) -> None:
        self._pencil = pencil
        self._pieces = pieces

    def draw(self, window: Window, pieces: Iterable[DrawnPiece], manner: Manner = Manner.OWN) -> None:
        """The symbols of pieces that the window shows."""
        for one in pieces:
            paint(replace(self._stage(window, one.piece.at), manner=manner), self._look(one, manner))

    def draw_marks(self, window: Window, pieces: Iterable[DrawnPiece]) -> None:
        """The numbers of placing, and the arrows of rails that must face as drawn."""
        for one in pieces:
            if one.rail is not None:
                self._draw_marks_of(window, one, one.rail)

    def _stage(self, window: Window, cell: Cell) -> Stage:
        corner = window.corner(cell.x, cell.z)
        return Stage(self._pencil.painter, corner.x(), corner.y(), paper(window.cell), self._pencil.theme)

    def _look(self, one: DrawnPiece, manner: Manner) -> Look:
        if one.rail is not None and manner is not Manner.OWN:
            return Look(one.piece.part, shape=one.rail.shape)
        return rest_look_of(one, self._pieces)

    def _draw_marks_of(self, window: Window, one: DrawnPiece, rail: RailMarks) -> None:
        stage = self._stage(window, one.piece.at)
        heading = one.piece.facing.heading
        if rail.faces and heading is not None:
            draw_facing_mark(stage, arrow_place(rail), heading)
        if rail.number is not None:
            place, widest = number_place(one.piece.part, rail)
            number, limit = str(rail.number), widest * window.cell
            em = em_for(NUMBER_HEIGHT if window.cell >= 10 else SMALL_NUMBER_HEIGHT)
            em = min(em, limit / width("00", 1))  # one and two figures in one height
            draw_centred(stage.painter, stage.at(place), number, em, stage.theme.ink, widest=limit)


def rest_look_of(one: DrawnPiece, pieces: Pieces) -> Look:
    """A piece of a plan at rest, with all that the sheet shows of it."""
    if one.piece.part is Part.DUST:
        return replace(look_of(one.piece), links=links(pieces, one.piece.at))
    return look_of(one.piece) if one.rail is None else rail_look(one.piece.part, one.rail)


def rail_look(part: Part, rail: RailMarks) -> Look:
    """A rail at rest, with all that is known of its switch."""
    straights = {Heading.NORTH: Shape.NORTH_SOUTH, Heading.EAST: Shape.EAST_WEST}
    return Look(
        part,
        shape=rail.shape,
        other_shape=rail.powered,
        inverter=rail.inverter,
        name=rail.name if rail.is_switch else None,
        run_through=tuple(straights[axis] for axis in sorted(rail.run_through)),
    )
