"""The ends of tracks that a drag crosses or a click means."""

from __future__ import annotations

from itertools import pairwise
from typing import NamedTuple

from app.tools.host import Ends
from app.tools.paths import Path, heading_between
from model.grid import Cell, Heading
from model.track.layout import Layout


class TrackEnd(NamedTuple):
    """A rail and the heading out of it at one of its ends."""

    cell: Cell
    outward: Heading


def end_at(layout: Layout, cell: Cell) -> TrackEnd | None:
    """The rail's only end beyond which no rail lies, or ``None`` where it has none or two."""
    loose = [end for end in _ends(layout, cell) if not _goes_on(layout, end)]
    return loose[0] if len(loose) == 1 else None


def crossing(layout: Layout, trail: Path) -> tuple[TrackEnd, Ends] | None:
    """The end that a drag crosses first, and the ways in which it crosses it.

    An end beyond which no rail lies goes before one where the track runs on.
    """
    ends = [found for step in pairwise(trail) for found in _crossed(layout, *step)]
    loose = [end for end in ends if not _goes_on(layout, end[0])]
    if not ends:
        return None
    first = (loose or ends)[0][0]
    ways = Ends.NONE
    for end, way in ends:
        if end == first:
            ways |= way
    return first, ways


def _crossed(layout: Layout, a: Cell, b: Cell) -> list[tuple[TrackEnd, Ends]]:
    """Out of the rail in ``a``, and into the one in ``b``."""
    heading = heading_between(a, b)
    if heading is None:
        return []
    leaving, entering = TrackEnd(a, heading), TrackEnd(b, heading.opposite)
    crossed = []
    if leaving in _ends(layout, a):
        crossed.append((leaving, Ends.OUT))
    if entering in _ends(layout, b):
        crossed.append((entering, Ends.IN))
    return crossed


def _ends(layout: Layout, cell: Cell) -> list[TrackEnd]:
    shape = layout.shape(cell)
    return [] if shape is None else [TrackEnd(cell, end.heading) for end in shape.ends]


def _goes_on(layout: Layout, end: TrackEnd) -> bool:
    beyond = end.cell.step(end.outward)
    return any(layout.shape(beyond.moved(dy=dy)) is not None for dy in (0, 1, -1))
