"""The ground packed for a quick search: a cell is a whole number, and what it takes a byte in a table."""

from __future__ import annotations

from typing import Final

from model.grid import Cell, Facing
from model.wiring.laying.ground import Ground
from model.wiring.laying.laid import Line

MARGIN: Final = 2
"""Cells about the box that take nothing, so that no search runs over an edge of the tables."""


class Field:
    """Which cells of the box take new dust, a new repeater, or must stay clear, for one line or for all.

    A step to the east is 1, to the south ``south``, up ``up``.
    """

    def __init__(self, ground: Ground) -> None:
        box = ground.box
        self._ground = ground
        self._west = box.xs.start - MARGIN
        self._north = box.zs.start - MARGIN
        self._lowest = box.bottom - MARGIN
        self.south = len(box.xs) + 2 * MARGIN
        self.up = self.south * (len(box.zs) + 2 * MARGIN)
        self.size = self.up * max(0, box.highest - self._lowest + 1 + MARGIN)
        headings = (-self.south, 1, self.south, -1)
        self.headings: Final = headings
        self.near: Final = (
            *headings,
            *(step + self.up for step in headings),
            *(step - self.up for step in headings),
        )
        """Where dust links to dust."""
        self.dust_ok = bytearray(self.size)
        self.rest_ok = bytearray(self.size)
        self.clear = bytearray(self.size)
        """Cells in which nothing stands, so that dust can step past."""
        self.carried = bytearray(self.size)
        """Cells over a piece that can carry dust or a repeater, so that they need no new block."""
        for cell in box.cells():
            self._fill(cell)

    def _fill(self, cell: Cell) -> None:
        ground, key = self._ground, self.pack(cell)
        if cell in ground.pieces:
            return
        self.clear[key] = 1
        below = cell.beside(Facing.DOWN)
        new = ground.takes_block(below)
        if cell not in ground.dust_barred and cell not in ground.fronts and cell not in ground.target_sides:
            self.dust_ok[key] = new or ground.carries_dust(below)
        if cell not in ground.rest_barred:
            self.rest_ok[key] = new or ground.carries_repeater(below)
        self.carried[key] = below in ground.pieces

    def takes_dust(self, cell: Cell, line: Line) -> bool:
        """Whether a cell takes dust of a line, which may lie beside its own targets and at its start."""
        own = {block for group in line.targets for block in group}
        return self._ground.takes_line(cell, line.start, own)

    def pack(self, cell: Cell) -> int:
        """A cell of the box, or within the margin of it, as a whole number."""
        return cell.x - self._west + (cell.z - self._north) * self.south + (cell.y - self._lowest) * self.up

    def unpack(self, key: int) -> Cell:
        """The cell again."""
        level, rest = divmod(key, self.up)
        row, column = divmod(rest, self.south)
        return Cell(column + self._west, level + self._lowest, row + self._north)
