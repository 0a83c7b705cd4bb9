"""Painting costs what is seen, not what there is. Ratios of repaints, the fastest of many runs each."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

import pytest
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QApplication

from app.canvas.view import PlanView
from app.document import Document
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from tests.benchmarks.conftest import AddRow
from tests.benchmarks.measuring import seconds

pytestmark = pytest.mark.slow

SMALL: Final = 10_000
LARGER: Final = (100_000, 1_000_000)
LEVEL: Final = 64
SEEN_SCALE: Final = 32
"""At 32 px a cell about 2,000 cells are in sight on 1920 × 1080 px."""
RUNS: Final = 20


class StillDocument(Document):
    """Works nothing out: only the painting is measured."""

    def _work_out(self) -> None:
        pass


def field(pieces: int) -> Plan:
    """Tracks from north to south with blocks between."""
    side = math.isqrt(pieces)
    parts = (Part.SOLID_BLOCK, Part.RAIL)
    return plan_of(
        [Piece(parts[x % 2], Cell(x, LEVEL, z), Facing.NORTH) for x in range(side) for z in range(side)]
    )


class Painted:
    """A plan in a view of its own."""

    def __init__(self, plan: Plan) -> None:
        self.document = StillDocument()
        self.view = PlanView(self.document)
        self.view.resize(1920, 1080)
        self.document.load(plan, None)
        self._middle = math.isqrt(len(plan.pieces)) // 2
        self._canvas = QPixmap(self.view.size())

    def show_near(self) -> None:
        """About 2,000 cells."""
        navigator = self.view.navigator
        navigator.show(navigator.view.zoomed(SEEN_SCALE, 0, 0).centred(0, 0, 28, 22))

    def show_whole(self) -> None:
        """The whole plan, as far out as can be."""
        navigator = self.view.navigator
        navigator.show(navigator.view.zoomed(1, 0, 0).centred(self._middle, self._middle, 970, 550))

    def paint(self) -> None:
        """One frame."""
        self.view.render(self._canvas)


def first_paint(painted: Painted) -> float:
    """Seconds to paint 2,000 cells of which nothing is kept: once, as the second time something is."""
    painted.show_near()
    return seconds(painted.view.grab)


def repaints(each: Sequence[Painted]) -> list[float]:
    """Seconds of the fastest repaint of each, in turn, so that a machine that grows busy does not decide."""
    for painted in each:
        painted.paint()
    return [
        min(taken) for taken in zip(*([seconds(p.paint) for p in each] for _ in range(RUNS)), strict=True)
    ]


def test_repainting_costs_what_is_seen(qapp: QApplication, add_row: AddRow) -> None:
    """An empty view is one whose only piece lies far off, seen as far out as what is beside it."""
    sizes = (SMALL, *LARGER)
    warm_up = Painted(field(SMALL))
    first_paint(warm_up)  # the first picture of a process costs more
    empty = Painted(plan_of([Piece(Part.RAIL, Cell(9000, LEVEL, 9000))]))
    plans = [Painted(field(size)) for size in sizes]
    firsts = [first_paint(painted) for painted in (empty, *plans)]
    nothing, *near = repaints([empty, *plans])
    for size, first in zip(sizes, firsts[1:], strict=True):
        add_row(f"first paint of 2,000 cells, {size:,} pieces", "the same of none", first / firsts[0])
    add_row(f"repaint of 2,000 cells, {SMALL:,} pieces", "an empty repaint", near[0] / nothing, 12)
    for size, taken in zip(LARGER, near[1:], strict=True):
        add_row(f"repaint of 2,000 cells, {size:,} pieces", f"the same at {SMALL:,}", taken / near[0], 1.5)
    for painted in (empty, *plans):
        painted.show_whole()
    nothing, _, *whole = repaints([empty, *plans])
    for size, taken in zip(LARGER, whole, strict=True):
        add_row(f"repaint of the whole plan, {size:,} pieces", "an empty repaint", taken / nothing, 60)
    for painted in (warm_up, empty, *plans):
        painted.document.close()
