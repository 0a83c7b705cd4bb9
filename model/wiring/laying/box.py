"""The box below the track in which wiring may stand."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from model.grid import XZ_LIMIT, Y_LOWEST, Cell
from model.parts import RAILS
from model.plan import Plan


class Box:
    """The columns about the rails, each with its levels; it is empty where there are no rails.

    The columns are those of the bounding rectangle of the rails, ``grow`` cells wider on each side. Levels
    go from ``depth`` below the lowest rail up to one below it, or, about rails that stand higher, up to one
    below the lowest rail within two columns, so that carts are clear of it. No box reaches over an edge of
    the world, where no plan file could hold what stands there.
    """

    def __init__(self, plan: Plan, grow: int, depth: int) -> None:
        rails = [piece.at for piece in plan.pieces if piece.part in RAILS]
        lowest = min((rail.y for rail in rails), default=0)
        self.bottom = max(lowest - depth, Y_LOWEST)
        """The lowest level."""
        self.xs = _grown((rail.x for rail in rails), grow)
        self.zs = _grown((rail.z for rail in rails), grow)
        self._tops: dict[tuple[int, int], int] = {}
        for rail in rails:
            for column in _around(rail):
                self._tops[column] = min(self._tops.get(column, rail.y), rail.y)
        self._flat_top = lowest - 1

    def __contains__(self, cell: Cell) -> bool:
        return cell.x in self.xs and cell.z in self.zs and self.bottom <= cell.y <= self.top(cell.x, cell.z)

    def top(self, x: int, z: int) -> int:
        """The highest level of a column."""
        lowest_rail = self._tops.get((x, z))
        return self._flat_top if lowest_rail is None else lowest_rail - 1

    @property
    def highest(self) -> int:
        """The highest level of all columns."""
        within = ((x, z) for x, z in self._tops if x in self.xs and z in self.zs)
        return max((self.top(x, z) for x, z in within), default=self._flat_top)

    @property
    def size(self) -> int:
        """How many cells there would be if all columns were as high as the highest."""
        return len(self.xs) * len(self.zs) * max(0, self.highest - self.bottom + 1)

    def cells(self) -> Iterator[Cell]:
        """All cells."""
        for x in self.xs:
            for z in self.zs:
                for y in range(self.bottom, self.top(x, z) + 1):
                    yield Cell(x, y, z)


_BESIDE: Final = (-2, -1, 0, 1, 2)
"""Columns as far from a rail as its reader is wide."""


def _grown(values: Iterable[int], grow: int) -> range:
    found = list(values)
    if not found:
        return range(0)
    return range(max(min(found) - grow, -XZ_LIMIT), min(max(found) + grow, XZ_LIMIT) + 1)


def _around(cell: Cell) -> Iterator[tuple[int, int]]:
    for dx in _BESIDE:
        for dz in _BESIDE:
            yield cell.x + dx, cell.z + dz
