"""Pieces on the clipboard: as a plan file under an own type and as text, and as a picture.

What is pasted is checked just as a file is.
"""

from __future__ import annotations

import atexit
from typing import Final

from PySide6.QtCore import QMimeData
from PySide6.QtGui import QGuiApplication, QImage

from model.files.plan_file import parse_plan, plan_bytes
from model.pieces import Piece
from model.plan import plan_of

MIME: Final = "application/x-platelayer-plan+json"
NAME: Final = "clipboard"
"""What messages call the place where the data came from."""
TEXT_STARTS_WITH: Final = b"{"


def put(pieces: tuple[Piece, ...], picture: QImage) -> None:
    """Puts pieces on the clipboard, for other windows and other programs."""
    data = QMimeData()
    document = plan_bytes(plan_of(pieces))
    data.setData(MIME, document)
    data.setText(document.decode())
    data.setImageData(picture)
    QGuiApplication.clipboard().setMimeData(data)
    atexit.unregister(_leave_text)
    atexit.register(_leave_text, data)


def _leave_text(data: QMimeData) -> None:
    """Leaves only the text of ``data`` on the clipboard, where it is still there when the program ends.

    Data made in Python ends the program with a segmentation fault then (PySide6 6.11.3, measured); text that
    Qt makes itself does not.
    """
    if QGuiApplication.instance() is not None and QGuiApplication.clipboard().mimeData() is data:
        QGuiApplication.clipboard().setText(data.text())


def taken() -> tuple[Piece, ...]:
    """The pieces on the clipboard now; see ``pieces_of``."""
    return pieces_of(QGuiApplication.clipboard().mimeData())


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
