"""Painting costs what is seen, not what there is. Ratios of repaints, the fastest of many runs each."""

from __future__ import annotations

import math
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
from tests.benchmarks.measuring import best

pytestmark = pytest.mark.slow

SMALL: Final = 10_000
LARGER: Final = (100_000, 1_000_000)
LEVEL: Final = 64
SEEN_SCALE: Final = 32
"""At 32 px a cell about 2,000 cells are in sight on 1920 × 1080 px."""
RUNS: Final = 12


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
    return best(lambda: view.render(canvas), RUNS)


def times(document: Document, view: PlanView, plan: Plan) -> tuple[float, float]:
    """Seconds to repaint 2,000 cells, and the whole plan as far out as can be."""
    document.load(plan, None)
    view.navigator.show(view.navigator.view.zoomed(SEEN_SCALE, 0, 0).centred(0, 0, 28, 22))
    near = repaint_time(view)
    view.navigator.zoom_to(1)
    return near, repaint_time(view)


def test_repainting_costs_what_is_seen(qapp: QApplication, add_row: AddRow) -> None:
    document = StillDocument()
    view = PlanView(document)
    view.resize(1920, 1080)
    empty, _ = times(document, view, plan_of([Piece(Part.RAIL, Cell(9000, LEVEL, 9000))]))
    small, _ = times(document, view, field(SMALL))
    add_row(f"repaint of 2,000 cells, {SMALL:,} pieces", "an empty repaint", small / empty, 12)
    for larger in LARGER:
        near, whole = times(document, view, field(larger))
        add_row(f"repaint of 2,000 cells, {larger:,} pieces", f"the same at {SMALL:,}", near / small, 1.5)
        add_row(f"repaint of the whole plan, {larger:,} pieces", "an empty repaint", whole / empty, 60)
    document.close()
