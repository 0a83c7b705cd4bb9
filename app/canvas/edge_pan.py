"""A drag that leaves the view takes the view along, the faster the farther it is beyond the edge."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QObject, QPointF, QRectF, QTimer

from app.canvas.navigation import Navigator

EVERY_MS: Final = 30
SLOWEST: Final = 4
FASTEST: Final = 32
"""px a step."""


class EdgePan(QObject):
    """Pans while the pointer is held beyond an edge; after each step the drag goes on where it is."""

    def __init__(self, navigator: Navigator, go_on: Callable[[QPointF], object]) -> None:
        super().__init__(navigator)
        self._navigator = navigator
        self._go_on = go_on
        self._at = QPointF()
        self._timer = QTimer(self, interval=EVERY_MS)
        self._timer.timeout.connect(self._step)

    def follow(self, at: QPointF) -> None:
        """The pointer is there in the middle of a drag."""
        self._at = at
        if any(self._beyond()) != self._timer.isActive():
            self.stop() if self._timer.isActive() else self._timer.start()

    def stop(self) -> None:
        """The drag has ended."""
        self._timer.stop()

    def _step(self) -> None:
        right, down = map(_speed, self._beyond())
        self._navigator.show(self._navigator.view.panned(-right, -down))
        self._go_on(self._at)

    def _beyond(self) -> tuple[float, float]:
        """px that the pointer is beyond the right and the lower edge, negative beyond the others."""
        room = QRectF(self._navigator.room)
        inside = QPointF(
            min(max(self._at.x(), room.left()), room.right()),
            min(max(self._at.y(), room.top()), room.bottom()),
        )
        return self._at.x() - inside.x(), self._at.y() - inside.y()


def _speed(beyond: float) -> int:
    fast = min(max(abs(beyond), SLOWEST), FASTEST) if beyond else 0.0
    return round(fast if beyond > 0 else -fast)
