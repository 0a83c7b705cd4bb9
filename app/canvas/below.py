"""What of the level below is drawn under a level, on screen and on paper."""

from __future__ import annotations

from model.parts import CARRIERS
from model.pieces import Piece, Pieces


def is_seen_from_above(pieces: Pieces, piece: Piece) -> bool:
    """Whether a piece shows under the next level: a part that carries what stands on it is hidden by it."""
    return piece.part not in CARRIERS or piece.at.moved(dy=1) not in pieces
