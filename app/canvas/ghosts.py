"""What a gesture would make, worked out once when it changes and drawn with each paint."""

from __future__ import annotations

from collections.abc import Mapping, Set
from dataclasses import dataclass, replace
from typing import Final

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from app.arm_ends import ENDS_WORDS
from app.canvas.arms import paint_tags, shown_tags
from app.canvas.chips import draw_label, label_box
from app.canvas.geometry import Viewport
from app.canvas.symbols import Look, draw_cart, draw_ghost, draw_ghost_hint, draw_over, look_of, screen
from app.theme import Theme
from app.tools.host import Ends, Ghost, ShownCart
from app.translation import tr
from model.grid import Cell, Heading
from model.parts import CARRIERS, RAILS, Part
from model.pieces import Piece, Pieces
from model.plan import Arm, ArmEnd, Change
from model.signals.dust import links
from model.track.layout import Layout
from model.track.shapes import Shape

CROSS: Final = (0.2, 0.8)
DASH: Final = (0.16, 0.12)
"""On and off in cells, each at least 3 px, as of a level above."""


@dataclass(frozen=True)
class GhostPicture:
    """A ghost with its shapes as they come out."""

    looks: dict[Cell, Look]
    """What appears, and the rails that take another shape because of it."""
    crossed: frozenset[Cell] = frozenset()
    hidden: frozenset[Cell] = frozenset()
    """Cells whose present piece is not drawn meanwhile."""
    cart: ShownCart | None = None
    arms: tuple[Arm, ...] = ()
    """The tags of an arm in the making."""
    lies_over: bool = False
    """Whether the pieces of the plan stay, and are crossed."""
    footprint: frozenset[tuple[int, int]] = frozenset()
    """The x and z of all that it takes up on any level, where an outline tells of it."""
    note: str = ""
    """What stands beside that outline."""

    def without(self, cells: Set[Cell]) -> GhostPicture:
        """The same but for what it draws of these cells."""
        if self.looks.keys().isdisjoint(cells):
            return self
        return replace(self, looks={cell: look for cell, look in self.looks.items() if cell not in cells})


NO_GHOST: Final = GhostPicture({})


def picture_of(ghost: Ghost | None, layout: Layout, locked: Set[int] = frozenset()) -> GhostPicture:
    """What to draw of a ghost; the layout stays as it is, and what lies on a locked level, too."""
    if ghost is None:
        return NO_GHOST
    if ghost.surveyed:
        return survey_picture(ghost.surveyed, frozenset(), layout)
    looks = {} if ghost.change is None else _looks(ghost.change, layout)
    for cell, strength in ghost.strengths.items():
        looks[cell] = replace(looks[cell], strength=strength)
    taken = frozenset() if ghost.change is None else ghost.change.cells
    arms = () if ghost.crossing is None else _arms(*ghost.crossing)
    crossed = _crossed(ghost, locked)
    hidden = (taken | looks.keys()) - crossed
    footprint = frozenset((cell.x, cell.z) for cell in taken) if ghost.note else frozenset()
    return GhostPicture(looks, crossed, hidden, ghost.cart, arms, footprint=footprint, note=ghost.note)


def _crossed(ghost: Ghost, locked: Set[int]) -> frozenset[Cell]:
    """On a locked level every new piece has a cross, and what is to be taken away has none: it stays."""
    if not locked or ghost.change is None:
        return ghost.crossed
    refused = {entry.piece.at for entry in ghost.change.placed if entry.piece.at.y in locked}
    return frozenset(cell for cell in ghost.crossed if cell.y not in locked) | refused


def survey_picture(shapes: Mapping[Cell, Shape], impossible: frozenset[Cell], layout: Layout) -> GhostPicture:
    """The rails as they stand in the world, over those of the plan; a cross where no order makes them so."""
    found = ((layout.plan.pieces.get(cell), shape) for cell, shape in shapes.items())
    looks = {piece.at: Look(piece.part, shape=shape) for piece, shape in found if piece is not None}
    return GhostPicture(looks, impossible, lies_over=True)


