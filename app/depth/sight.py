"""How a plan in depth is looked at: from where, how far the levels are apart, how large. No Qt here.

Pixels are those of the widget; a room of pixels is an ``Extent`` in px.
"""

from __future__ import annotations

from collections.abc import Container, Iterator
from math import floor
from typing import Final

from app.canvas.geometry import Area
from app.depth.camera import Camera, centred, fitting
from app.depth.projection import Isometric
from app.depth.stack import WIDEST, Extent, Stack, clear_gap, extent, widest_gap
from model.grid import Cell

READABLE: Final = 12
"""px a cell down to which levels are pulled clear of each other when all is fitted."""
AS_IN_THE_WORLD: Final = 1.0
"""The least gap: one level right over the other."""
PULLS: Final = 8
"""Steps from the least gap to the one that pulls levels clear."""


class Sight:
    """What the user turned, pulled, zoomed and moved."""

    def __init__(self) -> None:
        self.view = Isometric()
        self.stack = Stack((), AS_IN_THE_WORLD)
        self.area = Area(0, 0, 0, 0)
        self.camera = Camera()
        self.is_fitted = True
        """Whether all has been in sight since it was last fitted."""

    @property
    def gap(self) -> float:
        """From one level to the next, in cells."""
        return self.stack.gap

    def take(self, levels: tuple[int, ...], area: Area, own: int) -> None:
        """Other levels or cells to show; the level drawn on stays where it is."""
        before, self.stack = self.stack, Stack(levels, self.gap)
        self.area = area
        self._hold(before, own)

    def turn(self, quarters: int, room: Extent) -> None:
        """Turns the plan by quarters clockwise, its middle staying where it is."""
        x, y = self._middle()
        self.view = self.view.turned(quarters)
        if self.is_fitted:
            self._centre(room)
        else:
            new_x, new_y = self._middle()
            self.camera = self.camera.panned(x - new_x, y - new_y)

    def pull(self, steps: int, own: int, room: Extent) -> None:
        """Pulls the levels so many steps further apart, or brings them closer."""
        step = max(1, round(clear_gap(self.area) / PULLS))
        wanted = round(self.gap / step) * step + steps * step
        before, gap = self.stack, min(max(AS_IN_THE_WORLD, float(wanted)), float(WIDEST))
        self.stack = Stack(before.levels, gap)
        if self.is_fitted:
            self._centre(room)
        else:
            self._hold(before, own)

    def fit(self, room: Extent) -> None:
        """Shows all of it, the levels as far apart as can still be read."""
        gap = widest_gap(self.area, lambda gap: self._largest(gap, room) >= READABLE)
        self.stack = Stack(self.stack.levels, gap)
        self._centre(room)

    def zoom(self, steps: int, px: float, py: float) -> None:
        """So many steps nearer, what is at a pixel staying there."""
        self.is_fitted = False
        self.camera = self.camera.zoomed(steps, px, py)

    def pan(self, dx: float, dy: float) -> None:
        """Moves the picture by so many px."""
        self.is_fitted = False
        self.camera = self.camera.panned(dx, dy)

    def pixel(self, level: int, x: float, z: float) -> tuple[float, float]:
        """Where a point of a level lies."""
        return self.camera.pixel(*self.view.point(x, self.stack.height(level), z))

    def cell_at(self, px: float, py: float, filled: Container[Cell]) -> Cell | None:
        """What is on top under a pixel: the highest piece, else the highest level that reaches there."""
        under = list(self._under(px, py))
        piece = next((cell for cell in under if cell in filled), None)
        return piece or next((cell for cell in under if self.area.holds(cell.x, cell.z)), None)

    def _under(self, px: float, py: float) -> Iterator[Cell]:
        right, down = self.camera.drawing(px, py)
        for level in reversed(self.stack.levels):
            x, z = self.view.place(right, down, self.stack.height(level))
            yield Cell(floor(x), level, floor(z))

    def _hold(self, before: Stack, own: int) -> None:
        """Keeps the level drawn on where it was in another stack."""
        if before.levels and self.stack.levels:
            rise = self.stack.height(own) - before.height(own)
            self.camera = self.camera.panned(0, rise * self.camera.c)

    def _box(self, gap: float) -> Extent:
        stack = Stack(self.stack.levels, gap)
        return extent(self.view, self.area, [stack.height(level) for level in stack.levels] or [0])

    def _largest(self, gap: float, room: Extent) -> float:
        return fitting(self._box(gap), room.width, room.height)

    def _centre(self, room: Extent) -> None:
        c = self._largest(self.gap, room)
        middle = (room.left + room.right) / 2, (room.top + room.bottom) / 2
        self.camera = centred(self._box(self.gap), c, *middle)
        self.is_fitted = True

    def _middle(self) -> tuple[float, float]:
        area, levels = self.area, self.stack.levels
        height = (len(levels) - 1) / 2 * self.gap if levels else 0.0
        point = self.view.point(area.west + area.width / 2, height, area.north + area.height / 2)
        return self.camera.pixel(*point)
