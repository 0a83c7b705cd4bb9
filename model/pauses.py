"""Where long work may be held up or given up by whoever runs it: a check beside a window that is drawn."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from typing import Final, TypeVar

Item = TypeVar("Item")
EVERY: Final = 32
"""Items between two pauses; of most work that is well under a millisecond."""


class _OfThread(threading.local):
    hold: Callable[[], None] | None = None


_of_thread: Final = _OfThread()


@contextmanager
def pauses(hold: Callable[[], None]) -> Iterator[None]:
    """Has ``hold`` called again and again in what this thread does meanwhile; what it raises ends that."""
    before, _of_thread.hold = _of_thread.hold, hold
    try:
        yield
    finally:
        _of_thread.hold = before


def pause() -> None:
    """Called in the middle of long work."""
    if _of_thread.hold is not None:
        _of_thread.hold()


def with_pauses(items: Iterable[Item]) -> Iterable[Item]:
    """The items, with a pause now and then between two."""
    hold = _of_thread.hold
    return items if hold is None else _paused(items, hold)


def _paused(items: Iterable[Item], hold: Callable[[], None]) -> Iterator[Item]:
    for number, item in enumerate(items):
        if not number % EVERY:
            hold()
        yield item
