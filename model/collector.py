"""Python's collector of garbage, paused while very many values are made."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final
from weakref import WeakSet


@contextmanager
def collector_paused() -> Iterator[None]:
    """Where many values are made and none is garbage, looking for it meanwhile costs more than the work."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


_holders: Final[WeakSet[object]] = WeakSet()
"""Those for whose sake something is set apart."""


def set_present_apart(holder: object) -> None:
    """What there is now is looked through for garbage no more, until ``look_everywhere``.

    ``holder`` has very many values: to look through a plan of 100,000 pieces takes a quarter of a second, and
    the collector would do it again and again while the plan is edited. What nobody holds any more is still
    freed at once, but for circles.
    """
    _holders.add(holder)
    gc.collect(1)  # circles of late are not to stay for good
    gc.freeze()


def look_everywhere(holder: object) -> None:
    """The holder has few values by now: what was set apart may be garbage, where no other holder is left."""
    if holder in _holders:
        _holders.discard(holder)
        if not _holders:
            gc.unfreeze()
