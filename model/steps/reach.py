"""Which rails may see one another, and which stand near."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from typing import Final

from model.steps.runs import Rail
from model.track.rails import STEP, UP


def within(columns: int, levels: int) -> tuple[int, ...]:
    """Added to a packed cell: the cells in columns so many steps off at the most, and so many levels."""
    found = {0}
    for _ in range(columns):
        found = {column + step for column in found for step in (0, *STEP)}
    return tuple(column + level for column in sorted(found) for level in range(-levels, levels + 1))


BESIDE: Final = within(1, 2)
"""From a rail that came out otherwise to those that are bound with it; with every try further."""
ON_LEVEL: Final = within(2, 0)
"""Where rails keep the plan's order that are bound once."""
COLUMNS: Final = within(3, 0)
LEVELS: Final = 6
"""Where rails keep the plan's order that are bound twice: wherever one may look at what the other writes.

A placing looks two columns far and four levels up, and writes one column far and two levels up.
"""


def groups_apart(rails: Iterable[Rail]) -> Iterator[list[Rail]]:
    """Rails in groups too far apart for the one to see the other, each in the order of the plan."""
    columns: dict[int, list[Rail]] = {}
    for rail in rails:
        columns.setdefault(column_of(rail), []).append(rail)
    left = set(columns)
    for first in columns:
        if first in left:
            group = _reached(first, left)
            yield sorted((rail for column in group for rail in columns[column]), key=lambda rail: rail.rank)


def _reached(first: int, left: set[int]) -> list[int]:
    """A column and those that can be reached from it over others; takes them out of those left."""
    left.discard(first)
    found = [first]
    for column in found:
        near = left.intersection(column + offset for offset in COLUMNS)
        left -= near
        found += near
    return found


def column_of(rail: Rail) -> int:
    """The column of a rail: its packed cell at level 0."""
    return rail.key - rail.level * UP


def later_in_reach(rail: Rail, columns: Mapping[int, Sequence[Rail]]) -> Iterator[int]:
    """The packed cells of the later rails of which one may look at what the other writes."""
    column = column_of(rail)
    for offset in COLUMNS:
        for other in columns.get(column + offset, ()):
            if other.rank > rail.rank and abs(other.level - rail.level) <= LEVELS:
                yield other.key


def around(keys: Iterable[int], rails: Container[int], far: int) -> set[int]:
    """Some rails and those from which they can be reached in so many steps over rails."""
    found = set(keys)
    edge = found
    for _ in range(far):
        edge = {near for key in edge for off in BESIDE if (near := key + off) in rails} - found
        found |= edge
    return found
