"""Where the marks of placing stand in a rail's cell: clear of its line, of a drive and of the switch's name.

Places are in fractions of the cell, from its north-west corner.
"""

from __future__ import annotations

from app.canvas.symbols.rails import free_side
from app.canvas.symbols.stage import Point
from model.grid import Heading
from model.parts import Part
from model.sheet.drawn import RailMarks
from model.track.shapes import Shape

NEAR, FAR = 0.2, 0.8
ROOM, BESIDE_A_BOX, BESIDE_A_DRIVE = 0.44, 0.28, 0.34
"""How wide a number may be."""
NUMBER_X = 0.24
"""The middle of a number as wide as its room."""

SWITCH_NUMBERS = {
    Heading.NORTH: (0.82, 0.13),
    Heading.EAST: (1 - NUMBER_X, 0.20),
    Heading.SOUTH: (0.82, 0.87),
    Heading.WEST: (NUMBER_X, 0.20),
}
"""By the side of the drive: opposite the name."""
SWITCH_ARROWS = {
    Heading.NORTH: (0.82, 0.84),
    Heading.EAST: (0.18, 0.16),
    Heading.SOUTH: (0.82, 0.16),
    Heading.WEST: (0.82, 0.16),
}
"""By the side of the drive: inside the arc of a curve."""


def number_place(part: Part, rail: RailMarks) -> tuple[Point, float]:
    """The middle of the number of placing, and how wide it may be."""
    if rail.powered is not None:
        side = free_side(rail.shape, rail.powered)
        return SWITCH_NUMBERS[side], BESIDE_A_DRIVE if side.lies_north_south else ROOM
    if rail.shape.is_curve:
        x, y = _empty_quadrant(rail.shape)
        return (1 - NUMBER_X if x == NEAR else NUMBER_X, y), ROOM
    if part is not Part.RAIL and _lies_north_south(rail.shape):
        return (BESIDE_A_BOX / 2, NEAR), BESIDE_A_BOX
    low = _low_end(rail.shape)
    if _lies_north_south(rail.shape):
        return (NUMBER_X, low), ROOM
    return (NUMBER_X if low == NEAR else 1 - NUMBER_X, NEAR), ROOM


def arrow_place(rail: RailMarks) -> Point:
    """The middle of the arrow that says how to face."""
    if rail.powered is not None:
        return SWITCH_ARROWS[free_side(rail.shape, rail.powered)]
    if rail.shape.is_curve:
        return _empty_quadrant(rail.shape)
    low = _low_end(rail.shape)
    return (FAR, low) if _lies_north_south(rail.shape) else (low, FAR)


def _lies_north_south(shape: Shape) -> bool:
    return shape.ends[0].heading.lies_north_south


def _low_end(shape: Shape) -> float:
    """Along the rail, away from the broad end of the wedge."""
    return FAR if shape.rises_to in (Heading.NORTH, Heading.WEST) else NEAR


def _empty_quadrant(shape: Shape) -> Point:
    """The middle of the quadrant that is farthest from the curve."""
    return NEAR if Heading.EAST in shape.headings else FAR, NEAR if Heading.SOUTH in shape.headings else FAR
