"""A cart from another arm that goes wrong while a reader holds."""

from __future__ import annotations

from collections.abc import Iterator

from model.grid import Cell
from model.routing.control import WantedRoute
from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.rules.words import ending, holding, route_name
from model.track.carts import Outcome, Way
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """An empty cart that reaches its arm while no reader holds, but not while the reader of another arm does.

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
        arm Fen: out 1 64 1 east
        route Quay: idle Fen, called Mill
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
        arm Quay: in 0 64 2 north
        arm Mill: out 0 64 0 north
        arm Fen: out 1 64 1 east
        route Quay: idle Fen, called Mill
    """
    passing = _idle_routes_by_cell(junction)
    for holder in junction.settings:
        if holder is not None:
            bent = _bent_by(junction, holder)
            routes = dict.fromkeys(route for cell in bent for route in passing.get(cell, ()))
            for route in sorted(routes):
                if route.start != holder:
                    yield from _misled(junction, route, holder)


def _misled(junction: Junction, route: WantedRoute, holder: str) -> Iterator[Found]:
    way = junction.way(route.start, (holder,))
    if way.outcome is not Outcome.ARM or way.arm != route.goal:
        message = tr(
            "An empty cart on {route} {ending} {holding}.",
            route=route_name(route),
            ending=ending(way),
            holding=holding(holder),
        )
        yield Found(message, (_parting(junction.ways[route], way),), (route.start, holder))


def _parting(right: Way, wrong: Way) -> Cell:
    """The last cell on which the wrong way is still the right one."""
    common = [one for one, other in zip(right.path, wrong.path, strict=False) if one == other]
    return common[-1]


def _idle_routes_by_cell(junction: Junction) -> dict[Cell, list[WantedRoute]]:
    passing: dict[Cell, list[WantedRoute]] = {}
    for route, way in junction.ways.items():
        if not route.called and junction.reaches(route):
            for cell in dict.fromkeys(way.path):
                passing.setdefault(cell, []).append(route)
    return passing


def _bent_by(junction: Junction, holder: str) -> list[Cell]:
    """The rails that lie otherwise while the reader holds than while none does."""
    idle, held = (junction.shapes(junction.settings[arm]) for arm in (None, holder))
    return sorted(
        cell for cell in idle.changed.keys() | held.changed.keys() if idle.get(cell) != held.get(cell)
    )


RULE = Rule(
    id="misled-while-held",
    severity=Severity.WARNING,
    title="Another cart is misled while a reader holds",
    why="A cart that comes by while the called one passes is sent the called way too.",
    remedy="Keep the two routes off each other's switches, or let no cart come while a reader holds.",
    find=find,
)
