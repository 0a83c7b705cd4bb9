"""How long one frame may go on painting what is not there yet."""

from __future__ import annotations

from math import inf
from time import perf_counter
from typing import Final

FRAME_SECONDS: Final = 0.006
"""Of the 16.7 ms of a frame at 60 Hz; the rest is for what is painted each time, and for Qt."""


class Patience:
    """Runs out a while after it was made."""

    def __init__(self, seconds: float = inf) -> None:
        self._end = perf_counter() + seconds

    @property
    def is_over(self) -> bool:
        """Whether what is missing has to wait for the next frame."""
        return perf_counter() >= self._end
