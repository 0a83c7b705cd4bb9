"""Ctrl-C on the command line, wherever it comes: while libraries load or draw, too."""

from __future__ import annotations

import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from types import FrameType


def interruptible(run: Callable[[], int]) -> int:
    """Run the program; gives its exit status. Raises KeyboardInterrupt at a Ctrl-C.

    Some libraries make another exception of it on its way up: ImportError while they load, SystemError.
    """
    came: list[int] = []

    def interrupt(number: int, frame: FrameType | None) -> None:
        came.append(number)
        signal.default_int_handler(number, frame)

    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:  # not where Ctrl-C is to be ignored
        signal.signal(signal.SIGINT, interrupt)
    try:
        return run()
    except Exception as error:
        if came:
            raise KeyboardInterrupt from error
        raise


@contextmanager
def interrupt_held_back() -> Iterator[None]:
    """Let a Ctrl-C wait for the end of the block: Qt, cut short while it loads, aborts the whole process."""
    came: list[int] = []
    before = signal.signal(signal.SIGINT, lambda number, _frame: came.append(number))
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)
    if came and callable(before):
        before(came[0], None)
