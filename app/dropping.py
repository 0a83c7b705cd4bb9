"""What is dropped on a window."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QDropEvent


def take_file(event: QDropEvent) -> Path | None:
    """The one local file that is dropped, or is about to be; ``None``, and refused, where it is not one.

    It is opened where it lies: whoever offers to move it would take it away once that is done.
    """
    urls = event.mimeData().urls()
    if len(urls) != 1 or not urls[0].isLocalFile() or not event.possibleActions() & Qt.DropAction.CopyAction:
        return None
    event.setDropAction(Qt.DropAction.CopyAction)
    event.accept()
    return Path(urls[0].toLocalFile())
