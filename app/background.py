"""Work beside the window: a thread that runs only the newest job, so that drawing never waits.

A job is a generator over immutable values. Between two of its steps, and at the pauses of the model, the
thread lets the window go first and looks whether a newer job has come; then it drops the old one. What was
yielded for an old job is never delivered.
"""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from typing import Final, NamedTuple

from PySide6.QtCore import QObject, Qt, Signal

from app.window_first import let_window_go_first
from model.pauses import pauses

Job = Callable[[], Iterator[object]]
IDLE_SECONDS: Final = 0.5
"""A thread without work ends after this, so that none keeps the program from ending."""


class _DroppedError(Exception):
    """A newer job has come."""


class _Asked(NamedTuple):
    number: int
    job: Job


class Newest(QObject):
    """Runs the newest job asked of it; results arrive on the thread that owns this object."""

    yielded = Signal(object)
    """A step's result of the newest job."""
    failed = Signal(object)
    """The exception that ended the newest job."""
    _reached = Signal(int, object)
    _broke = Signal(int, object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._news = threading.Condition()
        self._waiting: _Asked | None = None
        self._thread: threading.Thread | None = None
        self._is_busy = False
        self._number = 0
        self._reached.connect(self._deliver, Qt.ConnectionType.QueuedConnection)
        self._broke.connect(self._report, Qt.ConnectionType.QueuedConnection)

    def ask(self, job: Job) -> None:
        """Run the job soon, in place of any asked before."""
        with self._news:
            self._number += 1
            self._waiting = _Asked(self._number, job)
            self._news.notify_all()
            if self._thread is None:
                self._thread = threading.Thread(target=self._run, name="newest")
                self._thread.start()

    def drop(self) -> None:
        """Drop every job without waiting: what runs ends at its next step."""
        with self._news:
            self._number += 1
            self._waiting = None

    def stop(self) -> None:
        """Drop every job, and wait for the step that is running."""
        with self._news:
            self._number += 1
            self._waiting = None
            self._news.wait_for(lambda: not self._is_busy)

    def finish(self) -> None:
        """Wait until the newest job has run to its end."""
        with self._news:
            self._news.wait_for(lambda: self._waiting is None and not self._is_busy)

    def _run(self) -> None:
        while (asked := self._next()) is not None:
            self._run_job(asked)
            with self._news:
                self._is_busy = False
                self._news.notify_all()

    def _next(self) -> _Asked | None:
        """The newest job; ``None`` when none has come for a while, and the thread may end.

        Starting a thread makes the window wait, so one goes on from edit to edit.
        """
        with self._news:
            if not self._news.wait_for(lambda: self._waiting is not None, IDLE_SECONDS):
                self._thread = None
                return None
            asked, self._waiting = self._waiting, None
            self._is_busy = True
            return asked

    def _run_job(self, asked: _Asked) -> None:
        def hold() -> None:
            let_window_go_first()
            if asked.number != self._number:
                raise _DroppedError

        try:
            with pauses(hold):
                for result in asked.job():
                    hold()
                    self._reached.emit(asked.number, result)
        except _DroppedError:
            return
        except Exception as error:
            self._broke.emit(asked.number, error)

    def _deliver(self, number: int, result: object) -> None:
        if number == self._number and result is not None:
            self.yielded.emit(result)

    def _report(self, number: int, error: object) -> None:
        if number == self._number:
            self.failed.emit(error)
