"""A booster rail that no signal can reach."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from model.grid import Cell, Facing
from model.parts import SIGNAL_PARTS, TRAITS, Part
from model.pieces import Piece, Pieces, rests_on
from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.signals.dust import links
from model.track.around import linked_rails

REACH: Final = 8
"""Boosters to which a run of boosters passes a signal on, each way."""


def find(junction: Junction) -> Iterator[Found]:
    """No signal part beside it or on a block that it touches, and none within 8 boosters along its run.

    A part that powers such a block from below or from the side counts as one on it.

    Bad::

        level 64 on blocks
        ─═─

    Good::

        level 64 on blocks
        ─═─
        ·T·
    """
    pieces = junction.plan.pieces
    boosters = [piece.at for piece in pieces if piece.part is Part.BOOSTER_RAIL]
    reached = _along_runs(junction, [cell for cell in boosters if _is_beside_signal(pieces, cell)])
    for cell in boosters:
        if cell not in reached:
            yield Found(f"The booster rail at {cell} gets no signal and brakes every cart.", (cell,))


def _along_runs(junction: Junction, sources: list[Cell]) -> set[Cell]:
    """The boosters with a signal of their own and those to which it is passed on."""
    reached, edge = set(sources), sources
    for _ in range(REACH):
        edge = [
            other
            for cell in edge
            for other in linked_rails(junction.layout, cell)
            if other not in reached and junction.plan.pieces.part_at(other) is Part.BOOSTER_RAIL
        ]
        reached.update(edge)
    return reached


def _is_beside_signal(pieces: Pieces, rail: Cell) -> bool:
    for beside in rail.six_beside():
        piece = pieces.get(beside)
        if piece is not None and (piece.part in SIGNAL_PARTS or _may_be_powered(pieces, piece)):
            return True
    return False


def _may_be_powered(pieces: Pieces, block: Piece) -> bool:
    if not TRAITS[block.part].solid:
        return False
    around = (pieces.get(cell) for cell in block.at.six_beside())
    return any(piece is not None and _gives_to(pieces, piece, block.at) for piece in around)


def _gives_to(pieces: Pieces, piece: Piece, block: Cell) -> bool:
    """Whether a part beside a solid block stands on it, hangs from it, or may power it."""
    match piece.part:
        case Part.REPEATER | Part.COMPARATOR:
            return block in (rests_on(piece), piece.at.beside(piece.facing))
        case Part.TORCH:
            return block in (rests_on(piece), piece.at.beside(Facing.UP))
        case Part.DUST:
            points_into = (piece.at.step(side) for side in links(pieces, piece.at))
            return block == rests_on(piece) or block in points_into
        case _:
            return piece.part in SIGNAL_PARTS and rests_on(piece) == block


RULE = Rule(
    id="booster-unpowered",
    severity=Severity.WARNING,
    title="A booster rail without a signal",
    why="A booster rail without a signal holds the cart instead of driving it.",
    remedy="Set a torch, a lever or a line beside it or on the block that it lies on.",
    find=find,
)
