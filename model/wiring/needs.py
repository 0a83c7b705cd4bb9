"""What is to be wired: the readers with the switches they throw, and how soon each must lie right."""

from __future__ import annotations

from msgspec import Struct

from model.grid import Cell, Heading
from model.routing.control import WantedRoute
from model.routing.junction import Junction
from model.routing.waybills import waybill_of
from model.track.carts import Way
from model.track.shapes import Shape

_STRAIGHT = {True: Shape.NORTH_SOUTH, False: Shape.EAST_WEST}
"""The level straight by whether it lies north-south."""


class Reading(Struct, frozen=True):
    """An arm whose reader throws switches."""

    arm: str
    waybill: str
    heading: Heading
    straight: tuple[Cell, ...]
    """The rails from the arm's first on that lie straight and level, one after another."""
    thrown: dict[Cell, int | None]
    """The switches that the reader throws, each with its place on the way of a called cart, from 0;
    ``None`` where that cart does not pass it."""

    @property
    def last(self) -> int:
        """The place on the way of the last switch that must be held."""
        return max((place for place in self.thrown.values() if place is not None), default=0)


class Needs(Struct, frozen=True):
    """All that must be wired."""

    readings: tuple[Reading, ...]
    inverted: frozenset[Cell]
    """Switches that are powered while no reader holds."""

    @property
    def switches(self) -> tuple[Cell, ...]:
        """All switches that need a drive, in an order of their own."""
        thrown = (cell for reading in self.readings for cell in reading.thrown)
        return tuple(sorted({*thrown, *self.inverted}))

    def of(self, switch: Cell) -> tuple[bool, int]:
        """Whether a switch is inverted, and how many lines throw it."""
        return switch in self.inverted, sum(switch in reading.thrown for reading in self.readings)


def needs_of(junction: Junction) -> Needs:
    """What the control table asks for. All wanted routes must be reached."""
    readings = (
        _reading(junction, route.start)
        for route in junction.plan.routes
        if route.called is not None and junction.choice.thrown.get(route.start)
    )
    return Needs(tuple(readings), junction.choice.idle)


def _reading(junction: Junction, arm: str) -> Reading:
    called = next(route for route in junction.wanted if route.start == arm and route.called)
    way = junction.ways[called]
    enter = junction.plan.details.arm(arm)
    assert enter is not None
    assert enter.enter is not None
    heading = enter.enter.heading
    thrown = sorted(junction.choice.thrown[arm])
    return Reading(
        arm,
        waybill_of(junction, WantedRoute(arm, True, called.goal)) or arm,
        heading,
        _straight(junction, way, heading),
        {switch: way.path.index(switch) if switch in way.path else None for switch in thrown},
    )


def _straight(junction: Junction, way: Way, heading: Heading) -> tuple[Cell, ...]:
    """As far as the rails lie straight on one level, and are not turned by any power."""
    found: list[Cell] = []
    for cell in way.path:
        goes_on = not found or cell == found[-1].step(heading)
        lies = junction.layout.shape(cell) is _STRAIGHT[heading.lies_north_south]
        if not (goes_on and lies) or cell in junction.three_way_states:
            break
        found.append(cell)
    return tuple(found)
