"""Somebody who answers whatever is asked, for those who do things at random."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from random import Random
from typing import Final

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QDialog

ACCEPTED: Final = 0.4
"""What is refused is asked again, so some questions must be dropped."""


@contextmanager
def answering() -> Iterator[None]:
    """Whatever is asked meanwhile is accepted or dropped at once."""
    chance, timer = Random(0), QTimer(interval=1)

    def answer() -> None:
        dialog = QApplication.activeModalWidget()
        if isinstance(dialog, QDialog):
            dialog.accept() if chance.random() < ACCEPTED else dialog.reject()

    timer.timeout.connect(answer)
    timer.start()
    try:
        yield
    finally:
        timer.stop()
