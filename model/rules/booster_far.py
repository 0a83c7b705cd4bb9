"""A long stretch of a wanted route without a booster."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import Final

from model.grid import Cell
from model.parts import Part
from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.rules.words import listed, route_name
from model.wording import tr

FARTHEST: Final = 30
"""Cells without a booster that a cart may run, at most."""


def find(junction: Junction) -> Iterator[Found]:
    """More than 30 cells of a wanted route on end without a booster rail.

    Bad::

        level 64 on blocks
        ───────────────────────────────
        arm Quay: in 0 64 0 east
        arm Mill: out 30 64 0 east
        route Quay: idle Mill

    Good::

        level 64 on blocks
        ───────────────═───────────────
        arm Quay: in 0 64 0 east
        arm Mill: out 30 64 0 east
        route Quay: idle Mill
    """
    named: dict[tuple[Cell, ...], list[str]] = {}
    for route, way in junction.ways.items():
        for stretch in _without_booster(junction, way.path):
            if len(stretch) > FARTHEST:
                named.setdefault(stretch, []).append(route_name(route))
    for stretch, names in named.items():
        message = tr(
            "{names}: {count} cells without a booster from {first} to {last}.",
            names=listed(names),
            count=len(stretch),
            first=stretch[0],
            last=stretch[-1],
        )
        yield Found(message, stretch)


def _without_booster(junction: Junction, path: tuple[Cell, ...]) -> Iterator[tuple[Cell, ...]]:
    part_at = junction.plan.pieces.part_at
    for boosted, stretch in groupby(path, lambda cell: part_at(cell) is Part.BOOSTER_RAIL):
        if not boosted:
            yield tuple(stretch)


RULE = Rule(
    id="booster-far",
    severity=Severity.WARNING,
    title="Too far without a booster",
    why="A cart loses speed on plain rail, and may come to a stand before it is through.",
    remedy="Put a booster rail with a signal into the stretch, where it is straight.",
    find=find,
)
