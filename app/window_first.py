"""The window goes first: while a frame is painted or an edit carried out, work beside it waits.

Python runs one thread at a time, and every call into Qt lets the others go on: a frame of some hundred
calls would wait as often until the other thread hands over.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final

LONGEST: Final = 0.05
"""Seconds after which work goes on beside the window all the same, so that the window may wait for it."""


class _Gate:
    def __init__(self) -> None:
        self.is_open = threading.Event()
        self.is_open.set()
        self.inside = 0


_gate: Final = _Gate()


@contextmanager
def window_first() -> Iterator[None]:
    """What is done inside goes first. For the window's thread only."""
    _gate.inside += 1
    _gate.is_open.clear()
    try:
        yield
    finally:
        _gate.inside -= 1
        if not _gate.inside:
            _gate.is_open.set()


def let_window_go_first() -> None:
    """Waits while the window is busy."""
    if not _gate.is_open.is_set():
        _gate.is_open.wait(LONGEST)
