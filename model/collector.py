"""Python's collector of garbage, paused while very many values are made."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


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


def set_present_apart() -> None:
    """What there is now is looked through for garbage no more, until ``look_everywhere``.

    To look through a plan of 100,000 pieces takes a quarter of a second, and the collector would do it again
    and again while the plan is edited. What nobody holds any more is still freed at once, but for circles.
    """
    gc.collect(1)  # circles of late are not to stay for good
    gc.freeze()


def look_everywhere() -> None:
    """What was set apart may be garbage from now on."""
    gc.unfreeze()
