"""Edits of single pieces and selections."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import msgspec

from model.edits.changes import appended, carried, selected
from model.edits.refusals import check_piece
from model.edits.words import part_word
from model.grid import Cell, Facing
from model.parts import LEVEL, TRAITS, Part, next_delay, next_facing, next_mode
from model.pieces import Piece, Placed
from model.plan import Change, Plan
from model.wording import QT_TR_NOOP, tr


def place(plan: Plan, piece: Piece) -> Change:
    """One piece, after all others in order; it replaces what is there.

    Where the very same piece stands already nothing changes, not even the order. Raises EditRefused for a
    piece that a plan cannot have.
    """
    label = tr("Place {part}", part=part_word(piece.part))
    return Change(label) if plan.pieces.get(piece.at) == piece else appended(plan, label, [piece])


def erase(plan: Plan, cells: Iterable[Cell]) -> Change:
    """The pieces in ``cells`` go; empty cells do not matter."""
    taken = selected(plan, cells)
    return Change(tr("Erase {pieces}", pieces=tr("%n piece(s)", "", len(taken))), tuple(taken))


def move(plan: Plan, cells: Iterable[Cell], dx: int, dy: int, dz: int) -> Change:
    """The pieces in ``cells`` that many cells to the east, up and to the south; they keep their ranks.

    They replace what stands there, and the label says how many. Raises EditRefused for cells out of reach.
    """
    taken = selected(plan, cells)
    moved = [msgspec.structs.replace(old.piece, at=old.piece.at.moved(dx, dy, dz)) for old in taken]
    return carried(plan, QT_TR_NOOP("Move %n piece(s)"), taken, moved)


def copy_pieces(plan: Plan, cells: Iterable[Cell]) -> tuple[Piece, ...]:
    """The pieces in ``cells`` in the order of placing."""
    return tuple(entry.piece for entry in selected(plan, cells))


def paste(plan: Plan, pieces: Sequence[Piece]) -> Change:
    """The pieces, in their order, after all others; they replace what is there.

    Raises EditRefused for a piece or a number of pieces that a plan cannot have, ValueError for two of them
    in one cell.
    """
    return appended(plan, tr("Paste {pieces}", pieces=tr("%n piece(s)", "", len(pieces))), pieces)


def place_all(plan: Plan, pieces: Sequence[Piece]) -> Change:
    """The pieces of one drag, in their order, after all others; they replace what is there.

    Raises EditRefused and ValueError as ``paste`` does.
    """
    return appended(plan, tr("Place {pieces}", pieces=tr("%n piece(s)", "", len(pieces))), pieces)


def set_piece(plan: Plan, piece: Piece) -> Change:
    """Another piece in an occupied cell, which keeps the rank: turned, other delay, mode or content.

    Raises KeyError when nothing stands there, EditRefused for a piece that a plan cannot have.
    """
    old = plan.pieces.placed(piece.at)
    if old is None:
        raise KeyError(piece.at)
    check_piece(piece)
    return Change(_setting(old.piece, piece), (old,), (Placed(old.rank, piece),))


def set_next(plan: Plan, cells: Iterable[Cell]) -> Change:
    """The pieces in ``cells`` go on to what they can be set to next, and keep their ranks.

    A repeater to its next delay, a comparator to its other mode, a part that can point up or down to its next
    facing; others stay. Empty where all of them stay.
    """
    pairs = [(old, Placed(old.rank, _next(old.piece))) for old in selected(plan, cells)]
    taken = tuple(old for old, new in pairs if old != new)
    placed = tuple(new for old, new in pairs if old != new)
    if len(taken) == 1:
        return Change(_setting(taken[0].piece, placed[0].piece), taken, placed)
    return Change(tr("Set {pieces}", pieces=tr("%n piece(s)", "", len(taken))), taken, placed)


def _next(piece: Piece) -> Piece:
    if piece.part is Part.REPEATER:
        return msgspec.structs.replace(piece, delay=next_delay(piece.delay))
    if piece.part is Part.COMPARATOR:
        return msgspec.structs.replace(piece, mode=next_mode(piece.mode))
    if TRAITS[piece.part].facings != LEVEL:
        return msgspec.structs.replace(piece, facing=next_facing(piece.part, piece.facing))
    return piece


def _setting(old: Piece, new: Piece) -> str:
    word = part_word(old.part)
    if old.part is not new.part:
        return tr("Change {word} to {part}", word=word, part=part_word(new.part))
    if old.facing is not new.facing:
        return tr("Turn {word} to {facing}", word=word, facing=tr(new.facing))
    if old.delay != new.delay:
        return tr("Set delay of {word} to {delay} ticks", word=word, delay=new.delay)
    if old.mode is not new.mode:
        return tr("Set {word} to {mode}", word=word, mode=tr(new.mode))
    return tr("Set what {word} holds", word=word) if old.holds != new.holds else tr("Set {word}", word=word)


def reorder(plan: Plan, cells: Sequence[Cell]) -> Change:
    """The pieces in ``cells`` come in the sequence given; together they keep the ranks that they hold now.

    All other pieces keep their place in the order. Raises KeyError for an empty cell, ValueError for a cell
    named twice.
    """
    taken = selected(plan, cells)
    by_cell = {entry.piece.at: entry.piece for entry in taken}
    pieces = [by_cell[cell] for cell in cells]
    placed = tuple(Placed(old.rank, new) for old, new in zip(taken, pieces, strict=True))
    return Change(tr("Reorder {pieces}", pieces=tr("%n piece(s)", "", len(taken))), tuple(taken), placed)


def set_build_order(plan: Plan, rails: Sequence[tuple[Cell, Facing]]) -> Change:
    """The rails come in the sequence given, each faced as given; together they keep the ranks they hold now.

    All other pieces keep their place in the order. Empty when nothing differs. Raises KeyError for an empty
    cell, ValueError for a cell named twice.
    """
    taken = selected(plan, (cell for cell, _ in rails))
    by_cell = {entry.piece.at: entry.piece for entry in taken}
    pieces = [msgspec.structs.replace(by_cell[cell], facing=facing) for cell, facing in rails]
    pairs = zip(taken, (Placed(old.rank, new) for old, new in zip(taken, pieces, strict=True)), strict=True)
    moved = [(old, new) for old, new in pairs if old != new]
    label = tr("Set the build order of {rails}", rails=tr("%n rail(s)", "", len(moved)))
    return Change(label, tuple(old for old, _ in moved), tuple(new for _, new in moved))


def add_blocks(plan: Plan, cells: Iterable[Cell]) -> Change:
    """Solid blocks in those of ``cells`` that are empty, in that order, after all other pieces.

    Raises EditRefused for cells out of reach.
    """
    empty = [cell for cell in dict.fromkeys(cells) if cell not in plan.pieces]
    blocks = [Piece(Part.SOLID_BLOCK, cell) for cell in empty]
    return appended(plan, tr("Add {blocks}", blocks=tr("%n block(s)", "", len(blocks))), blocks)
