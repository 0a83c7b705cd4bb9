"""What carries and does nothing else: solid block, target block, glass and slab."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import QLineF, QRectF

from app.canvas.symbols.look import Look
from app.canvas.symbols.size import Detail, Size
from app.canvas.symbols.stage import Stage
from model.grid import Heading
from model.parts import Part

LOW, HIGH = 0.07, 0.93
"""The square that stands for a block."""
TERMINAL, SMALL_TERMINAL = 0.20, 0.25
"""Side of a target block's terminals, and below 20 px."""


def draw_carrier(stage: Stage, look: Look) -> None:
    """A block of any of the four parts; neighbour levels and far zooms show its outline only."""
    detailed = stage.size.detail > Detail.LINES and not stage.is_hint
    if detailed and look.part is not Part.GLASS:
        _hatch(stage, 0.5 if look.part is Part.SLAB else HIGH)
    if look.power:
        draw_power(stage, look)
    else:
        stage.box(LOW, LOW, HIGH, HIGH, stage.theme.ink2, None)
    if not detailed:
        return
    if look.part is Part.GLASS:
        _draw_strokes(stage)
    elif look.part is Part.SLAB:
        stage.line([(LOW, 0.5), (HIGH, 0.5)], stage.theme.ink2, stage.size.narrow)
    elif look.part is Part.TARGET_BLOCK:
        _draw_terminals(stage)


def draw_power(stage: Stage, look: Look) -> None:
    """A powered block: its outline, wide where the power is strong, and the power in a filled square."""
    live, near = stage.theme.live, 0.25 if stage.size.is_small else 0.28
    stage.box(LOW, LOW, HIGH, HIGH, live, None, stage.size.wide if look.strong else stage.size.narrow)
    stage.block(near, near, 1 - near, 1 - near, live)
    if stage.size.detail >= Detail.STRENGTHS:
        said = look.mark or str(look.power)
        stage.text((0.5, 0.5), said, 0.25, stage.theme.on_live, bold=True, widest=0.38)


def _hatch(stage: Stage, bottom: float) -> None:
    """Lines at 45° rising to the east, from the top of the square down to ``bottom``."""
    area = QRectF(stage.at((LOW, LOW)), stage.at((HIGH, bottom)))
    stage.hatch(hatching(area, stage.size), stage.theme.ink3, stage.size.hatch_width)


def hatching(area: QRectF, size: Size) -> Iterator[QLineF]:
    """Lines along which x + y is constant, cut at the area's edges; on screen through middles of pixels."""
    pitch = round(size.hatch_pitch) if size.snaps else size.hatch_pitch
    total = area.left() + area.top() + pitch * 0.75
    total = round(total) if size.snaps else total
    while total < area.right() + area.bottom():
        low_x, high_x = max(area.left(), total - area.bottom()), min(area.right(), total - area.top())
        yield QLineF(low_x, total - low_x, high_x, total - high_x)
        total += pitch


def _draw_strokes(stage: Stage) -> None:
    for shift in (-0.07, 0.07):
        ends = [(0.37 + shift, 0.63 + shift * 0.6), (0.63 + shift, 0.37 + shift * 0.6)]
        stage.line(ends, stage.theme.ink2, stage.size.narrow)


def _draw_terminals(stage: Stage) -> None:
    side = SMALL_TERMINAL if stage.size.is_small else TERMINAL
    near = 0.5 - side / 2
    for heading in Heading:
        stage.facing(heading).block(near, 0, 1 - near, side, stage.theme.ink)
