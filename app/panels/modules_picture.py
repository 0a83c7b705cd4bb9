"""The picture of a module: its levels one under the other, highest first, with its ports marked."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from app import theme as themes
from app.canvas.symbols import Look, draw_ghost, draw_piece, look_of
from app.canvas.symbols.lettering import draw_centred
from app.panels.look import font
from app.panels.modules_words import level_words
from app.panels.rows import paint_text
from app.theme import Theme
from model.grid import VECTORS, Cell
from model.parts import Part
from model.pieces import Piece, Pieces
from model.signals.dust import links
from model.wiring.modules.modules import Module, Port

LARGEST: Final = 24
"""px a cell, at most."""
CAPTION: Final = 20
GAP: Final = 8


class ModulePicture(QWidget):
    """Drawn with the symbols of the plan, as large as its width allows."""

    def __init__(self, width: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._width = width
        self._module: Module | None = None
        self._track: tuple[Piece, ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_module(self, module: Module, track: tuple[Piece, ...]) -> None:
        """Show a module in its place; of the track about it, what lies within its bounds is hinted at."""
        self._module = module
        self._track = track
        places = [*module.cells, *(port.at for port in module.ports)]
        self._west, self._east = min(c.x for c in places), max(c.x for c in places)
        self._north, self._south = min(c.z for c in places), max(c.z for c in places)
        self._levels = sorted({cell.y for cell in places}, reverse=True)
        self._scale = min(LARGEST, self._width // (self._east - self._west + 1))
        self._linked = Pieces.of([*module.pieces, *(Piece(Part.DUST, cell) for cell in _line_ends(module))])
        self.setFixedSize(self.sizeHint())
        self.update()

    def sizeHint(self) -> QSize:
        if self._module is None:
            return QSize(self._width, 0)
        return QSize(self._width, len(self._levels) * (CAPTION + self._high + GAP))

    @property
    def _high(self) -> int:
        return (self._south - self._north + 1) * self._scale

    def paintEvent(self, event: QPaintEvent) -> None:
        if self._module is None:
            return
        painter, theme = QPainter(self), themes.current()
        for number, level in enumerate(self._levels):
            top = number * (CAPTION + self._high + GAP)
            caption = QRectF(0, top, self._width, CAPTION).toRect()
            words = level_words(level - self._module.origin.y)
            paint_text(painter, caption, words, font(11), theme.ink2)
            painter.save()
            painter.translate(0, top + CAPTION)
            self._paint_level(painter, self._module, level, theme)
            painter.restore()

    def _paint_level(self, painter: QPainter, module: Module, level: int, theme: Theme) -> None:
        c, wide = self._scale, (self._east - self._west + 1) * self._scale
        painter.fillRect(0, 0, wide, self._high, theme.paper)
        painter.setPen(theme.grid)
        for x in range(0, wide + 1, c):
            painter.drawLine(x, 0, x, self._high)
        for y in range(0, self._high + 1, c):
            painter.drawLine(0, y, wide, y)
        for piece in self._track:
            if piece.at.y == level and self._is_inside(piece.at):
                draw_ghost(painter, *self._corner(piece.at), c, look_of(piece), theme)
        for piece in module.pieces:
            if piece.at.y == level:
                draw_piece(painter, *self._corner(piece.at), c, self._look(piece), theme)
        for number, port in enumerate(module.ports, 1):
            if port.at.y == level:
                _draw_port(painter, *self._corner(port.at), c, port, str(number), theme)

    def _look(self, piece: Piece) -> Look:
        if piece.part is not Part.DUST:
            return look_of(piece)
        return Look(Part.DUST, links=links(self._linked, piece.at))

    def _is_inside(self, cell: Cell) -> bool:
        return self._west <= cell.x <= self._east and self._north <= cell.z <= self._south

    def _corner(self, cell: Cell) -> tuple[int, int]:
        return (cell.x - self._west) * self._scale, (cell.z - self._north) * self._scale


def _line_ends(module: Module) -> list[Cell]:
    """Where the dust of lines meets the module."""
    return [port.at for port in module.ports if port.kind != "track" and port.facing.heading is not None]


def _draw_port(painter: QPainter, x: int, y: int, c: int, port: Port, number: str, theme: Theme) -> None:
    """A tag as those of arms: filled where a signal comes in, open where it leaves; its point shows the way.

    A port that leads up, into a block, is a box without a point.
    """
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(theme.ink, 1.2, j=Qt.PenJoinStyle.MiterJoin))
    painter.setBrush(theme.ink if port.kind == "in" else theme.paper)
    middle = QPointF(x + c / 2, y + c / 2)
    painter.drawPolygon(_outline(middle, 0.38 * c, port))
    colour = theme.paper if port.kind == "in" else theme.ink
    draw_centred(painter, middle, number, 0.46 * c, colour, bold=True)
    painter.restore()


def _outline(middle: QPointF, r: float, port: Port) -> QPolygonF:
    heading = port.facing.heading
    box = [(-r, -r), (r, -r), (r, r), (-r, r)]
    if heading is None:
        return QPolygonF([middle + QPointF(*corner) for corner in box])
    dx, dz = VECTORS[heading]
    along = [(-r, -r), (0.45 * r, -r), (1.25 * r, 0.0), (0.45 * r, r), (-r, r)]
    return QPolygonF([middle + QPointF(a * dx - b * dz, a * dz + b * dx) for a, b in along])
