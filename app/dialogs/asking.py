"""Asking with a dialog, which goes once it is answered."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TypeVar

from PySide6.QtWidgets import QDialog
from shiboken6 import isValid

Dialog = TypeVar("Dialog", bound=QDialog)


@contextmanager
def asking(dialog: Dialog) -> Iterator[Dialog]:
    """Puts a dialog away in the end: as a child of its window it would stay as long as that does."""
    try:
        yield dialog
    finally:
        if isValid(dialog):  # the window may have been closed meanwhile
            dialog.deleteLater()
