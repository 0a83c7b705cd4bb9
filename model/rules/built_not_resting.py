"""A wired switch that is built otherwise than it rests."""

from __future__ import annotations

from collections.abc import Iterator

from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """The shape as built differs from the one after the first power cycle.

    Bad::

        level 64 on blocks
        │·
        │─
        │·
        arm Quay: in 0 64 2 north
        arm Mill: out 0 64 0 north
        arm Fen: out 1 64 1 east
        route Quay: idle Fen, called Mill

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
        arm Mill: out 0 64 0 north
        arm Fen: out 1 64 1 east
        route Quay: idle Fen, called Mill
    """
    wired = junction.choice.wired
    for switch in junction.switches:
        built = junction.layout.shape(switch.at)
        if switch.at in wired and built is not None and built is not switch.resting:
            message = tr(
                "{switch} is built {built} and rests {resting} once it was powered.",
                switch=switch.name,
                built=tr(built.word),
                resting=tr(switch.resting.word),
            )
            yield Found(message, (switch.at,))


RULE = Rule(
    id="built-not-resting",
    severity=Severity.NOTE,
    title="Built otherwise than it rests",
    why="Until the switch was powered once, carts go another way than later.",
    remedy="Power the switch once after building, or place the rails in another order.",
    find=find,
)
