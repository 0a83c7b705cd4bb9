"""The picture of the plan on a level: what the document and the preview give, kept in tiles."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import partial
from typing import Final

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPixmap

from app.canvas.findings_layer import marker_strokes, reach
from app.canvas.geometry import Area, Viewport
from app.canvas.ground import DOTS_UP_TO, paint_grid, piece_strokes
from app.canvas.holes import Holes
from app.canvas.index import PieceIndex
from app.canvas.known_looks import KnownLooks
from app.canvas.live import Live
from app.canvas.looks import Looks, Marks
from app.canvas.markers import Markers
from app.canvas.overview import Overview
from app.canvas.patience import Patience
from app.canvas.preview import Preview
from app.canvas.symbols import Manner, symbol_pixmap
from app.canvas.tiles import Stroke, Tile, TileCache, rect_of, tiles_in
from app.theme import Theme
from model.grid import Cell, Heading
from model.parts import Part
from model.pieces import is_seen_from_above
from model.plan import Change
from model.track.layout import Layout

NOTHING: Final = QColor(Qt.GlobalColor.transparent)


@dataclass(frozen=True)
class Manners:
    """How the plan is drawn beside what is in it; part of each tile's key."""

    theme: Theme
    below: bool
    """Whether the level below shows."""
    above: bool
    ratio: float


@dataclass
class Scene:
    """Paints the ground and the pieces of a level. Follows the document change by change."""

    layout: Layout
    index: PieceIndex
    """Both follow the plan before this does."""
    looks: Looks = field(init=False)
    live: Live | None = field(init=False, default=None)
    """The looks of a dry run, while one is on; its pieces are painted one by one, not kept in tiles."""
    named: dict[Cell, Heading] = field(init=False)
    """The switches that carry a name, with the side on which their drive stands."""
    is_whole: bool = field(init=False, default=True)
    """Whether all that is in sight was there when it was painted last; else it wants to be painted again."""
    _overview: Overview = field(init=False)
    _known: KnownLooks = field(init=False)
    _ground: TileCache = field(init=False)
    _pieces: TileCache = field(init=False)
    _marks: TileCache = field(init=False)
    _markers: Markers = field(init=False, default_factory=Markers)
    _holes: Holes = field(init=False)

    def __post_init__(self) -> None:
        self._ground = TileCache(self._ground_strokes, lambda tile: _manners(tile.look).theme.paper)
        self._pieces = TileCache(self._piece_strokes, lambda _tile: NOTHING)
        self._marks = TileCache(self._marker_strokes, lambda _tile: NOTHING, reach)
        self._holes = Holes(self._pieces)
        self.open(self.layout, self.index)

    def open(self, layout: Layout, index: PieceIndex) -> None:
        """Shows another plan."""
        self.layout = layout
        self.index = index
        self._overview = Overview(self.index)
        self.looks = Looks(layout, {}, {})
        self._known = KnownLooks(self.looks)
        self.named = {}
        self.live = None
        self._ground.clear()
        self._pieces.clear()
        self._marks.clear()

    def follow(self, change: Change, reshaped: Iterable[Cell]) -> None:
        """Takes over a change of the plan; ``reshaped`` are the cells whose shape changed."""
        changed = change.cells.union(reshaped)
        self._overview.follow(change.cells)
        self._known.forget_around(changed)
        self._forget(changed)

    def take_marks(self, marks: Marks) -> None:
        """Takes over the names of switches, the inverters and the run-throughs."""
        looks = self.looks
        changed = _differing(looks.marks, marks.switches) | _differing(looks.run_through, marks.run_throughs)
        self.named = marks.name_sides
        self._marks.renew()
        looks.marks, looks.run_through = marks.switches, marks.run_throughs
        self._known.forget(changed)
        self._pieces.renew(changed)
        if self.live is not None:
            self.live.forget_rest()

    def show_run(self, live: Live | None) -> None:
        """Draws the pieces as they are in a dry run from now on, or no longer."""
        self.live = live
        self.looks.shape_now = None if live is None else live.shape
        self._known.clear()
        self._ground.clear()
        self._pieces.clear()

    def follow_run(self) -> None:
        """Takes over which pieces are live now, and which rails lie otherwise."""
        if self.live is not None:
            added, self.live.added = self.live.added, set()
            bent, self.live.bent = self.live.bent, set()
            self._known.forget(bent)
            self._pieces.forget(added, range(1))
            self._ground.forget(bent, range(-1, 2))

    def show_preview(self, preview: Preview) -> None:
        """Draws the shapes and the drives of a setting."""
        if preview.shapes is not self.looks.preview.shapes or preview.powered != self.looks.preview.powered:
            changed = _shown_by(self.looks.preview) | _shown_by(preview)
            self._known.forget(changed)
            self._forget(changed)
        self.looks.preview = preview

    def show_markers(self, markers: Markers) -> None:
        """Marks these findings; until they are painted, those of before are shown."""
        if markers is not self._markers:
            self._markers = markers
            self._marks.renew()

    def follow_markers(self, cells: frozenset[Cell]) -> None:
        """The markers of these cells are others now."""
        self._marks.forget(cells, range(1))

    def prepare(self, view: Viewport, seen: Area, level: int, look: Manners, patience: Patience) -> None:
        """Paints the tiles in sight that are not there yet, while the patience lasts; the pieces first."""
        tiles = tiles_in(seen, level, view.scale, look)
        missing = [
            tile
            for cache in (self._pieces, self._ground, self._marks)
            for tile in tiles
            if not cache.work(tile, look.ratio, patience)
        ]
        self.is_whole = not missing

    def paint_ground(self, painter: QPainter, view: Viewport, seen: Area, level: int, look: Manners) -> None:
        """Paper, grid and the neighbour levels."""
        if not self.is_whole:
            painter.save()
            painter.translate(*view.corner(seen.west, seen.north))
            paint_grid(painter, seen, view.scale, look.theme)
            painter.restore()
        for tile in tiles_in(seen, level, view.scale, look):
            pixmap = self._ground.shown(tile)
            if pixmap is not None:
                _draw(painter, view, tile, pixmap, look.ratio)

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
            pixmap = self._holes.shown(tile, hidden)
            if pixmap is not None:
                _draw(painter, view, tile, pixmap, look.ratio)
            elif view.scale > DOTS_UP_TO and not self._pieces.is_bare(tile):
                self._stand_in(painter, view, tile, tile.area.within(seen))

    def paint_markers(self, painter: QPainter, view: Viewport, seen: Area, level: int, look: Manners) -> None:
        """The markers of the findings of a level."""
        for tile in tiles_in(seen, level, view.scale, look):
            pixmap = self._marks.shown(tile)
            if pixmap is not None:
                _draw(painter, view, tile, pixmap, look.ratio)

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

    def _forget(self, cells: frozenset[Cell]) -> None:
        self._pieces.forget(cells, range(-1, 2))
        self._ground.forget(cells, range(-2, 3))

    def _ground_strokes(self, tile: Tile, part: Area) -> Iterator[Stroke]:
        look = _manners(tile.look)
        yield partial(_paint_ground_of, tile, part)
        if not (look.below or look.above) or tile.scale <= DOTS_UP_TO:
            return
        pieces = self.layout.plan.pieces
        below = self.index.pieces_in(part, tile.level - 1) if look.below else ()
        seen = [piece for piece in below if is_seen_from_above(piece, pieces)]
        above = list(self.index.pieces_in(part, tile.level + 1)) if look.above else []
        for some, manner in ((seen, Manner.BELOW), (above, Manner.ABOVE)):
            yield from piece_strokes(tile, some, self._known.bare, look.theme, manner)

    def _piece_strokes(self, tile: Tile, part: Area) -> Iterator[Stroke]:
        theme = _manners(tile.look).theme
        if tile.scale <= DOTS_UP_TO:
            # Only the level itself is drawn so far out: rails in ink, all else dim.
            place = rect_of(tile, part)
            yield lambda painter: self._overview.paint(painter, place, part, tile.level, theme.ink, theme.dim)
            return
        live = {} if self.live is None else self.live.looks
        still = [piece for piece in self.index.pieces_in(part, tile.level) if piece.at not in live]
        yield from piece_strokes(tile, still, self._known.look, theme)

    def _marker_strokes(self, tile: Tile, part: Area) -> Iterator[Stroke]:
        yield from marker_strokes(tile, part, self._markers, self.named, _manners(tile.look).theme)

    def _stand_in(self, painter: QPainter, view: Viewport, tile: Tile, part: Area) -> None:
        """Pale squares for the pieces of a tile that is not painted yet."""
        theme = _manners(tile.look).theme
        size = QSize(part.width * tile.scale, part.height * tile.scale)
        place = QRect(QPoint(*view.corner(part.west, part.north)), size)
        self._overview.paint(painter, place, part, tile.level, theme.ink3, theme.dim)


