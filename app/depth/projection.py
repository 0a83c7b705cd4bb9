"""The isometric view: from places in the plan to places on the drawing, and back. No Qt here.

Isometric axonometry after ISO 5456-3 (from memory): the three axes lie at 120° to each other, the upright
one upright, the other two at 30° to the horizontal, with one scale on all three. It is drawn 1:1:1: a length
along an axis is true, in cells, as on the plan. The projection of a real model would be smaller, on all three
axes alike, by ``FORESHORTENING``.

Places on the drawing are in cells: right to the right, down downward.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Final, NamedTuple

COS_30: Final = sqrt(3) / 2
SIN_30: Final = 1 / 2
FORESHORTENING: Final = sqrt(2 / 3)
"""By how much an edge of a cube is shorter in true isometric projection."""
SEEN_FROM: Final = ("south-east", "north-east", "north-west", "south-west")
"""Where the one who looks stands, by quarter."""


class Plane(NamedTuple):
    """What one cell to the east and one cell to the south are on the drawing, on any level."""

    east_right: float
    east_down: float
    south_right: float
    south_down: float


@dataclass(frozen=True)
class Isometric:
    """One of four views. With quarter 0 the east lies to the right and below, the south to the left."""

    quarter: int = 0
    """How many quarters the plan is turned clockwise, seen from above; 0 to 3."""

    def turned(self, quarters: int) -> Isometric:
        """The view after so many more quarters; four of them make a full turn."""
        return Isometric((self.quarter + quarters) % 4)

    @property
    def seen_from(self) -> str:
        """Where the one who looks stands: ``south-east``."""
        return SEEN_FROM[self.quarter]

    @property
    def plane(self) -> Plane:
        """How a level lies on the drawing."""
        return Plane(*self.point(1, 0, 0), *self.point(0, 0, 1))

    def point(self, x: float, height: float, z: float) -> tuple[float, float]:
        """Where a point of space lies on the drawing; ``height`` in cells above the lowest level."""
        for _ in range(self.quarter):
            x, z = -z, x
        return (x - z) * COS_30, (x + z) * SIN_30 - height

    def place(self, right: float, down: float, height: float) -> tuple[float, float]:
        """The point (x, z) at a height that lies there on the drawing."""
        difference, total = right / COS_30, (down + height) / SIN_30
        x, z = (total + difference) / 2, (total - difference) / 2
        for _ in range(self.quarter):
            x, z = z, -x
        return x, z
