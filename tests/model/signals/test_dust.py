"""Which way dust points: common practice of the trade, no source."""

from __future__ import annotations

from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece, Pieces
from model.signals.dust import ALL_SIDES, links

HERE = Cell(0, 64, 0)
EAST = Cell(1, 64, 0)
STRAIGHT = {Heading.EAST, Heading.WEST}
"""Where dust with its only link to the east points."""


def around(*others: Piece) -> Pieces:
    return Pieces.of([Piece(Part.DUST, HERE), *others])


def test_dust_alone_points_to_all_sides() -> None:
    assert links(around(), HERE) == frozenset(Heading)


def test_one_link_makes_it_lie_straight() -> None:
    pieces = around(Piece(Part.DUST, EAST))
    assert links(pieces, HERE) == {Heading.EAST, Heading.WEST}


def test_links_on_both_axes_are_all_it_points_to() -> None:
    pieces = around(Piece(Part.DUST, EAST), Piece(Part.TORCH, Cell(0, 64, 1), Facing.UP))
    assert links(pieces, HERE) == {Heading.EAST, Heading.SOUTH}


def test_a_repeater_links_along_its_axis_only() -> None:
    assert links(around(Piece(Part.REPEATER, EAST, Facing.WEST)), HERE) == STRAIGHT
    assert links(around(Piece(Part.REPEATER, EAST, Facing.NORTH)), HERE) == ALL_SIDES


def test_a_solid_block_above_cuts_the_link_upward() -> None:
    up = Piece(Part.DUST, Cell(1, 65, 0))
    assert links(around(up), HERE) == STRAIGHT
    assert links(around(up, Piece(Part.SOLID_BLOCK, Cell(0, 65, 0))), HERE) == ALL_SIDES
    assert links(around(up, Piece(Part.GLASS, Cell(0, 65, 0))), HERE) == STRAIGHT


def test_a_solid_block_beside_cuts_the_link_downward() -> None:
    down = Piece(Part.DUST, Cell(1, 63, 0))
    assert links(around(down), HERE) == STRAIGHT
    assert links(around(down, Piece(Part.SOLID_BLOCK, EAST)), HERE) == ALL_SIDES
    assert links(around(down, Piece(Part.SLAB, EAST)), HERE) == STRAIGHT


def test_a_target_block_bends_dust_and_a_solid_block_does_not() -> None:
    assert links(around(Piece(Part.TARGET_BLOCK, EAST)), HERE) == STRAIGHT
    assert links(around(Piece(Part.SOLID_BLOCK, EAST)), HERE) == ALL_SIDES