def _paint_ground_of(tile: Tile, part: Area, painter: QPainter) -> None:
    painter.save()
    painter.translate(rect_of(tile, part).topLeft())
    paint_grid(painter, part, tile.scale, _manners(tile.look).theme)
    painter.restore()


def _draw(painter: QPainter, view: Viewport, tile: Tile, pixmap: QPixmap, ratio: float) -> None:
    """Draws a tile on whole device pixels, rounding only the origin, so that tiles meet exactly."""
    side = pixmap.width()
    left = round(view.origin_x * ratio) + tile.column * side
    top = round(view.origin_y * ratio) + tile.row * side
    if ratio == 1:
        painter.drawPixmap(left, top, pixmap)
        return
    painter.save()
    painter.scale(1 / ratio, 1 / ratio)
    painter.drawPixmap(QRect(left, top, side, side), pixmap, pixmap.rect())
    painter.restore()


def _manners(look: Hashable) -> Manners:
    assert isinstance(look, Manners)
    return look


def _differing(before: Mapping[Cell, object], after: Mapping[Cell, object]) -> frozenset[Cell]:
    if before == after:
        return frozenset()
    return frozenset(c for c in before.keys() | after.keys() if before.get(c) != after.get(c))


def _shown_by(preview: Preview) -> frozenset[Cell]:
    if preview.shapes is None:
        return preview.powered
    return preview.powered | preview.shapes.changed.keys()
