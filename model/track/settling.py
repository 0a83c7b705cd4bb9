"""How a rail takes its shape: placing, settling, joining, slopes, and notice of a signal.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Container
from typing import Final

from model.grid import Heading
from model.track.rails import (
    BACK,
    BIT,
    EAST_WEST,
    NORTH_SOUTH,
    STEP,
    UP,
    Rails,
    found_by,
    has_room,
    live_links,
    neighbour_mask,
    open_directions,
)
from model.track.remembered import Get, Leaf, Remembered
from model.track.shapes import ENDS, Shape

_NORTH, _EAST, _SOUTH, _WEST = BIT

AT_REST: Final = (
    (_SOUTH | _EAST, Shape.SOUTH_EAST),
    (_SOUTH | _WEST, Shape.SOUTH_WEST),
    (_NORTH | _EAST, Shape.NORTH_EAST),
    (_NORTH | _WEST, Shape.NORTH_WEST),
)
"""The world-axis bias rule without a signal: the first curve whose directions are open."""
POWERED: Final = AT_REST[::-1]
"""The same with a signal: the other way round."""

CURVE_OF_LINKS: Final = dict(AT_REST)
"""The curve between one north/south and one east/west link, by mask."""

THREE_WAYS: Final = frozenset(15 - bit for bit in BIT)
"""The masks with exactly three directions."""


def place(rails: Rails, straight_only: Container[int], key: int, heading: Heading) -> None:
    """Places a rail whose builder faces ``heading``: it lies, settles, and its ends are joined."""
    rails[key] = Shape.NORTH_SOUTH if heading.lies_north_south else Shape.EAST_WEST
    shape = settled(rails, straight_only, key, powered=False)
    rails[key] = shape
    _join_ends(rails, straight_only, key, shape)


def notice(rails: Rails, straight_only: Container[int], key: int, *, powered: bool) -> None:
    """A signal part gives notice at a rail: a plain three-way rail settles with its present signal."""
    if not is_three_way(rails, straight_only, key):
        return
    shape = settled(rails, straight_only, key, powered=powered)
    if shape != rails.get(key):
        rails[key] = shape
        _join_ends(rails, straight_only, key, shape)


def placed(get: Get, straight_only: Container[int], key: int, heading: Heading) -> Leaf:
    """What ``place`` does, remembered from places that look the same; writes nothing itself."""
    return _PLACING[heading].asked(get, straight_only, key)


def noticed(get: Get, straight_only: Container[int], key: int, *, powered: bool) -> Leaf:
    """What ``notice`` does, remembered from places that look the same; writes nothing itself."""
    return _NOTICE[powered].asked(get, straight_only, key)


def is_three_way(rails: Rails, straight_only: Container[int], key: int) -> bool:
    """Whether a rail can curve and has a neighbour in exactly three directions, with room or without."""
    return key not in straight_only and neighbour_mask(rails, key) in THREE_WAYS


def settled(rails: Rails, straight_only: Container[int], key: int, *, powered: bool) -> Shape:
    """The shape into which the rail in a packed cell settles, from what is open around it."""
    present = rails.get(key)
    assert present is not None
    directions = open_directions(rails, key)
    if not directions:
        return present
    if not directions & EAST_WEST:
        return _sloped(rails, key, Shape.NORTH_SOUTH)
    if not directions & NORTH_SOUTH:
        return _sloped(rails, key, Shape.EAST_WEST)
    if key in straight_only:
        return _sloped(rails, key, present)
    return biased_curve(directions, powered=powered)


def biased_curve(directions: int, *, powered: bool) -> Shape:
    """The curve that the bias rule picks; needs an open direction on both axes."""
    return next(curve for mask, curve in (POWERED if powered else AT_REST) if not mask & ~directions)


def _join_ends(rails: Rails, straight_only: Container[int], key: int, shape: Shape) -> None:
    for end in ENDS[shape]:
        found = found_by(rails, key, end)
        if found is not None:
            _join(rails, straight_only, found, BACK[end.heading])


def _join(rails: Rails, straight_only: Container[int], key: int, bit: int) -> None:
    """Joins a rail to the one in the direction of ``bit``, if it has room for it."""
    shape = rails.get(key)
    assert shape is not None
    links = live_links(rails, key, shape)
    if not has_room(links, bit):
        return
    links |= bit
    if not links & EAST_WEST:
        rails[key] = _sloped(rails, key, Shape.NORTH_SOUTH)
    elif not links & NORTH_SOUTH or key in straight_only:
        rails[key] = _sloped(rails, key, Shape.EAST_WEST)
    else:
        rails[key] = CURVE_OF_LINKS[links]


def _sloped(rails: Rails, key: int, shape: Shape) -> Shape:
    """The slope rule: a flat straight shape rises to a rail one up; south and west win."""
    if shape is Shape.NORTH_SOUTH:
        order = _SOUTH_FIRST
    elif shape is Shape.EAST_WEST:
        order = _WEST_FIRST
    else:
        return shape
    for step, rising in order:
        if rails.get(key + step) is not None:
            return rising
    return shape


_SOUTH_FIRST: Final = (
    (STEP[Heading.SOUTH] + UP, Shape.RISING_SOUTH),
    (STEP[Heading.NORTH] + UP, Shape.RISING_NORTH),
)
_WEST_FIRST: Final = (
    (STEP[Heading.WEST] + UP, Shape.RISING_WEST),
    (STEP[Heading.EAST] + UP, Shape.RISING_EAST),
)

_PLACED_NORTH_SOUTH: Final = Remembered(lambda sight, key: place(sight, sight, key, Heading.NORTH))
_PLACED_EAST_WEST: Final = Remembered(lambda sight, key: place(sight, sight, key, Heading.EAST))
_PLACING: Final = (_PLACED_NORTH_SOUTH, _PLACED_EAST_WEST) * 2
"""By the heading of the builder: only its axis matters."""
_NOTICE: Final = (
    Remembered(lambda sight, key: notice(sight, sight, key, powered=False)),
    Remembered(lambda sight, key: notice(sight, sight, key, powered=True)),
)
