"""A loose end on a wanted route."""

from __future__ import annotations

from collections.abc import Iterator

from model.grid import Cell, Heading
from model.plan import Plan
from model.routing.control import WantedRoute
from model.routing.junction import Junction, SettingShapes
from model.rules.rule import Found, Rule, Severity
from model.rules.words import listed, route_name
from model.track.around import rail_at_end
from model.track.shapes import End, Shape
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """An end that finds no rail, or one that never points back.

    The ends at which arms come in or leave do not count, nor does an end towards a switch that points back in
    its other state.

    Bad::

        level 64 on blocks
        ──·─
        arm Quay: in 0 64 0 east
        arm Mill: out 3 64 0 east
        route Quay: idle Mill

    Good::

        level 64 on blocks
        ────
        arm Quay: in 0 64 0 east
        arm Mill: out 3 64 0 east
        route Quay: idle Mill
    """
    loose: dict[tuple[Cell, Heading], list[WantedRoute]] = {}
    for route, way in junction.ways.items():
        shapes = junction.shapes(junction.settings[route.start if route.called else None])
        for cell in dict.fromkeys(way.path):
            for heading in _loose_ends(junction, shapes, cell):
                loose.setdefault((cell, heading), []).append(route)
    arm_sides = _arm_sides(junction.plan)
    for (cell, heading), routes in loose.items():
        if (cell, heading) not in arm_sides:
            names = listed(map(route_name, routes))
            yield Found(
                tr(
                    "The rail at {cell} has a loose end to the {heading}, on {names}.",
                    cell=cell,
                    heading=tr(heading.word),
                    names=names,
                ),
                (cell,),
            )


def _loose_ends(junction: Junction, shapes: SettingShapes, cell: Cell) -> Iterator[Heading]:
    shape = shapes.get(cell)
    if shape is None or shapes.are_both_ends_linked(cell):  # as nearly all are
        return
    for end in shape.ends:
        if not _is_linked(junction, shapes, cell, end):
            yield end.heading


def _is_linked(junction: Junction, shapes: SettingShapes, cell: Cell, end: End) -> bool:
    other = rail_at_end(junction.layout, cell, end)
    if other is None:
        return False
    back = end.heading.opposite
    return any(back in shape.headings for shape in _shapes_of(junction, shapes, other))


def _shapes_of(junction: Junction, shapes: SettingShapes, cell: Cell) -> Iterator[Shape]:
    """The shape in the setting, and the two states when it is a switch."""
    shape = shapes.get(cell)
    if shape is not None:
        yield shape
    states = junction.switch_states.get(cell)
    if states is not None:
        yield from (states.resting, states.powered)


def _arm_sides(plan: Plan) -> set[tuple[Cell, Heading]]:
    """The sides of cells on which arms come in and leave."""
    entered = {(arm.enter.at, arm.enter.heading.opposite) for arm in plan.arms if arm.enter is not None}
    return entered | {(arm.leave.at, arm.leave.heading) for arm in plan.arms if arm.leave is not None}


RULE = Rule(
    id="loose-end",
    severity=Severity.WARNING,
    title="A loose end on a wanted route",
    why="A rail with a loose end has room, so the next rail placed beside it may bend it off the route.",
    remedy="Lay the missing rail, put the arm there, or place the rails in another order.",
    find=find,
)
