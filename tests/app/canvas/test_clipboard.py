"""Pieces on the clipboard: what goes there comes back, and the program ends well afterwards."""

from __future__ import annotations

import subprocess
import sys

import pytest
from PySide6.QtCore import QMimeData
from PySide6.QtWidgets import QApplication

from app.canvas.clipboard import MIME, pieces_of
from app.canvas.view import PlanView
from model.edits import copy_pieces
from model.files.plan_file import PlanFileError, parse_plan
from model.grid import Cell
from tests.app.canvas.conftest import LEVEL

CELLS = frozenset(Cell(x, LEVEL, 0) for x in (1, 2, 3))

COPY_AND_END = """
from PySide6.QtWidgets import QApplication
from app.canvas.clipboard import put
from model.grid import Cell
from model.parts import Part
from model.pieces import Piece
from PySide6.QtGui import QImage
application = QApplication([])
put((Piece(Part.RAIL, Cell(0, 64, 0)),), QImage(8, 8, QImage.Format.Format_RGB32))
"""


def test_what_is_copied_comes_back(shown_wye: PlanView) -> None:
    shown_wye.choose(CELLS)
    shown_wye.copy()
    data = QApplication.clipboard().mimeData()
    expected = copy_pieces(shown_wye.document.plan, CELLS)
    assert pieces_of(data) == expected
    assert tuple(parse_plan(data.text().encode(), "text").pieces) == expected
    assert data.hasImage()
    assert QApplication.clipboard().image().width() == 3 * 48


def test_a_plan_copied_as_text_elsewhere_can_be_pasted(shown_wye: PlanView) -> None:
    shown_wye.choose(CELLS)
    shown_wye.copy()
    data = QMimeData()
    data.setText(" \n" + QApplication.clipboard().text())
    assert len(pieces_of(data)) == 3


@pytest.mark.parametrize("document", [b"", b"{", b"[]", b'{"format": "other"}', b"\xff\xfe"])
def test_a_damaged_plan_is_refused_like_a_file(qapp: QApplication, document: bytes) -> None:
    data = QMimeData()
    data.setData(MIME, document)
    with pytest.raises(PlanFileError, match="clipboard"):
        pieces_of(data)


def test_the_program_ends_well_with_pieces_on_the_clipboard() -> None:
    ran = subprocess.run([sys.executable, "-c", COPY_AND_END], capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stderr) == (0, "")