def paint_ghost(painter: QPainter, picture: GhostPicture, level: int, view: Viewport, theme: Theme) -> None:
    """Draws what lies on a level."""
    draw = draw_over if picture.lies_over else draw_ghost
    for cell, look in picture.looks.items():
        if cell.y == level:
            draw(painter, *view.corner(cell.x, cell.z), view.scale, look, theme)
    if picture.footprint:
        _draw_footprint(painter, picture, view, theme)
    for cell in picture.crossed:
        if cell.y == level:
            _draw_cross(painter, *view.corner(cell.x, cell.z), view.scale, theme)
    if picture.cart is not None and picture.cart.cell.y == level:
        _draw_held_cart(painter, picture.cart, view, theme)
    paint_tags(painter, shown_tags(picture.arms, level, view), view.scale, theme)


def paint_ghost_hints(
    painter: QPainter, picture: GhostPicture, level: int, view: Viewport, theme: Theme
) -> None:
    """Draws of the levels below and above what does not carry, as it will be drawn from there."""
    for cell, look in picture.looks.items():
        if abs(cell.y - level) == 1 and look.part not in CARRIERS:
            corner = view.corner(cell.x, cell.z)
            draw_ghost_hint(painter, *corner, view.scale, look, theme, below=cell.y < level)


def _looks(change: Change, layout: Layout) -> dict[Cell, Look]:
    shapes = layout.preview(change)
    after = change.applied(layout.plan).pieces
    shown = change.cells | {cell for cell, shape in shapes.items() if shape is not None}
    pieces = [piece for cell in shown if (piece := after.get(cell)) is not None]
    return {piece.at: _look(piece, after, shapes.get(piece.at, layout.shape(piece.at))) for piece in pieces}


def _look(piece: Piece, pieces: Pieces, shape: Shape | None) -> Look:
    if piece.part is Part.DUST:
        return replace(look_of(piece), links=links(pieces, piece.at))
    return replace(look_of(piece), shape=shape) if piece.part in RAILS else look_of(piece)


def _arms(cell: Cell, outward: Heading, ends: Ends) -> tuple[Arm, ...]:
    enter = ArmEnd(cell, outward.opposite) if Ends.IN in ends else None
    leave = ArmEnd(cell, outward) if Ends.OUT in ends else None
    return (Arm(tr(ENDS_WORDS[ends].word), enter, leave),)


def _draw_cross(painter: QPainter, x: float, y: float, c: float, theme: Theme) -> None:
    near, far = CROSS[0] * c, CROSS[1] * c
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setPen(QPen(theme.ink, screen(c).narrow, c=Qt.PenCapStyle.FlatCap))
    painter.translate(x, y)
    painter.drawLine(round(near), round(near), round(far), round(far))
    painter.drawLine(round(near), round(far), round(far), round(near))
    painter.restore()


def _draw_footprint(painter: QPainter, picture: GhostPicture, view: Viewport, theme: Theme) -> None:
    """A dashed outline about all that is taken up on any level, and the note below it."""
    outline = QPainterPath()
    for x, z in picture.footprint:
        left, top = view.corner(x, z)
        outline.addRect(left, top, view.scale, view.scale)
    size = screen(view.scale)
    dash = [max(3.0, part * view.scale) / size.narrow for part in DASH]
    pen = QPen(theme.ink2, size.narrow, c=Qt.PenCapStyle.FlatCap)
    pen.setDashPattern(dash)
    painter.save()
    painter.setPen(pen)
    painter.drawPath(outline.simplified().translated(0.5, 0.5))
    painter.restore()
    bounds = outline.boundingRect()
    at = QPointF(bounds.center().x(), bounds.bottom() + 4)
    draw_label(painter, label_box(at, Heading.SOUTH, picture.note), picture.note, theme)


def _draw_held_cart(painter: QPainter, cart: ShownCart, view: Viewport, theme: Theme) -> None:
    left, top = view.corner(cart.cell.x, cart.cell.z)
    middle = view.scale / 2
    size = screen(view.scale)
    draw_cart(painter, left + middle, top + middle, size, 90.0 * cart.heading, theme, loaded=cart.loaded)
