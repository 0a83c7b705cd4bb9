"""Wanted routes that no choice of signals can serve together."""

from __future__ import annotations

from collections.abc import Iterator

from model.grid import Cell
from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.rules.words import arm_names, listed, route_name
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """Each route can be served alone, but not all of them in the settings in which they run.

    Bad::

        level 64 on blocks
        │·
        │─
        │·
        order
        ··
        1·
        ··
        arm Quay: in 0 64 2 north, out 0 64 2 south
        arm Mill: in 0 64 0 south, out 0 64 0 north
        route Quay: idle Mill
        route Mill: idle Quay

    Good::

        level 64 on blocks
        │·
        │─
        │·
        order
        ··
        1·
        ··
        arm Quay: in 0 64 2 north, out 0 64 2 south
        arm Mill: in 0 64 0 south
        arm Fen: out 1 64 1 east
        route Quay: idle Fen
        route Mill: idle Quay
    """
    names = {switch.at: switch.name for switch in junction.switches}
    for conflict in junction.control.conflicts:
        routes = listed(map(route_name, conflict.routes))
        yield Found(_message(routes, conflict.switches, names), conflict.switches, arm_names(conflict.routes))


def _message(routes: str, switches: tuple[Cell, ...], names: dict[Cell, str]) -> str:
    if not switches:
        return tr("No choice of signals serves {routes} together.", routes=routes)
    # Rails that a switch bends have no name of their own.
    called = [names.get(cell, tr("the rail at {cell}", cell=cell)) for cell in switches]
    return tr(
        "No choice of signals serves {routes} together: they need {names} to lie differently.",
        routes=routes,
        names=listed(called),
    )


RULE = Rule(
    id="conflict",
    severity=Severity.ERROR,
    title="Wanted routes conflict",
    why="A switch lies one way at a time, so at least one of these routes goes wrong whatever is wired.",
    remedy="Give up or change one of the routes, or lead one of them round the switch.",
    find=find,
)
