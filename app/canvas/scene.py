"""The picture of the plan on a level: what the document and the preview give, kept in tiles."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter

from app.canvas.geometry import Area, Viewport
from app.canvas.ground import DOTS_UP_TO, paint_grid, paint_pieces
from app.canvas.index import PieceIndex
from app.canvas.live import Live
from app.canvas.looks import Looks, name_sides, run_throughs, switch_marks
from app.canvas.preview import Preview
from app.canvas.symbols import Manner, symbol_pixmap
from app.canvas.tiles import Tile, TileCache, tiles_in
from app.theme import Theme
from model.grid import Cell, Heading
from model.parts import Part
from model.pieces import Piece, is_seen_from_above
from model.plan import Change
from model.routing.junction import Junction
from model.track.layout import Layout


@dataclass(frozen=True)
class Manners:
    """How the plan is drawn beside what is in it; part of each tile's key."""

    theme: Theme
    solo: bool
    ratio: float


@dataclass
class Scene:
    """Paints the ground and the pieces of a level. Follows the document change by change."""

    layout: Layout
    index: PieceIndex = field(init=False)
    looks: Looks = field(init=False)
    live: Live | None = field(init=False, default=None)
    """The looks of a dry run, while one is on; its pieces are painted one by one, not kept in tiles."""
    named: dict[Cell, Heading] = field(init=False)
    """The switches that carry a name, with the side on which their drive stands."""
    _ground: TileCache = field(init=False)
    _pieces: TileCache = field(init=False)

    def __post_init__(self) -> None:
        self._ground = TileCache(self._paint_ground_tile)
        self._pieces = TileCache(self._paint_piece_tile)
        self.open(self.layout)

    def open(self, layout: Layout) -> None:
        """Shows another plan."""
        self.layout = layout
        self.index = PieceIndex(layout.plan.pieces)
        self.looks = Looks(layout, {}, {})
        self.named = {}
        self.live = None
        self._ground.clear()
        self._pieces.clear()

    def follow(self, change: Change, reshaped: Iterable[Cell]) -> None:
        """Takes over a change of the plan; ``reshaped`` are the cells whose shape changed."""
        self.index.follow(change)
        self._forget(change.cells.union(reshaped))

    def take_junction(self, junction: Junction | None) -> None:
        """Takes over the names of switches, the inverters and the run-throughs."""
        marks, run_through = switch_marks(junction), run_throughs(junction)
        changed = _differing(self.looks.marks, marks) | _differing(self.looks.run_through, run_through)
        self.named = name_sides(junction)
        self.looks.marks, self.looks.run_through = marks, run_through
        self._pieces.forget(changed, range(1))
        if self.live is not None:
            self.live.forget_rest()

    def show_run(self, live: Live | None) -> None:
        """Draws the pieces as they are in a dry run from now on, or no longer."""
        self.live = live
        self.looks.shape_now = None if live is None else live.shape
        self._ground.clear()
        self._pieces.clear()

    def follow_run(self) -> None:
        """Takes over which pieces are live now, and which rails lie otherwise."""
        if self.live is not None:
            added, self.live.added = self.live.added, set()
            bent, self.live.bent = self.live.bent, set()
            self._pieces.forget(added, range(1))
            self._ground.forget(bent, range(-1, 2))

    def show_preview(self, preview: Preview) -> None:
        """Draws the shapes and the drives of a setting."""
        if preview.shapes is not self.looks.preview.shapes or preview.powered != self.looks.preview.powered:
            changed = _shown_by(self.looks.preview) | _shown_by(preview)
            self._forget(changed)
        self.looks.preview = preview

    def paint_ground(self, painter: QPainter, view: Viewport, seen: Area, level: int, look: Manners) -> None:
        """Paper, grid and the neighbour levels."""
        for tile in tiles_in(seen, level, view.scale, look):
            _draw(painter, view, tile, self._ground, look.ratio)

    def paint_pieces(
        self,
        painter: QPainter,
        view: Viewport,
        seen: Area,
        level: int,
        look: Manners,
        hidden: frozenset[Cell],
    ) -> None:
        """The pieces of the level, but for those that a ghost hides."""
        for tile in tiles_in(seen, level, view.scale, look):
            hides = frozenset(c for c in hidden if c.y == level and tile.area.holds(c.x, c.z))
            if hides:
                self._paint_without(painter, view, tile, hides)
            else:
                _draw(painter, view, tile, self._pieces, look.ratio)

    def paint_live(
        self,
        painter: QPainter,
        view: Viewport,
        seen: Area,
        level: int,
        look: Manners,
        hidden: frozenset[Cell],
    ) -> None:
        """The pieces that a dry run shows, but for those that a ghost hides."""
        if self.live is None or view.scale <= DOTS_UP_TO:
            return
        looks = self.live.looks
        for piece in self.index.pieces_in(seen, level):
            live = looks.get(piece.at)
            if live is not None and piece.at not in hidden:
                pixmap = symbol_pixmap(live, view.scale, look.ratio, look.theme)
                painter.drawPixmap(*view.corner(piece.at.x, piece.at.z), pixmap)

    def is_plain(self, cell: Cell) -> bool:
        """Whether a chevron may stand on a rail: it is no switch, booster or detector."""
        piece = self.layout.plan.pieces.get(cell)
        look = None if piece is None else self.looks.look(piece)
        return look is not None and look.part is Part.RAIL and look.other_shape is None

    def _forget(self, cells: Iterable[Cell]) -> None:
        known = tuple(cells)
        self._pieces.forget(known, range(-1, 2))
        self._ground.forget(known, range(-2, 3))

    def _paint_ground_tile(self, painter: QPainter, tile: Tile) -> None:
        look = _manners(tile.look)
        paint_grid(painter, tile.area, tile.scale, look.theme)
        if look.solo:
            return
        plan = self.layout.plan
        below = self.index.pieces_in(tile.area, tile.level - 1)
        seen = (piece for piece in below if is_seen_from_above(piece, plan.pieces))
        above = self.index.pieces_in(tile.area, tile.level + 1)
        for pieces, manner in ((seen, Manner.BELOW), (above, Manner.ABOVE)):
            paint_pieces(painter, tile, pieces, self.looks.bare, look.theme, manner)

    def _paint_piece_tile(self, painter: QPainter, tile: Tile) -> None:
        pieces = self._still_pieces(tile)
        paint_pieces(painter, tile, pieces, self.looks.look, _manners(tile.look).theme)

    def _still_pieces(self, tile: Tile) -> Iterator[Piece]:
        """Those of a tile that are not painted one by one."""
        looks = {} if self.live is None or tile.scale <= DOTS_UP_TO else self.live.looks
        return (p for p in self.index.pieces_in(tile.area, tile.level) if p.at not in looks)

    def _paint_without(self, painter: QPainter, view: Viewport, tile: Tile, hidden: frozenset[Cell]) -> None:
        pieces = (p for p in self._still_pieces(tile) if p.at not in hidden)
        painter.save()
        painter.translate(*view.corner(tile.area.west, tile.area.north))
        paint_pieces(painter, tile, pieces, self.looks.look, _manners(tile.look).theme)
        painter.restore()


def _draw(painter: QPainter, view: Viewport, tile: Tile, cache: TileCache, ratio: float) -> None:
    """Draws a tile on whole device pixels, rounding only the origin, so that tiles meet exactly."""
    pixmap = cache.get(tile, ratio)
    side = pixmap.width()
    left = round(view.origin_x * ratio) + tile.column * side
    top = round(view.origin_y * ratio) + tile.row * side
    painter.save()
    painter.scale(1 / ratio, 1 / ratio)
    painter.drawPixmap(QRect(left, top, side, side), pixmap, pixmap.rect())
    painter.restore()


def _manners(look: Hashable) -> Manners:
    assert isinstance(look, Manners)
    return look


def _differing(before: Mapping[Cell, object], after: Mapping[Cell, object]) -> frozenset[Cell]:
    return frozenset(c for c in before.keys() | after.keys() if before.get(c) != after.get(c))


def _shown_by(preview: Preview) -> frozenset[Cell]:
    if preview.shapes is None:
        return preview.powered
    return preview.powered | preview.shapes.changed.keys()
