"""Drawing lines of dust."""

from __future__ import annotations

import pytest

from app.tools.events import Key, Modifiers
from app.tools.paths import climbed
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import plan_of
from tests.app.tools.desk import LEVEL, Desk, Driver


def dust_cells(desk: Desk) -> list[Cell]:
    return [piece.at for piece in desk.plan.pieces if piece.part is Part.DUST]


@pytest.fixture
def hand(desk: Desk) -> Driver:
    return desk.use("line")


def test_it_says_what_to_do(desk: Desk, hand: Driver) -> None:
    assert desk.said[-1].startswith("Drag to draw a line of dust")


def test_one_drag_is_one_step_named_in_words(desk: Desk, hand: Driver) -> None:
    hand.press(2, 3).drag_to(13, 3).release()
    assert [change.label for change in desk.done] == ["Lay line of 12 dust"]
    assert dust_cells(desk) == [Cell(x, LEVEL, 3) for x in range(2, 14)]
    assert all(desk.plan.pieces.part_at(Cell(x, LEVEL - 1, 3)) is Part.SOLID_BLOCK for x in range(2, 14))


def test_the_ghost_shows_the_strength_left(desk: Desk, hand: Driver) -> None:
    hand.press(0, 0).drag_to(3, 0)
    assert desk.ghost is not None
    assert dict(desk.ghost.strengths) == {Cell(x, LEVEL, 0): 15 - x for x in range(4)}
    assert desk.said[-1] == "4 dust, 4 blocks; strength 12 at the end."


def test_a_repeater_is_set_by_itself_and_named(desk: Desk, hand: Driver) -> None:
    hand.press(1, 0).drag_to(20, 0)
    assert desk.said[-1] == "19 dust, 1 repeater (at 16 64 0), 20 blocks; strength 12 at the end."
    hand.release()
    assert [change.label for change in desk.done] == ["Lay line of 19 dust and 1 repeater"]
    assert desk.plan.pieces.get(Cell(16, LEVEL, 0)) == Piece(Part.REPEATER, Cell(16, LEVEL, 0), Facing.EAST)


def test_of_a_long_drag_the_strength_is_told_when_it_is_laid(desk: Desk, hand: Driver) -> None:
    """To work it out at each move would hold the pointer up."""
    hand.press(0, 0).drag_to(149, 0)
    assert desk.ghost is not None
    assert desk.ghost.change is not None
    assert len(desk.ghost.change.placed) == 300
    assert not desk.ghost.strengths
    assert desk.said[-1] == "150 cells: the strength comes when the line is laid."
    hand.key(Key.CYCLE).key(Key.CYCLE).release()
    assert [change.label for change in desk.done] == ["Lay line of 141 dust and 9 repeaters"]
    assert desk.said[-1] == ""


def test_d_draws_dust_alone_and_marks_where_it_runs_out(desk: Desk, hand: Driver) -> None:
    hand.press(1, 0).drag_to(20, 0).key(Key.CYCLE)
    assert desk.ghost is not None
    assert desk.ghost.crossed == {Cell(16, LEVEL, 0)}
    assert desk.said[-1] == "No signal comes as far as 16 64 0."
    hand.key(Key.CYCLE)
    assert desk.ghost.crossed == frozenset()
    hand.tool.cancel()
    hand.key(Key.CYCLE)
    assert desk.said[-1] == "Dust alone: no repeaters are set."
    hand.press(1, 0).drag_to(20, 0).release()
    assert len(dust_cells(desk)) == 20


def test_a_coupling_is_marked_said_and_still_laid() -> None:
    foreign = Piece(Part.DUST, Cell(3, LEVEL, 1))
    desk = Desk(plan_of([Piece(Part.SOLID_BLOCK, Cell(3, LEVEL - 1, 1)), foreign]))
    hand = desk.use("line").press(0, 0).drag_to(6, 0)
    assert desk.ghost is not None
    assert desk.ghost.crossed == {Cell(3, LEVEL, 0)}
    assert desk.said[-1] == "The dust at 3 64 0 would join the dust at 3 64 1."
    hand.release()
    assert desk.said[-1] == "The dust at 3 64 0 would join the dust at 3 64 1."
    assert [change.label for change in desk.done] == ["Lay line of 7 dust"]


def test_joining_the_line_on_which_it_begins_is_meant() -> None:
    block, dust = Piece(Part.SOLID_BLOCK, Cell(0, LEVEL - 1, 0)), Piece(Part.DUST, Cell(0, LEVEL, 0))
    desk = Desk(plan_of([block, dust]))
    desk.use("line").press(0, 0).drag_to(4, 0)
    assert desk.ghost is not None
    assert desk.ghost.crossed == frozenset()
    assert desk.ghost.strengths[Cell(1, LEVEL, 0)] == 14


def test_a_change_of_level_leads_the_drag_on(desk: Desk, hand: Driver) -> None:
    hand.press(0, 0).drag_to(1, 0)
    desk.level += 1
    hand.drag_to(1, 0).drag_to(3, 0)
    desk.level -= 2
    hand.drag_to(6, 0).release()
    assert [(at.x, at.y - LEVEL) for at in dust_cells(desk)] == [
        (0, 0), (1, 0), (2, 1), (3, 1), (4, 0), (5, -1), (6, -1)
    ]  # fmt: skip


def test_going_back_takes_the_last_cells_off_again(desk: Desk, hand: Driver) -> None:
    hand.press(0, 0).drag_to(4, 0)
    desk.level += 1
    hand.drag_to(5, 0).drag_to(3, 0).drag_to(4, 0).release()
    assert [(at.x, at.y - LEVEL) for at in dust_cells(desk)] == [(0, 0), (1, 0), (2, 0), (3, 0), (4, 1)]


def test_a_path_climbs_one_level_a_column() -> None:
    path = climbed((Cell(0, 64, 0),), Cell(0, 67, 0))
    assert path == (Cell(0, 64, 0),)
    assert climbed(path, Cell(0, 67, 4)) == tuple(Cell(0, min(64 + z, 67), z) for z in range(5))


def test_a_line_over_what_is_there_lays_nothing() -> None:
    block = Piece(Part.SOLID_BLOCK, Cell(0, LEVEL, 0))
    desk = Desk(plan_of([block]))
    desk.use("line").click(0, 0)
    assert desk.done == []
    assert desk.ghost is None


def test_other_keys_mean_nothing(desk: Desk, hand: Driver) -> None:
    assert not hand.tool.key(Key.TURN, Modifiers.NONE)
    assert not hand.tool.key(Key.CYCLE, Modifiers.CTRL)


def test_out_of_reach_is_said_and_nothing_is_laid(desk: Desk, hand: Driver) -> None:
    hand.press(10_000_001, 0)
    assert desk.ghost is None
    hand.release()
    assert desk.done == []
    assert "out of reach" in desk.said[-1]
