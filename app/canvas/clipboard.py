"""Pieces on the clipboard: as a plan file under an own type and as text, and as a picture.

What is pasted is checked just as a file is.
"""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QMimeData
from PySide6.QtGui import QImage

from model.files.plan_file import PlanFileError, parse_plan, plan_bytes
from model.pieces import Piece
from model.plan import plan_of

MIME: Final = "application/x-platelayer-plan+json"
NAME: Final = "clipboard"
"""What messages call the place where the data came from."""
TEXT_STARTS_WITH: Final = b"{"


def mime_of(pieces: tuple[Piece, ...], picture: QImage) -> QMimeData:
    """The pieces for other windows and other programs."""
    data = QMimeData()
    document = plan_bytes(plan_of(pieces))
    data.setData(MIME, document)
    data.setText(document.decode())
    data.setImageData(picture)
    return data


def pieces_of(data: QMimeData | None) -> tuple[Piece, ...]:
    """The pieces on the clipboard; none where it is empty or holds something else altogether.

    Raises PlanFileError where it holds a plan that cannot be read.
    """
    if data is None:
        return ()
    if data.hasFormat(MIME):
        return tuple(parse_plan(bytes(data.data(MIME).data()), NAME).pieces)
    text = data.text().strip().encode() if data.hasText() else b""
    if not text.startswith(TEXT_STARTS_WITH):
        return ()
    return tuple(parse_plan(text, NAME).pieces)


__all__ = ["MIME", "PlanFileError", "mime_of", "pieces_of"]
