"""What is dropped on a window."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QMimeData


def dropped_file(data: QMimeData) -> Path | None:
    """The one local file that is dropped, or ``None``."""
    urls = data.urls()
    return Path(urls[0].toLocalFile()) if len(urls) == 1 and urls[0].isLocalFile() else None
