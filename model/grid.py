"""Cells, headings and the eight turns: the only coordinate types.

x grows to the east, y grows upward, z grows to the south; a plan is drawn with north up.
Lengths are in cells.
"""

from __future__ import annotations

from enum import IntEnum, StrEnum
from typing import Annotated, Final, NamedTuple

import msgspec

XZ_LIMIT: Final = 10_000_000
Y_LOWEST: Final = -1_024
Y_HIGHEST: Final = 1_023

# A cell that is read from a file must lie within these; a cell that is computed may lie outside.
_Level = Annotated[int, msgspec.Meta(ge=Y_LOWEST, le=Y_HIGHEST)]
_Across = Annotated[int, msgspec.Meta(ge=-XZ_LIMIT, le=XZ_LIMIT)]


class Cell(NamedTuple):
    """A unit cube at whole numbers, in cells."""

    x: _Across
    y: _Level
    z: _Across

    def moved(self, dx: int = 0, dy: int = 0, dz: int = 0) -> Cell:
        """The cell that many cells to the east, up and to the south."""
        return Cell(self.x + dx, self.y + dy, self.z + dz)

    def step(self, heading: Heading, rise: int = 0) -> Cell:
        """The next cell in a heading, ``rise`` levels higher."""
        dx, dz = VECTORS[heading]
        return Cell(self.x + dx, self.y + rise, self.z + dz)

    def beside(self, facing: Facing) -> Cell:
        """The cell that touches this one on the side ``facing``."""
        dx, dy, dz = FACING_VECTORS[facing]
        return Cell(self.x + dx, self.y + dy, self.z + dz)

    def six_beside(self) -> tuple[Cell, ...]:
        """The six cells that share a face with this one."""
        return tuple(self.beside(facing) for facing in Facing)

    def __str__(self) -> str:
        """``x y z`` with spaces and the true minus sign, as everywhere on screen and paper."""
        return f"{self.x} {self.y} {self.z}".replace("-", "\u2212")


class Heading(IntEnum):
    """One of the four level directions, clockwise seen from above."""

    NORTH = 0
    EAST = 1
    SOUTH = 2
    WEST = 3

    @property
    def word(self) -> str:
        """The name used in files and messages: ``north`` …"""
        return self.name.lower()

    @property
    def opposite(self) -> Heading:
        """The heading that points back."""
        return Heading((self + 2) % 4)

    @property
    def clockwise(self) -> Heading:
        """The heading a quarter clockwise."""
        return Heading((self + 1) % 4)

    @property
    def lies_north_south(self) -> bool:
        """Whether the heading lies on the north-south axis."""
        return self % 2 == 0


VECTORS: Final[tuple[tuple[int, int], ...]] = ((0, -1), (1, 0), (0, 1), (-1, 0))
"""(dx, dz) by heading."""


class Facing(StrEnum):
    """The way a part points: one of the four headings, up or down."""

    NORTH = "north"
    EAST = "east"
    SOUTH = "south"
    WEST = "west"
    UP = "up"
    DOWN = "down"

    @property
    def heading(self) -> Heading | None:
        """The same as a heading; ``None`` for up and down."""
        return HEADING_OF.get(self)

    @property
    def opposite(self) -> Facing:
        """The facing that points back."""
        if self.heading is None:
            return Facing.DOWN if self is Facing.UP else Facing.UP
        return FACING_OF[self.heading.opposite]


FACING_OF: Final[tuple[Facing, ...]] = (Facing.NORTH, Facing.EAST, Facing.SOUTH, Facing.WEST)
"""Facing by heading."""

HEADING_OF: Final[dict[Facing, Heading]] = {FACING_OF[h]: h for h in Heading}

FACING_VECTORS: Final[dict[Facing, tuple[int, int, int]]] = {
    **{FACING_OF[h]: (VECTORS[h][0], 0, VECTORS[h][1]) for h in Heading},
    Facing.UP: (0, 1, 0),
    Facing.DOWN: (0, -1, 0),
}


_QUARTERS: Final = (((1, 0), (0, 1)), ((0, -1), (1, 0)), ((-1, 0), (0, -1)), ((0, 1), (-1, 0)))
"""By quarters clockwise: the matrix that takes (x, z) there."""


class Turn(msgspec.Struct, frozen=True, order=True):
    """One of the eight symmetries of the plan about x = z = 0.

    The mirror comes first (x to -x), then ``quarter`` quarters clockwise seen from above,
    each taking (x, z) to (-z, x). Together they form the dihedral group of order 8.
    """

    quarter: int = 0
    mirror: bool = False

    def cell(self, cell: Cell) -> Cell:
        """Where a cell goes."""
        x, y, z = cell
        if self.mirror:
            x = -x
        (x_of_x, x_of_z), (z_of_x, z_of_z) = _QUARTERS[self.quarter % 4]
        return Cell(x_of_x * x + x_of_z * z, y, z_of_x * x + z_of_z * z)

    def heading(self, heading: Heading) -> Heading:
        """Where a heading goes."""
        mirrored = -heading if self.mirror else heading
        return Heading((mirrored + self.quarter) % 4)

    def facing(self, facing: Facing) -> Facing:
        """Where a facing goes; up and down stay."""
        heading = facing.heading
        return facing if heading is None else FACING_OF[self.heading(heading)]

    def then(self, later: Turn) -> Turn:
        """This turn followed by another, as one turn."""
        own = -self.quarter if later.mirror else self.quarter
        return Turn((own + later.quarter) % 4, self.mirror != later.mirror)

    @property
    def inverse(self) -> Turn:
        """The turn that undoes this one."""
        return self if self.mirror else Turn(-self.quarter % 4)

    @property
    def number(self) -> int:
        """1 to 8: 1 + quarter, and 4 more when mirrored."""
        return 1 + self.quarter + (4 if self.mirror else 0)


ALL_TURNS: Final[tuple[Turn, ...]] = tuple(Turn(q, m) for m in (False, True) for q in range(4))
"""The eight turns in the order of their numbers."""
