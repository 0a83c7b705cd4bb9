"""A wanted route that needs another shape of a rail with four neighbours."""

from __future__ import annotations

from collections.abc import Iterator

from model.parts import Part
from model.routing.junction import Junction
from model.rules.bends import routes_by_bend
from model.rules.rule import Found, Rule, Severity
from model.rules.words import listed, route_name
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """A rail with four neighbours stays as it was built, whatever signal it gets.

    Bad::

        level 64 on blocks
        ·│·
        ───
        ·│·
        arm Quay: in 0 64 1 east
        arm Mill: out 1 64 0 north
        arm Fen: out 2 64 1 east
        route Quay: idle Mill, called Fen

    Good::

        level 64 on blocks
        ·│·
        ──·
        ·│·
        arm Quay: in 0 64 1 east
        arm Mill: out 1 64 0 north
        arm Fen: out 1 64 2 south
        route Quay: idle Mill, called Fen
    """
    for cell, routes in routes_by_bend(junction).items():
        if junction.plan.pieces.part_at(cell) is Part.RAIL:
            names = listed(map(route_name, routes))
            yield Found(
                tr(
                    "{names} would need another shape of the rail at {cell}, which has four neighbours.",
                    names=names,
                    cell=cell,
                ),
                (cell,),
            )


RULE = Rule(
    id="four-way",
    severity=Severity.WARNING,
    title="A four-way rail cannot be thrown",
    why="With four neighbours a rail takes no notice of signals and always lies as it was built.",
    remedy="Move one of the four arms away by a cell, so that three neighbours are left.",
    find=find,
)
