"""Pieces on the clipboard: as a plan file under an own type and as text, and as a picture.

What is pasted is checked just as a file is.
"""

from __future__ import annotations

import atexit
from dataclasses import dataclass
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


@dataclass(frozen=True)
class Copied:
    """Pieces in every form in which they lie on the clipboard."""

    count: int
    document: bytes
    picture: QImage


def copied(pieces: tuple[Piece, ...], picture: QImage) -> Copied:
    """Pieces in every form."""
    return Copied(len(pieces), plan_bytes(plan_of(pieces)), picture)


def put(copied: Copied) -> None:
    """Puts pieces on the clipboard, for other windows and other programs."""
    data = QMimeData()
    data.setData(MIME, copied.document)
    data.setText(copied.document.decode())
    data.setImageData(copied.picture)
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


def document_now() -> bytes | None:
    """The plan file on the clipboard now; see ``document_in``."""
    return document_in(QGuiApplication.clipboard().mimeData())


def document_in(data: QMimeData | None) -> bytes | None:
    """The plan file on a clipboard; ``None`` where it is empty or holds something else altogether."""
    if data is None:
        return None
    if data.hasFormat(MIME):
        return bytes(data.data(MIME).data())
    text = data.text().strip().encode() if data.hasText() else b""
    return text if text.startswith(TEXT_STARTS_WITH) else None


def pieces_in(document: bytes) -> tuple[Piece, ...]:
    """The pieces of a plan file from a clipboard. Raises PlanFileError where it cannot be read."""
    return tuple(parse_plan(document, NAME).pieces)
