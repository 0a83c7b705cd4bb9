"""How to read the pictures of the steps: a sample for each way in which a piece is drawn. Lengths in mm."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from PySide6.QtCore import QRectF

from app.canvas.symbols import Look, Manner, Stage, paint, paper
from app.canvas.symbols.lettering import em_for, width
from app.export.pencil import LEGEND, Pencil
from app.export.step_pictures import draw_brackets, grey
from app.translation import QT_TR_NOOP, tr
from model.parts import Part
from model.track.shapes import Shape

SIDE: Final = 6.0
"""Of a sample."""
STRAIGHT: Final = Look(Part.RAIL, shape=Shape.EAST_WEST)
CURVE: Final = Look(Part.RAIL, shape=Shape.SOUTH_WEST)
BETWEEN: Final = 5.0
"""mm from a word to the next sample."""


def draw_step_key(pencil: Pencil, area: QRectF) -> None:
    """The samples in a row that ends at the right of the area."""
    em = em_for(LEGEND)
    said = [(tr(words), draw) for words, draw in SAMPLES.items()]
    x = area.right() + BETWEEN - sum(SIDE + 2 + width(words, em) + BETWEEN for words, _ in said)
    y, baseline = area.center().y() - SIDE / 2, area.center().y() + LEGEND / 2
    for words, draw in said:
        draw(Stage(pencil.painter, x, y, paper(SIDE), pencil.theme))
        pencil.text(x + SIDE + 2, baseline, words, LEGEND)
        x += SIDE + 2 + width(words, em) + BETWEEN


def _draw_turned(stage: Stage) -> None:
    paint(stage, CURVE)
    draw_brackets(Pencil(stage.painter, stage.theme), QRectF(stage.x, stage.y, SIDE, SIDE))


SAMPLES: Final[dict[str, Callable[[Stage], None]]] = {
    QT_TR_NOOP("new"): lambda stage: paint(stage, STRAIGHT),
    QT_TR_NOOP("stands already"): lambda stage: paint(replace(stage, theme=grey(stage.theme)), STRAIGHT),
    QT_TR_NOOP("level below"): lambda stage: paint(replace(stage, manner=Manner.BELOW), STRAIGHT),
    QT_TR_NOOP("level above"): lambda stage: paint(replace(stage, manner=Manner.ABOVE), STRAIGHT),
    QT_TR_NOOP("has turned"): _draw_turned,
}
