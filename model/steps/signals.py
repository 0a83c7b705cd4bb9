"""Which rails a signal part must wait for: those that it would power, or give notice, while they are laid.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Iterator

from model.grid import Cell, Facing
from model.parts import CARRIERS, RAILS, TRAITS, Part
from model.pieces import Piece, Pieces, rests_on
from model.signals.dust import links
from model.track.layout import SEEN_FROM, Layout
from model.track.rails import pack, unpack
from model.track.switches import three_way


def rails_touched(pieces: Pieces, piece: Piece) -> Iterator[Cell]:
    """The rails that a signal part gives its signal or notice, some of them more than once.

    They stand beside it, or touch a block that it powers, stands on or hangs from.
    """
    near = [piece.at, *(cell for cell in _bears_on(pieces, piece) if pieces.part_at(cell) in CARRIERS)]
    for cell in near:
        yield from (beside for beside in cell.six_beside() if pieces.part_at(beside) in RAILS)


def _bears_on(pieces: Pieces, piece: Piece) -> Iterator[Cell]:
    """The cells of the blocks that a signal part powers, stands on or hangs from."""
    support = rests_on(piece)
    if support is not None:
        yield support
    if piece.part is Part.TORCH:
        yield from _solid(pieces, piece.at.beside(Facing.UP))
    elif piece.part in (Part.REPEATER, Part.COMPARATOR):
        yield from _solid(pieces, piece.at.beside(piece.facing))
    elif piece.part is Part.DUST:
        for side in links(pieces, piece.at):
            yield from _solid(pieces, piece.at.step(side))


def _solid(pieces: Pieces, cell: Cell) -> Iterator[Cell]:
    part = pieces.part_at(cell)
    if part is not None and TRAITS[part].solid:
        yield cell


def rails_before(layout: Layout, piece: Piece) -> Iterator[Cell]:
    """The rails that must lie before a signal part is placed, some of them more than once.

    A three-way rail would turn as the part gives notice, and rails laid within sight of it after that might
    find it otherwise than the plan has it; so these come first too.
    """
    for cell in rails_touched(layout.plan.pieces, piece):
        yield cell
        if three_way(layout, cell):
            near = (pack(cell) + offset for offset in SEEN_FROM)
            yield from (unpack(key) for key in near if key in layout.rails)
