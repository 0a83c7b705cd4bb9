"""Regions: wired switches whose power changes can bear on one another, and the rails that those can bend.

What the signals make of the rails of one region hangs on nothing outside it, so that it is worked out region
by region, and only where a cart passes.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final, NamedTuple

from model.track.rails import STEP, Rails

_COLUMNS: Final = (0, *STEP)
_WRITTEN: Final = tuple(column + level for column in _COLUMNS for level in range(-1, 3))
"""Added to a switch: where a notice there may bend a rail. The rails that its ends find are one column away,
and a raised end finds one up to two levels up."""
_READ: Final = tuple(
    column + level for column in {a + b for a in _COLUMNS for b in _COLUMNS} for level in range(-2, 5)
)
"""Added to a switch: where a notice there may look, one column and up to two levels farther."""


class Region(NamedTuple):
    """Switches near one another, packed."""

    switches: tuple[int, ...]
    """In file order."""
    written: frozenset[int]
    """The rails that a power change in the region may bend, the switches among them."""
    read: frozenset[int]
    """The rails on whose shape that may hang; those that are written among them."""


def regions_of(rails: Rails, switches: Sequence[int]) -> list[Region]:
    """The regions of the switches, which come in file order."""
    regions: list[Region] = []
    for switch in switches:
        alone = Region((switch,), _around(rails, switch, _WRITTEN), _around(rails, switch, _READ))
        near = [region for region in regions if _bear_on_one_another(region, alone)]
        regions = [region for region in regions if region not in near]
        regions.append(_together(switches, [*near, alone]))
    return regions


def _around(rails: Rails, switch: int, offsets: Iterable[int]) -> frozenset[int]:
    return frozenset(switch + offset for offset in offsets if rails.get(switch + offset) is not None)


def _bear_on_one_another(one: Region, other: Region) -> bool:
    return not (one.written.isdisjoint(other.read) and one.read.isdisjoint(other.written))


def _together(switches: Sequence[int], regions: Sequence[Region]) -> Region:
    members = {switch for region in regions for switch in region.switches}
    return Region(
        tuple(switch for switch in switches if switch in members),
        frozenset[int]().union(*(region.written for region in regions)),
        frozenset[int]().union(*(region.read for region in regions)),
    )
