"""Edits that take every cell of the plan to another, so that what stands beside the plan can follow them.

A change says which pieces go and come, not which went where; it is told once, and known again when an
undo or a redo brings the same change back.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager

from model.grid import Cell
from model.plan import Change

GoesTo = Callable[[Cell], Cell]
"""Where a cell goes. Turns, mirrors and moves only: what is one step apart stays so."""


class Carries:
    """The turns and moves of the whole plan that were made so far."""

    def __init__(self) -> None:
        self._being_made: GoesTo | None = None
        self._made: list[tuple[Change, GoesTo]] = []

    @contextmanager
    def making(self, goes_to: GoesTo) -> Iterator[None]:
        """The change that is made within it takes every cell of the plan where this says."""
        self._being_made = goes_to
        try:
            yield
        finally:
            self._being_made = None

    def forget(self) -> None:
        """Another plan is open."""
        self._made = []

    def by(self, change: Change) -> GoesTo | None:
        """Where cells go by a change, done, undone or redone; ``None`` where it is another edit."""
        if self._being_made is not None:
            self._made.append((change, self._being_made))
            return self._being_made
        for made, goes_to in reversed(self._made):
            if change == made:
                return goes_to
            if change == made.inverse():
                return _back(goes_to)
        return None


def _back(goes_to: GoesTo) -> GoesTo:
    """From where a cell came: seen along the carried axes it lies as it lay along the true ones."""
    middle = goes_to(Cell(0, 0, 0))
    east, south = goes_to(Cell(1, 0, 0)), goes_to(Cell(0, 0, 1))

    def came_from(cell: Cell) -> Cell:
        dx, dy, dz = cell.x - middle.x, cell.y - middle.y, cell.z - middle.z
        along_x = dx * (east.x - middle.x) + dz * (east.z - middle.z)
        along_z = dx * (south.x - middle.x) + dz * (south.z - middle.z)
        return Cell(along_x, dy, along_z)

    return came_from
