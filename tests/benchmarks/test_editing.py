"""An edit costs what it changes, not what there is: with its shapes, its local findings and its picture."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import Final

import pytest
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QApplication

from app.canvas.view import PlanView
from app.document import Document
from app.known_findings import KnownFindings
from model.edits import erase, place
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import Change, Plan
from model.routing.junction import Junction
from model.rules import RULES, Finding, find_all
from model.rules.local import LocalFindings
from tests.benchmarks.conftest import AddRow, Ratio
from tests.benchmarks.measuring import best
from tests.benchmarks.tracks import carried

pytestmark = pytest.mark.slow

SIZES: Final = (10_000, 100_000, 1_000_000)
SMALL: Final = 1_000
LEVEL: Final = 64
SEEN_SCALE: Final = 24
EDITS: Final = 20
"""In one measured run."""


class FoundDocument(Document):
    """Its findings are found once; the background does nothing, so that only edits are measured."""

    def load(self, value: Plan, path: None = None) -> None:
        super().load(value, path)
        self.found = KnownFindings(find_all(Junction(value, self.layout)))
        self._local = LocalFindings(self.layout, self.findings)

    def _work_out(self) -> None:
        pass


def _local(findings: list[Finding]) -> list[Finding]:
    return [finding for finding in findings if RULES[finding.rule].is_local]


class Editing:
    """Rails in the middle of a plan of so many pieces that are erased and laid again, in sight."""

    def __init__(self, pieces: int) -> None:
        self.document = FoundDocument()
        self.view = PlanView(self.document)
        self.view.resize(1920, 1080)
        self.document.load(carried(pieces))
        self.view.level = LEVEL
        self.middle = math.isqrt(pieces // 2) // 2
        seen = self.view.navigator.view.zoomed(SEEN_SCALE, 0, 0)
        self.view.navigator.show(seen.centred(self.middle, self.middle, 960, 540))
        self.canvas = QPixmap(self.view.size())

    def edit(self) -> None:
        """Without the picture."""
        for change in self._changes():
            self.document.apply(change)

    def edit_and_paint(self) -> None:
        """With the picture after each edit."""
        for change in self._changes():
            self.document.apply(change)
            self.view.render(self.canvas)

    def _changes(self) -> Iterator[Change]:
        for number in range(EDITS // 2):
            cell = Cell(self.middle, LEVEL, self.middle + number % 5)
            yield erase(self.document.plan, [cell])
            yield place(self.document.plan, Piece(Part.RAIL, cell, Facing.NORTH))


@pytest.fixture(scope="module")
def editing(qapp: QApplication) -> Iterator[Callable[[int], Editing]]:
    """Each size is set up once."""
    opened: dict[int, Editing] = {}

    def of(pieces: int) -> Editing:
        if pieces not in opened:
            opened[pieces] = Editing(pieces)
        return opened[pieces]

    yield of
    for each in opened.values():
        each.document.close()


@pytest.mark.parametrize("pieces", SIZES)
def test_an_edit(editing: Callable[[int], Editing], ratio: Ratio, pieces: int) -> None:
    large, small = editing(pieces), editing(SMALL)
    ratio(
        f"an edit with shapes and local findings, {pieces:,} pieces",
        large.edit,
        against=f"the same at {SMALL:,} pieces",
        bound=small.edit,
        goal=3,
    )


@pytest.mark.parametrize("pieces", SIZES)
def test_an_edit_to_the_picture(editing: Callable[[int], Editing], ratio: Ratio, pieces: int) -> None:
    large, small = editing(pieces), editing(SMALL)
    ratio(
        f"an edit to the picture, {pieces:,} pieces",
        large.edit_and_paint,
        against=f"the same at {SMALL:,} pieces",
        bound=small.edit_and_paint,
        goal=3,
    )


@pytest.mark.parametrize("pieces", SIZES)
def test_an_edit_within_a_frame(editing: Callable[[int], Editing], add_row: AddRow, pieces: int) -> None:
    an_edit = best(editing(pieces).edit_and_paint) / EDITS
    add_row(f"an edit to the picture, {pieces:,} pieces", "a frame of a screen at 60 Hz", an_edit * 60, 1)


def test_findings_after_edits_are_those_of_the_whole(editing: Callable[[int], Editing]) -> None:
    """With a rail left in the air, so that there is something to find."""
    edited = editing(SIZES[0])
    document, middle = edited.document, edited.middle
    edited.edit()
    document.apply(erase(document.plan, [Cell(middle, LEVEL - 1, middle)]))
    whole = find_all(Junction(document.plan, document.layout))
    assert _local(whole)
    assert _local(document.findings) == _local(whole)
    document.undo_stack.undo()
