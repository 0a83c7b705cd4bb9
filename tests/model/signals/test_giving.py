"""What gives to what. Common practice, no source: a set of cells by hand for each kind of part."""

from __future__ import annotations

import pytest

from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece, Pieces, new_piece
from model.signals.dust import takes_from
from model.signals.giving import GIVERS, gives_to, powers_strongly

HERE = Cell(0, 64, 0)
N, E, S, W, UP, DOWN = Facing
SIX = set(HERE.six_beside())


def given(piece: Piece, *others: Piece) -> set[Cell]:
    return set(gives_to(piece, Pieces.of([piece, *others])))


@pytest.mark.parametrize(
    ("facing", "own", "strong"), [(UP, DOWN, UP), (N, S, UP), (E, W, UP), (S, N, UP), (W, E, UP)]
)
def test_a_torch(facing: Facing, own: Facing, strong: Facing) -> None:
    torch = Piece(Part.TORCH, HERE, facing)
    assert given(torch) == SIX - {HERE.beside(own)}
    assert powers_strongly(torch) == HERE.beside(strong)


@pytest.mark.parametrize("part", [Part.LEVER, Part.BUTTON])
@pytest.mark.parametrize(("facing", "holder"), [(UP, DOWN), (DOWN, UP), (N, S), (E, W), (S, N), (W, E)])
def test_levers_and_buttons(part: Part, facing: Facing, holder: Facing) -> None:
    piece = Piece(part, HERE, facing)
    assert given(piece) == SIX
    assert powers_strongly(piece) == HERE.beside(holder)


def test_a_detector_rail() -> None:
    detector = new_piece(Part.DETECTOR_RAIL, HERE)
    assert given(detector) == SIX
    assert powers_strongly(detector) == HERE.beside(DOWN)


@pytest.mark.parametrize("part", [Part.REPEATER, Part.COMPARATOR])
@pytest.mark.parametrize("facing", [N, E, S, W])
def test_repeaters_and_comparators(part: Part, facing: Facing) -> None:
    piece = Piece(part, HERE, facing)
    assert given(piece) == {HERE.beside(facing)}
    assert powers_strongly(piece) == HERE.beside(facing)


def test_dust_gives_under_itself_and_where_it_points() -> None:
    dust = Piece(Part.DUST, HERE)
    assert given(dust) == SIX - {HERE.beside(UP)}
    assert given(dust, Piece(Part.DUST, HERE.beside(E))) == {HERE.beside(side) for side in (DOWN, E, W)}
    assert powers_strongly(dust) is None


@pytest.mark.parametrize("part", sorted(set(Part) - GIVERS))
def test_all_else_gives_nothing(part: Part) -> None:
    piece = new_piece(part, HERE)
    assert (given(piece), powers_strongly(piece)) == (set(), None)


@pytest.mark.parametrize("ground", [Part.SOLID_BLOCK, Part.HOPPER, Part.GLASS, Part.SLAB])
def test_from_whom_a_dust_takes_on_a_step(ground: Part) -> None:
    low, high = Piece(Part.DUST, HERE), Piece(Part.DUST, HERE.step(Heading.EAST, 1))
    pieces = Pieces.of([low, high, Piece(ground, HERE.beside(E))])
    down = [] if ground in (Part.GLASS, Part.SLAB) else [high.at]
    assert (takes_from(pieces, low.at), takes_from(pieces, high.at)) == (down, [low.at])
    roofed = Pieces.of([*pieces, Piece(Part.SOLID_BLOCK, HERE.beside(UP))])
    assert (takes_from(roofed, low.at), takes_from(roofed, high.at)) == ([], [])
