"""Pieces on the clipboard: what goes there comes back, and the program ends well afterwards."""

from __future__ import annotations

import subprocess
import sys

import pytest
from PySide6.QtCore import QMimeData
from PySide6.QtWidgets import QApplication

from app.canvas.clipboard import MIME, document_in, pieces_in
from app.canvas.picture import LARGEST, squares_of_pieces
from app.canvas.view import PlanView
from app.theme import theme
from model.edits import copy_pieces
from model.files.plan_file import PlanFileError, parse_plan
from model.grid import Cell
from model.parts import Part
from model.pieces import Piece
from tests.app.canvas.conftest import LEVEL

CELLS = frozenset(Cell(x, LEVEL, 0) for x in (1, 2, 3))

COPY_AND_END = """
from PySide6.QtWidgets import QApplication
from app.canvas.clipboard import copied, put
from model.grid import Cell
from model.parts import Part
from model.pieces import Piece
from PySide6.QtGui import QImage
application = QApplication([])
put(copied((Piece(Part.RAIL, Cell(0, 64, 0)),), QImage(8, 8, QImage.Format.Format_RGB32)))
"""


def pasted(data: QMimeData) -> tuple[Piece, ...]:
    document = document_in(data)
    assert document is not None
    return pieces_in(document)


def test_what_is_copied_comes_back(shown_wye: PlanView) -> None:
    shown_wye.choose(CELLS)
    shown_wye.copy()
    data = QApplication.clipboard().mimeData()
    expected = copy_pieces(shown_wye.document.plan, CELLS)
    assert pasted(data) == expected
    assert tuple(parse_plan(data.text().encode(), "text").pieces) == expected
    assert data.hasImage()
    assert QApplication.clipboard().image().width() == 3 * 48


def test_a_plan_copied_as_text_elsewhere_can_be_pasted(shown_wye: PlanView) -> None:
    shown_wye.choose(CELLS)
    shown_wye.copy()
    data = QMimeData()
    data.setText(" \n" + QApplication.clipboard().text())
    assert len(pasted(data)) == 3


@pytest.mark.parametrize("document", [b"", b"{", b"[]", b'{"format": "other"}', b"\xff\xfe"])
def test_a_damaged_plan_is_refused_like_a_file(qapp: QApplication, document: bytes) -> None:
    data = QMimeData()
    data.setData(MIME, document)
    with pytest.raises(PlanFileError, match="clipboard"):
        pasted(data)


def test_the_program_ends_well_with_pieces_on_the_clipboard() -> None:
    ran = subprocess.run([sys.executable, "-c", COPY_AND_END], capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stderr) == (0, "")


def test_very_many_pieces_are_squares_in_their_picture() -> None:
    of = theme("light")
    pieces = (
        Piece(Part.RAIL, Cell(4, 64, 2)),
        Piece(Part.LAMP, Cell(6, 64, 3)),
        Piece(Part.LAMP, Cell(4, 63, 3)),
    )
    picture = squares_of_pieces(pieces, of)
    side = picture.width() // 3
    assert (picture.width(), picture.height()) == (3 * side, 2 * side), "x from 4 to 6, z from 2 to 3"
    colours = {(x, z): picture.pixelColor(x * side, z * side).name() for x in range(3) for z in range(2)}
    assert colours.pop((0, 0)) == of.ink.name()
    assert colours.pop((2, 1)) == of.dim.name()
    assert set(colours.values()) == {of.paper.name()}, "what lies lower is left out"
    far = (Piece(Part.RAIL, Cell(-100_000, 64, 0)), Piece(Part.RAIL, Cell(100_000, 64, 9)))
    assert squares_of_pieces(far, of).width() <= LARGEST
