"""Two wanted routes that run through a cell in opposite headings."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from model.edits.words import counted
from model.grid import VECTORS, Cell, Heading
from model.routing.control import WantedRoute
from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.rules.words import arm_names, listed, places, route_name
from model.track.carts import Way
from model.wording import tr

Users = dict[tuple[Cell, Heading], dict[WantedRoute, None]]
"""The routes that come into a cell, or go out of it, with a heading."""


def find(junction: Junction) -> Iterator[Found]:
    """The cells that some wanted routes run through one way and others the other way, for each set of routes.

    Bad::

        level 64 on blocks
        ───
        arm Quay: in 0 64 0 east, out 0 64 0 west
        arm Mill: in 2 64 0 west, out 2 64 0 east
        route Quay: idle Mill
        route Mill: idle Quay

    Good::

        level 64 on blocks
        ───
        ···
        ───
        arm Quay: in 0 64 0 east, out 0 64 2 west
        arm Mill: in 2 64 2 west, out 2 64 0 east
        route Quay: idle Mill
        route Mill: idle Quay
    """
    cells_of: dict[frozenset[WantedRoute], dict[Cell, None]] = {}
    for cell, routes in _met_head_on(junction):
        cells_of.setdefault(routes, {})[cell] = None
    for routes, cells in cells_of.items():
        ordered = sorted(routes)
        names = listed(map(route_name, ordered))
        where = f"{counted(len(cells), 'cell')}: {places(tuple(cells))}"
        yield Found(
            tr("{names} run in opposite headings through {where}.", names=names, where=where),
            tuple(cells),
            arm_names(ordered),
        )


def _met_head_on(junction: Junction) -> Iterator[tuple[Cell, frozenset[WantedRoute]]]:
    """The cells in which carts can meet head-on, each with the routes that meet there."""
    coming: Users = {}
    going: Users = {}
    for route, way in junction.ways.items():
        if junction.reaches(route):
            _note(junction, route, way, coming, going)
    for (cell, heading), routes in coming.items():
        back = (cell, heading.opposite)
        others = coming.get(back, {}) | going.get(back, {})
        if others and len(routes | others) > 1:
            yield cell, frozenset(routes | others)


def _note(junction: Junction, route: WantedRoute, way: Way, coming: Users, going: Users) -> None:
    arm = junction.plan.details.arm(route.start)
    assert arm is not None
    assert arm.enter is not None
    headings = [arm.enter.heading, *(_heading(*step) for step in pairwise(way.path)), way.heading]
    for cell, (came, went) in zip(way.path, pairwise(headings), strict=True):
        coming.setdefault((cell, came), {})[route] = None
        going.setdefault((cell, went), {})[route] = None


def _heading(start: Cell, end: Cell) -> Heading:
    return Heading(VECTORS.index((end.x - start.x, end.z - start.z)))


RULE = Rule(
    id="head-on",
    severity=Severity.WARNING,
    title="Carts can meet head-on",
    why="Two carts that come towards each other on one track stop each other.",
    remedy="Give each heading a track of its own, or let only one of the routes be used at a time.",
    find=find,
)
