"""An arm whose way in or out lies where no rail is."""

from __future__ import annotations

from collections.abc import Iterator

from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.rules.words import listed, places
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """Carts come in on a rail, and leave from one.

    Bad::

        level 64 on blocks
        │
        arm Quay: in 0 64 1 north

    Good::

        level 64 on blocks
        │
        arm Quay: in 0 64 0 north
    """
    for arm in junction.plan.arms:
        ends = (("in", arm.enter), ("out", arm.leave))
        off = {word: end.at for word, end in ends if end and junction.layout.shape(end.at) is None}
        if off:
            cells = tuple(dict.fromkeys(off.values()))
            message = tr(
                "The {names} of {arm} is not on a rail: none lies at {places}.",
                names=listed(off),
                arm=arm.name,
                places=places(cells),
            )
            yield Found(message, cells, (arm.name,))


RULE = Rule(
    id="arm-off-track",
    severity=Severity.ERROR,
    title="An arm is off the track",
    why="No cart can come in or go out where there is no rail, so no route by this arm can be worked out.",
    remedy="Lay the missing rail, or drag the arm to the end of the track.",
    find=find,
    asks_details=True,
)
