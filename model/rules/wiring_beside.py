"""A three-way rail that nothing is to throw, beside wiring."""

from __future__ import annotations

from collections.abc import Iterator

from model.edits.words import part_word
from model.grid import Cell
from model.parts import SIGNAL_PARTS, Part
from model.routing.junction import Junction
from model.rules.rule import Found, Rule, Severity
from model.rules.words import listed
from model.track.switches import three_way
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """Every change of a signal part beside a three-way rail gives it notice, meant or not.

    Bad::

        level 64 on blocks
        ·│·
        d│─
        ·│·

    Good::

        level 64 on blocks
        ··│·
        d·│─
        ··│·
    """
    for rail, parts in _rails_beside_signal_parts(junction).items():
        if rail not in junction.choice.wired and three_way(junction.layout, rail):
            beside = listed(f"a {part_word(part)}" for part in parts)
            yield Found(
                tr(
                    "No signal is meant for the three-way rail at {rail}, but {beside} touches it.",
                    rail=rail,
                    beside=beside,
                ),
                (rail,),
            )


def _rails_beside_signal_parts(junction: Junction) -> dict[Cell, list[Part]]:
    pieces = junction.plan.pieces
    touched: dict[Cell, list[Part]] = {}
    for piece in pieces:
        if piece.part in SIGNAL_PARTS:
            for cell in piece.at.six_beside():
                if pieces.part_at(cell) is Part.RAIL:
                    touched.setdefault(cell, []).append(piece.part)
    return touched


RULE = Rule(
    id="wiring-beside",
    severity=Severity.WARNING,
    title="Wiring beside a three-way rail",
    why="The rail settles again whenever that part is placed or changes, and may lie otherwise than built.",
    remedy="Lead the wiring past at least one cell further off.",
    find=find,
)
