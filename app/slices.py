"""Work that must be done in the window's own thread, a little of it between any two events."""

from __future__ import annotations

import time
from collections.abc import Generator
from typing import Any, Final

from PySide6.QtCore import QObject, QTimer, Signal

from app.background import Work

SLICE: Final = 0.012
"""Seconds for which events may wait, but for a step that takes longer by itself."""


class Slices(QObject):
    """Does one work at a time; a new one takes the place of the one before."""

    ended = Signal(object)
    """What came of the work."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._work: Generator[object, None, Any] | None = None
        self._next = QTimer(self, interval=0)
        self._next.timeout.connect(self._go_on)

    def start(self, work: Work[Any]) -> None:
        """Do this, the first of it at once, so that what is short is done then."""
        self._work = work()
        self._next.start()
        self._go_on()

    def drop(self) -> None:
        """Nobody wants it any more."""
        self._next.stop()
        self._work = None

    def _go_on(self) -> None:
        work, until = self._work, time.perf_counter() + SLICE
        assert work is not None
        try:
            while time.perf_counter() < until:
                next(work)
        except StopIteration as end:
            self.drop()
            self.ended.emit(end.value)
        except Exception:
            # A mistake is told once, not with each slice from now on.
            self.drop()
            raise
