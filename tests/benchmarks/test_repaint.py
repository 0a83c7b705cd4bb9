"""Painting costs what is seen, not what there is. Ratios of repaints, the fastest of many runs each."""

from __future__ import annotations

import math
import time

import pytest
from PySide6.QtGui import QPixmap

from app.canvas.view import PlanView
from app.document import Document
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from tests.benchmarks.conftest import AddRow

pytestmark = pytest.mark.slow

LEVEL = 64
SEEN_SCALE = 32
"""At 32 px a cell about 2,000 cells are in sight on 1920 × 1080 px."""
RUNS = 25


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


def repaint_time(view: PlanView) -> float:
    canvas = QPixmap(view.size())
    view.render(canvas)
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        view.render(canvas)
        times.append(time.perf_counter() - start)
    return min(times)


def times(document: Document, view: PlanView, plan: Plan) -> tuple[float, float]:
    """Seconds to repaint 2,000 cells, and the whole plan as far out as can be."""
    document.load(plan, None)
    view.navigator.show(view.navigator.view.zoomed(SEEN_SCALE, 0, 0).centred(0, 0, 28, 22))
    near = repaint_time(view)
    view.navigator.zoom_to(1)
    return near, repaint_time(view)


def compare(larger: int, add_row: AddRow) -> None:
    document = StillDocument()
    view = PlanView(document)
    view.resize(1920, 1080)
    empty, _ = times(document, view, plan_of([Piece(Part.RAIL, Cell(9000, LEVEL, 9000))]))
    small, _ = times(document, view, field(10_000))
    large, whole = times(document, view, field(larger))
    document.close()
    add_row("repaint of 2,000 cells, 10,000 pieces", "an empty repaint", small / empty, 12)
    add_row(f"repaint of 2,000 cells, {larger:,} pieces", "the same at 10,000", large / small, 1.5)
    add_row(f"repaint of the whole plan, {larger:,} pieces", "an empty repaint", whole / empty, 60)


def test_repainting_costs_what_is_seen(qapp: object, add_row: AddRow) -> None:
    compare(100_000, add_row)


@pytest.mark.timeout(300)
def test_repainting_a_million_pieces(qapp: object, add_row: AddRow) -> None:
    compare(1_000_000, add_row)
