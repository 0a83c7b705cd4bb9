"""The names of arms in depth: one for each arm, beyond the ends of its track."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from app.canvas.symbols.lettering import printable
from app.depth.picture import Name
from model.grid import VECTORS
from model.plan import Arm

BEYOND: Final = 1.4
"""From the end of the track to the middle of the name, in cells."""
LONGEST: Final = 20
"""Characters, of a name that is not cut."""


def names_of(arms: Iterable[Arm], level: int) -> Iterator[Name]:
    """The names of the arms that end on a level, each in the middle between its ends."""
    for arm in arms:
        ends = [(arm.enter, -1)] if arm.enter is not None else []
        ends += [(arm.leave, 1)] if arm.leave is not None else []
        points = []
        for end, sign in ends:
            if end.at.y == level:
                dx, dz = VECTORS[end.heading]
                out = sign * (0.5 + BEYOND)
                points.append((end.at.x + 0.5 + dx * out, end.at.z + 0.5 + dz * out))
        if points:
            x, z = (sum(along) / len(points) for along in zip(*points, strict=True))
            yield Name(x, z, _cut(printable(arm.name)))


def _cut(name: str) -> str:
    return name if len(name) <= LONGEST else f"{name[: LONGEST - 1].rstrip()}…"
