"""The ways of carts on the plan view: bands, chevrons, the reason at the end, the key, the running cart."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from app.canvas.chips import draw_label, draw_panel, label_box
from app.canvas.geometry import Viewport
from app.canvas.preview import Run, headings_of
from app.canvas.symbols import (
    Ground,
    WayKind,
    WayStep,
    draw_cart,
    draw_chevrons,
    draw_way,
    screen,
    side_by_side,
    way_steps,
)
from app.canvas.symbols.carts import ALONG
from app.canvas.symbols.lettering import draw_text, elided, width
from app.theme import Theme
from model.grid import VECTORS, Cell, Heading
from model.track.carts import Outcome

KEY_CELL: Final = 22
"""px a cell of the samples in the key."""
KEY_ROW: Final = 24
LETTERS: Final = 11
SAMPLE: Final = (Cell(0, 0, 0), Cell(1, 0, 0), Cell(2, 0, 0))


@dataclass(frozen=True)
class ShownWay:
    """A run with its steps, ready to be drawn."""

    run: Run
    steps: list[WayStep]

    @property
    def kind(self) -> WayKind:
        """Whose way it is."""
        return WayKind.CALLED if self.run.called else WayKind.IDLE

    @property
    def is_barred(self) -> bool:
        """Whether it ends off an arm."""
        return self.run.way.outcome is not Outcome.ARM


def shown_ways(runs: tuple[Run, ...], plain: Callable[[Cell], bool]) -> list[ShownWay]:
    """The runs with their steps; where an empty and a called cart share cells, side by side."""
    steps = [way_steps(run.way.path, run.entering, run.way.heading, plain) for run in runs]
    if len(runs) == 2:
        first, second = (1, 0) if runs[0].called else (0, 1)
        steps[first], steps[second] = side_by_side(steps[first], steps[second])
    return [ShownWay(run, each) for run, each in zip(runs, steps, strict=True)]


def ground_for(painter: QPainter, view: Viewport, theme: Theme, level: int) -> Ground:
    """What the ways are drawn on, in widget pixels."""
    return Ground(painter, view.origin_x, view.origin_y, screen(view.scale), theme, level)


def paint_bands(ground: Ground, ways: list[ShownWay]) -> None:
    """The bands, under the symbols."""
    for way in ways:
        draw_way(ground, way.steps, way.kind, barred=way.is_barred)


def paint_chevrons(ground: Ground, ways: list[ShownWay]) -> None:
    """The chevrons, over the symbols."""
    for way in ways:
        draw_chevrons(ground, way.steps, way.kind)


def paint_reasons(ground: Ground, ways: list[ShownWay], tags: Sequence[QRectF] = ()) -> None:
    """The reason at the end of a way that ends off an arm: before it, or beside it where a tag lies."""
    for way in ways:
        last = way.steps[-1]
        if way.run.way.outcome is Outcome.ARM or last.cell.y != ground.level:
            continue
        box = reason_box(ground, last, way.run.reason, tags)
        draw_label(ground.painter, box, way.run.reason, ground.theme)


def reason_box(ground: Ground, last: WayStep, reason: str, tags: Sequence[QRectF]) -> QRectF:
    """Where a reason stands, clear of the tags where one of the three sides is."""
    boxes = []
    for towards in (last.leave, last.leave.clockwise, last.leave.clockwise.opposite):
        dx, dz = VECTORS[towards]
        boxes.append(label_box(ground.point(last.cell, 0.62 * dx, 0.62 * dz), towards, reason))
    return next((box for box in boxes if not any(box.intersects(tag) for tag in tags)), boxes[0])


def paint_key(
    painter: QPainter, bottom_left: QPointF, ways: list[ShownWay], widest: float, theme: Theme
) -> None:
    """Which way is which, its lower left corner at a point, no wider than so many px."""
    sample = len(SAMPLE) * KEY_CELL
    words = [elided(way.run.words, LETTERS, widest - sample - 40) for way in ways]
    wide = max(width(said, LETTERS) for said in words) + sample + 40
    high = KEY_ROW * len(ways) + 8
    box = QRectF(bottom_left.x(), bottom_left.y() - high, wide, high)
    draw_panel(painter, box, theme)
    for row, way in enumerate(ways):
        middle = box.top() + 4 + (row + 0.5) * KEY_ROW
        size = screen(KEY_CELL)
        ground = Ground(painter, box.left() + 12, middle - KEY_CELL / 2, size, theme, 0)
        steps = way_steps(SAMPLE, Heading.EAST, Heading.EAST, lambda _: True)
        draw_way(ground, steps, way.kind)
        line = QRectF(box.left() + 12, middle - size.wide / 2, sample, size.wide)
        painter.fillRect(line.toAlignedRect(), theme.ink)
        draw_chevrons(ground, steps, way.kind)
        draw_text(painter, box.left() + sample + 24, middle + 4, words[row], LETTERS, theme.ink)


def paint_cart(ground: Ground, run: Run, distance: float) -> None:
    """The cart of a run after so many cells."""
    steps = headings_of(run)
    index = min(int(distance), len(steps) - 1)
    cell, enter, leave = steps[index]
    if cell.y != ground.level or ground.size.c < 2:
        return
    x, z, clockwise = pose(enter, leave, min(distance - index, 1.0))
    at = ground.point(cell, x, z)
    draw_cart(ground.painter, at.x(), at.y(), ground.size, clockwise, ground.theme, loaded=run.called)


def length_of(run: Run) -> float:
    """How far the middle of a run's cart goes, in cells.

    A stopped cart stands in the middle of its last cell; any other comes with its front to the end of it.
    """
    cells = len(run.way.path)
    return cells - (0.5 if run.way.outcome is Outcome.STOPPED else ALONG / 2)


def pose(enter: Heading, leave: Heading, part: float) -> tuple[float, float, float]:
    """A cart after a part (0 to 1) of a cell: x and z from its middle, degrees clockwise from north."""
    (ax, az), (bx, bz) = VECTORS[enter], VECTORS[leave]
    if leave in (enter, enter.opposite):
        return (part - 0.5) * ax, (part - 0.5) * az, 90.0 * enter
    # A quarter circle of radius 0.5 about the corner between the two sides.
    turn = 1 if leave is enter.clockwise else -1
    angle = part * math.pi / 2
    x = 0.5 * (bx - ax) - 0.5 * bx * math.cos(angle) + 0.5 * ax * math.sin(angle)
    z = 0.5 * (bz - az) - 0.5 * bz * math.cos(angle) + 0.5 * az * math.sin(angle)
    return x, z, 90.0 * enter + turn * 90.0 * part
