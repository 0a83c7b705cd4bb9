"""The blocks under a line that serve nothing else, so that they can go with it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from model.grid import Cell
from model.parts import Part
from model.pieces import Pieces, rests_on
from model.wiring.lines.coupling import disturbed_without
from model.wiring.lines.lines import FoundLine

SUPPORTS: Final = frozenset({Part.SOLID_BLOCK, Part.GLASS, Part.SLAB})
"""Parts that do nothing but carry; a target block or a lamp is there for more."""


def own_supports(pieces: Pieces, line: FoundLine) -> frozenset[Cell]:
    """The cells of the blocks under a line's dust and repeaters that only the line needs.

    Nothing else stands or hangs on them, the line powers nothing through them, and no other part would look
    at something else without them: a block may keep two dusts apart.
    """
    own = line.cells
    powered = {end.at for end in line.ends}
    candidates = {
        cell for cell in _under(pieces, own) if cell not in powered and not _holds_others(pieces, cell, own)
    }
    without_line = _without(pieces, own)
    if not disturbed_without(without_line, candidates):
        return frozenset(candidates)
    return frozenset(_one_by_one(without_line, candidates))


def _under(pieces: Pieces, own: frozenset[Cell]) -> Iterator[Cell]:
    for cell in own:
        piece = pieces.get(cell)
        holder = None if piece is None else rests_on(piece)
        if holder is not None and pieces.part_at(holder) in SUPPORTS:
            yield holder


def _holds_others(pieces: Pieces, cell: Cell, own: frozenset[Cell]) -> bool:
    """Whether anything but the line stands or hangs on a block."""
    for beside in cell.six_beside():
        piece = pieces.get(beside)
        if piece is not None and beside not in own and rests_on(piece) == cell:
            return True
    return False


def _one_by_one(pieces: Pieces, candidates: set[Cell]) -> Iterator[Cell]:
    """Takes those away that nothing misses, while the others stay."""
    for cell in sorted(candidates):
        if not disturbed_without(pieces, {cell}):
            pieces = _without(pieces, {cell})
            yield cell


def _without(pieces: Pieces, cells: frozenset[Cell] | set[Cell]) -> Pieces:
    taken = [placed for cell in cells if (placed := pieces.placed(cell)) is not None]
    return pieces.replaced(taken, ())
