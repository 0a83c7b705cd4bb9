"""The shapes that a rail can come to have where it lies, in whatever order its neighbours come."""

from __future__ import annotations

from model.grid import Cell
from model.track.layout import Layout
from model.track.rails import MASK, STEP, UP, neighbour_mask, pack
from model.track.shapes import Shape


def possible_shapes(layout: Layout, cell: Cell) -> tuple[Shape, ...]:
    """In the order of the shapes. No other can come out; for some of these there may be no order.

    A straight rail may lie along either axis, linked or loose. A curve comes only from links in both of its
    directions, and a slope only from a rail one level up. Raises KeyError where no rail stands.
    Common practice of the trade, written from memory, no published source.
    """
    key = pack(cell)
    if key not in layout.rails:
        raise KeyError(cell)
    around = neighbour_mask(layout.rails, key)

    def is_possible(shape: Shape) -> bool:
        if shape.is_curve:
            return key not in layout.straight_only and not MASK[shape] & ~around
        raised = shape.rises_to
        return raised is None or key + STEP[raised] + UP in layout.rails

    return tuple(filter(is_possible, Shape))
