"""Which way dust points: common practice of the trade, no source."""

from __future__ import annotations

from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece, Pieces
from model.signals.dust import dust_links, dust_points

HERE = Cell(0, 64, 0)
EAST = Cell(1, 64, 0)


def around(*others: Piece) -> Pieces:
    return Pieces.of([Piece(Part.DUST, HERE), *others])


def test_dust_alone_points_to_all_sides() -> None:
    assert dust_points(around(), HERE) == frozenset(Heading)


def test_one_link_makes_it_lie_straight() -> None:
    pieces = around(Piece(Part.DUST, EAST))
    assert dust_links(pieces, HERE) == {Heading.EAST}
    assert dust_points(pieces, HERE) == {Heading.EAST, Heading.WEST}


def test_links_on_both_axes_are_all_it_points_to() -> None:
    pieces = around(Piece(Part.DUST, EAST), Piece(Part.TORCH, Cell(0, 64, 1), Facing.UP))
    assert dust_points(pieces, HERE) == {Heading.EAST, Heading.SOUTH}


def test_a_repeater_links_along_its_axis_only() -> None:
    assert dust_links(around(Piece(Part.REPEATER, EAST, Facing.WEST)), HERE) == {Heading.EAST}
    assert dust_links(around(Piece(Part.REPEATER, EAST, Facing.NORTH)), HERE) == frozenset()


def test_a_solid_block_above_cuts_the_link_upward() -> None:
    up = Piece(Part.DUST, Cell(1, 65, 0))
    assert dust_links(around(up), HERE) == {Heading.EAST}
    assert dust_links(around(up, Piece(Part.SOLID_BLOCK, Cell(0, 65, 0))), HERE) == frozenset()
    assert dust_links(around(up, Piece(Part.GLASS, Cell(0, 65, 0))), HERE) == {Heading.EAST}


def test_a_solid_block_beside_cuts_the_link_downward() -> None:
    down = Piece(Part.DUST, Cell(1, 63, 0))
    assert dust_links(around(down), HERE) == {Heading.EAST}
    assert dust_links(around(down, Piece(Part.SOLID_BLOCK, EAST)), HERE) == frozenset()
    assert dust_links(around(down, Piece(Part.SLAB, EAST)), HERE) == {Heading.EAST}


def test_a_target_block_bends_dust_and_a_solid_block_does_not() -> None:
    assert dust_links(around(Piece(Part.TARGET_BLOCK, EAST)), HERE) == {Heading.EAST}
    assert dust_links(around(Piece(Part.SOLID_BLOCK, EAST)), HERE) == frozenset()
