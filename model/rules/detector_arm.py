"""A detector rail that is an arm of a three-way rail."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from model.grid import Cell, Heading
from model.parts import Part
from model.routing.junction import Junction
from model.rules.rule import Found, Nearby, Rule, Severity
from model.track.around import neighbours
from model.track.layout import Layout
from model.track.switches import three_way
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """A detector rail is a signal part: it throws the rail beside it whenever a cart passes.

    Bad::

        level 64 on blocks
        ·│·
        ·│┄
        ·│·

    Good::

        level 64 on blocks
        ·│··
        ·│─┄
        ·│··
    """
    detectors = (piece.at for piece in junction.plan.pieces if piece.part is Part.DETECTOR_RAIL)
    yield from _thrown_by(junction.layout, detectors)


def _thrown_at(layout: Layout, cells: Iterable[Cell]) -> Iterator[Found]:
    part_at = layout.plan.pieces.part_at
    return _thrown_by(layout, (cell for cell in cells if part_at(cell) is Part.DETECTOR_RAIL))


def _thrown_by(layout: Layout, detectors: Iterable[Cell]) -> Iterator[Found]:
    for detector in detectors:
        for rail in _three_way_rails_with_arm(layout, detector):
            message = tr(
                "The detector rail at {detector} throws the three-way rail at {rail} under every cart.",
                detector=detector,
                rail=rail,
            )
            yield Found(message, (detector, rail))


def _two_rails_off(layout: Layout, changed: frozenset[Cell]) -> set[Cell]:
    """Whether a rail is three-way hangs on the rails beside it, and the detector is one of these."""
    if not layout.straight_only:
        return {*changed}
    return {cell.moved(dx, dy, dz) for cell in changed for dx, dz in _COLUMNS for dy in range(-2, 3)}


_COLUMNS: Final = tuple((x, z) for x in range(-2, 3) for z in range(-2, 3) if abs(x) + abs(z) <= 2)


def _three_way_rails_with_arm(layout: Layout, arm: Cell) -> Iterator[Cell]:
    """The three-way rails that have the rail in ``arm`` as the neighbour that counts in its direction."""
    for heading in Heading:
        for rise in (0, 1, -1):
            rail = arm.step(heading, rise)
            if three_way(layout, rail) and neighbours(layout, rail).get(heading.opposite) == arm:
                yield rail


RULE = Rule(
    id="detector-arm",
    severity=Severity.WARNING,
    title="A detector rail beside a three-way rail",
    why="Each cart on the detector rail powers the three-way rail and may turn it under the train.",
    remedy="Put a plain rail between the two.",
    find=find,
    nearby=Nearby(_two_rails_off, _thrown_at),
)
