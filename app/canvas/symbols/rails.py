"""Rails: straight, rising, curved; switches with their drive; boosters and detectors."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QPainterPath

from app.canvas.symbols.look import Look
from app.canvas.symbols.size import Detail
from app.canvas.symbols.stage import OTHER_DASH, Manner, Point, Stage
from model.grid import VECTORS, Heading
from model.parts import Part
from model.track.shapes import Shape

WEDGE = ((0.5, 0.94), (0.24, 0.10), (0.76, 0.10))
"""Point at the low end, base at the high end, for a rail that rises to the north."""


def draw_rail(stage: Stage, look: Look) -> None:
    """A rail of any of the three parts, in its shape."""
    shape = look.shape if look.shape is not None else Shape.NORTH_SOUTH
    size = stage.size
    if stage.manner is Manner.GHOST:
        draw_hollow(stage, shape)
        return
    draw_run_throughs(stage, look)
    if look.other_shape is not None:
        dash = None if size.is_small else OTHER_DASH
        draw_track(stage, look.other_shape, stage.theme.ink2, size.narrow, dash)
    draw_track(stage, shape, stage.theme.live if _thrown(look) else stage.theme.ink, size.wide)
    if look.other_shape is not None and size.detail > Detail.LINES and not stage.is_hint:
        _draw_drive(stage.facing(free_side(shape, look.other_shape)), look)
    if size.detail > Detail.LINES:
        draw_fitting(stage.facing(shape.ends[0].heading), look)


def free_side(shape: Shape, other: Shape) -> Heading:
    """The side of a switch that no end of either shape points to; the north where the ends take all four."""
    return next((side for side in Heading if side not in shape.headings | other.headings), Heading.NORTH)


def draw_track(
    stage: Stage, shape: Shape, colour: QColor, width: float, dash: tuple[float, float] | None = None
) -> None:
    """The line of a shape, with the wedge under it where it rises."""
    if shape.is_curve:
        stage.path(curve_path(stage, shape), colour, width, dash=dash)
        return
    rises_to = shape.rises_to
    if rises_to is not None and stage.size.detail > Detail.LINES:
        stage.facing(rises_to).polygon(WEDGE, colour, stage.theme.fill)
    stage.facing(shape.ends[0].heading).line([(0.5, 0), (0.5, 1)], colour, width, dash=dash)


def curve_path(stage: Stage, shape: Shape, offset: float = 0.0) -> QPainterPath:
    """The quarter circle of a curve about the corner of its ends, in the painter's units.

    Its ends meet the straight lines of the neighbours where whole pixels moved these; ``offset`` units are
    added to the radius.
    """
    c = stage.size.c
    middle = stage.size.line(c / 2, stage.size.wide)
    east, south = Heading.EAST in shape.headings, Heading.SOUTH in shape.headings
    rx, ry = (c - middle if east else middle) + offset, (c - middle if south else middle) + offset
    corner = QPointF(stage.x + (c if east else 0), stage.y + (c if south else 0))
    start = {(True, True): 90, (False, True): 0, (True, False): 180, (False, False): 270}[east, south]
    rect = QRectF(corner.x() - rx, corner.y() - ry, 2 * rx, 2 * ry)
    path = QPainterPath()
    path.arcMoveTo(rect, start)
    path.arcTo(rect, start, 90)
    return path


def draw_run_throughs(stage: Stage, look: Look) -> None:
    """Narrow lines under a curve along which routes run straight through."""
    for straight in look.run_through:
        draw_track(stage, straight, stage.theme.ink, stage.size.narrow)


def draw_hollow(stage: Stage, shape: Shape) -> None:
    """Track as a ghost: two narrow lines a wide line apart."""
    size, colour = stage.size, stage.theme.ink2
    apart = (size.wide + size.narrow) / 2
    solid = Stage(stage.painter, stage.x, stage.y, size, stage.theme)
    for side in (-apart, apart):
        if shape.is_curve:
            solid.path(curve_path(stage, shape, side), colour, size.narrow)
        else:
            x = 0.5 + side / size.c
            solid.facing(shape.ends[0].heading).line([(x, 0), (x, 1)], colour, size.narrow)
    rises_to = shape.rises_to
    if rises_to is not None:
        solid.facing(rises_to).polygon(WEDGE, colour, None)


def draw_facing_mark(stage: Stage, place: Point, facing: Heading) -> None:
    """The arrow of the sheet, its middle at a place in the cell: the way that the builder faces here."""
    (x, y), (dx, dy) = place, VECTORS[facing]
    tail, tip = (x - 0.17 * dx, y - 0.17 * dy), (x + 0.17 * dx, y + 0.17 * dy)
    neck = (tip[0] - 0.13 * dx, tip[1] - 0.13 * dy)
    stage.line([tail, neck], stage.theme.ink, 0.6 * stage.size.narrow)
    barbs = [(neck[0] - 0.055 * dy, neck[1] + 0.055 * dx), tip, (neck[0] + 0.055 * dy, neck[1] - 0.055 * dx)]
    stage.polygon(barbs, None, stage.theme.ink)


def _thrown(look: Look) -> bool:
    return look.other_shape is not None and look.powered


def _draw_drive(stage: Stage, look: Look) -> None:
    """The drive, as if the free side were the north, with the inverter before it and the switch's name."""
    theme, size = stage.theme, stage.size
    colour = theme.live if look.powered else theme.ink
    fill = theme.live if look.powered else theme.paper
    if size.is_small:
        _draw_small_drive(stage, look, colour, fill)
        return
    if look.inverter:
        stage.circle((0.5, 0.30), 0.075, colour, theme.paper)
    else:
        stage.line([(0.5, 0.22), (0.5, 0.38)], colour, size.narrow)
    stage.box(0.38, 0.04, 0.62, 0.22, colour, fill)
    if look.name and size.detail is Detail.ALL:
        _draw_name(stage, look.name)


