"""What the first sketch looks for in a plan. No Qt here."""

from __future__ import annotations

from collections.abc import Iterator

from app.tools.track_ends import TrackEnd, end_at
from model.grid import Cell, Heading
from model.plan import Plan
from model.track.layout import Layout
from model.track.shapes import Shape
from model.track.switches import power_states, three_way

ALONG = {Shape.EAST_WEST: Heading.EAST, Shape.NORTH_SOUTH: Heading.SOUTH}


def longest_straight(layout: Layout) -> tuple[Cell, ...]:
    """The cells of the longest flat straight, from west to east or from north to south."""
    runs = (_run(layout, cell, shape) for cell, shape in layout.shapes.items() if shape in ALONG)
    return max(runs, key=len, default=())


def switches(layout: Layout) -> tuple[Cell, ...]:
    """The rails with two states, in their order of placing."""
    return tuple(
        cell for cell in layout.shapes if three_way(layout, cell) and power_states(layout, cell).is_switch
    )


def ends_without_arm(layout: Layout) -> Iterator[TrackEnd]:
    """The ends of track at which no arm is, in their order of placing."""
    taken = _arm_ends(layout.plan)
    ends = (end_at(layout, cell) for cell in layout.shapes)
    return (end for end in ends if end is not None and end not in taken)


def _run(layout: Layout, first: Cell, shape: Shape) -> tuple[Cell, ...]:
    """The straight that begins with a cell; nothing where it begins before it."""
    heading = ALONG[shape]
    if layout.shape(first.step(heading.opposite)) is shape:
        return ()
    run, cell = [], first
    while layout.shape(cell) is shape:
        run.append(cell)
        cell = cell.step(heading)
    return tuple(run)


def _arm_ends(plan: Plan) -> set[TrackEnd]:
    entering = {TrackEnd(arm.enter.at, arm.enter.heading.opposite) for arm in plan.arms if arm.enter}
    leaving = {TrackEnd(arm.leave.at, arm.leave.heading) for arm in plan.arms if arm.leave}
    return entering | leaving
