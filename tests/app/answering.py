"""Somebody who answers whatever is asked, for those who do things at random."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from random import Random
from typing import Final

from PySide6.QtCore import QEvent, QTimer
from PySide6.QtWidgets import QApplication, QDialog, QWidget

ACCEPTED: Final = 0.4
"""What is refused is asked again, so some questions must be dropped."""


@contextmanager
def answering() -> Iterator[list[str]]:
    """Whatever is asked meanwhile is accepted or dropped at once; gives the titles of what was."""
    chance, timer = Random(0), QTimer(interval=1)
    answered: list[str] = []

    def answer() -> None:
        dialog = QApplication.activeModalWidget()
        if isinstance(dialog, QDialog):
            answered.append(dialog.windowTitle())
            dialog.accept() if chance.random() < ACCEPTED else dialog.reject()

    timer.timeout.connect(answer)
    timer.start()
    try:
        yield answered
    finally:
        timer.stop()


def dialogs_of(window: QWidget) -> int:
    """How many there are once the loop of events has come round."""
    QApplication.processEvents()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    return len(window.findChildren(QDialog))