def _draw_small_drive(stage: Stage, look: Look, colour: QColor, fill: QColor) -> None:
    px = stage.size.unit / stage.size.c
    if look.inverter:
        stage.circle((0.5, 0.23), 0.18, colour, fill)
    else:
        stage.box(0.5 - 1.5 * px, 0.5 * px, 0.5 + 1.5 * px, 3.5 * px, colour, fill)


NAME_PLACES = {
    Heading.NORTH: (0.18, 0.13, 0.30),
    Heading.EAST: (0.79, 0.77, 0.40),
    Heading.SOUTH: (0.18, 0.87, 0.30),
    Heading.WEST: (0.21, 0.77, 0.40),
}
"""Middle of a switch's name and its greatest width, by the side of the drive: clear of both curves."""


def _draw_name(stage: Stage, name: str) -> None:
    x, y, widest = NAME_PLACES[Heading(stage.quarter)]
    upright = stage.facing(Heading.NORTH)
    upright.text((x, y), name, 0.20, stage.theme.ink, bold=True, widest=widest)


def draw_fitting(stage: Stage, look: Look) -> None:
    """What a booster or a detector has on its line, the stage turned along it."""
    theme, size = stage.theme, stage.size
    if look.part is Part.BOOSTER_RAIL:
        colour = theme.live if look.on else theme.ink
        stage.box(0.31, 0.20, 0.69, 0.80, colour, theme.live if look.on else theme.paper)
        if not size.is_small and not stage.is_hint:
            _draw_heads(stage, look.on)
    elif look.part is Part.DETECTOR_RAIL:
        colour = theme.live if look.on else theme.ink
        filled = look.on and size.is_small
        stage.circle((0.5, 0.5), 0.25, colour, theme.live if filled else theme.paper)
        if look.on and not filled:
            stage.dot((0.5, 0.5), 0.13, colour)


def _draw_heads(stage: Stage, on: bool) -> None:
    """Two heads: outward they drive, inward they brake."""
    colour = stage.theme.on_live if on else stage.theme.ink
    for tip, base in ((0.27, 0.38), (0.73, 0.62)) if on else ((0.40, 0.29), (0.60, 0.71)):
        stage.line([(0.38, base), (0.5, tip), (0.62, base)], colour, stage.size.narrow)
