"""The titles of the steps: what to place, and where."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from model.edits.words import held_words, plain_word
from model.grid import Cell
from model.parts import FACED, Mode, Part
from model.pieces import Piece
from model.steps.areas import Area
from model.wording import tr

NAMED: Final = 3
"""Cells that a sentence names, at most; of more it tells how many there are."""
_UNCOUNTED: Final = frozenset({Part.DUST, Part.GLASS})
"""Parts that come in pieces."""


def title_of_run(pieces: Sequence[Piece], *, faced: bool) -> str:
    """``5 rails from −3 64 1 to 1 64 1``, and the facing where it matters."""
    first, last = pieces[0], pieces[-1]
    where = (
        tr("{parts} at {places}", parts=parts(pieces), places=first.at)
        if first is last
        else tr("{parts} from {first} to {last}", parts=parts(pieces), first=first.at, last=last.at)
    )
    facing = [tr("facing {facing}", facing=tr(first.facing))] if faced else []
    return ", ".join([where, *facing])


def title_of_area(area: Area) -> str:
    """``18 solid blocks from −3 63 −1 to 2 63 1, 6 × 3``, ``2 torches at 0 64 1 and 3 64 1, facing up``."""
    first, last = area.pieces[0], area.pieces[-1]
    said = parts(area.pieces)
    where = (
        tr("{parts} from {first} to {last}", parts=said, first=first.at, last=last.at)
        if area.across
        else tr("{parts} at {places}", parts=said, places=listed(str(piece.at) for piece in area.pieces))
    )
    return ", ".join([where, *([size(area)] if area.is_broad else []), *_set_as(first)])


def size(area: Area) -> str:
    """``6 × 3``: cells to the east and to the south."""
    return f"{area.across:,} × {area.deep:,}"


def parts(pieces: Sequence[Piece]) -> str:
    """Equal pieces in words: ``1 rail``, ``3 torches``, ``7 pieces of dust``."""
    return tr("{count:,} {parts}", count=len(pieces), parts=parts_word(pieces))


def parts_word(pieces: Sequence[Piece]) -> str:
    """The same without the number: ``rails``."""
    one, many = plain_words(pieces[0].part, wooden=pieces[0].wooden)
    return tr(one if len(pieces) == 1 else many)


def plain_words(part: Part, *, wooden: bool) -> tuple[str, str]:
    """One piece and several of them, in English, as the catalogue of texts has it."""
    word = f"wooden {plain_word(part)}" if wooden else plain_word(part)
    if part in _UNCOUNTED:
        return f"piece of {word}", f"pieces of {word}"
    return word, f"{word}{'es' if word.endswith('ch') else 's'}"


def _set_as(piece: Piece) -> list[str]:
    """What else a builder must see to: the facing, delay, mode and content of a piece."""
    said = [tr("facing {facing}", facing=tr(piece.facing))] if piece.part in FACED else []
    if piece.part is Part.REPEATER:
        said.append(tr("delay {delay} ticks", delay=piece.delay))
    if piece.mode is not Mode.COMPARE:
        said.append(tr("set to {mode}", mode=tr(piece.mode)))
    if piece.holds:
        held = listed(map(held_words, piece.holds))
        said.append(tr("holding {items}", items=held))
    return said


def listed(words: Iterable[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    *first, last = words
    return tr("{first} and {last}", first=", ".join(first), last=last) if first else last


def places(cells: Sequence[Cell]) -> str:
    """The cells, or the first of them and how many more there are."""
    shown = [str(cell) for cell in cells[:NAMED]]
    more = len(cells) - len(shown)
    return listed([*shown, tr("{more:,} more", more=more)] if more else shown)
