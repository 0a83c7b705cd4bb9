"""A booster or detector rail where a wanted route bends."""

from __future__ import annotations

from collections.abc import Iterator

from model.edits.words import part_word
from model.parts import Part
from model.routing.junction import Junction
from model.rules.bends import routes_by_bend
from model.rules.rule import Found, Rule, Severity
from model.rules.words import listed, route_name
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """Booster and detector rails are always straight.

    Bad::

        level 64 on blocks
        ─═
        ·│
        arm Quay: in 0 64 0 east
        arm Mill: out 1 64 1 south
        route Quay: idle Mill

    Good::

        level 64 on blocks
        ──
        ·║
        arm Quay: in 0 64 0 east
        arm Mill: out 1 64 1 south
        route Quay: idle Mill
    """
    for cell, routes in routes_by_bend(junction).items():
        part = junction.plan.pieces.part_at(cell)
        if part is not None and part is not Part.RAIL:
            names = listed(map(route_name, routes))
            yield Found(
                tr(
                    "{names} bends at {cell}, where a {part} lies.",
                    names=names,
                    cell=cell,
                    part=part_word(part),
                ),
                (cell,),
            )


RULE = Rule(
    id="cannot-curve",
    severity=Severity.WARNING,
    title="A straight part where the route bends",
    why="Booster and detector rails never lie in a curve, so the cart does not turn there.",
    remedy="Put a plain rail there, and the booster or detector rail on a straight cell of the route.",
    find=find,
)
