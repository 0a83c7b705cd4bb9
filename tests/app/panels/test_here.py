"""What the status bar says of a cell."""

from __future__ import annotations

from app.document import Document
from app.panels.here import here_words
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Held, Piece
from model.plan import plan_of

HERE = Cell(0, 64, 0)


def words(piece: Piece) -> str:
    """What is said of a plan that holds one piece."""
    document = Document()
    document.load(plan_of([piece]), None)
    said = here_words(document, HERE)
    document.close()
    return said


def test_a_container_says_what_it_holds_and_reads(qapp: object) -> None:
    # 22 of its waybill in a reader's hopper read 1: common practice, no source.
    hopper = Piece(Part.HOPPER, HERE, Facing.DOWN, holds=(Held("waybill:Salt", 22),))
    assert words(hopper) == "hopper, faces down, holds 22 waybill:Salt, reads 1"


def test_an_empty_cell_says_so(qapp: object) -> None:
    document = Document()
    assert here_words(document, HERE) == "nothing here"
    document.close()
