"""A rail that a switch bends as it is thrown."""

from __future__ import annotations

from collections.abc import Iterator

from model.grid import Cell
from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.rules.words import holding, listed
from model.track.shapes import Shape
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """In a wanted setting a rail that is not wired changes shape on a wanted route.

    Or a wired switch does not lie as it does when it is powered or released alone.

    Bad::

        level 64 on blocks
        ·─│
        │─·
        ·─·
        order
        ·41
        35·
        ·2·
        arm Mill: in 2 64 0 west
        arm Quay: out 1 64 2 south
        arm Fen: out 0 64 1 west
        route Mill: idle Quay, called Fen

    Good::

        level 64 on blocks
        ·│
        ─│
        ·│
        order
        ··
        ·1
        ··
        arm Mill: in 1 64 0 south
        arm Quay: out 1 64 2 south
        arm Fen: out 0 64 1 west
        route Mill: idle Quay, called Fen
    """
    passed = {cell for way in junction.ways.values() for cell in way.path}
    bent: dict[tuple[Cell, Shape], list[str]] = {}
    for arm, powered in junction.settings.items():
        for cell, shape in _bent_in(junction, powered, passed):
            bent.setdefault((cell, shape), []).append(holding(arm))
    for (cell, shape), settings in bent.items():
        yield Found(
            tr(
                "The rail at {cell} is bent to {shape} {names}.",
                cell=cell,
                shape=tr(shape.word),
                names=listed(settings),
            ),
            (cell,),
        )


def _bent_in(junction: Junction, powered: frozenset[Cell], passed: set[Cell]) -> Iterator[tuple[Cell, Shape]]:
    """The rails that do not lie as they should in a setting, each with its shape there."""
    shapes = junction.shapes(powered)
    wired = junction.choice.wired
    for cell in sorted(wired | (shapes.changed.keys() & passed)):
        shape = shapes.get(cell)
        if shape is not None and shape is not _expected(junction, cell, powered):
            yield cell, shape


def _expected(junction: Junction, cell: Cell, powered: frozenset[Cell]) -> Shape | None:
    if cell not in junction.choice.wired:
        return junction.layout.shape(cell)
    states = junction.switch_states[cell]
    return states.powered if cell in powered else states.resting


RULE = Rule(
    id="throw-bends-rail",
    severity=Severity.WARNING,
    title="A throw bends another rail",
    why="The rail stays bent after the signal went, so the junction does not come back to what was built.",
    remedy="Keep a straight rail between the two, or place the rails in another order.",
    find=find,
)
