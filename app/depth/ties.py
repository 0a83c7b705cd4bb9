"""What hangs together from level to level: a rail and what drives or reads it from below. No Qt here."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final, NamedTuple

from model.grid import Cell, Facing
from model.parts import CARRIERS, RAILS, SIGNAL_PARTS, TRAITS, Part
from model.pieces import Piece, Pieces

WORKS: Final = (SIGNAL_PARTS - RAILS) | {part for part, traits in TRAITS.items() if traits.slots}
"""Parts that give or take a signal or an item."""
DRIVEN: Final = frozenset({Part.BOOSTER_RAIL, Part.DETECTOR_RAIL})
"""Rails that take or give a signal; so does a switch, which only its neighbours tell from other rails."""


class Tie(NamedTuple):
    """Two pieces, one above the other, that work on each other."""

    low: Cell
    high: Cell


def ties(pieces: Iterable[Piece], plan: Pieces, switches: Iterable[Cell]) -> Iterator[Tie]:
    """The ties of some pieces of a plan to what stands below them; of standing torches to what is above.

    A rail that takes or gives a signal is tied to the part that works on it: right below it, or below the one
    block that carries it. Any rail is tied to the hopper below it.
    """
    driven = frozenset(switches)
    for piece in pieces:
        if piece.part in RAILS:
            tie = _below(piece.at, plan, piece.part in DRIVEN or piece.at in driven)
            if tie is not None:
                yield tie
        elif piece.part is Part.TORCH and piece.facing is Facing.UP:
            tie = _above(piece.at, plan)
            if tie is not None:
                yield tie


def _below(rail: Cell, plan: Pieces, is_driven: bool) -> Tie | None:
    under = rail.moved(dy=-1)
    part = plan.part_at(under)
    if part is Part.HOPPER or (is_driven and part in WORKS):
        return Tie(under, rail)
    deeper = under.moved(dy=-1)
    if is_driven and part in CARRIERS and plan.part_at(deeper) in WORKS:
        return Tie(deeper, rail)
    return None


def _above(torch: Cell, plan: Pieces) -> Tie | None:
    """A torch powers the solid block over it, and so what stands on that."""
    block = torch.moved(dy=1)
    over = block.moved(dy=1)
    part = plan.part_at(block)
    if part is None or not TRAITS[part].solid:
        return None
    works = plan.part_at(over)
    return Tie(torch, over) if works in WORKS else None
