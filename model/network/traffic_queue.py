"""A queue that counts what stands in it."""

from __future__ import annotations

from model.network.traffic_values import QueueCount


class Queue:
    """How many wait, now and over the time; seconds."""

    __slots__ = ("_area", "_since", "arrivals", "length", "longest", "waited")

    def __init__(self) -> None:
        self.arrivals = self.length = self.longest = 0
        self.waited = 0.0
        """Of all that came, as far as they have waited."""
        self._area = self._since = 0.0

    def join(self, now: float) -> None:
        """One more waits."""
        self._advance(now)
        self.length += 1
        self.longest = max(self.longest, self.length)

    def leave(self, now: float) -> None:
        """One waits no longer."""
        self._advance(now)
        self.length -= 1

    def count(self, end: float) -> QueueCount:
        """What was counted up to the end of the run."""
        self._advance(end)
        wait = self.waited / self.arrivals if self.arrivals else 0.0
        return QueueCount(self.arrivals, self._area / end if end else 0.0, self.longest, wait)

    def _advance(self, now: float) -> None:
        self._area += self.length * (now - self._since)
        self._since = now
