"""How to read the pictures of the steps: a sample for each way in which a piece is drawn. Lengths in mm."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from PySide6.QtCore import QRectF

from app.canvas.symbols import Look, Manner, Stage, paint, paper
from app.canvas.symbols.lettering import em_for, width
from app.export.pencil import LEGEND, Pencil
from app.export.step_pictures import draw_brackets, grey
from model.parts import Part
from model.track.shapes import Shape

SIDE: Final = 6.0
"""Of a sample."""
WORDS: Final = ("new", "stands already", "one level below", "bent by what is new")
STRAIGHT: Final = Look(Part.RAIL, shape=Shape.EAST_WEST)
CURVE: Final = Look(Part.RAIL, shape=Shape.SOUTH_WEST)


def draw_step_key(pencil: Pencil, area: QRectF) -> None:
    """The samples in a row that ends at the right of the area."""
    em = em_for(LEGEND)
    x = area.right() - sum(SIDE + 2 + width(words, em) for words in WORDS) - 6 * (len(WORDS) - 1)
    y, baseline = area.center().y() - SIDE / 2, area.center().y() + LEGEND / 2
    for index, words in enumerate(WORDS):
        _draw_sample(pencil, index, x, y)
        pencil.text(x + SIDE + 2, baseline, words, LEGEND)
        x += SIDE + 8 + width(words, em)


def _draw_sample(pencil: Pencil, index: int, x: float, y: float) -> None:
    stage = Stage(pencil.painter, x, y, paper(SIDE), pencil.theme)
    if index == 1:
        stage = replace(stage, theme=grey(pencil.theme))
    elif index == 2:
        stage = replace(stage, manner=Manner.BELOW)
    paint(stage, CURVE if index == 3 else STRAIGHT)
    if index == 3:
        draw_brackets(pencil, QRectF(x, y, SIDE, SIDE))
