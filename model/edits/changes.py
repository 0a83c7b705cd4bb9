"""The three forms that a change takes: new pieces, pieces carried elsewhere, other details."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from model.edits.refusals import check_piece, check_piece_count
from model.edits.words import replacing
from model.grid import Cell
from model.pieces import Piece, Placed
from model.plan import Change, Details, Plan
from model.wording import tr


def selected(plan: Plan, cells: Iterable[Cell]) -> list[Placed]:
    """The pieces in ``cells`` in the order of placing; empty cells and doubles do not count."""
    found = (plan.pieces.placed(cell) for cell in frozenset(cells))
    return sorted((entry for entry in found if entry is not None), key=lambda entry: entry.rank)


def appended(plan: Plan, label: str, pieces: Sequence[Piece]) -> Change:
    """New pieces after all others, in their order; what stands in their cells goes.

    Raises EditRefused for a piece or a number of pieces that a plan cannot have, ValueError for two of them
    in one cell.
    """
    for piece in pieces:
        check_piece(piece)
    if len({piece.at for piece in pieces}) != len(pieces):
        raise ValueError("two pieces in one cell")
    taken = selected(plan, (piece.at for piece in pieces))
    check_piece_count(len(plan.pieces) + len(pieces) - len(taken))
    first = plan.pieces.next_rank
    placed = tuple(Placed(rank, piece) for rank, piece in enumerate(pieces, first))
    return Change(replacing(label, taken), tuple(taken), placed)


def carried(plan: Plan, said: str, taken: Sequence[Placed], pieces: Sequence[Piece]) -> Change:
    """Each of ``taken`` becomes the piece beside it in ``pieces`` and keeps its rank; others in the way go.

    ``said`` is the label with ``%n`` for how many. Raises EditRefused for a piece that a plan cannot have.
    """
    for piece in pieces:
        check_piece(piece)
    own = {entry.piece.at for entry in taken}
    foreign = selected(plan, (piece.at for piece in pieces if piece.at not in own))
    placed = tuple(Placed(old.rank, new) for old, new in zip(taken, pieces, strict=True))
    label = replacing(tr(said, "", len(taken)), foreign)
    return Change(label, (*taken, *foreign), placed)


def detailed(plan: Plan, label: str, details: Details) -> Change:
    """Other details; empty when they are the same."""
    if details == plan.details:
        return Change(label)
    return Change(label, before=plan.details, after=details)
