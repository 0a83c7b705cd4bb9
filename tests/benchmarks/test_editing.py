"""An edit costs what it changes, not what there is: with its shapes, its local findings and its picture."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

import pytest
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QApplication

from app.canvas.view import PlanView
from app.document import Document
from model.edits import erase, place
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.routing.junction import Junction
from model.rules import RULES, Finding, find_all
from model.rules.local import LocalFindings
from tests.benchmarks.conftest import Ratio

pytestmark = [pytest.mark.slow, pytest.mark.timeout(300)]

LEVEL = 64
SEEN_SCALE = 24
EDITS = 20
"""In one measured run; the picture is painted after each."""


class FoundDocument(Document):
    """Its findings are found once; the background does nothing, so that only edits are measured."""

    def load(self, value: Plan, path: None = None) -> None:
        super().load(value, path)
        self.findings = find_all(Junction(value, self.layout))
        self._local = LocalFindings(self.layout, self.findings)

    def _work_out(self) -> None:
        pass


def carried(pieces: int) -> Plan:
    """Track on blocks."""
    side = math.isqrt(pieces // 2)
    return plan_of(
        [
            Piece(part, Cell(x, level, z), Facing.NORTH)
            for x in range(side)
            for z in range(side)
            for part, level in ((Part.SOLID_BLOCK, LEVEL - 1), (Part.RAIL, LEVEL))
        ]
    )


def _local(findings: list[Finding]) -> list[Finding]:
    return [finding for finding in findings if RULES[finding.rule].is_local]


Edited = Callable[[], None]


@pytest.fixture
def editing(qapp: QApplication) -> Iterator[Callable[[int], Edited]]:
    """Erases and lays rails in the middle of a plan of so many pieces, with the picture after each edit."""
    opened: list[tuple[FoundDocument, PlanView]] = []

    def of(pieces: int) -> Edited:
        document = FoundDocument()
        view = PlanView(document)
        opened.append((document, view))
        view.resize(1920, 1080)
        document.load(carried(pieces))
        view.level = LEVEL
        middle = math.isqrt(pieces // 2) // 2
        view.navigator.show(view.navigator.view.zoomed(SEEN_SCALE, 0, 0).centred(middle, middle, 960, 540))
        canvas = QPixmap(view.size())

        def run() -> None:
            for number in range(EDITS // 2):
                cell = Cell(middle, LEVEL, middle + number % 5)
                for edit in (
                    lambda at=cell: erase(document.plan, [at]),
                    lambda at=cell: place(document.plan, Piece(Part.RAIL, at, Facing.NORTH)),
                ):
                    document.apply(edit())
                    view.render(canvas)

        run()
        whole = find_all(Junction(document.plan, document.layout))
        assert _local(document.findings) == _local(whole)
        return run

    yield of
    for document, _ in opened:
        document.close()


def test_an_edit_of_a_large_plan(editing: Callable[[int], Edited], ratio: Ratio) -> None:
    ratio(
        "an edit to the picture, 100,000 pieces",
        editing(100_000),
        against="the same at 1,000 pieces",
        bound=editing(1_000),
        goal=3,
    )
