"""What gives its signal to which cells, and which solid block it powers strongly.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from model.grid import FACING_OF, Cell, Facing
from model.parts import Part
from model.pieces import Piece, Pieces, rests_on
from model.signals.dust import links

FORWARD_ONLY: Final = frozenset({Part.REPEATER, Part.COMPARATOR})
SOURCES: Final = frozenset({Part.TORCH, Part.LEVER, Part.BUTTON, Part.DETECTOR_RAIL, *FORWARD_ONLY})
"""Parts with an output of their own."""
GIVERS: Final = SOURCES | {Part.DUST}


def gives_to(piece: Piece, pieces: Pieces) -> Iterator[Cell]:
    """The cells to which a part gives its signal; none for a part that gives nothing.

    A torch gives to every cell beside it but its own block; a lever, a button and a detector rail to all six;
    a repeater and a comparator to the cell in front; dust to the cell under it and to those it points into. A
    solid block in a cell to which dust gives is powered weakly.
    """
    at = piece.at
    if piece.part is Part.DUST:
        yield at.beside(Facing.DOWN)
        for side in sorted(links(pieces, at)):
            yield at.beside(FACING_OF[side])
    elif piece.part in FORWARD_ONLY:
        yield at.beside(piece.facing)
    elif piece.part in SOURCES:
        own = rests_on(piece) if piece.part is Part.TORCH else None
        yield from (cell for cell in at.six_beside() if cell != own)


def powers_strongly(piece: Piece) -> Cell | None:
    """The cell in which a part powers a solid block strongly; ``None`` for dust and what gives nothing.

    It is the block over a torch, in front of a repeater or comparator, and the one that holds a lever, a
    button or a detector rail.
    """
    if piece.part not in SOURCES:
        return None
    if piece.part in FORWARD_ONLY:
        return piece.at.beside(piece.facing)
    return piece.at.beside(Facing.UP) if piece.part is Part.TORCH else rests_on(piece)
