"""The ways of wanted routes, as far as the runs that prove a junction hang on them.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from model.grid import Cell, Facing
from model.parts import RAILS, Part
from model.pieces import WAYBILL, Piece
from model.plan import Plan


def takes_from_carts(plan: Plan, piece: Piece) -> bool:
    """Whether it is a hopper under a rail: that of a reader, where it holds waybills."""
    return piece.part is Part.HOPPER and plan.pieces.part_at(piece.at.beside(Facing.UP)) in RAILS


def waybills_taken(plan: Plan) -> dict[Cell, str]:
    """By rail, the waybill that the reader under it takes out of carts."""
    return dict(_readers(plan))


def _readers(plan: Plan) -> Iterator[tuple[Cell, str]]:
    for piece in plan.pieces:
        item = piece.holds[0].item if piece.holds else ""
        if item.startswith(WAYBILL) and takes_from_carts(plan, piece):
            yield piece.at.beside(Facing.UP), item.removeprefix(WAYBILL)


def waybills_on(path: Sequence[Cell], taken: Mapping[Cell, str]) -> list[str]:
    """Those that the readers under a way take, one a time that the way runs over a reader."""
    return [taken[cell] for cell in path if cell in taken]


def meets_itself(path: Sequence[Cell], size: int, gap: int) -> bool:
    """Whether two carts of a train come into one cell at once, where their way comes to a cell twice.

    All carts of a train run at one speed, so a cart that is so many places ahead is so all the time.
    """
    ahead = {(gap + 1) * carts for carts in range(1, size)}
    places: dict[Cell, list[int]] = {}
    for place, cell in enumerate(path):
        if any(place - before in ahead for before in places.get(cell, ())):
            return True
        places.setdefault(cell, []).append(place)
    return False
