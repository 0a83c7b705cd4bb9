"""The junction in its eight orientations: the bias rule is tied to the world's axes, so each differs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

import msgspec

from model.collector import collector_paused
from model.edits import turn_plan
from model.grid import ALL_TURNS, Facing, Turn
from model.parts import RAILS, STOPPERS
from model.pieces import Piece, Pieces
from model.plan import Plan
from model.routing.junction import Junction

_MET_BY_CARTS: Final = RAILS | STOPPERS


class Orientation(msgspec.Struct, frozen=True):
    """What a turned plan would need, with the same order of placing."""

    turn: Turn
    inverters: int | None
    """``None`` where not buildable."""
    buildable: bool
    """Whether some choice serves all wanted routes."""


def orientation(junction: Junction, turn: Turn) -> Orientation:
    """Works out one orientation of a junction.

    Where no route is wanted all is served however the plan lies, so it is not turned.
    """
    if not junction.plan.routes:
        return Orientation(turn, 0, True)
    turned = junction if turn == Turn() else _turned(junction, turn)
    serves = turned.control.serves
    return Orientation(turn, len(turned.choice.idle) if serves else None, serves)


def _turned(junction: Junction, turn: Turn) -> Junction:
    """The junction turned, as far as carts have to do with it; what has three neighbours keeps them."""
    plan = junction.plan
    bare = Plan(Pieces.of(()), plan.details)
    facings = {facing: turn.facing(facing) for facing in Facing}
    with collector_paused():
        pieces = Pieces.of(
            Piece(piece.part, turn.cell(piece.at), facings[piece.facing])
            for piece in plan.pieces
            if piece.part in _MET_BY_CARTS
        )
        three_ways = tuple(map(turn.cell, junction.three_ways))
        return Junction(Plan(pieces, turn_plan(bare, turn).applied(bare).details), three_ways=three_ways)


def each_orientation(junction: Junction) -> Iterator[Orientation]:
    """The eight orientations one after another, so that a caller can stop between two."""
    return (orientation(junction, turn) for turn in ALL_TURNS)


def orientations(junction: Junction) -> tuple[Orientation, ...]:
    """All eight orientations in the order of their numbers."""
    return tuple(each_orientation(junction))
