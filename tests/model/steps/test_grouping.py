"""What is one step, and what its title says."""

from __future__ import annotations

import re

import pytest
from hypothesis import given

from model.grid import FACING_OF, Cell, Facing, Heading
from model.parts import Mode, Part
from model.pieces import Held, Piece, new_piece
from model.plan import plan_of
from model.steps import Step, build_steps
from tests.strategies import piece_lists

CELL = re.compile(r"[−\d]\d* [−\d]\d* [−\d]\d*")


def steps_of(*pieces: Piece) -> tuple[Step, ...]:
    return build_steps(plan_of(pieces))


def titles_of(*pieces: Piece) -> list[str]:
    return [step.title for step in steps_of(*pieces)]


def line(count: int, heading: Heading, part: Part = Part.RAIL, facing: Facing | None = None) -> list[Piece]:
    """Rails laid that way, each facing it."""
    cells = [Cell(-3, 64, 1)]
    while len(cells) < count:
        cells.append(cells[-1].step(heading))
    return [Piece(part, cell, facing or FACING_OF[heading]) for cell in cells]


@pytest.mark.parametrize("heading", Heading)
@pytest.mark.parametrize("part", [Part.RAIL, Part.BOOSTER_RAIL, Part.DETECTOR_RAIL])
@pytest.mark.parametrize("count", [2, 5, 40])
def test_a_straight_line_of_equal_rails_is_one_step(heading: Heading, part: Part, count: int) -> None:
    laid = line(count, heading, part)
    for order in (laid, laid[::-1], laid[1::2] + laid[::2]):
        (step,) = steps_of(*order)
        assert list(step.place) == laid


def test_the_title_of_a_run_says_how_many_from_where_to_where() -> None:
    (step,) = steps_of(*line(5, Heading.EAST))
    assert step.title == "5 rails from −3 64 1 to 1 64 1"
    assert step.see == "All lie east-west."
    assert titles_of(new_piece(Part.BOOSTER_RAIL, Cell(0, -1, 0))) == [
        "1 booster rail at 0 −1 0, facing north"
    ]


def test_a_facing_is_named_where_the_rail_lies_by_it() -> None:
    """A rail alone lies as its builder faces; in a line the next one decides."""
    assert titles_of(Piece(Part.RAIL, Cell(0, 64, 0), Facing.EAST)) == ["1 rail at 0 64 0, facing east"]
    assert titles_of(*line(3, Heading.EAST, facing=Facing.NORTH)) == ["3 rails from −3 64 1 to −1 64 1"]


def test_other_parts_in_a_line_divide_it_into_runs_that_follow_one_another() -> None:
    rails = line(7, Heading.SOUTH)
    rails[3] = new_piece(Part.BOOSTER_RAIL, rails[3].at, Facing.SOUTH)
    assert titles_of(*rails) == [
        "3 rails from −3 64 1 to −3 64 3",
        "1 booster rail at −3 64 4",
        "3 rails from −3 64 5 to −3 64 7",
    ]


def test_a_ring_is_laid_side_by_side() -> None:
    ring = [Cell(x, 64, z) for x in range(5) for z in range(5) if x in (0, 4) or z in (0, 4)]
    steps = steps_of(*(new_piece(Part.RAIL, cell) for cell in ring))
    assert sorted(len(step.place) for step in steps) == [3, 4, 4, 5]
    assert "has turned from" in steps[-1].see


@pytest.mark.parametrize(("across", "deep"), [(1, 1), (6, 3), (3, 6), (1, 9), (30, 20)])
def test_a_floor_is_one_step(across: int, deep: int) -> None:
    cells = [Cell(x, 63, z) for x in range(across) for z in range(deep)]
    (step,) = steps_of(*(new_piece(Part.SOLID_BLOCK, cell) for cell in cells))
    assert {piece.at for piece in step.place} == set(cells)


