"""Rails that lie one way or the other, depending on which signal changes first."""

from __future__ import annotations

from collections.abc import Iterator

from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.rules.words import places
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """No choice serves for sure, and in the one shown the order of the power changes matters.

    Bad::

        level 64 on blocks
        ·│·
        ·││
        │││
        order
        ·6·
        ·43
        152
        arm Quay: out 1 64 0 north
        arm Mill: in 0 64 2 north
        arm Fen: in 2 64 2 north
        route Fen: idle Quay
        route Mill: idle Quay

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
        route Quay: idle Mill, called Fen
    """
    if junction.control.serves:  # then the order does not matter in any setting
        return
    cells = junction.order_dependent
    if cells:
        message = tr(
            "How these rails lie depends on the order in which the signals change: {places}.",
            places=places(cells),
        )
        yield Found(message, cells)


RULE = Rule(
    id="order-dependent",
    severity=Severity.ERROR,
    title="The order of the signals matters",
    why="Signals that change in one tick come in no certain order, so a cart may go either way.",
    remedy="Put a rail between switches that touch, so that one does not bend the other.",
    find=find,
)
