"""What holds items: hopper, barrel, auto-crafter."""

from __future__ import annotations

from PySide6.QtGui import QColor, QPainterPath

from app.canvas.symbols.look import Look
from app.canvas.symbols.size import Detail
from app.canvas.symbols.stage import Stage
from model.grid import Facing

OUTER, INNER = (0.13, 0.87), (0.37, 0.63)
TIP = 0.02
"""Where the point of an arrow lies that faces north."""
CORNERS = ((0, 0), (1, 0), (0, 1), (1, 1))


def draw_hopper(stage: Stage, look: Look) -> None:
    """A funnel from above: slant lines into the mouth, and an arrow where it gives sideways."""
    size = stage.size
    outline, fill, ink = _colours(stage, look)
    stage.box(OUTER[0], OUTER[0], OUTER[1], OUTER[1], outline, fill)
    if stage.is_hint or size.detail <= Detail.LINES:
        return
    if look.on and size.is_small:
        # In a filled square so small an arrow is lost: the mouth is open to where it gives.
        end = INNER[0] if look.facing is Facing.DOWN else 0.0
        stage.block(INNER[0], end, INNER[1], INNER[1], stage.theme.paper)
        return
    if not size.is_small:
        _draw_slants(stage, ink, through=look.facing is Facing.DOWN)
    stage.box(INNER[0], INNER[0], INNER[1], INNER[1], ink, None)
    if look.facing is not Facing.DOWN:
        _draw_arrow(stage, INNER[0], ink, outline)


def _colours(stage: Stage, look: Look) -> tuple[QColor, QColor, QColor]:
    """Of the outline, the inside, and the marks in it."""
    theme = stage.theme
    return (theme.live, theme.live, theme.on_live) if look.on else (theme.ink, theme.paper, theme.ink)


def _draw_slants(stage: Stage, ink: QColor, through: bool) -> None:
    for x, y in CORNERS:
        start = (OUTER[x], OUTER[y])
        end = (0.5, 0.5) if through else (INNER[x], INNER[y])
        stage.line([start, end], ink, stage.size.narrow)


def _draw_arrow(stage: Stage, start: float, ink: QColor, outside: QColor) -> None:
    """From ``start`` to the edge that the part faces; its point, ``outside`` the square, lies on paper."""
    base, half = (0.28, 0.19) if stage.size.is_small else (0.20, 0.09)
    stage.line([(0.5, start), (0.5, base - 0.04)], ink, stage.size.narrow)
    stage.polygon(((0.5 - half, base), (0.5 + half, base), (0.5, TIP)), None, ink)
    if outside != ink:
        half *= (OUTER[0] - TIP) / (base - TIP)
        stage.polygon(((0.5 - half, OUTER[0]), (0.5 + half, OUTER[0]), (0.5, TIP)), None, outside)


def draw_barrel(stage: Stage, look: Look) -> None:
    """A bulged outline with two hoops."""
    colour, fill, ink = _colours(stage, look)
    outline = QPainterPath(stage.at((0.27, 0.14)))
    outline.lineTo(stage.at((0.73, 0.14)))
    outline.quadTo(stage.at((0.99, 0.5)), stage.at((0.73, 0.86)))
    outline.lineTo(stage.at((0.27, 0.86)))
    outline.quadTo(stage.at((0.01, 0.5)), stage.at((0.27, 0.14)))
    stage.path(outline, colour, stage.size.narrow, fill=fill)
    if stage.is_hint or stage.size.detail <= Detail.LINES:
        return
    for y in (0.36, 0.64):
        stage.line([(0.16, y), (0.84, y)], ink, stage.size.narrow)


def draw_auto_crafter(stage: Stage, look: Look) -> None:
    """Three lines from the back that join, and an arrow to the edge it faces; up: a dot, down: a cross."""
    narrow = stage.size.narrow
    outline, fill, ink = _colours(stage, look)
    stage.box(OUTER[0], OUTER[0], OUTER[1], OUTER[1], outline, fill)
    if stage.is_hint or stage.size.detail <= Detail.LINES:
        return
    for x in (0.30, 0.70):
        stage.line([(x, 0.72), (0.5, 0.42)], ink, narrow)
    stage.line([(0.5, 0.72), (0.5, 0.42)], ink, narrow)
    if look.facing.heading is not None:
        _draw_arrow(stage, 0.42, ink, outline)
    elif stage.size.is_small:
        _draw_small_end(stage, look.facing, ink)
    elif look.facing is Facing.UP:
        stage.dot((0.5, 0.30), 0.09, ink)
    else:
        _draw_cross(stage, 0.30, ink)


def _draw_small_end(stage: Stage, facing: Facing, ink: QColor) -> None:
    """Too small for dot and cross: a bar at the end for up, nothing for down."""
    if facing is Facing.UP:
        stage.block(0.26, 0.24, 0.74, 0.42, ink)


def _draw_cross(stage: Stage, y: float, ink: QColor) -> None:
    """An arrow seen from behind."""
    for side in (-0.09, 0.09):
        stage.line([(0.41, y - side), (0.59, y + side)], ink, stage.size.narrow)
