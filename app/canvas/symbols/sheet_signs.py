"""The signs of the build sheet beside the pieces themselves: samples for its key and for the help."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from PySide6.QtCore import QPointF

from app.canvas.symbols.lettering import draw_centred
from app.canvas.symbols.look import Look
from app.canvas.symbols.pieces import paint
from app.canvas.symbols.rails import draw_facing_mark
from app.canvas.symbols.stage import Stage
from model.grid import Heading
from model.parts import Part
from model.sheet.levels import Sign
from model.track.shapes import Shape

SWITCH: Final = Look(Part.RAIL, shape=Shape.SOUTH_EAST, other_shape=Shape.NORTH_EAST)
CURVE: Final = Look(Part.RAIL, shape=Shape.SOUTH_WEST)
LOOKS: Final = {
    Sign.RISING: Look(Part.RAIL, shape=Shape.RISING_EAST),
    Sign.SWITCH: SWITCH,
    Sign.INVERTER: replace(SWITCH, inverter=True),
    Sign.FACING: CURVE,
    Sign.NUMBER: CURVE,
}


def draw_sign(stage: Stage, sign: Sign, em: float) -> None:
    """A rail that bears the sign; ``em`` is the size of a number on it, in the painter's units."""
    paint(stage, LOOKS[sign])
    c = stage.size.c
    if sign is Sign.FACING:
        draw_facing_mark(stage, (0.78, 0.22), Heading.WEST)
    elif sign is Sign.NUMBER:
        at = QPointF(stage.x + 0.76 * c, stage.y + 0.24 * c)
        draw_centred(stage.painter, at, "1", em, stage.theme.ink)
