"""Modules are put nowhere that they would act on what stands there, or that would act on them."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from model.grid import Cell, Facing, Heading, Turn
from model.parts import Part
from model.pieces import Piece
from model.plan import plan_of
from model.wiring.laying.ground import Ground
from model.wiring.modules.fitting import Fitted, fit
from model.wiring.modules.modules import load_module
from tests.model.wiring.examples import example, wiring_of

TRACK = [
    piece
    for x in range(-10, 11)
    for piece in (Piece(Part.SOLID_BLOCK, Cell(x, 63, 0)), Piece(Part.RAIL, Cell(x, 64, 0), Facing.EAST))
]
BESIDE = {
    "is lit by the detector rail": [Piece(Part.LAMP, Cell(-2, 63, -1))],
    "is stopped by the ring": [Piece(Part.HOPPER, Cell(-4, 61, 2), Facing.EAST)],
    "feeds the ring": [
        Piece(Part.SOLID_BLOCK, Cell(-2, 61, 3)),
        Piece(Part.REPEATER, Cell(-2, 62, 3), Facing.NORTH, 2),
    ],
    "puts out the torch": [Piece(Part.SOLID_BLOCK, Cell(2, 61, 1)), Piece(Part.DUST, Cell(2, 62, 1))],
}


def fitted(beside: Sequence[Piece]) -> Fitted | str:
    """A reader on a straight of its own, with what stands beside it."""
    reader = load_module("reader", waybill="Salt").turned(Turn(), Cell(0, 64, 0))
    return fit(Ground(plan_of([*TRACK, *beside]), grow=4), reader)


def test_a_reader_fits_where_nothing_is_beside_it() -> None:
    assert isinstance(fitted([]), Fitted)


@pytest.mark.parametrize("beside", BESIDE.values(), ids=list(BESIDE))
def test_a_reader_does_not_fit_beside_what_it_would_couple_with(beside: Sequence[Piece]) -> None:
    said = fitted(beside)
    assert isinstance(said, str)
    assert any(str(piece.at) in said for piece in beside)


def test_a_reader_does_not_fit_over_what_another_detector_rail_powers() -> None:
    """Its power would come through the block under it, and stop the hopper."""
    detecting = [Piece(Part.DETECTOR_RAIL, p.at, p.facing) if p.at == Cell(-1, 64, 0) else p for p in TRACK]
    reader = load_module("reader", waybill="Salt").turned(Turn(), Cell(0, 64, 0))
    said = fit(Ground(plan_of(detecting), grow=4), reader)
    assert isinstance(said, str)
    assert said.startswith(f"The detector rail at {Cell(-1, 64, 0)} would stop the hopper")


def test_lamps_that_carry_the_rails_beside_a_switch_would_be_lit() -> None:
    plan = example("fen-ring")
    (switch,) = {line.switches[0] for line in wiring_of(plan).lines[:1]}
    about = {switch.moved(dy=-1).step(heading) for heading in Heading}
    pieces = [
        Piece(Part.LAMP, piece.at) if piece.at in about and piece.part is Part.SOLID_BLOCK else piece
        for piece in plan.pieces
    ]
    wiring = wiring_of(plan_of(pieces, plan.details))
    assert not wiring.wired
    assert any("would light the lamp" in finding.message for finding in wiring.findings)
