"""A plan becomes another one, as when its file was written by something else: all that stays, stays."""

from __future__ import annotations

from itertools import islice

from model.pieces import Placed
from model.plan import Change, Plan
from model.wording import tr


def become(plan: Plan, other: Plan) -> Change:
    """The plan as ``other`` is: pieces and details.

    Pieces keep their rank as far as they come in the same order; from the first one on that does not,
    all are placed anew.
    """
    after = _ranked(plan, other)
    taken = tuple(entry for entry in plan.pieces.in_order() if after.get(entry.rank) != entry)
    kept = {entry.rank for entry in plan.pieces.in_order()} - {entry.rank for entry in taken}
    placed = tuple(entry for entry in after.values() if entry.rank not in kept)
    label = tr("Read the file again")
    if other.details == plan.details:
        return Change(label, taken, placed)
    return Change(label, taken, placed, plan.details, other.details)


def _ranked(plan: Plan, other: Plan) -> dict[int, Placed]:
    """The pieces of the other plan by the ranks that they get in this one, which rise."""
    ranked: dict[int, Placed] = {}
    last = -1
    for piece in other.pieces:
        old = plan.pieces.placed(piece.at)
        if old is None or old.rank <= last:
            break
        last = old.rank
        ranked[last] = Placed(last, piece)
    rest = islice(other.pieces, len(ranked), None)
    return ranked | {rank: Placed(rank, piece) for rank, piece in enumerate(rest, plan.pieces.next_rank)}
