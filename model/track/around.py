"""What stands around a rail, in cells: for those who look at a plan rather than work it out."""

from __future__ import annotations

from model.grid import Cell, Heading
from model.track.layout import Layout
from model.track.rails import BIT, found_by, live_links, neighbour, pack, unpack
from model.track.shapes import End


def neighbours(layout: Layout, cell: Cell) -> dict[Heading, Cell]:
    """The neighbour in each direction that has one: own level first, then one up, then one down."""
    key = pack(cell)
    found = ((heading, neighbour(layout.rails, key, heading)) for heading in Heading)
    return {heading: unpack(other) for heading, other in found if other is not None}


def rail_at_end(layout: Layout, cell: Cell, end: End) -> Cell | None:
    """The rail that an end of the rail in ``cell`` finds, looking from the end's own level."""
    found = found_by(layout.rails, pack(cell), end)
    return None if found is None else unpack(found)


def linked_rails(layout: Layout, cell: Cell) -> list[Cell]:
    """The rails to which the rail in ``cell`` has live links, as built; none where no rail stands."""
    key = pack(cell)
    shape = layout.rails.get(key)
    if shape is None:
        return []
    links = live_links(layout.rails, key, shape)
    found = (found_by(layout.rails, key, end) for end in shape.ends if links & BIT[end.heading])
    return [unpack(other) for other in found if other is not None]
