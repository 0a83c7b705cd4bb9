"""What is shown of findings follows edits piece by piece, and is then as if it were made anew."""

from __future__ import annotations

import random
from collections import Counter

import pytest
from PySide6.QtWidgets import QApplication

from app.canvas.markers import Markers
from app.document import Document
from app.known_findings import KnownFindings
from app.panels.findings_model import FindingsModel
from model.edits import erase, place
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.routing.junction import Junction
from model.rules import find_all
from model.rules.by_cell import FindingsByCell
from model.rules.local import LocalFindings

PIECES = (
    (Part.RAIL, Facing.EAST),
    (Part.BOOSTER_RAIL, Facing.EAST),
    (Part.SOLID_BLOCK, Facing.NORTH),
    (Part.TORCH, Facing.UP),
)


class FoundDocument(Document):
    """Its findings are found once; only edits change them from there."""

    def load(self, value: Plan, path: None = None) -> None:
        super().load(value, path)
        self.found = KnownFindings(find_all(Junction(value, self.layout)))
        self._local = LocalFindings(self.layout, self.findings)

    def _work_out(self) -> None:
        pass


@pytest.mark.parametrize("seed", range(4))
def test_lists_and_markers_after_random_edits(qapp: QApplication, seed: int) -> None:
    chance = random.Random(seed)
    document, model = FoundDocument(), FindingsModel()
    document.load(plan_of([Piece(Part.BOOSTER_RAIL, Cell(x, 64, 0), Facing.EAST) for x in range(6)]))
    model.show(document.findings, {}, are_old=False)
    document.findings_changed.connect(model.follow)
    changes = 0
    for _ in range(40):
        cell = Cell(chance.randrange(6), chance.choice((63, 64)), chance.randrange(3))
        before = list(document.findings)
        if cell in document.plan.pieces:
            document.apply(erase(document.plan, [cell]))
        else:
            part, facing = chance.choice(PIECES)
            document.apply(place(document.plan, Piece(part, cell, facing)))
        changes += document.findings != before
        assert [model.finding(row) for row in range(model.rowCount())] == document.findings
        fresh, by_cell = Markers(document.findings), FindingsByCell(document.findings)
        counted = Counter(finding.severity for finding in document.findings if not finding.waived)
        assert +document.found.open == counted
        for level in (63, 64):
            assert document.found.markers.on_level(level) == fresh.on_level(level)
        assert set(document.findings_at(cell)) == set(by_cell.at(cell))
    assert changes > 10
    document.close()
