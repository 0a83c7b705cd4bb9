"""A sign for each module: a box with its lines in and out, as in circuit diagrams.

After IEC 60617-12, from memory: the letters say what the box does, a circle turns the signal round.
"""

from __future__ import annotations

from typing import Final, NamedTuple

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter

from app.canvas.symbols.size import screen
from app.canvas.symbols.stage import Stage
from app.theme import Theme
from model.grid import Heading

LEFT, RIGHT, TOP, BOTTOM = 0.24, 0.70, 0.18, 0.82
RADIUS = 0.085


class Sign(NamedTuple):
    """What is drawn of a module."""

    letters: str
    ins: int = 1
    inverts: bool = False
    rises: bool = False
    """Whether the output leaves at the top."""


SIGNS: Final = {
    "inverter-flat": Sign("1", inverts=True),
    "inverter-upright": Sign("1", inverts=True, rises=True),
    "latch": Sign("SR", ins=2),
    "merge-repeaters": Sign("≥1", ins=2),
    "merge-target": Sign("≥1", ins=3),
    "off-delay": Sign("t"),
    "reader": Sign("R", ins=0),
    "side-drive": Sign("1", rises=True),
    "swapped-default": Sign("R", inverts=True),
}
STACK: Final = "torch-stack"


def paint_sign(painter: QPainter, rect: QRect, name: str, theme: Theme) -> None:
    """The sign of a module in a square; a module without one of its own shows its first letter."""
    painter.save()
    painter.translate(rect.left(), rect.top())
    stage = Stage(painter, 0, 0, screen(rect.width()), theme)
    if name == STACK:
        _draw_stack(stage)
    else:
        _draw_box(stage, SIGNS.get(name, Sign(name[:1].upper())))
    painter.restore()


def _draw_box(stage: Stage, sign: Sign) -> None:
    ink, narrow = stage.theme.ink, stage.size.narrow
    for number in range(sign.ins):
        y = TOP + (BOTTOM - TOP) * (number + 1) / (sign.ins + 1)
        stage.line([(0.02, y), (LEFT, y)], ink, narrow)
    if sign.ins == 0:
        # A reader stands under its track.
        stage.line([(0.0, 0.06), (1.0, 0.06)], ink, stage.size.wide)
    turned = stage.facing(Heading.NORTH if sign.rises else Heading.EAST)
    edge = 1 - TOP if sign.rises else RIGHT
    _draw_output(turned, edge - 0.5 if not sign.rises else 0.5 - TOP, inverts=sign.inverts)
    stage.box(LEFT, TOP, RIGHT, BOTTOM, ink, stage.theme.paper)
    stage.text(((LEFT + RIGHT) / 2, 0.5), sign.letters, 0.36, ink, widest=0.40)


def _draw_output(stage: Stage, far: float, *, inverts: bool) -> None:
    """The line out, on a stage that faces its way; ``far``: from the middle to the edge of the box."""
    edge = 0.5 - far
    start = edge - 2 * RADIUS if inverts else edge
    stage.line([(0.5, start), (0.5, 0.02)], stage.theme.ink, stage.size.narrow)
    if inverts:
        stage.circle((0.5, edge - RADIUS), RADIUS, stage.theme.ink, stage.theme.paper)


def _draw_stack(stage: Stage) -> None:
    """Two inverters, one on the other."""
    ink, narrow = stage.theme.ink, stage.size.narrow
    stage.line([(0.02, 0.83), (0.3, 0.83)], ink, narrow)
    for top in (0.70, 0.24):
        stage.line([(0.5, top), (0.5, top - 0.22)], ink, narrow)
        stage.circle((0.5, top - RADIUS), RADIUS, ink, stage.theme.paper)
        stage.box(0.3, top, 0.7, top + 0.25, ink, stage.theme.paper)
