"""Laying a line of dust by a drag."""

from __future__ import annotations

import pytest

from model.edits import EditRefused, lay_line
from model.edits.lay_line import is_free_for_line
from model.grid import XZ_LIMIT, Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import EMPTY_PLAN, Plan, plan_of


def along(*xs: int, y: int = 63) -> list[Cell]:
    return [Cell(x, y, 0) for x in xs]


def laid(plan: Plan, cells: list[Cell], **more) -> list[tuple[Part, Cell]]:
    return [(entry.piece.part, entry.piece.at) for entry in lay_line(plan, cells, **more).placed]


def test_blocks_come_first_and_then_dust_in_the_order_of_the_drag() -> None:
    assert laid(EMPTY_PLAN, along(2, 1, 0)) == [
        *((Part.SOLID_BLOCK, Cell(x, 62, 0)) for x in (2, 1, 0)),
        *((Part.DUST, Cell(x, 63, 0)) for x in (2, 1, 0)),
    ]


@pytest.mark.parametrize("part", [Part.SOLID_BLOCK, Part.GLASS, Part.SLAB, Part.TARGET_BLOCK, Part.HOPPER])
def test_what_carries_already_carries_the_dust(part: Part) -> None:
    plan = plan_of([Piece(part, Cell(1, 62, 0), Facing.NORTH)])
    assert (Part.SOLID_BLOCK, Cell(1, 62, 0)) not in laid(plan, along(0, 1, 2))
    assert (Part.DUST, Cell(1, 63, 0)) in laid(plan, along(0, 1, 2))


@pytest.mark.parametrize("y", [62, 63])
def test_a_piece_in_the_way_stays(y: int) -> None:
    """In the cell itself, or below it where it carries nothing."""
    rail = Piece(Part.RAIL, Cell(1, y, 0))
    plan = plan_of([rail])
    change = lay_line(plan, along(0, 1, 2))
    assert change.label == "Lay line of 2 dust"
    assert change.taken == ()
    assert change.applied(plan).pieces.get(rail.at) == rail
    assert Cell(1, 63, 0) not in change.cells


def test_the_drag_leaves_no_room_for_a_block_in_its_own_dust() -> None:
    loop = [Cell(0, 63, 0), Cell(1, 63, 0), Cell(1, 64, 1), Cell(0, 64, 1), Cell(0, 64, 0)]
    assert not is_free_for_line(EMPTY_PLAN, loop, loop[-1])
    assert (Part.DUST, loop[-1]) not in laid(EMPTY_PLAN, loop)


def test_steps_up_and_down() -> None:
    cells = [Cell(0, 63, 0), Cell(1, 64, 0), Cell(2, 63, 0)]
    assert [at for part, at in laid(EMPTY_PLAN, cells) if part is Part.DUST] == cells


def test_a_repeater_takes_the_place_of_dust_and_the_label_says_so() -> None:
    change = lay_line(EMPTY_PLAN, along(0, 1, 2), {Cell(1, 63, 0): Facing.EAST})
    assert change.label == "Lay line of 2 dust and 1 repeater"
    piece = change.applied(EMPTY_PLAN).pieces.get(Cell(1, 63, 0))
    assert piece == Piece(Part.REPEATER, Cell(1, 63, 0), Facing.EAST)


def test_a_cell_passed_twice_gets_one_dust() -> None:
    assert len(laid(EMPTY_PLAN, along(0, 1, 0))) == 4


@pytest.mark.parametrize(
    "cells", [along(0, 2), [Cell(0, 63, 0), Cell(1, 65, 0)], [Cell(0, 63, 0), Cell(0, 64, 0)]]
)
def test_cells_that_are_no_steps(cells: list[Cell]) -> None:
    with pytest.raises(ValueError, match="is not a step from"):
        lay_line(EMPTY_PLAN, cells)


def test_out_of_reach() -> None:
    with pytest.raises(EditRefused, match="out of reach"):
        lay_line(EMPTY_PLAN, along(XZ_LIMIT + 1))


def test_undo_gives_the_plan_back() -> None:
    plan = plan_of([Piece(Part.GLASS, Cell(1, 62, 0))])
    change = lay_line(plan, along(0, 1, 2))
    assert change.inverse().applied(change.applied(plan)) == plan
