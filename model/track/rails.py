"""How the rules of track see the world: cells packed into whole numbers, and where rails stand.

A packed cell is one int, so that a neighbour is an addition and a lookup costs no allocation. Only this
module knows the packing. What searches many cells works on packed ones; what it gives out is ``Cell``.
"""

from __future__ import annotations

from typing import Final, Protocol

from model.grid import VECTORS, XZ_LIMIT, Y_LOWEST, Cell
from model.track.shapes import ENDS, End, Shape

MARGIN: Final = 8
"""Cells beyond the limits of a plan that the rules may look at."""

_Y_OFFSET: Final = MARGIN - Y_LOWEST
_XZ_OFFSET: Final = MARGIN + XZ_LIMIT
_Z_SHIFT: Final = 12
_X_SHIFT: Final = 37
_Y_MASK: Final = (1 << _Z_SHIFT) - 1
_Z_MASK: Final = (1 << (_X_SHIFT - _Z_SHIFT)) - 1

UP: Final = 1
"""Added to a packed cell: one level higher."""
STEP: Final[tuple[int, ...]] = tuple((dx << _X_SHIFT) + (dz << _Z_SHIFT) for dx, dz in VECTORS)
"""Added to a packed cell, by heading: the next column that way."""
BIT: Final = (1, 2, 4, 8)
"""A heading as a bit, so that several make a mask."""
BACK: Final = (4, 8, 1, 2)
"""The bit of the opposite heading."""
NORTH_SOUTH: Final = BIT[0] | BIT[2]
EAST_WEST: Final = BIT[1] | BIT[3]

MASK: Final[tuple[int, ...]] = tuple(BIT[a.heading] | BIT[b.heading] for a, b in ENDS)
"""The directions of a shape's two ends, by shape."""
_new: Final = tuple.__new__
"""Makes a cell without looking its fields over, which takes a third of the time."""


def pack(cell: Cell) -> int:
    """A cell as one int; needs a cell within the limits of a plan, give or take ``MARGIN``."""
    x, y, z = cell
    return ((x + _XZ_OFFSET) << _X_SHIFT) + ((z + _XZ_OFFSET) << _Z_SHIFT) + y + _Y_OFFSET


def unpack(key: int) -> Cell:
    """The cell of a packed int."""
    x, y, z = key >> _X_SHIFT, key & _Y_MASK, (key >> _Z_SHIFT) & _Z_MASK
    return _new(Cell, (x - _XZ_OFFSET, y - _Y_OFFSET, z - _XZ_OFFSET))


class Rails(Protocol):
    """Which rails stand where, and how they lie."""

    def get(self, key: int, /) -> Shape | None:
        """The shape of the rail in a packed cell, or ``None`` where no rail stands."""

    def __setitem__(self, key: int, shape: Shape, /) -> None:
        """Gives a rail another shape."""


class Overlay:
    """Rails laid over others: writes stay here, and the rails below stay as they are."""

    __slots__ = ("_below", "changed")

    def __init__(self, below: Rails) -> None:
        self._below = below
        self.changed: dict[int, Shape] = {}

    def get(self, key: int, /) -> Shape | None:
        """The shape written here, or else the one below."""
        shape = self.changed.get(key)
        return self._below.get(key) if shape is None else shape

    def __setitem__(self, key: int, shape: Shape, /) -> None:
        self.changed[key] = shape


def neighbour(rails: Rails, key: int, heading: int) -> int | None:
    """The first rail in the next column, looking at the own level, one up, one down."""
    return _first_in_column(rails, key + STEP[heading])


def found_by(rails: Rails, key: int, end: End) -> int | None:
    """The rail that an end finds, looking from the end's own level."""
    return _first_in_column(rails, key + STEP[end.heading] + end.rise)


def _first_in_column(rails: Rails, key: int) -> int | None:
    get = rails.get
    if get(key) is not None:
        return key
    if get(key + UP) is not None:
        return key + UP
    return key - UP if get(key - UP) is not None else None


def neighbour_mask(rails: Rails, key: int) -> int:
    """The directions in which a neighbour stands, as a mask."""
    get = rails.get
    mask = 0
    for heading in range(4):
        beyond = key + STEP[heading]
        if get(beyond) is not None or get(beyond + UP) is not None or get(beyond - UP) is not None:
            mask |= BIT[heading]
    return mask


def live_links(rails: Rails, key: int, shape: Shape) -> int:
    """The directions of the ends that are linked both ways, as a mask; levels do not matter."""
    get = rails.get
    mask = 0
    for step, bit, back in _LOOKS[shape]:
        beyond = key + step
        other = get(beyond)
        if other is None:
            other = get(beyond + UP)
            if other is None:
                other = get(beyond - UP)
        if other is not None and MASK[other] & back:
            mask |= bit
    return mask


_LOOKS: Final = tuple(tuple((STEP[h] + rise, BIT[h], BACK[h]) for h, rise in ends) for ends in ENDS)
"""By shape, for each end: where it looks first, its own direction, and the end that would link back."""


def has_room(links: int, bit: int) -> bool:
    """Whether a rail with these live links has room for one in the direction of ``bit``."""
    return bool(links & bit) or links not in _FULL


_FULL: Final = frozenset(a | b for a in BIT for b in BIT if a != b)


def open_directions(rails: Rails, key: int) -> int:
    """The directions whose neighbour exists and has room for this cell, as a mask."""
    get = rails.get
    mask = 0
    for step, bit, back in _AROUND:
        other = key + step
        shape = get(other)
        if shape is None:
            other += UP
            shape = get(other)
            if shape is None:
                other -= 2 * UP
                shape = get(other)
                if shape is None:
                    continue
        if has_room(live_links(rails, other, shape), back):
            mask |= bit
    return mask


_AROUND: Final = tuple(zip(STEP, BIT, BACK, strict=True))
