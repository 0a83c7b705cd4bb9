"""A system whose N-th call fails, for every N until a piece of work gets through.

The calls are those of the standard library through which Python asks for files: ``os.stat`` and its like, and
``open`` with the reads, writes and closings of what it opens. What Qt asks of the system itself is not among
them, nor what the interpreter does to import.
"""

from __future__ import annotations

import builtins
import errno
import io
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any, Final

import pytest

CALLS: Final = (
    "stat", "lstat", "fstat", "chmod", "fsync", "replace", "rename", "unlink", "mkdir", "readlink", "listdir",
    "scandir", "link",
)  # fmt: skip
STREAM_CALLS: Final = ("read", "write", "flush", "close")
MOST: Final = 2_000
"""Whoever asks the system more often than that does something odd."""


class FailingSystem:
    """Counts the calls, and refuses the one of that number."""

    def __init__(self, fails: int, number: int = errno.EIO) -> None:
        self.asked = 0
        self.failed = ""
        """The call that failed."""
        self._fails = fails
        self._number = number

    def count(self, name: str) -> None:
        """One call. Raises OSError when its turn has come."""
        self.asked += 1
        if self.asked == self._fails:
            self.failed = name
            raise OSError(self._number, os.strerror(self._number))

    def counted(self, name: str, real: Callable[..., Any]) -> Callable[..., Any]:
        """The same function, counted."""

        def call(*given: Any, **named: Any) -> Any:
            self.count(name)
            return real(*given, **named)

        return call

    def opening(self, real: Callable[..., Any]) -> Callable[..., Any]:
        """``open``, whose streams count what is asked of them, too."""

        def open_(*given: Any, **named: Any) -> Any:
            self.count("open")
            return _Stream(real(*given, **named), self)

        return open_


class _Stream:
    def __init__(self, stream: Any, system: FailingSystem) -> None:
        self._stream = stream
        self._system = system

    def __getattr__(self, name: str) -> Any:
        real = getattr(self._stream, name)
        return self._system.counted(name, real) if name in STREAM_CALLS else real

    def __enter__(self) -> _Stream:
        return self

    def __exit__(self, *error: object) -> None:
        self._stream.close()
        if error == (None, None, None):
            self._system.count("close")

    def __iter__(self) -> Iterator[Any]:
        return iter(self._stream)


@contextmanager
def failing(fails: int, number: int = errno.EIO) -> Iterator[FailingSystem]:
    """The system, with the call of that number failing."""
    system = FailingSystem(fails, number)
    with pytest.MonkeyPatch.context() as patch:
        for name in CALLS:
            patch.setattr(os, name, system.counted(name, getattr(os, name)))
        opening = system.opening(builtins.open)
        patch.setattr(builtins, "open", opening)
        patch.setattr(io, "open", opening)
        yield system


def every_call_fails_once(work: Callable[[], object], then: Callable[[FailingSystem], None]) -> int:
    """Does the work with the first call failing, then the second, until none is left; gives their number.

    After each ``then`` looks at what came of it, in a system that is whole again.
    """
    for fails in range(1, MOST):
        with failing(fails) as system:
            work()
        then(system)
        if not system.failed:
            return system.asked
    raise AssertionError(f"the system was asked {MOST} times")
