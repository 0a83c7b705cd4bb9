"""Switches: what a power cycle makes of a rail, and the rails in a setting of the signals."""

from __future__ import annotations

from collections.abc import Container, Iterable, Mapping, Sequence

import msgspec

from model.grid import Cell
from model.track.layout import Layout
from model.track.rails import Overlay, pack
from model.track.settling import is_three_way, noticed
from model.track.shapes import Shape


class PowerStates(msgspec.Struct, frozen=True):
    """The two shapes that one full power cycle of a rail alone shows."""

    resting: Shape
    powered: Shape

    @property
    def is_switch(self) -> bool:
        """Whether the two differ."""
        return self.resting != self.powered


def three_way(layout: Layout, cell: Cell) -> bool:
    """Whether the cell holds a plain rail with a neighbour in exactly three directions."""
    key = pack(cell)
    return key in layout.rails and is_three_way(layout.rails, layout.straight_only, key)


def power_states(layout: Layout, cell: Cell) -> PowerStates:
    """The shapes after one full power cycle of that rail alone: on, off (resting), on again (powered).

    The cycle starts from the plan as built; joins that it causes take place, and the layout stays as it is.
    Raises KeyError where no rail stands.
    """
    key = pack(cell)
    present = layout.rails[key]
    if not three_way(layout, cell):
        return PowerStates(present, present)
    rails = Overlay(layout.rails)
    _notice(rails, layout.straight_only, key, powered=True)
    _notice(rails, layout.straight_only, key, powered=False)
    resting = rails.get(key)
    _notice(rails, layout.straight_only, key, powered=True)
    powered = rails.get(key)
    assert resting is not None
    assert powered is not None
    return PowerStates(resting, powered)


def rails_in_setting(
    layout: Layout,
    wired: Sequence[Cell],
    powered: Iterable[Cell],
    turned: Mapping[Cell, Shape] | None = None,
) -> Overlay:
    """The rails after every wired switch was powered and released, and those of the setting powered.

    ``wired`` comes in the order in which power changes; ``powered`` is a part of it. The rails of ``turned``
    lie in those shapes before the first change, instead of as built.
    """
    rails = Overlay(layout.rails)
    for cell, shape in (turned or {}).items():
        rails[pack(cell)] = shape
    keys = [pack(cell) for cell in wired]
    for key in keys:
        _notice(rails, layout.straight_only, key, powered=True)
        _notice(rails, layout.straight_only, key, powered=False)
    on = {pack(cell) for cell in powered}
    for key in keys:
        if key in on:
            _notice(rails, layout.straight_only, key, powered=True)
    return rails


def _notice(rails: Overlay, straight_only: Container[int], key: int, *, powered: bool) -> None:
    for offset, shape in noticed(rails.get, straight_only, key, powered=powered).writes:
        rails[key + offset] = shape
