"""A long search beside the window: what it finds arrives at once, and it can be stopped at any time."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from enum import Enum, auto
from typing import Final

from PySide6.QtCore import QObject, QTimer, Signal

from app.background import Newest

TICK_MS: Final = 1_000
Steps = Callable[[], Iterator[object]]


class _Sign(Enum):
    END = auto()


class Search(QObject):
    """Runs one search at a time; a new one takes the place of the one before."""

    found = Signal(object)
    """Something that differs from what was found before."""
    ended = Signal()
    """The search has come to its own end."""
    ticked = Signal()
    """Another second has gone by."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._worker = Newest(self)
        self._worker.yielded.connect(self._take)
        self._worker.failed.connect(self._give_up)
        self._clock = QTimer(self, interval=TICK_MS)
        self._clock.timeout.connect(self.ticked)
        self._began = self._ended = 0.0

    @property
    def is_running(self) -> bool:
        """Whether more may be found."""
        return self._clock.isActive()

    @property
    def seconds(self) -> int:
        """For how long it has been running, or ran."""
        return int((time.monotonic() if self.is_running else self._ended) - self._began)

    def start(self, steps: Steps) -> None:
        """Search by these steps, between two of which the search can be stopped."""
        self._began = time.monotonic()
        self._clock.start()
        self._worker.ask(lambda: _news(steps))

    def stop(self) -> None:
        """Stop without waiting; what was found stays."""
        self._worker.drop()
        self._rest()

    def finish(self) -> None:
        """Wait until the search has come to its end; what it found arrives with the next events."""
        self._worker.finish()

    def _take(self, result: object) -> None:
        if result is _Sign.END:
            self._rest()
            self.ended.emit()
        else:
            self.found.emit(result)

    def _rest(self) -> None:
        if self.is_running:
            self._ended = time.monotonic()
            self._clock.stop()

    def _give_up(self, error: object) -> None:
        """A mistake of the program in the background is handled like one in the foreground."""
        self._rest()
        self.ended.emit()
        raise error if isinstance(error, Exception) else RuntimeError(str(error))


def _news(steps: Steps) -> Iterator[object]:
    """A step a step, but for what was found already; a sign at the end."""
    last: object = None
    for result in steps():
        is_news = result is not last and result != last
        last = result
        yield result if is_news else None
    yield _Sign.END
