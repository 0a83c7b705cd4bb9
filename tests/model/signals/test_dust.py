"""Dust links: common practice of the trade, no source; a case for and one against each line of the rule."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.grid import FACING_OF, Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece, Pieces
from model.signals.dust import ALL_SIDES, links

NORTH, EAST, SOUTH, WEST = Heading
HERE = Cell(0, 64, 0)
BY_AXIS = {NORTH: {NORTH, SOUTH}, SOUTH: {NORTH, SOUTH}, EAST: {EAST, WEST}, WEST: {EAST, WEST}}


def linked(*others: Piece) -> frozenset[Heading]:
    """The sides of a dust at HERE with these pieces about it."""
    return links(Pieces.of([Piece(Part.DUST, HERE), *others]), HERE)


def dust(cell: Cell) -> Piece:
    return Piece(Part.DUST, cell)


def test_alone_it_points_to_all_sides() -> None:
    assert linked() == ALL_SIDES


@pytest.mark.parametrize("side", Heading)
def test_one_neighbour_makes_it_straight(side: Heading) -> None:
    assert linked(dust(HERE.step(side))) == BY_AXIS[side]


def test_on_both_axes_it_points_to_the_linked_sides_only() -> None:
    assert linked(dust(HERE.step(NORTH)), dust(HERE.step(EAST))) == {NORTH, EAST}
    three = [dust(HERE.step(side)) for side in (NORTH, EAST, SOUTH)]
    assert linked(*three) == {NORTH, EAST, SOUTH}


@pytest.mark.parametrize(
    ("above", "climbs"),
    [(None, True), (Part.GLASS, True), (Part.HOPPER, True), (Part.SOLID_BLOCK, False), (Part.LAMP, False)],
)
def test_it_climbs_where_no_solid_block_is_above_itself(above: Part | None, climbs: bool) -> None:
    step = [Piece(Part.SOLID_BLOCK, HERE.step(EAST)), dust(HERE.step(EAST, 1))]
    roof = [] if above is None else [Piece(above, HERE.moved(dy=1))]
    assert linked(*step, *roof) == (BY_AXIS[EAST] if climbs else ALL_SIDES)


@pytest.mark.parametrize(
    ("beside", "descends"),
    [(None, True), (Part.GLASS, True), (Part.SLAB, True), (Part.SOLID_BLOCK, False), (Part.BARREL, False)],
)
def test_it_descends_where_the_cell_beside_is_not_solid(beside: Part | None, descends: bool) -> None:
    wall = [] if beside is None else [Piece(beside, HERE.step(EAST))]
    assert linked(dust(HERE.step(EAST, -1)), *wall) == (BY_AXIS[EAST] if descends else ALL_SIDES)


@pytest.mark.parametrize("facing", [FACING_OF[heading] for heading in Heading])
def test_it_links_to_repeaters_along_their_axis_only(facing: Facing) -> None:
    along = facing in (Facing.EAST, Facing.WEST)
    assert linked(Piece(Part.REPEATER, HERE.step(EAST), facing)) == (BY_AXIS[EAST] if along else ALL_SIDES)


BENDS = {Part.COMPARATOR, Part.TORCH, Part.LEVER, Part.BUTTON, Part.DETECTOR_RAIL, Part.TARGET_BLOCK}


@pytest.mark.parametrize("part", sorted(set(Part) - {Part.DUST, Part.REPEATER}))
def test_what_else_it_links_to(part: Part) -> None:
    expected = BY_AXIS[NORTH] if part in BENDS else ALL_SIDES
    assert linked(Piece(part, HERE.step(NORTH))) == expected


cells = st.tuples(st.integers(-1, 1), st.integers(63, 65), st.integers(-1, 1)).map(lambda xyz: Cell(*xyz))


@given(st.dictionaries(cells, st.sampled_from(list(Part)), max_size=12))
def test_two_dusts_link_to_each_other_or_not_at_all(parts: dict[Cell, Part]) -> None:
    """On one level a link is mutual, whatever else stands about."""
    pieces = Pieces.of([Piece(part, cell) for cell, part in parts.items()])
    for cell in (cell for cell, part in parts.items() if part is Part.DUST):
        for side in Heading:
            if pieces.part_at(cell.step(side)) is Part.DUST:
                assert side in links(pieces, cell)
                assert side.opposite in links(pieces, cell.step(side))
