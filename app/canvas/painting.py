"""Paints the plan view, layer by layer, from a description of what it shows."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from PySide6.QtCore import QPointF, QRect
from PySide6.QtGui import QPainter

from app.canvas.arms import paint_tags, shown_tags
from app.canvas.chips import EDGE, draw_empty_hint, draw_preview_chip
from app.canvas.comparison import ComparisonPicture, paint_comparison
from app.canvas.findings_layer import paint_leaders
from app.canvas.geometry import Area, Viewport
from app.canvas.ghosts import GhostPicture, paint_ghost, paint_ghost_hints
from app.canvas.live_carts import PlacedCart, paint_live_carts
from app.canvas.marks import paint_band, paint_cursor, paint_probes, paint_ring
from app.canvas.patience import Patience
from app.canvas.preview import Preview, Run
from app.canvas.rulers import LEFT, TOP, paint_north, paint_rulers
from app.canvas.scene import Manners, Scene
from app.canvas.symbols import Look, draw_ghost
from app.canvas.ways import (
    ShownWay,
    ground_for,
    paint_bands,
    paint_cart,
    paint_chevrons,
    paint_key,
    paint_reasons,
)
from app.theme import Theme
from model.grid import Cell
from model.parts import Part
from model.plan import Arm
from model.rules import Finding
from model.track.shapes import Shape

HINT_TRACK: Final = (
    *((x, 0, Shape.EAST_WEST) for x in range(6)),
    (6, 0, Shape.SOUTH_WEST),
    (6, 1, Shape.NORTH_SOUTH),
    (6, 2, Shape.NORTH_SOUTH),
)
"""The track that an empty plan shows as a ghost: x, z and shape."""
PALE: Final = 0.4


@dataclass(frozen=True)
class Shown:
    """All that one picture of the plan view depends on."""

    size: QRect
    scene: Scene
    view: Viewport
    seen: Area
    level: int
    manners: Manners
    arms: tuple[Arm, ...]
    ghost: GhostPicture
    survey: GhostPicture
    comparison: ComparisonPicture
    outline: GhostPicture
    """What a gesture could make that nobody has begun."""
    band: tuple[Cell, Cell] | None
    selection: frozenset[Cell]
    cursor: Cell
    cursor_shows: bool
    preview: Preview
    ways: list[ShownWay]
    cart: Run | None
    cart_distance: float
    foot: int
    """px at the foot that something stands over."""
    exposed: Area
    """What of ``seen`` is painted anew."""
    live_carts: tuple[PlacedCart, ...]
    probes: Iterable[Cell]
    has_markers: bool
    """Whether findings are marked."""
    patience: Patience
    """How long what is not there yet is waited for."""
    chosen_finding: Finding | None
    is_empty: bool

    @property
    def theme(self) -> Theme:
        """The colours."""
        return self.manners.theme


def paint_view(painter: QPainter, shown: Shown) -> None:
    """The whole picture: the plan inside the rulers, then the rulers."""
    painter.save()
    painter.setClipRect(shown.size.adjusted(LEFT, TOP, 0, 0))
    _paint_plan(painter, shown)
    _paint_marks(painter, shown)
    _paint_chips(painter, shown)
    painter.restore()
    paint_rulers(painter, shown.size, shown.view, shown.cursor, shown.theme)


def _paint_plan(painter: QPainter, shown: Shown) -> None:
    """Ground, ways, symbols, chevrons, carts, tags."""
    scene, view, seen, level = shown.scene, shown.view, shown.seen, shown.level
    scene.prepare(view, seen, level, shown.manners, shown.patience)
    scene.paint_ground(painter, view, seen, level, shown.manners)
    ground = ground_for(painter, view, shown.theme, level)
    paint_bands(ground, shown.ways)
    scene.paint_pieces(painter, view, seen, level, shown.manners, shown.ghost.hidden)
    scene.paint_live(painter, view, shown.exposed, level, shown.manners, shown.ghost.hidden)
    paint_comparison(painter, shown.comparison, level, seen, view, shown.theme)
    paint_ghost(painter, shown.survey, level, view, shown.theme)
    _paint_outline(painter, shown)
    if shown.manners.below or shown.manners.above:
        paint_ghost_hints(painter, shown.ghost, level, view, shown.theme)
    paint_ghost(painter, shown.ghost, level, view, shown.theme)
    paint_chevrons(ground, shown.ways)
    if shown.cart is not None:
        paint_cart(ground, shown.cart, shown.cart_distance)
    paint_live_carts(ground, shown.live_carts)
    tags = shown_tags(shown.arms, level, view)
    paint_tags(painter, tags, view.scale, shown.theme)
    paint_reasons(ground, shown.ways, [tag.rect for tag in tags])


def _paint_outline(painter: QPainter, shown: Shown) -> None:
    """The tags of an arm that nobody has made are paler than those of one, which they would look like."""
    level, view, theme = shown.level, shown.view, shown.theme
    paint_ghost(painter, replace(shown.outline, arms=()), level, view, theme)
    painter.setOpacity(PALE)
    paint_tags(painter, shown_tags(shown.outline.arms, level, view), view.scale, theme)
    painter.setOpacity(1.0)


def _paint_marks(painter: QPainter, shown: Shown) -> None:
    """What is chosen and pointed at, and the findings."""
    view, theme, named = shown.view, shown.theme, shown.scene.named
    paint_probes(painter, shown.probes, shown.level, shown.exposed, view, theme)
    paint_ring(painter, shown.selection, shown.level, view, theme)
    if shown.band is not None:
        paint_band(painter, shown.band, view, theme)
    if shown.cursor_shows:
        paint_cursor(painter, shown.cursor, view, theme)
    if shown.chosen_finding is not None:
        paint_leaders(painter, shown.chosen_finding, named, shown.level, view, theme)
    if shown.has_markers:
        shown.scene.paint_markers(painter, view, shown.seen, shown.level, shown.manners)


def _paint_chips(painter: QPainter, shown: Shown) -> None:
    """The north arrow, the preview's chip, the key of the ways, the hint of an empty plan."""
    paint_north(painter, shown.size, shown.theme)
    if shown.is_empty:
        _paint_hint(painter, shown)
    title = shown.preview.title or shown.comparison.title
    if title:
        widest = shown.size.width() - LEFT - 100
        draw_preview_chip(painter, LEFT + EDGE, TOP + EDGE, title, widest, shown.theme)
    if shown.ways:
        corner = QPointF(LEFT + EDGE, shown.size.height() - shown.foot - EDGE)
        paint_key(painter, corner, shown.ways, shown.size.width() - LEFT - 2 * EDGE, shown.theme)


def _paint_hint(painter: QPainter, shown: Shown) -> None:
    """A ghost track in the middle, and below it what to do."""
    view = shown.view
    room = shown.size.adjusted(LEFT, TOP, 0, 0)
    middle = view.cell_at(room.center().x(), room.center().y(), shown.level)
    start = Cell(middle.x - 3, shown.level, middle.z - 3)
    for dx, dz, shape in HINT_TRACK:
        look = Look(Part.RAIL, shape=shape)
        draw_ghost(painter, *view.corner(start.x + dx, start.z + dz), view.scale, look, shown.theme)
    left, top = view.corner(start.x, start.z + 1)
    draw_empty_hint(painter, left + 4, top + 4, shown.level, shown.theme)
