"""A piece that nothing carries."""

from __future__ import annotations

from collections.abc import Iterator

from model.edits import EditRefused, add_blocks
from model.edits.words import part_word
from model.grid import Cell
from model.parts import CARRIERS
from model.pieces import Piece, rests_on
from model.plan import Change
from model.routing.junction import Junction
from model.rules.rule import Finding, Found, Rule, Severity
from model.rules.words import listed, places


def find(junction: Junction) -> Iterator[Found]:
    """Rails, dust, repeaters, comparators and what stands need a carrying part below.

    What hangs needs one at its back. A rising rail needs a second one under its raised end, in the next
    column at its own level.

    Bad::

        level 64
        ──

    Good::

        level 63
        ##
        level 64
        ──
    """
    for piece in junction.plan.pieces:
        missing = _missing(junction, piece)
        if missing:
            yield Found(_message(junction, piece, missing), (piece.at,))


def fix(junction: Junction, finding: Finding) -> Change | None:
    """Solid blocks where carrying parts are missing; ``None`` where a cell is taken or out of reach."""
    piece = junction.plan.pieces.get(finding.cells[0])
    missing = [] if piece is None else _missing(junction, piece)
    if not missing or any(cell in junction.plan.pieces for cell in missing):
        return None
    try:
        return add_blocks(junction.plan, missing)
    except EditRefused:
        return None


def _missing(junction: Junction, piece: Piece) -> list[Cell]:
    """The cells in which a carrying part is missing."""
    needed = [rests_on(piece)]
    shape = junction.layout.shape(piece.at)
    if shape is not None and shape.rises_to is not None:
        needed.append(piece.at.step(shape.rises_to))
    part_at = junction.plan.pieces.part_at
    return [cell for cell in needed if cell is not None and part_at(cell) not in CARRIERS]


def _message(junction: Junction, piece: Piece, missing: list[Cell]) -> str:
    parts = [junction.plan.pieces.part_at(cell) for cell in missing]
    there = listed("nothing" if part is None else f"a {part_word(part)}" for part in parts)
    return f"The {part_word(piece.part)} at {piece.at} is not carried: there is {there} at {places(missing)}."


RULE = Rule(
    id="unsupported",
    severity=Severity.ERROR,
    title="Nothing carries it",
    why="A piece without something to stand or hang on cannot be placed, or drops later.",
    remedy="Put a block where the message says, or move the piece.",
    find=find,
    fix=fix,
)
