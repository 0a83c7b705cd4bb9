"""Which part of the drawing is in sight, and how large. No Qt here."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from dataclasses import dataclass, replace
from math import floor
from typing import Final

from app.depth.stack import Extent

STEPS: Final = (0.25, 0.5, 1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 40, 48, 64, 96)
"""Pixels a cell along each axis."""
LARGEST_FIT: Final = 48
"""Fitting makes nothing larger than 100 %."""


@dataclass(frozen=True)
class Camera:
    """Pixels a cell, and where the drawing's own origin lies on the widget."""

    c: float = 24
    left: float = 0
    top: float = 0

    def pixel(self, right: float, down: float) -> tuple[float, float]:
        """The pixel of a place on the drawing, in cells."""
        return self.left + right * self.c, self.top + down * self.c

    def drawing(self, px: float, py: float) -> tuple[float, float]:
        """The place on the drawing under a pixel, in cells."""
        return (px - self.left) / self.c, (py - self.top) / self.c

    def panned(self, dx: float, dy: float) -> Camera:
        """The picture moved by that many pixels."""
        return replace(self, left=self.left + dx, top=self.top + dy)

    def zoomed(self, steps: int, px: float, py: float) -> Camera:
        """So many steps nearer, the same place of the drawing under the pixel."""
        right, down = self.drawing(px, py)
        c = stepped(self.c, steps)
        return Camera(c, px - right * c, py - down * c)


def stepped(c: float, steps: int) -> float:
    """The step so many further from ``c``, as far as there are any."""
    at = bisect_right(STEPS, c) - 1 if steps > 0 else bisect_left(STEPS, c)
    return STEPS[max(0, min(len(STEPS) - 1, at + steps))]


def fitting(box: Extent, wide: float, high: float) -> float:
    """The most whole pixels a cell at which a box of the drawing has room in so many pixels."""
    most = min(wide / box.width, high / box.height, LARGEST_FIT)
    return float(floor(most)) if most >= 1 else max((c for c in STEPS if c <= most), default=STEPS[0])


def centred(box: Extent, c: float, px: float, py: float) -> Camera:
    """The middle of a box of the drawing at a pixel."""
    return Camera(c, px - (box.left + box.right) / 2 * c, py - (box.top + box.bottom) / 2 * c)
