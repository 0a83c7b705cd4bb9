"""Work beside the window: a thread that runs only the newest job, so that drawing never waits.

A job is a generator over immutable values. Between two of its steps, and at the pauses of the model, the
thread lets the window go first and looks whether a newer job has come; then it drops the old one. What was
yielded for an old job is never delivered.
"""

from __future__ import annotations

import threading
from collections.abc import Callable, Generator, Iterator
from typing import Any, Final, NamedTuple, Protocol, TypeVar

from PySide6.QtCore import QObject, Qt, Signal, SignalInstance

from app.garbage import thread_begins, thread_ends
from app.window_first import let_window_go_first
from model.pauses import pauses
from model.progress import Progress, result_of

Result = TypeVar("Result")
Job = Callable[[], Iterator[object]]
Work = Callable[[], Generator[Progress | None, None, Result]]
"""Steps that may tell how far they are; what they return is what is wanted."""
IDLE_SECONDS: Final = 0.5
"""A thread without work ends after this, so that none keeps the program from ending."""


class CancelledError(Exception):
    """The user thought better of it."""


class Beside(Protocol):
    """How long work is done: it is waited for, and may be cancelled."""

    def __call__(self, words: str, work: Work[Result]) -> Result:
        """What the work returns; ``words`` say what is done. Raises CancelledError, and what it raises."""


def at_once(words: str, work: Work[Result]) -> Result:  # noqa: ARG001  # nobody is told
    """Has work done here and now, where there is no window."""
    return result_of(work())


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
        self._over: list[_Asked] = []
        """Jobs that are done: the window's thread frees what of Qt they hold."""
        self._number = 0
        self._reached.connect(self._deliver, Qt.ConnectionType.QueuedConnection)
        self._broke.connect(self._report, Qt.ConnectionType.QueuedConnection)

    def ask(self, job: Job) -> None:
        """Run the job soon, in place of any asked before."""
        with self._news:
            self._forget()
            self._waiting = _Asked(self._number, job)
            self._news.notify_all()
            if self._thread is None:
                thread_begins()
                self._thread = threading.Thread(target=self._run, name="newest")
                self._thread.start()

    def drop(self) -> None:
        """Drop every job without waiting: what runs ends at its next step."""
        with self._news:
            self._forget()

    def stop(self) -> None:
        """Drop every job, and wait for the step that is running."""
        with self._news:
            self._forget()
            self._news.wait_for(lambda: not self._is_busy)
            self._over.clear()

    def finish(self) -> None:
        """Wait until the newest job has run to its end."""
        with self._news:
            self._news.wait_for(lambda: self._waiting is None and not self._is_busy)

    def _forget(self) -> None:
        self._number += 1
        self._waiting = None
        self._over.clear()

    def _run(self) -> None:
        while (asked := self._next()) is not None:
            self._run_job(asked)
            with self._news:
                self._over.append(asked)
                del asked
                self._is_busy = False
                self._news.notify_all()
        thread_ends()

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
                    self._send(self._reached, asked.number, result)
        except _DroppedError:
            return
        except Exception as error:
            self._send(self._broke, asked.number, error)

    def _send(self, signal: SignalInstance, number: int, told: object) -> None:
        """To the thread that owns this; nothing is sent once ``drop`` has returned: there may be no owner."""
        with self._news:
            if number == self._number:
                signal.emit(number, told)

    def _deliver(self, number: int, result: object) -> None:
        if number == self._number and result is not None:
            self.yielded.emit(result)

    def _report(self, number: int, error: object) -> None:
        if number == self._number:
            self.failed.emit(error)


class _Came(NamedTuple):
    result: object


class Awaited(Protocol):
    """What is waited for."""

    @property
    def told(self) -> SignalInstance:
        """A Progress."""

    @property
    def ended(self) -> SignalInstance:
        """It is over: its result is there, or what it raised."""

    @property
    def is_over(self) -> bool:
        """Whether it is there, or will never be."""

    @property
    def result(self) -> Any:
        """What came of it. Raises what the work raised, and CancelledError where it is not over."""

    def drop(self) -> None:
        """Nobody waits any more."""


class Begun(QObject):
    """A work that is done beside the window from now on; what comes of it is kept until it is wanted."""

    told = Signal(object)
    """A Progress."""
    ended = Signal()
    """It is over: its result is there, or what it raised."""

    def __init__(self, parent: QObject, work: Work[Any]) -> None:
        super().__init__(parent)
        self._came: _Came | None = None
        self._error: Exception | None = None
        self._worker = Newest(self)
        self._worker.yielded.connect(self._take)
        self._worker.failed.connect(self._fail)
        self._worker.ask(lambda: _with_result(work))

    @property
    def is_over(self) -> bool:
        """Whether it was done or failed."""
        return self._came is not None or self._error is not None

    @property
    def result(self) -> Any:
        """What came of it. Raises what the work raised, and CancelledError where it is not over."""
        if self._error is not None:
            raise self._error
        if self._came is None:
            raise CancelledError
        return self._came.result

    def drop(self) -> None:
        """Nobody wants it any more; it ends at its next step."""
        self._worker.drop()

    def _take(self, told: object) -> None:
        if isinstance(told, _Came):
            self._came = told
            self.ended.emit()
        else:
            self.told.emit(told)

    def _fail(self, error: object) -> None:
        self._error = error if isinstance(error, Exception) else RuntimeError(str(error))
        self.ended.emit()


def _with_result(work: Work[Any]) -> Iterator[object]:
    yield _Came((yield from work()))
