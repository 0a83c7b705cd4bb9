"""A wanted route that names an arm which is not there."""

from __future__ import annotations

from collections.abc import Iterator

from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.rules.words import listed
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """Each arm that a route names must be among the arms.

    Bad::

        level 64 on blocks
        │
        arm Quay: in 0 64 0 south
        route Quay: idle Mill

    Good::

        level 64 on blocks
        │
        arm Quay: in 0 64 0 south
        arm Mill: out 0 64 0 south
        route Quay: idle Mill
    """
    known = {arm.name for arm in junction.plan.arms}
    named_by: dict[str, list[str]] = {}
    for route in junction.plan.routes:
        for name in (route.start, route.idle, route.called):
            if name is not None and name not in known:
                named_by.setdefault(name, []).append(route.start)
    for name, starts in named_by.items():
        yield Found(
            tr(
                "The route from {names} names {name}, but no arm is called so.",
                names=listed(starts),
                name=name,
            ),
            (),
            (name,),
        )


RULE = Rule(
    id="unknown-arm",
    severity=Severity.ERROR,
    title="A route names an unknown arm",
    why="What is wanted cannot be worked out, so nothing is said of where these carts go.",
    remedy="Add the arm, or choose another one in the route.",
    find=find,
    asks_details=True,
)
