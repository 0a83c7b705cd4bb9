"""What the thing of a hint would make, as the ghost of a gesture on the plan as drawn. No Qt here."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from app.first_sketch.hints import Deed, Seen
from app.first_sketch.track import ends_without_arm, longest_straight, switches
from app.tools.host import Ends, Ghost, ShownCart
from model.edits import lay_track
from model.grid import Cell, Heading
from model.plan import Plan
from model.track.layout import Layout
from model.track.switches import power_states

HALF: Final = 3
"""Cells of the first straight on each side of its middle."""
BRANCH: Final = 3
"""Cells of the branch before its corner, and after it."""


def outline(hint: int, seen: Seen, middle: Cell) -> Ghost | None:
    """The ghost of what the hint of that number asks for; ``None`` where it has no place on the plan.

    ``middle`` is the cell about which the first track is to lie.
    """
    makers = (_straight, _branch, _arm, _nothing, _trial, _nothing)
    return makers[hint](seen, middle)


def _straight(seen: Seen, middle: Cell) -> Ghost | None:
    cells = [middle.moved(dx=dx) for dx in range(-HALF, HALF + 1)]
    return Ghost(change=lay_track(seen.layout.plan, cells))


def _branch(seen: Seen, _middle: Cell) -> Ghost | None:
    ways = _free_branches(seen.layout)
    return next((Ghost(change=lay_track(seen.layout.plan, way)) for way in ways), None)


def _arm(seen: Seen, _middle: Cell) -> Ghost | None:
    end = next(ends_without_arm(seen.layout), None)
    return None if end is None else Ghost(crossing=(end.cell, end.outward, Ends.BOTH))


def _nothing(_seen: Seen, _middle: Cell) -> Ghost | None:
    return None


def _trial(seen: Seen, _middle: Cell) -> Ghost | None:
    """The powered state of the switch, then a cart on the arm from which a route goes."""
    if Deed.SWITCH_THROWN not in seen.deeds:
        powered = {cell: power_states(seen.layout, cell).powered for cell in switches(seen.layout)[:1]}
        return Ghost(surveyed=powered) if powered else None
    return _cart(seen.layout.plan)


def _cart(plan: Plan) -> Ghost | None:
    starts = {route.start for route in plan.routes}
    # An arm from which a route goes comes first.
    for arm in sorted(plan.arms, key=lambda arm: arm.name not in starts):
        if arm.enter is not None:
            return Ghost(cart=ShownCart(arm.enter.at, arm.enter.heading, loaded=False))
    return None


def _free_branches(layout: Layout) -> Iterator[list[Cell]]:
    """Ways of a branch with a corner that end beside the straight, the nearest to its middle first."""
    straight = longest_straight(layout)
    inner = sorted(straight[1:-1], key=lambda cell: abs(straight.index(cell) - len(straight) // 2))
    if not inner:
        return
    along = Heading.EAST if straight[0].z == straight[-1].z else Heading.SOUTH
    for cell in inner:
        for out in (along.clockwise, along.clockwise.opposite):
            for aside in (along, along.opposite):
                way = _way(cell, out, aside)
                if not any(_is_near_track(layout, step, cell) for step in way):
                    yield way


def _way(cell: Cell, out: Heading, aside: Heading) -> list[Cell]:
    """From the far end of the branch over its corner to the cell beside the straight."""
    stem = [cell]
    for heading in (out,) * BRANCH + (aside,) * BRANCH:
        stem.append(stem[-1].step(heading))
    return stem[:0:-1]


def _is_near_track(layout: Layout, step: Cell, goal: Cell) -> bool:
    """Whether a cell is taken, or a rail laid there would join another one than the goal."""
    beside = (step.step(heading) for heading in Heading)
    return step in layout.plan.pieces or any(cell != goal and cell in layout.shapes for cell in beside)
