"""Putting modules down, and what stands in their way."""

from __future__ import annotations

import pytest

from app.tools.events import Key
from app.tools.module_hand import ModuleHand
from model.edits import place
from model.grid import Cell, Facing, Turn
from model.parts import Part
from model.pieces import Held, Piece
from model.plan import EMPTY_PLAN, plan_of
from model.wiring.modules.modules import load_module
from tests.app.tools.desk import LEVEL, Desk


@pytest.fixture
def latch_desk(desk: Desk) -> Desk:
    desk.take_module(ModuleHand("latch"))
    return desk


def test_a_click_puts_the_module_down_in_one_step(latch_desk: Desk) -> None:
    latch_desk.use("module").hover(3, 4).click(3, 4)
    (change,) = latch_desk.done
    assert change.label == "Place module latch"
    assert tuple(latch_desk.plan.pieces) == load_module("latch").turned(Turn(), Cell(3, LEVEL, 4)).pieces
    latch_desk.layout.follow(change.inverse())
    assert latch_desk.plan == EMPTY_PLAN


def test_the_ghost_says_on_which_levels_a_module_stands(desk: Desk) -> None:
    cells = load_module("reader").turned(Turn(), Cell(0, LEVEL, 0)).cells
    desk.use("module").hover(0, 0)
    assert desk.ghost is not None
    low, high = min(cell.y for cell in cells), max(cell.y for cell in cells)
    assert desk.ghost.note == f"levels {low} to {high}"
    assert high - low > 2, "more than what is drawn of the neighbour levels"


def test_the_module_stays_in_hand_and_does_not_hover_over_itself(latch_desk: Desk) -> None:
    hand = latch_desk.use("module").click(0, 0).hover(0, 0)
    assert latch_desk.ghost is None
    hand.hover(1, 0)
    assert latch_desk.ghost is not None
    hand.click(20, 0)
    assert len(latch_desk.done) == 2


def test_keys_turn_and_mirror_it_before_and_during_the_press(latch_desk: Desk) -> None:
    latch_desk.use("module").hover(0, 0).key(Key.TURN).press(0, 0).key(Key.MIRROR).release()
    expected = load_module("latch").turned(Turn(1).then(Turn(0, mirror=True)), Cell(0, LEVEL, 0))
    assert tuple(latch_desk.plan.pieces) == expected.pieces


def test_a_drag_carries_it_to_where_the_button_goes_up(latch_desk: Desk) -> None:
    latch_desk.use("module").press(0, 0).drag_to(5, 5).release()
    assert latch_desk.plan.pieces.part_at(Cell(6, LEVEL, 5)) is Part.COMPARATOR


def test_a_piece_in_the_way_is_crossed_and_said_and_nothing_is_put_down(latch_desk: Desk) -> None:
    latch_desk.commit(place(latch_desk.plan, Piece(Part.LAMP, Cell(1, LEVEL, 1))))
    hand = latch_desk.use("module").hover(0, 0)
    assert latch_desk.ghost is not None
    assert latch_desk.ghost.crossed == {Cell(1, LEVEL, 1)}
    assert latch_desk.said == ["The lamp at 1 64 1 stands in the way."]
    hand.click(0, 0)
    assert len(latch_desk.done) == 1
    hand.hover(0, 9)
    assert latch_desk.ghost.crossed == frozenset()
    assert latch_desk.said[-1] == ""


def test_several_pieces_in_the_way_are_counted(latch_desk: Desk) -> None:
    for x in (1, 2):
        latch_desk.commit(place(latch_desk.plan, Piece(Part.LAMP, Cell(x, LEVEL, 0))))
    latch_desk.use("module").hover(0, 0)
    assert latch_desk.said == ["The lamp at 2 64 0 stands in the way, and 1 more."]


def test_what_would_couple_is_crossed_and_said(latch_desk: Desk) -> None:
    """Dust beside the corner of the ring would run on with it."""
    foreign = Cell(3, LEVEL, 1)
    latch_desk.commit(place(latch_desk.plan, Piece(Part.DUST, foreign)))
    hand = latch_desk.use("module").hover(0, 0)
    assert latch_desk.ghost is not None
    assert latch_desk.ghost.crossed >= {Cell(2, LEVEL, 1)}
    assert "3 64 1" in latch_desk.said[-1]
    hand.click(0, 0)
    assert len(latch_desk.done) == 1


def test_lines_that_end_at_its_ports_are_meant(latch_desk: Desk) -> None:
    for port in load_module("latch").turned(Turn(), Cell(0, LEVEL, 0)).ports:
        latch_desk.commit(place(latch_desk.plan, Piece(Part.DUST, port.at)))
    latch_desk.use("module").click(0, 0)
    assert latch_desk.done[-1].label == "Place module latch"


def test_what_says_nothing_of_it_is_left_alone(latch_desk: Desk) -> None:
    """A message of others stays while the module hovers where it may go."""
    latch_desk.say("Copied 2 pieces.")
    latch_desk.use("module").hover(0, 0).hover(1, 0)
    assert latch_desk.said == ["Copied 2 pieces."]


def test_out_of_reach_nothing_hovers_and_it_is_said(latch_desk: Desk) -> None:
    latch_desk.level = -1_024
    latch_desk.use("module").click(0, 0)
    assert latch_desk.ghost is None
    assert not latch_desk.done
    assert "out of reach" in latch_desk.said[-1]


def test_a_reader_goes_under_track_that_is_there(desk: Desk) -> None:
    cells = range(-6, 6)
    blocks = [Piece(Part.SOLID_BLOCK, Cell(x, LEVEL - 1, 0)) for x in cells]
    rails = [Piece(Part.RAIL, Cell(x, LEVEL, 0), Facing.EAST) for x in cells]
    track = Desk(plan_of([*blocks, *rails]))
    track.take_module(ModuleHand().setting("waybill", "Fen"))
    track.use("module").click(0, 0)
    (change,) = track.done
    assert change.label == "Place module reader"
    hopper = track.plan.pieces.get(Cell(0, LEVEL - 1, 0))
    assert hopper is not None
    assert hopper.holds == (Held("waybill:Fen", 22),)
    assert track.plan.pieces.part_at(Cell(0, LEVEL, 0)) is Part.RAIL
    assert sum(piece.part is Part.DETECTOR_RAIL for piece in track.plan.pieces) == 1
    track.layout.follow(change.inverse())
    assert track.plan == plan_of([*blocks, *rails])


def test_parameters_belong_to_their_module() -> None:
    hand = ModuleHand("off-delay", turn=Turn(2)).setting("hold", "34")
    assert hand.holding("off-delay") is hand
    other = hand.holding("latch")
    assert (other.name, dict(other.parameters), other.turn) == ("latch", {}, Turn(2))
    assert len(hand.module(Cell(0, 0, 0)).pieces) > len(ModuleHand("off-delay").module(Cell(0, 0, 0)).pieces)
