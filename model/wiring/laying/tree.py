"""A line as far as it is laid: a tree of dust and repeaters, and what it bars for itself and for others."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from model.wiring.laying.field import Field

DUST_PRICE = 10
"""Of a dust with the block under it."""
REPEATER_PRICE = 12
"""Of a repeater with the block under it, and a little for its delay."""
REPEATER_DELAY = 2
"""Ticks; the shortest is the only one used."""
FULL = 15


class Step(NamedTuple):
    """A dust with what leads to it."""

    cell: int
    strength: int
    """At least that."""
    delay: int
    """Ticks from the start."""
    segment: int
    """Dust that hangs together without repeaters has one number; 0 is that of the start."""
    repeater: int
    """The repeater between this dust and the one before; 0 for none."""
    head: int
    """The cell that no block may fill, so that a step up or down is not cut; 0 for none."""
    before: int
    """The dust before; 0 for the start."""


class Tree:
    """Steps by cell. Every cell is a packed one."""

    def __init__(self, field: Field, start: int) -> None:
        self.field = field
        self.steps: dict[int, Step] = {}
        self.repeaters: set[int] = set()
        self.blocks: set[int] = set()
        """New blocks."""
        self.heads: set[int] = set()
        self.near: dict[int, int] = {}
        """Cells where dust would link to dust of this segment, -1 for several."""
        self.segments = 1
        """The number of the next segment."""
        self.price = 0
        self.add([Step(start, FULL, 0, 0, 0, 0, 0)])

    def add(self, steps: Iterable[Step]) -> None:
        """More steps, each after the one that it comes from."""
        field = self.field
        for step in steps:
            self.steps[step.cell] = step
            self.price += DUST_PRICE
            self._rest(step.cell)
            if step.repeater:
                self.repeaters.add(step.repeater)
                self.price += REPEATER_PRICE
                self._rest(step.repeater)
            if step.head:
                self.heads.add(step.head)
            self.segments = max(self.segments, step.segment + 1)
            for way in field.near:
                cell = step.cell + way
                if self.near.setdefault(cell, step.segment) != step.segment:
                    self.near[cell] = -1

    def bars_parts(self) -> set[int]:
        """Cells where neither dust nor a repeater may lie: taken, or the block below would be in the way."""
        up = self.field.up
        parts = self.steps.keys() | self.repeaters
        return parts | self.blocks | {cell + up for cell in parts} | {cell + up for cell in self.heads}

    def bars_dust(self) -> set[int]:
        """Cells in which no dust of another line may lie."""
        return self.bars_parts() | self.near.keys()

    def _rest(self, cell: int) -> None:
        if not self.field.carried[cell]:
            self.blocks.add(cell - self.field.up)
