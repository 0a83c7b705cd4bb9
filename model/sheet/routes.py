"""The control table."""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum

import msgspec

from model.grid import Cell
from model.routing.control import WantedRoute
from model.routing.junction import Junction, Switch
from model.routing.waybills import waybill_of
from model.track.shapes import Shape


class State(StrEnum):
    """How a switch lies on a route, by the letter in the table."""

    RESTS = "R"
    POWERED = "P"
    AS_BUILT = "B"
    """Not wired."""


class Lie(msgspec.Struct, frozen=True):
    """The shape that a switch must have on a route, and what gives it."""

    shape: Shape
    state: State


class ControlRow(msgspec.Struct, frozen=True):
    """One wanted route: how each switch of the table must lie, ``None`` where the route does not pass it."""

    start: str
    goal: str
    waybill: str | None
    lies: tuple[Lie | None, ...]
    reached: bool


class ControlTable(msgspec.Struct, frozen=True):
    """A column for each switch that is wired or that a wanted route passes, a row for each wanted route."""

    switches: tuple[Switch, ...]
    rows: tuple[ControlRow, ...]


def control_table(junction: Junction) -> ControlTable:
    """The way each switch must lie, route by route."""
    passed = {cell for way in junction.ways.values() for cell in way.path}
    wanted = passed | junction.choice.wired
    switches = tuple(switch for switch in junction.switches if switch.at in wanted)
    rows = (
        ControlRow(
            route.start,
            route.goal,
            waybill_of(junction, route),
            tuple(_lies(junction, route, switches)),
            junction.reaches(route),
        )
        for route in junction.wanted
    )
    return ControlTable(switches, tuple(rows))


def _lies(junction: Junction, route: WantedRoute, switches: tuple[Switch, ...]) -> Iterator[Lie | None]:
    way = junction.ways.get(route)
    path: frozenset[Cell] = frozenset() if way is None else frozenset(way.path)
    powered = junction.settings[route.start if route.called else None]
    shapes = junction.shapes(powered)
    for switch in switches:
        shape = shapes.get(switch.at) if switch.at in path else None
        yield None if shape is None else Lie(shape, _state(junction, switch.at, powered))


def _state(junction: Junction, cell: Cell, powered: frozenset[Cell]) -> State:
    if cell not in junction.choice.wired:
        return State.AS_BUILT
    return State.POWERED if cell in powered else State.RESTS
