"""Placing the part in hand, and what the keys make of it."""

from __future__ import annotations

from app.tools.events import Key
from app.tools.hand import Hand
from model.grid import Cell, Facing
from model.parts import TRAITS, Mode, Part
from model.pieces import Piece
from tests.app.tools.desk import LEVEL, Desk


def test_a_click_places_what_is_in_hand_with_its_delay(desk: Desk) -> None:
    desk.take_in_hand(Hand().holding(Part.REPEATER))
    desk.use("place").key(Key.TURN).key(Key.CYCLE).click(3, 4)
    assert desk.plan.pieces.get(Cell(3, LEVEL, 4)) == Piece(
        Part.REPEATER, Cell(3, LEVEL, 4), Facing.EAST, delay=4
    )
    assert [change.label for change in desk.done] == ["Place repeater"]


def test_a_drag_places_a_row_in_one_step(desk: Desk) -> None:
    desk.use("place").press(0, 0).drag_to(3, 0).release()
    assert [change.label for change in desk.done] == ["Place 4 pieces"]
    assert len(desk.plan.pieces) == 4


def test_the_part_hovers_before_it_is_placed_and_goes_with_the_tool(desk: Desk) -> None:
    desk.use("place").hover(1, 1)
    assert desk.ghost is not None
    desk.use("select")
    assert desk.ghost is None


def test_turning_while_dragging_turns_the_whole_row(desk: Desk) -> None:
    desk.take_in_hand(Hand().holding(Part.COMPARATOR))
    desk.use("place").press(0, 0).drag_to(1, 0).key(Key.TURN).key(Key.CYCLE).release()
    assert {(piece.facing, piece.mode) for piece in desk.plan.pieces} == {(Facing.EAST, Mode.SUBTRACT)}


def test_a_part_turns_through_all_its_facings_and_comes_back() -> None:
    for part, traits in TRAITS.items():
        hand = Hand().holding(part)
        seen = [hand.facing]
        for _ in traits.facings:
            hand = hand.turned()
            seen.append(hand.facing)
        assert set(seen) == set(traits.facings)
        assert seen[0] == seen[-1]


def test_parts_that_stand_or_hang_come_into_the_hand_so() -> None:
    assert Hand(facing=Facing.EAST).holding(Part.TORCH).facing is Facing.UP
    assert Hand(facing=Facing.EAST).holding(Part.HOPPER).facing is Facing.DOWN
    assert Hand(facing=Facing.EAST).holding(Part.REPEATER).facing is Facing.EAST
