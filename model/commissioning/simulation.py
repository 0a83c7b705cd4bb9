"""What carts do in a junction whose switches are powered, or whose rails lie, otherwise than designed."""

from __future__ import annotations

from collections.abc import Sequence

from model.commissioning.regions import regions_of
from model.grid import Cell
from model.plan import Arm
from model.track.carts import Way, exits_of, trace
from model.track.layout import Layout
from model.track.rails import Overlay, pack, unpack
from model.track.shapes import Shape
from model.track.switches import rails_in_setting

Turned = frozenset[tuple[Cell, Shape]]
"""The rails that lie otherwise than built, before any power changes."""
AS_BUILT: Turned = frozenset()


class Simulation:
    """Sends carts through a layout. Which switches are wired is settled; what is powered varies."""

    def __init__(self, layout: Layout, wired: Sequence[Cell]) -> None:
        self.regions = regions_of(layout.rails, [pack(cell) for cell in wired])
        self._layout = layout
        self._exits = exits_of(layout.plan.arms)
        bit = {cell: 1 << index for index, cell in enumerate(wired)}
        self._switches = [{unpack(key): bit[unpack(key)] for key in r.switches} for r in self.regions]
        self.masks = [sum(bits.values()) for bits in self._switches]
        """By region, its switches as bits over the wired ones."""
        self._lain: dict[tuple[int, int, Turned], Overlay] = {}

    def way(self, arm: Arm, powered: int, turned: Turned = AS_BUILT) -> Way:
        """The way of a cart that enters by an arm, with some wired switches powered, given as bits.

        Needs an ``in`` with a rail.
        """
        assert arm.enter is not None
        rails = Overlay(self._layout.rails)
        rails.changed.update((pack(cell), shape) for cell, shape in turned)
        for number in range(len(self.regions)):
            rails.changed.update(self._lain_in(number, powered, turned).changed)
        return trace(rails, self._layout.stoppers, self._exits, arm.enter.at, arm.enter.heading)

    def reached(self, switches: int, turned: Cell | None = None) -> frozenset[Cell]:
        """The rails that may lie otherwise when those switches are powered otherwise, or that rail turned."""
        keys: set[int] = set() if turned is None else {pack(turned)}
        for mask, region in zip(self.masks, self.regions, strict=True):
            if mask & switches or not region.read.isdisjoint(keys):
                keys |= region.written
        return frozenset(map(unpack, keys))

    def _lain_in(self, number: int, powered: int, turned: Turned) -> Overlay:
        """The rails of one region, whatever there is outside it."""
        powered &= self.masks[number]
        read = self.regions[number].read
        near = frozenset(rail for rail in turned if pack(rail[0]) in read) if turned else AS_BUILT
        asked = (number, powered, near)
        if asked not in self._lain:
            bits = self._switches[number]
            on = [cell for cell, bit in bits.items() if bit & powered]
            self._lain[asked] = rails_in_setting(self._layout, tuple(bits), on, dict(near))
        return self._lain[asked]
