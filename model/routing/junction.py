"""A junction: all that is worked out of a whole plan, each thing when it is first asked for."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property

import msgspec

from model.grid import Cell, Heading
from model.parts import Part
from model.pauses import with_pauses
from model.plan import Arm, Plan
from model.routing.choice import Choice
from model.routing.control import Control, WantedRoute, wanted_routes
from model.track.carts import Outcome, Way, exits_of, trace
from model.track.layout import Layout
from model.track.rails import MASK, Overlay, live_links, pack, unpack
from model.track.shapes import Shape
from model.track.switches import PowerStates, power_states, rails_in_setting, three_way


class Switch(msgspec.Struct, frozen=True):
    """A switch with what the control table asks of it."""

    at: Cell
    name: str
    resting: Shape
    powered: Shape
    idle: Shape | None
    """The shape that it must have while no reader holds; ``None`` when it is not wired."""
    called_by: tuple[str, ...]
    """The arms whose reader throws it, sorted."""
    inverter: bool
    """Whether it is powered at idle."""


class RouteResult(msgspec.Struct, frozen=True):
    """What is wanted of the carts from one arm, and whether they get there."""

    start: str
    idle: str
    idle_reached: bool
    called: str | None
    called_reached: bool | None
    waybill: str | None


class SettingShapes:
    """The shapes of the rails in one setting."""

    def __init__(self, rails: Overlay) -> None:
        self._rails = rails

    def get(self, cell: Cell) -> Shape | None:
        """The shape of the rail in a cell, or ``None`` where no rail stands."""
        return self._rails.get(pack(cell))

    def are_both_ends_linked(self, cell: Cell) -> bool:
        """Whether each end of the rail in a cell finds one that points back; false where no rail stands."""
        key = pack(cell)
        shape = self._rails.get(key)
        return shape is not None and live_links(self._rails, key, shape) == MASK[shape]

    @property
    def changed(self) -> dict[Cell, Shape]:
        """The rails that some power change wrote, with their shape afterwards."""
        return {unpack(key): shape for key, shape in self._rails.changed.items()}


class Junction:
    """A plan with its layout, switches, control table and ways.

    The layout and the rails with three neighbours must be the plan's, where they are known already.
    """

    def __init__(
        self, plan: Plan, layout: Layout | None = None, three_ways: tuple[Cell, ...] | None = None
    ) -> None:
        self.plan = plan
        self.layout = Layout(plan) if layout is None else layout
        self._three_ways = three_ways
        self._settings: dict[tuple[frozenset[Cell], frozenset[Cell]], Overlay] = {}

    @cached_property
    def three_ways(self) -> tuple[Cell, ...]:
        """The plain rails with neighbours in exactly three directions, in file order."""
        if self._three_ways is not None:
            return self._three_ways
        rails = (piece.at for piece in with_pauses(self.plan.pieces) if piece.part is Part.RAIL)
        return tuple(at for at in rails if three_way(self.layout, at))

    @cached_property
    def three_way_states(self) -> dict[Cell, PowerStates]:
        """What a power cycle makes of each of them."""
        return {at: power_states(self.layout, at) for at in self.three_ways}

    @cached_property
    def switch_states(self) -> dict[Cell, PowerStates]:
        """The switches, in file order."""
        return {at: states for at, states in self.three_way_states.items() if states.is_switch}

    @cached_property
    def control(self) -> Control:
        """The best choice of wired switches."""
        return Control(self.plan, self.layout, tuple(self.switch_states))

    @property
    def choice(self) -> Choice:
        """What is powered at idle and what each reader throws."""
        return self.control.choice

    @cached_property
    def switches(self) -> tuple[Switch, ...]:
        """All switches in file order, named S1, S2, …"""
        return tuple(
            self._switch(number, at, states)
            for number, (at, states) in enumerate(self.switch_states.items(), start=1)
        )

    @cached_property
    def routes(self) -> tuple[RouteResult, ...]:
        """The wanted routes, arm by arm, and whether the choice reaches them."""
        return tuple(
            RouteResult(
                route.start,
                route.idle,
                self.reaches(WantedRoute(route.start, False, route.idle)),
                route.called,
                None if route.called is None else self.reaches(WantedRoute(route.start, True, route.called)),
                route.waybill,
            )
            for route in self.plan.routes
        )

    @cached_property
    def wanted(self) -> tuple[WantedRoute, ...]:
        """The wanted routes one by one, the idle one of an arm before the called one."""
        return wanted_routes(self.plan.routes)

    @cached_property
    def ways(self) -> dict[WantedRoute, Way]:
        """The way of each wanted route in its own setting; those from where no cart can enter left out."""
        return {
            route: self.way(route.start, (route.start,) if route.called else ())
            for route in self.wanted
            if self.can_enter(route.start)
        }

    @cached_property
    def routes_through(self) -> dict[Cell, tuple[WantedRoute, ...]]:
        """By cell, the wanted routes whose way leads over it."""
        through: dict[Cell, list[WantedRoute]] = {}
        for route, way in self.ways.items():
            for cell in dict.fromkeys(way.path):
                through.setdefault(cell, []).append(route)
        return {cell: tuple(routes) for cell, routes in through.items()}

    @cached_property
    def settings(self) -> dict[str | None, frozenset[Cell]]:
        """The powered switches while each reader alone holds, by arm; under ``None`` while none does."""
        readers = (route.start for route in self.plan.routes if route.called is not None)
        return {None: self.choice.setting(), **{arm: self.choice.setting((arm,)) for arm in readers}}

    @cached_property
    def order_dependent(self) -> tuple[Cell, ...]:
        """The rails whose shape in some setting depends on the order in which the power changes."""
        forward = tuple(at for at in self.switch_states if at in self.choice.wired)
        found: dict[Cell, None] = {}
        for powered in self.settings.values():
            one = rails_in_setting(self.layout, forward, powered)
            other = rails_in_setting(self.layout, forward[::-1], powered)
            touched = one.changed.keys() | other.changed.keys()
            found.update((unpack(key), None) for key in sorted(touched) if one.get(key) != other.get(key))
        return tuple(found)

    def reaches(self, route: WantedRoute) -> bool:
        """Whether a cart on a wanted route leaves by the arm that is wanted."""
        way = self.ways.get(route)
        return way is not None and way.outcome is Outcome.ARM and way.arm == route.goal

    def shapes(self, powered: frozenset[Cell], wired: frozenset[Cell] | None = None) -> SettingShapes:
        """The shapes in a setting; ``wired`` where other switches than those of the choice are wired."""
        return SettingShapes(self._rails(powered, wired))

    def can_enter(self, arm_name: str) -> bool:
        """Whether a cart can come in by the arm: it is known, has an ``in``, and a rail stands there."""
        arm = self.plan.details.arm(arm_name)
        return arm is not None and arm.enter is not None and self.layout.shape(arm.enter.at) is not None

    def way(self, arm_name: str, held: Iterable[str] = ()) -> Way:
        """The way of a cart that enters by an arm while these readers hold. Needs ``can_enter``."""
        arm = self.plan.details.arm(arm_name)
        assert arm is not None
        return self.way_of(arm, self.choice.setting(held))

    def way_of(self, arm: Arm, powered: frozenset[Cell], wired: frozenset[Cell] | None = None) -> Way:
        """The way of a cart that enters by an arm in a setting. Needs an ``in`` with a rail."""
        assert arm.enter is not None
        return self.way_from(arm.enter.at, arm.enter.heading, powered, wired)

    def way_from(
        self, cell: Cell, heading: Heading, powered: frozenset[Cell], wired: frozenset[Cell] | None = None
    ) -> Way:
        """The way of a cart from any rail in a setting. Needs a rail in ``cell``."""
        return trace(self._rails(powered, wired), self.layout.stoppers, self._exits, cell, heading)

    @cached_property
    def _exits(self) -> dict[tuple[int, int], str]:
        return exits_of(self.plan.arms)

    def _rails(self, powered: frozenset[Cell], wired: frozenset[Cell] | None) -> Overlay:
        wired = self.choice.wired if wired is None else wired
        rails = self._settings.get((powered, wired))
        if rails is None:
            in_file_order = tuple(at for at in self.switch_states if at in wired)
            rails = self._settings[powered, wired] = rails_in_setting(self.layout, in_file_order, powered)
        return rails

    def _switch(self, number: int, at: Cell, states: PowerStates) -> Switch:
        wired = at in self.choice.wired
        return Switch(
            at,
            f"S{number}",
            states.resting,
            states.powered,
            self.shapes(self.choice.setting()).get(at) if wired else None,
            self.choice.called_by(at),
            at in self.choice.idle,
        )
