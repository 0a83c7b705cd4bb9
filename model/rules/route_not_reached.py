"""A wanted route that its carts do not take."""

from __future__ import annotations

from collections.abc import Iterator

from model.grid import Cell
from model.routing.control import WantedRoute
from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.rules.words import arm_names, cart_name, ending
from model.track.carts import Outcome
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """Every wanted route whose carts do not leave by the wanted arm in the shown choice.

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
    for route in dict.fromkeys(junction.wanted):
        if not junction.reaches(route):
            yield Found(_message(junction, route), _place(junction, route), arm_names([route]))


def _message(junction: Junction, route: WantedRoute) -> str:
    way = junction.ways.get(route)
    if way is None:
        return tr(
            "{cart} cannot come in, so it does not reach {goal}.", cart=cart_name(route), goal=route.goal
        )
    told = tr(
        "{cart} {ending} instead of leaving by {goal}.",
        cart=cart_name(route),
        ending=ending(way),
        goal=route.goal,
    )
    if _reached_at_rest(junction, route):
        return tr("{told} It would get there if the switches lay as they rest, not as built.", told=told)
    return told


def _reached_at_rest(junction: Junction, route: WantedRoute) -> bool:
    """Whether the cart would get there once every switch was powered and released."""
    arm = junction.plan.details.arm(route.start)
    assert arm is not None
    way = junction.way_of(arm, frozenset(), frozenset(junction.switch_states))
    return way.outcome is Outcome.ARM and way.arm == route.goal


def _place(junction: Junction, route: WantedRoute) -> tuple[Cell, ...]:
    arm = junction.plan.details.arm(route.start)
    return () if arm is None or arm.enter is None else (arm.enter.at,)


RULE = Rule(
    id="route-not-reached",
    severity=Severity.ERROR,
    title="A wanted route is not reached",
    why="With this track no cart gets from the one arm to the other as wanted.",
    remedy="Follow the route with the test cart and mend the track where it goes wrong.",
    find=find,
)
