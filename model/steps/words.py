"""The titles of the steps: what to place, and where."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from model.edits.words import part_word
from model.grid import Cell
from model.parts import FACED, Mode, Part
from model.pieces import Piece
from model.steps.areas import Area

NAMED: Final = 3
"""Cells that a sentence names, at most; of more it tells how many there are."""
_UNCOUNTED: Final = frozenset({Part.DUST, Part.GLASS})
"""Parts that come in pieces."""


def title_of_run(pieces: Sequence[Piece], *, faced: bool) -> str:
    """``5 rails from −3 64 1 to 1 64 1``, and the facing where it matters."""
    first, last = pieces[0], pieces[-1]
    where = f"at {first.at}" if first is last else f"from {first.at} to {last.at}"
    return f"{parts(pieces)} {where}" + (f", facing {first.facing}" if faced else "")


def title_of_area(area: Area) -> str:
    """``18 solid blocks from −3 63 −1 to 2 63 1, 6 × 3``, ``2 torches at 0 64 1 and 3 64 1, facing up``."""
    first, last = area.pieces[0], area.pieces[-1]
    if not area.across:
        where = f"at {listed(str(piece.at) for piece in area.pieces)}"
    else:
        where = f"from {first.at} to {last.at}{', ' + size(area) if area.is_broad else ''}"
    return f"{parts(area.pieces)} {where}{_set_as(first)}"


def size(area: Area) -> str:
    """``6 × 3``: cells to the east and to the south."""
    return f"{area.across:,} × {area.deep:,}"


def parts(pieces: Sequence[Piece]) -> str:
    """Equal pieces in words: ``1 rail``, ``3 torches``, ``7 pieces of dust``."""
    return f"{len(pieces):,} {parts_word(pieces)}"


def parts_word(pieces: Sequence[Piece]) -> str:
    """The same without the number: ``rails``."""
    part, one = pieces[0].part, len(pieces) == 1
    word = f"wooden {part_word(part)}" if pieces[0].wooden else part_word(part)
    if part in _UNCOUNTED:
        return f"piece{'' if one else 's'} of {word}"
    return word if one else f"{word}{'es' if word.endswith('ch') else 's'}"


def _set_as(piece: Piece) -> str:
    """What else a builder must see to: the facing, delay, mode and content of a piece."""
    said = [f"facing {piece.facing}"] if piece.part in FACED else []
    if piece.part is Part.REPEATER:
        said.append(f"delay {piece.delay} ticks")
    if piece.mode is not Mode.COMPARE:
        said.append(f"set to {piece.mode}")
    if piece.holds:
        said.append("holding " + listed(f"{held.count:,} {held.item}" for held in piece.holds))
    return "".join(f", {words}" for words in said)


def listed(words: Iterable[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last


def places(cells: Sequence[Cell]) -> str:
    """The cells, or the first of them and how many more there are."""
    shown = [str(cell) for cell in cells[:NAMED]]
    more = len(cells) - len(shown)
    return listed([*shown, f"{more:,} more"] if more else shown)
