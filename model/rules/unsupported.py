"""A piece that nothing carries."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from model.edits import EditRefused, add_blocks
from model.edits.words import part_word
from model.grid import Cell
from model.parts import CARRIERS
from model.pauses import with_pauses
from model.pieces import Piece, Pieces, rests_on
from model.plan import Change
from model.routing.junction import Junction
from model.rules.rule import Finding, Found, Nearby, Rule, Severity
from model.rules.words import listed, places
from model.track.around import neighbours
from model.track.layout import Layout
from model.wording import tr


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
    yield from _uncarried(junction.layout, junction.plan.pieces)


def _uncarried(layout: Layout, pieces: Iterable[Piece]) -> Iterator[Found]:
    for piece in with_pauses(pieces):
        missing = _missing(layout, piece)
        if missing:
            yield Found(_message(layout.plan.pieces, piece, missing), (piece.at,))


def _uncarried_at(layout: Layout, cells: Iterable[Cell]) -> Iterator[Found]:
    found = map(layout.plan.pieces.get, cells)
    return _uncarried(layout, (piece for piece in found if piece is not None))


def _resting_on(_layout: Layout, changed: frozenset[Cell]) -> set[Cell]:
    """A piece rests on a cell that it touches, and so does the raised end of a rail."""
    return {*changed, *(beside for cell in changed for beside in cell.six_beside())}


def fix(junction: Junction, finding: Finding) -> Change | None:
    """Solid blocks under the piece and under all in the air that hang together with it.

    ``None`` where something else stands in the place of a block, or a block would be out of reach.
    """
    pieces = junction.plan.pieces
    piece = pieces.get(finding.cells[0])
    if piece is None or any(cell in pieces for cell in _missing(junction.layout, piece)):
        return None
    stretch = _stretch_in_the_air(junction, piece)
    try:
        return add_blocks(
            junction.plan, (cell for other in stretch for cell in _missing(junction.layout, other))
        )
    except EditRefused:
        return None


def _stretch_in_the_air(junction: Junction, first: Piece) -> list[Piece]:
    """The uncarried pieces that can be reached from one through others, beside it or along a track."""
    stretch, seen = [first], {first.at}
    for piece in stretch:
        for cell in (*piece.at.six_beside(), *neighbours(junction.layout, piece.at).values()):
            other = junction.plan.pieces.get(cell)
            if other is not None and cell not in seen and _missing(junction.layout, other):
                seen.add(cell)
                stretch.append(other)
    return stretch


def _missing(layout: Layout, piece: Piece) -> list[Cell]:
    """The cells in which a carrying part is missing."""
    needed = [rests_on(piece)]
    shape = layout.shape(piece.at)
    if shape is not None and shape.rises_to is not None:
        needed.append(piece.at.step(shape.rises_to))
    part_at = layout.plan.pieces.part_at
    return [cell for cell in needed if cell is not None and part_at(cell) not in CARRIERS]


def _message(pieces: Pieces, piece: Piece, missing: list[Cell]) -> str:
    parts = [pieces.part_at(cell) for cell in missing]
    there = listed("nothing" if part is None else f"a {part_word(part)}" for part in parts)
    return tr(
        "The {part} at {place} is not carried: there is {there} at {places}.",
        part=part_word(piece.part),
        place=piece.at,
        there=there,
        places=places(missing),
    )


RULE = Rule(
    id="unsupported",
    severity=Severity.ERROR,
    title="Nothing carries it",
    why="A piece without something to stand or hang on cannot be placed, or drops later.",
    remedy="Put a block where the message says, or move the piece.",
    find=find,
    fix=fix,
    nearby=Nearby(_resting_on, _uncarried_at),
)
