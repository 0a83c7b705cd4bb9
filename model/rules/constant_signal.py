"""A switch that must be powered all the time."""

from __future__ import annotations

from collections.abc import Iterator

from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """Powered while no reader holds, and thrown by none.

    Bad::

        level 64 on blocks
        │·
        │─
        │·
        order
        ··
        1·
        ··
        arm Quay: in 0 64 2 north
        arm Mill: out 0 64 0 north
        route Quay: idle Mill

    Good::

        level 64 on blocks
        │·
        │─
        │·
        order
        ··
        1·
        ··
        arm Quay: in 0 64 2 north
        arm Fen: out 1 64 1 east
        route Quay: idle Fen
    """
    for switch in junction.switches:
        if switch.inverter and not switch.called_by:
            message = tr("{switch} must be powered all the time: no reader throws it.", switch=switch.name)
            yield Found(message, (switch.at,))


RULE = Rule(
    id="constant-signal",
    severity=Severity.WARNING,
    title="A switch that never changes needs a signal",
    why="The switch needs a source beside it for good, where a curve that cannot change would do.",
    remedy="Take the third arm away from the rail, or place the rails in another order.",
    find=find,
)
