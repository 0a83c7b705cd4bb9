"""A detector rail that is an arm of a three-way rail."""

from __future__ import annotations

from collections.abc import Iterator

from model.grid import Cell, Heading
from model.parts import Part
from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.track.around import neighbours
from model.track.switches import three_way


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
    for piece in junction.plan.pieces:
        if piece.part is Part.DETECTOR_RAIL:
            for rail in _three_way_rails_with_arm(junction, piece.at):
                message = (
                    f"The detector rail at {piece.at} throws the three-way rail at {rail} under every cart."
                )
                yield Found(message, (piece.at, rail))


def _three_way_rails_with_arm(junction: Junction, arm: Cell) -> Iterator[Cell]:
    """The three-way rails that have the rail in ``arm`` as the neighbour that counts in its direction."""
    layout = junction.layout
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
)