def test_a_floor_in_words() -> None:
    (step,) = steps_of(*(new_piece(Part.GLASS, Cell(x, -3, z)) for x in range(-3, 3) for z in range(-1, 2)))
    assert step.title == "18 pieces of glass from −3 −3 −1 to 2 −3 1, 6 × 3"
    assert step.see == "A floor of 6 × 3 pieces of glass at level −3."


def test_blocks_under_a_cross_are_as_few_lines_as_it_has() -> None:
    cells = {Cell(x, 63, 0) for x in range(-5, 6)} | {Cell(0, 63, z) for z in range(-5, 6)}
    steps = steps_of(*(new_piece(Part.SOLID_BLOCK, cell) for cell in sorted(cells)))
    assert sorted(len(step.place) for step in steps) == [5, 5, 11]


def test_a_floor_with_a_hole_takes_four_steps() -> None:
    cells = {Cell(x, 63, z) for x in range(9) for z in range(9)} - {Cell(4, 63, 4)}
    assert len(titles_of(*(new_piece(Part.SLAB, cell) for cell in sorted(cells)))) == 4


def test_equal_parts_that_stand_alone_share_a_step_that_names_each_cell() -> None:
    torches = [new_piece(Part.TORCH, Cell(x, 64, 0)) for x in (0, 3, 6, 9, 12)]
    assert titles_of(*torches) == [
        "4 torches at 0 64 0, 3 64 0, 6 64 0 and 9 64 0, facing up",
        "1 torch at 12 64 0, facing up",
    ]


SET_UP = {
    "1 repeater at 0 64 0, facing east, delay 6 ticks": Piece(
        Part.REPEATER, Cell(0, 64, 0), Facing.EAST, delay=6
    ),
    "1 comparator at 0 64 0, facing west, set to subtract": Piece(
        Part.COMPARATOR, Cell(0, 64, 0), Facing.WEST, mode=Mode.SUBTRACT
    ),
    "1 wooden button at 0 64 0, facing down": Piece(Part.BUTTON, Cell(0, 64, 0), Facing.DOWN, wooden=True),
    "1 hopper at 0 64 0, facing down, holding 22 waybills “Salt” and 1 ingot": Piece(
        Part.HOPPER, Cell(0, 64, 0), Facing.DOWN, holds=(Held("waybill:Salt", 22), Held("ingot", 1))
    ),
    "1 lamp at 0 64 0": Piece(Part.LAMP, Cell(0, 64, 0), Facing.SOUTH),
}


@pytest.mark.parametrize("title", SET_UP)
def test_the_title_says_what_a_builder_must_set(title: str) -> None:
    assert titles_of(SET_UP[title]) == [title]


def test_only_equal_pieces_share_a_step() -> None:
    fast, slow = (Piece(Part.REPEATER, Cell(x, 64, 0), Facing.EAST, delay=2 + 2 * x) for x in range(2))
    assert len(titles_of(fast, slow)) == 2
    empty, full = (
        Piece(Part.BARREL, Cell(0, 64, 0)),
        Piece(Part.BARREL, Cell(1, 64, 0), holds=(Held("salt", 1),)),
    )
    assert len(titles_of(empty, full)) == 2


@given(piece_lists(most=25))
def test_titles_name_the_cells_at_which_to_begin_and_end(pieces: list[Piece]) -> None:
    """From the first to the last of a line or floor, or each cell of a few."""
    for step in steps_of(*pieces):
        named = CELL.findall(step.title)
        assert named[0] == str(step.place[0].at)
        assert named[-1] == str(step.place[-1].at)
        assert step.title.startswith(f"{len(step.place):,} ")
        if len(named) != 2:
            assert named == [str(piece.at) for piece in step.place]
        assert len({(piece.part, piece.holds, piece.delay, piece.mode) for piece in step.place}) == 1


@given(piece_lists(most=25))
def test_a_named_facing_is_that_of_every_piece(pieces: list[Piece]) -> None:
    for step in steps_of(*pieces):
        for facing in re.findall(r"facing (\w+)", step.title):
            assert {piece.facing.value for piece in step.place} == {facing}
