"""What is to be wired: the readers with the switches they throw, and how soon each must lie right."""

from __future__ import annotations

from collections.abc import Container, Iterator
from itertools import combinations
from typing import Final

from msgspec import Struct
from msgspec.structs import replace
from shapely import Point, Polygon, box, union_all
from shapely.geometry.base import BaseGeometry

from model.grid import Cell, Heading
from model.routing.control import WantedRoute
from model.routing.junction import Junction
from model.routing.waybills import waybill_of
from model.track.carts import Way
from model.track.shapes import Shape
from model.wiring.drives import Driven
from model.wiring.modules.fitting import neighbour_directions

_STRAIGHT = {True: Shape.NORTH_SOUTH, False: Shape.EAST_WEST}
"""The level straight by whether it lies north-south."""


class Straight(Struct, frozen=True):
    """Rails one after another that lie straight and level."""

    place: int
    """That of the first rail on the way of a cart, from 0."""
    heading: Heading
    cells: tuple[Cell, ...]


class Reading(Struct, frozen=True):
    """An arm whose reader throws switches."""

    arm: str
    waybill: str
    straights: tuple[Straight, ...]
    """Where its reader may stand: on the arm's own stretch, before the first rail that has a choice."""
    thrown: dict[Cell, int | None]
    """The switches that the reader throws, each with its place on the way of a called cart, from 0;
    ``None`` where that cart does not pass it."""

    @property
    def first(self) -> Cell | None:
        """The first rail on which a reader could stand."""
        return next((straight.cells[0] for straight in self.straights), None)

    @property
    def last(self) -> int:
        """The place on the way of the last switch that must be held."""
        return max((place for place in self.thrown.values() if place is not None), default=0)


class Needs(Struct, frozen=True):
    """All that must be wired."""

    readings: tuple[Reading, ...]
    driven: tuple[Driven, ...]
    """The switches that some reader throws or that are powered while none holds."""

    def apart(self) -> tuple[Needs, ...]:
        """The same in parts that lie apart, so that each can be wired by itself.

        A reader may throw a switch that its own carts do not pass, only to have it wired; where that lies in
        another part no line goes there, and the switch only gets its notice.
        """
        import networkx as nx  # slow to import, and who draws plans need not wait for it

        graph: nx.Graph[str] = nx.Graph()
        areas = {reading.arm: _area(reading) for reading in self.readings}
        graph.add_nodes_from(areas)
        graph.add_edges_from(
            (one, other) for one, other in combinations(areas, 2) if areas[one].intersects(areas[other])
        )
        parts = [
            self._part(arms, union_all([areas[arm] for arm in arms]))
            for arms in nx.connected_components(graph)
        ]
        wired = {driven.at for part in parts for driven in part.driven}
        rest = tuple(replace(driven, lines=0) for driven in self.driven if driven.at not in wired)
        return (Needs((), rest), *parts) if rest else tuple(parts)

    def _part(self, arms: Container[str], area: BaseGeometry) -> Needs:
        readings = tuple(_within(reading, area) for reading in self.readings if reading.arm in arms)
        driven = (
            replace(driven, lines=sum(driven.at in reading.thrown for reading in readings))
            for driven in self.driven
        )
        return Needs(readings, tuple(each for each in driven if each.lines))


def _within(reading: Reading, area: BaseGeometry) -> Reading:
    """Without the switches outside the area that its own carts do not pass."""
    thrown = {
        switch: place
        for switch, place in reading.thrown.items()
        if place is not None or area.contains(Point(switch.x, switch.z))
    }
    return replace(reading, thrown=thrown)


_NEAR: Final = 3
"""Readers whose areas come that near to each other, in cells, may be in each other's way."""


def _area(reading: Reading) -> Polygon:
    """The ground over which a reader and its line may spread, as a rectangle in x and z."""
    cells = [cell for straight in reading.straights for cell in straight.cells]
    cells += [switch for switch, place in reading.thrown.items() if place is not None or not cells]
    xs, zs = [cell.x for cell in cells], [cell.z for cell in cells]
    return box(min(xs) - _NEAR, min(zs) - _NEAR, max(xs) + _NEAR, max(zs) + _NEAR)


def needs_of(junction: Junction) -> Needs:
    """What the control table asks for. All wanted routes must be reached."""
    choice = junction.choice
    readings = (
        _reading(junction, route.start)
        for route in junction.plan.routes
        if route.called is not None and choice.thrown.get(route.start)
    )
    driven = (
        Driven(
            switch,
            switch in choice.idle,
            len(choice.called_by(switch)),
            junction.layout.shape(switch) is states.resting,
        )
        for switch, states in junction.switch_states.items()
        if switch in choice.wired
    )
    return Needs(tuple(readings), tuple(driven))


def _reading(junction: Junction, arm: str) -> Reading:
    called = next(route for route in junction.wanted if route.start == arm and route.called)
    way = junction.ways[called]
    enter = next(each.enter for each in junction.plan.arms if each.name == arm)
    assert enter is not None
    thrown = sorted(junction.choice.thrown[arm])
    return Reading(
        arm,
        waybill_of(junction, WantedRoute(arm, True, called.goal)) or arm,
        tuple(_straights(junction, way, enter.heading)),
        {switch: way.path.index(switch) if switch in way.path else None for switch in thrown},
    )


def _straights(junction: Junction, way: Way, heading: Heading) -> Iterator[Straight]:
    """The straights up to the first rail that power turns or that other track crosses."""
    run: list[Cell] = []
    for place, cell in enumerate(way.path):
        if neighbour_directions(junction.plan.pieces, cell) > 2:
            break
        came = heading if place == 0 else _heading_between(way.path[place - 1], cell)
        lies = junction.layout.shape(cell) is _STRAIGHT[came.lies_north_south]
        if run and not (lies and cell == run[-1].step(heading)):
            yield Straight(place - len(run), heading, tuple(run))
            run = []
        if lies:
            run.append(cell)
        heading = came
    if run:
        yield Straight(way.path.index(run[0]), heading, tuple(run))


def _heading_between(one: Cell, other: Cell) -> Heading:
    """From a cell to one in the next column."""
    return next(
        heading for heading in Heading if (step := one.step(heading)).x == other.x and step.z == other.z
    )
