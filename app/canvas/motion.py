"""The running of test carts, at the speed of the dry run."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QElapsedTimer, QObject, QTimer, Signal

from app.canvas.preview import Run
from app.canvas.ways import length_of

SPEED: Final = 8.0
"""Cells a second."""
FRAME: Final = 16
"""ms between two pictures."""


class CartMotion(QObject):
    """Says how far the cart of the newest run has come; with reduced motion it is at its end at once."""

    moved = Signal()

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.run: Run | None = None
        self._clock = QElapsedTimer()
        self._timer = QTimer(self)
        self._timer.setInterval(FRAME)
        self._timer.timeout.connect(self._move)

    def start(self, run: Run, reduced: bool) -> None:
        """Sends the cart of a run off."""
        self.run = run
        self._clock.start()
        if reduced:
            self._timer.stop()
            self._clock.invalidate()
        else:
            self._timer.start()
        self.moved.emit()

    def stop(self) -> None:
        """Takes the cart off."""
        self.run = None
        self._timer.stop()

    @property
    def distance(self) -> float:
        """How far the cart has come, in cells."""
        if self.run is None:
            return 0.0
        whole = length_of(self.run)
        if not self._clock.isValid():
            return whole
        return min(whole, self._clock.elapsed() / 1000 * SPEED)

    def _move(self) -> None:
        if self.run is None or self.distance >= length_of(self.run):
            self._timer.stop()
        self.moved.emit()
