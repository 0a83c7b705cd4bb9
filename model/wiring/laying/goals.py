"""Where a branch may end, and how far that is at least."""

from __future__ import annotations

from collections.abc import Sequence

from model.wiring.laying.site import Site

NEVER_LATE = 1 << 30
"""Ticks: no limit."""


class Goals:
    """The cells beside the target blocks of some of a line's targets."""

    def __init__(self, site: Site, wanted: Sequence[int]) -> None:
        self.latest: dict[int, int] = {}
        """By cell, the latest delay there."""
        for cell, places in site.goals.items():
            latest = [site.limits.get(place, NEVER_LATE) for place in places if place in wanted]
            if latest:
                self.latest[cell] = max(latest)
        self.last = max(self.latest.values(), default=0)
        """The latest of all."""
        self._field = site.field
        self._blocks = [block for place in wanted for block in site.line.targets[place]]
        self._known: dict[int, int] = {}

    def apart(self, cell: int) -> int:
        """Steps from a cell to a goal at least: each goes one cell across, and at most one up or down."""
        found = self._known.get(cell)
        if found is None:
            x, y, z = self._field.unpack(cell)
            found = self._known[cell] = min(
                max(abs(x - block.x) + abs(z - block.z) - 1, abs(y - block.y)) for block in self._blocks
            )
        return found
