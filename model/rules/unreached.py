"""Rails that no wanted route passes."""

from __future__ import annotations

from collections.abc import Iterator

from model.grid import Cell
from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.rules.words import places
from model.track.around import neighbours
from model.wording import QT_TR_NOOP, tr


def find(junction: Junction) -> Iterator[Found]:
    """Each stretch of rails that no wanted route passes, with its rails in file order.

    Bad::

        level 64 on blocks
        ────
        ·│··
        arm Quay: in 0 64 0 east
        arm Mill: out 3 64 0 east
        route Quay: idle Mill

    Good::

        level 64 on blocks
        ────
        arm Quay: in 0 64 0 east
        arm Mill: out 3 64 0 east
        route Quay: idle Mill
    """
    passed = {cell for way in junction.ways.values() for cell in way.path}
    left = dict.fromkeys(cell for cell in junction.layout.shapes if cell not in passed)
    ranks = {cell: rank for rank, cell in enumerate(left)}
    while left:
        stretch = sorted(_taken_stretch(junction, left), key=ranks.__getitem__)
        text = (
            QT_TR_NOOP("No wanted route passes the rail at {places}.")
            if len(stretch) == 1
            else QT_TR_NOOP("No wanted route passes these {count:,} rails: {places}.")
        )
        yield Found(tr(text, count=len(stretch), places=places(stretch)), tuple(stretch))


def _taken_stretch(junction: Junction, left: dict[Cell, None]) -> list[Cell]:
    """Takes the first rail with all that are joined to it by neighbours out of ``left``."""
    first = next(iter(left))
    del left[first]
    stretch = [first]
    for cell in stretch:
        for other in neighbours(junction.layout, cell).values():
            if other in left:
                del left[other]
                stretch.append(other)
    return stretch


RULE = Rule(
    id="unreached",
    severity=Severity.NOTE,
    title="Rails that no wanted route passes",
    why="They cost material, and rails beside the route can bend it as they are placed.",
    remedy="Erase them, or add the route that they are meant for.",
    find=find,
)
