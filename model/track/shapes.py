"""The ten shapes of a rail and their ends."""

from __future__ import annotations

from enum import IntEnum
from typing import Final, NamedTuple

from model.grid import Heading

NORTH, EAST, SOUTH, WEST = Heading


class Shape(IntEnum):
    """Straight (2), rising (4), curve (4); a curve is named by its two ends."""

    NORTH_SOUTH = 0
    EAST_WEST = 1
    RISING_NORTH = 2
    RISING_EAST = 3
    RISING_SOUTH = 4
    RISING_WEST = 5
    SOUTH_EAST = 6
    SOUTH_WEST = 7
    NORTH_EAST = 8
    NORTH_WEST = 9

    @property
    def word(self) -> str:
        """The name used in files and messages: ``north-south`` …"""
        return self.name.lower().replace("_", "-")

    @property
    def ends(self) -> tuple[End, End]:
        """The two ends in the order in which they are visited."""
        return ENDS[self]

    @property
    def is_curve(self) -> bool:
        """Whether the two ends are at right angles."""
        return self >= Shape.SOUTH_EAST

    @property
    def is_rising(self) -> bool:
        """Whether one end is one level up."""
        return Shape.RISING_NORTH <= self <= Shape.RISING_WEST

    @property
    def rises_to(self) -> Heading | None:
        """The heading of the raised end, or ``None``."""
        return Heading(self - Shape.RISING_NORTH) if self.is_rising else None

    @property
    def headings(self) -> frozenset[Heading]:
        """The headings of the two ends."""
        first, second = ENDS[self]
        return frozenset((first.heading, second.heading))


class End(NamedTuple):
    """One end of a shape: where it points, and whether it is one level up (1) or level (0)."""

    heading: Heading
    rise: int


ENDS: Final[tuple[tuple[End, End], ...]] = (
    (End(NORTH, 0), End(SOUTH, 0)),
    (End(WEST, 0), End(EAST, 0)),
    (End(NORTH, 1), End(SOUTH, 0)),
    (End(WEST, 0), End(EAST, 1)),
    (End(NORTH, 0), End(SOUTH, 1)),
    (End(WEST, 1), End(EAST, 0)),
    (End(EAST, 0), End(SOUTH, 0)),
    (End(WEST, 0), End(SOUTH, 0)),
    (End(EAST, 0), End(NORTH, 0)),
    (End(WEST, 0), End(NORTH, 0)),
)
"""By shape. North before south, west before east; curves: the east/west end first."""

SHAPE_OF_WORD: Final[dict[str, Shape]] = {shape.word: shape for shape in Shape}
CURVES: Final = (Shape.SOUTH_EAST, Shape.SOUTH_WEST, Shape.NORTH_EAST, Shape.NORTH_WEST)
FLAT: Final = (Shape.NORTH_SOUTH, Shape.EAST_WEST, *CURVES)
RISING: Final[tuple[Shape, ...]] = (
    Shape.RISING_NORTH,
    Shape.RISING_EAST,
    Shape.RISING_SOUTH,
    Shape.RISING_WEST,
)
"""By the heading of the raised end."""
