"""An arm with its in on the wrong side of its out."""

from __future__ import annotations

from collections.abc import Iterator

from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """Seen along the heading in which carts come in, the in lies on the running side of the out.

    Bad::

        level 64 on blocks
        │·│
        arm Quay: in 0 64 0 south, out 2 64 0 north
        running side left

    Good::

        level 64 on blocks
        │·│
        arm Quay: in 2 64 0 south, out 0 64 0 north
        running side left
    """
    side = junction.plan.details.running_side
    if side is None:
        return
    for arm in junction.plan.arms:
        enter, leave = arm.enter, arm.leave
        if enter and leave and enter.at != leave.at and arm.side is not side:
            yield Found(
                tr("Carts on {arm} do not run on the {side}.", arm=arm.name, side=tr(side)),
                (enter.at,),
                (arm.name,),
            )


RULE = Rule(
    id="running-side",
    severity=Severity.WARNING,
    title="An arm runs on the wrong side",
    why="The arm does not fit the line that it is to be joined to, and carts would meet head-on.",
    remedy="Change over the in and the out of the arm, or set the running side of the plan.",
    find=find,
    asks_details=True,
)
