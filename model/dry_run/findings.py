"""What a dry run finds wrong with the wiring, the readers and the holds.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum

from msgspec import Struct

from model.dry_run.circuit import Circuit
from model.grid import Cell, Facing
from model.parts import RAILS, STACK, TRAITS, Part
from model.pieces import WAYBILL, Piece, Pieces
from model.signals.containers import STRONGEST, reading, slots
from model.wording import tr


class Trouble(StrEnum):
    """What is wrong."""

    DUST_OUT_OF_REACH = "dust-out-of-reach"
    LINES_TOUCH = "lines-touch"
    BLOCK_FROM_TWO_LINES = "block-from-two-lines"
    TORCH_BURNS_OUT = "torch-burns-out"
    NEVER_SETTLES = "never-settles"
    READER_COUNT = "reader-count"
    HOLD_TOO_SHORT = "hold-too-short"


class RunFinding(Struct, frozen=True):
    """Something wrong, with its cells, the most telling first, and the first tick in which it showed."""

    trouble: Trouble
    cells: tuple[Cell, ...]
    tick: int
    message: str


def most_below(strength: int, stack: int = STACK) -> int:
    """The most items with which a hopper still reads less than a strength, of items that stack so high."""
    places = TRAITS[Part.HOPPER].slots
    return -(-(strength - 1) * stack * places // (STRONGEST - 1)) - 1


def wrong_readers(pieces: Pieces, circuit: Circuit) -> Iterator[RunFinding]:
    """Readers that do not hold 22 of their waybill: one with more reads 2 at once, one with fewer too late.

    A reader is a hopper under a rail, with one waybill in all its slots, that a comparator looks at.
    """
    right, of_16 = most_below(2), most_below(2, 16)
    for cell, node in circuit.readings.items():
        piece = pieces.get(cell)
        if piece is None or not node.outs or not _is_reader(pieces, piece):
            continue
        count = sum(held.count for held in slots(piece))
        if count != right:
            said = tr(
                "The reader at {cell} holds {count} and reads {reading}. It must hold {right}: then "
                "it reads 1, and 2 with one more. Of items that stack to 16 it must hold {of_16}.",
                cell=cell,
                count=count,
                reading=reading(piece),
                right=right,
                of_16=of_16,
            )
            yield RunFinding(Trouble.READER_COUNT, (cell,), 0, said)


def _is_reader(pieces: Pieces, piece: Piece) -> bool:
    if piece.part is not Part.HOPPER or pieces.part_at(piece.at.beside(Facing.UP)) not in RAILS:
        return False
    filled = slots(piece)
    item = filled[0].item if filled else ""
    is_full = len(filled) == TRAITS[Part.HOPPER].slots
    return is_full and item.startswith(WAYBILL) and all(held.item == item for held in filled)
