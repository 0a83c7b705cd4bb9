"""The wanted routes as sentences: where a cart stands, how the rail there lies, and where it comes next.

Common practice of the trade, written from memory, no published source: carts run as in ``model.track.carts``.
Plain runs lie alike in every order and are passed in one step.
"""

from __future__ import annotations

from typing import Final

from model.clauses import Clauses, Statement
from model.grid import Heading
from model.ordering.ground import Ground
from model.ordering.wiring import IDLE, Wiring
from model.plan import Plan
from model.routing.control import WantedRoute, wanted_routes
from model.track.carts import WAY_OUT, exits_of, next_rail
from model.track.rails import STEP, pack
from model.track.shapes import Shape

State = tuple[int, Heading]
"""The packed cell and the heading of a cart as it comes into it."""
Goal = State | str | None
"""A state on a relevant rail, the arm by which the cart leaves, or ``None`` for any other end of its way."""
NOWHERE: Final = None


class Ways:
    """The sentences about the carts of the wanted routes."""

    def __init__(self, clauses: Clauses, ground: Ground, wiring: Wiring) -> None:
        plan = ground.plan
        self._clauses = clauses
        self._ground = ground
        self._wiring = wiring
        self._exits = exits_of(plan.arms)
        self._relevant = frozenset(ground.relevant)
        self.wanted = wanted_routes(plan.routes)
        self.readers = readers_of(plan)
        self._stands: dict[WantedRoute, dict[State, Statement]] = {}
        for route in self.wanted:
            self._say_route(route)

    def setting(self, route: WantedRoute) -> int:
        """The setting in which a route runs."""
        return self.readers.index(route.start) if route.called else IDLE

    def forbid_circles(self) -> bool:
        """Says of each circle in which a cart was found to go that no cart may; whether one did."""
        circles = [circle for route in self.wanted if (circle := self._circle(route))]
        for circle in circles:
            for route in self.wanted:
                self._forbid(route, circle)
        return bool(circles)

    def _say_route(self, route: WantedRoute) -> None:
        clauses = self._clauses
        arm = self._ground.plan.details.arm(route.start)
        if arm is None or arm.enter is None or pack(arm.enter.at) not in self._ground.layout.rails:
            clauses.say(clauses.false)
            return
        stands = self._stands[route] = {}
        start = self._onward((pack(arm.enter.at), arm.enter.heading))
        waiting = [start]
        self._say_goal(route, [], start)
        while waiting:
            at = waiting.pop()
            if at is None or isinstance(at, str) or at in stands:
                continue
            stands[at] = clauses.true if at == start else clauses.new()
            waiting += self._following(at).values()
        for at, stands_there in stands.items():
            shapes = self._wiring.shapes(at[0], self.setting(route))
            for shape, beyond in self._following(at).items():
                self._say_goal(route, [stands_there, shapes[shape]], beyond)

    def _say_goal(self, route: WantedRoute, given: list[Statement], goal: Goal) -> None:
        if goal is None or isinstance(goal, str):
            if goal != route.goal:
                self._clauses.say_if(given)
        elif given:
            self._clauses.say_if(given, self._stands[route][goal])

    def _following(self, at: State) -> dict[Shape, Goal]:
        key, heading = at
        return {shape: self._beyond(key, shape, heading) for shape in self._wiring.shapes(key, IDLE)}

    def _beyond(self, key: int, shape: Shape, heading: Heading) -> Goal:
        """Where a cart comes after a relevant rail that lies so."""
        return self._onward(self._step(key, shape, heading))

    def _onward(self, goal: Goal) -> Goal:
        """Over plain runs to the next relevant rail, or to the end."""
        seen: set[State] = set()
        while goal is not None and not isinstance(goal, str) and goal[0] not in self._relevant:
            if goal in seen:
                return NOWHERE
            seen.add(goal)
            key, heading = goal
            goal = self._step(key, self._ground.layout.rails[key], heading)
        return goal

    def _step(self, key: int, shape: Shape, heading: Heading) -> Goal:
        end = WAY_OUT[shape][heading]
        if key + STEP[end.heading] + end.rise in self._ground.layout.stoppers:
            return NOWHERE
        arm = self._exits.get((key, end.heading))
        if arm is not None:
            return arm
        following = next_rail(self._ground.layout.rails, key, end)
        return NOWHERE if following is None else (following, end.heading)

    def _circle(self, route: WantedRoute) -> list[tuple[State, Shape]]:
        """The states of a route that comes to one of them twice, and how the rails lie there."""
        arm = self._ground.plan.details.arm(route.start)
        assert arm is not None
        assert arm.enter is not None
        at = self._onward((pack(arm.enter.at), arm.enter.heading))
        passed: dict[State, Shape] = {}
        while at is not None and not isinstance(at, str):
            if at in passed:
                return list(passed.items())[list(passed).index(at) :]
            shapes = self._wiring.shapes(at[0], self.setting(route))
            passed[at] = next(shape for shape, holds in shapes.items() if self._clauses.holds(holds))
            at = self._beyond(at[0], passed[at], at[1])
        return []

    def _forbid(self, route: WantedRoute, circle: list[tuple[State, Shape]]) -> None:
        """No cart of the route comes into the circle."""
        stands = self._stands[route]
        setting = self.setting(route)
        if circle[0][0] in stands:
            lies = [self._wiring.shapes(at[0], setting)[shape] for at, shape in circle]
            self._clauses.say(-stands[circle[0][0]], *(-holds for holds in lies))


def readers_of(plan: Plan) -> list[str]:
    """The arms with a reader, sorted."""
    return sorted({route.start for route in wanted_routes(plan.routes) if route.called})
