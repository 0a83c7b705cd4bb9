"""A name that several arms bear."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from model.grid import Cell
from model.plan import Plan
from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """A name must stand for one arm.

    Bad::

        level 64 on blocks
        │·│
        arm Quay: in 0 64 0 south
        arm Quay: in 2 64 0 south

    Good::

        level 64 on blocks
        │·│
        arm Quay: in 0 64 0 south
        arm Mill: in 2 64 0 south
    """
    plan = junction.plan
    for name, times in Counter(arm.name for arm in plan.arms).items():
        if times > 1:
            yield Found(
                tr("{times} arms are called {name}.", times=times, name=name), _cells(plan, name), (name,)
            )


def _cells(plan: Plan, name: str) -> tuple[Cell, ...]:
    ends = (end for arm in plan.arms if arm.name == name for end in (arm.enter, arm.leave))
    return tuple(dict.fromkeys(end.at for end in ends if end is not None))


RULE = Rule(
    id="name-doubled",
    severity=Severity.ERROR,
    title="A name stands twice",
    why="Routes name arms, so two of one name cannot be told apart, and only the first is looked at.",
    remedy="Give each arm a name of its own.",
    find=find,
    asks_details=True,
)
