"""The axis of time of the timing diagram: from ticks to pixels, and where its marks stand. No Qt here."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

STEPS: Final = (0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 4.0, 8.0, 16.0, 32.0)
"""Pixels a tick: the steps of zooming."""
CLOSEST: Final = STEPS[-1]
MARKS: Final = (1, 2, 5, 10, 20, 40, 100, 200, 400, 1_000, 2_000, 4_000, 10_000, 20_000)
"""Ticks between two marks: a second is 20."""
BETWEEN_MARKS: Final = 64.0
"""Pixels that two marks are apart at least, so that their figures have room."""


@dataclass(frozen=True)
class TimeAxis:
    """A stretch of time ``width`` pixels wide that begins at the tick ``first``."""

    width: float
    first: float = 0.0
    scale: float = 4.0
    """Pixels a tick."""

    @property
    def last(self) -> float:
        """The tick, with its fraction, at the right edge."""
        return self.first + self.width / self.scale

    @property
    def shown(self) -> float:
        """How many ticks have room."""
        return self.width / self.scale

    def x(self, tick: float) -> float:
        """Where a tick begins."""
        return (tick - self.first) * self.scale

    def middle(self, tick: int) -> float:
        """The middle of a tick."""
        return self.x(tick + 0.5)

    def tick_at(self, x: float) -> int:
        """The tick that is drawn at an x, 0 at the least."""
        return max(0, int(self.first + x / self.scale))

    def begun_at(self, first: float) -> TimeAxis:
        """The same from another tick on; there is nothing before tick 0."""
        return replace(self, first=max(0.0, first))

    def scaled(self, scale: float, at: float) -> TimeAxis:
        """Another scale; what stands at the x ``at`` stays there as far as it can."""
        tick = self.first + at / self.scale
        return replace(self, scale=scale, first=max(0.0, tick - at / scale))

    def zoomed(self, closer: bool, at: float) -> TimeAxis:
        """The next scale of STEPS, the same where there is none."""
        if closer:
            scale = next((step for step in STEPS if step > self.scale * 1.001), self.scale)
        else:
            scale = next((step for step in reversed(STEPS) if step < self.scale * 0.999), self.scale)
        return self.scaled(scale, at)

    def fitted(self, ticks: int) -> TimeAxis:
        """So many ticks from tick 0 on fill the width, but a tick is never wider than the closest scale."""
        return replace(self, first=0.0, scale=min(CLOSEST, self.width / max(1, ticks)))

    def showing(self, tick: int) -> TimeAxis:
        """The same stretch where the tick is in it, else one with the tick in its middle."""
        if self.first <= tick and tick + 1 <= self.last:
            return self
        return self.begun_at(tick + 0.5 - self.shown / 2)

    def marks(self, apart: float = BETWEEN_MARKS) -> Iterator[int]:
        """The ticks at which marks stand, at least so many pixels apart."""
        step = next((step for step in MARKS if step * self.scale >= apart), MARKS[-1])
        tick = int(-(-self.first // step)) * step
        while tick <= self.last:
            yield tick
            tick += step
