"""Choosing, moving, copying, nudging and turning pieces."""

from __future__ import annotations

from app.tools.events import Key, Modifiers
from model.grid import Cell
from model.parts import Part
from tests.app.tools.desk import LEVEL, Desk


def cells(*places: tuple[int, int]) -> frozenset[Cell]:
    return frozenset(Cell(x, LEVEL, z) for x, z in places)


def test_a_click_chooses_one_piece_and_a_click_beside_none(junction: Desk) -> None:
    hand = junction.use("select").click(1, 0)
    assert junction.selection == cells((1, 0))
    hand.click(5, 5)
    assert junction.selection == frozenset()


def test_shift_takes_pieces_in_and_out(junction: Desk) -> None:
    hand = junction.use("select").click(1, 0).click(0, 1, Modifiers.SHIFT)
    assert junction.selection == cells((1, 0), (0, 1))
    hand.click(1, 0, Modifiers.SHIFT)
    assert junction.selection == cells((0, 1))


def test_a_band_chooses_what_it_holds(junction: Desk) -> None:
    hand = junction.use("select").press(-1, 3).drag_to(1, 1)
    assert junction.band == (Cell(-1, LEVEL, 3), Cell(1, LEVEL, 1))
    hand.release()
    assert junction.selection == cells((0, 1), (0, 2))
    assert junction.band is None


def test_a_drag_moves_the_chosen_pieces_in_one_step(junction: Desk) -> None:
    junction.use("select").press(-1, 3).drag_to(1, 1).release().press(0, 1).drag_to(3, 2).release()
    assert [change.label for change in junction.done] == ["Move 2 pieces"]
    assert junction.selection == cells((3, 2), (3, 3))
    assert Cell(0, LEVEL, 1) not in junction.plan.pieces


def test_ctrl_drag_copies(junction: Desk) -> None:
    hand = junction.use("select").click(1, 0)
    hand.press(1, 0).drag_to(1, 4, Modifiers.CTRL).release(Modifiers.CTRL)
    assert [change.label for change in junction.done] == ["Copy 1 piece"]
    assert junction.plan.pieces.part_at(Cell(1, LEVEL, 0)) is Part.RAIL
    assert junction.selection == cells((1, 4))


def test_a_piece_carried_there_and_back_is_no_step(junction: Desk) -> None:
    junction.use("select").press(1, 0).drag_to(4, 4).drag_to(1, 0).release()
    assert not junction.done


def test_a_band_is_drawn_from_a_cell_that_is_chosen_and_empty(junction: Desk) -> None:
    """As it is where the laying of track was taken back, which rings where it lay."""
    junction.selection = cells((-1, 3), (0, 3))
    hand = junction.use("select").press(-1, 3).drag_to(1, 1)
    assert junction.band == (Cell(-1, LEVEL, 3), Cell(1, LEVEL, 1))
    hand.release()
    assert junction.selection == cells((0, 1), (0, 2))
    assert not junction.done


def test_what_is_chosen_during_a_move_is_not_moved(junction: Desk) -> None:
    """A key may choose everything while the button is down; what was shown on the way is moved."""
    hand = junction.use("select").press(2, 0).release().press(2, 0).drag_to(4, 4)
    junction.selection = frozenset(piece.at for piece in junction.plan.pieces)
    hand.release()
    assert [change.label for change in junction.done] == ["Move 1 piece"]
    assert junction.selection == cells((4, 4))


def test_ctrl_and_an_arrow_nudge(junction: Desk) -> None:
    junction.use("select").click(2, 0).key(Key.RIGHT, Modifiers.CTRL).key(Key.UP, Modifiers.CTRL)
    assert len(junction.done) == 2
    assert junction.selection == cells((3, -1))


def test_turning_four_times_comes_back(junction: Desk) -> None:
    before = junction.plan
    hand = junction.use("select").press(-3, -1).drag_to(3, 3).release()
    for _ in range(4):
        hand.key(Key.TURN)
    assert junction.plan == before
    assert len(junction.done) == 4


def test_dropping_a_band_chooses_what_was_chosen_before(junction: Desk) -> None:
    hand = junction.use("select").click(1, 0).press(-3, 3).drag_to(3, 1)
    hand.tool.cancel()
    assert junction.selection == cells((1, 0))


def test_pasting_turns_and_mirrors_what_is_carried(junction: Desk) -> None:
    pieces = tuple(piece for piece in junction.plan.pieces if piece.at.z > 0)
    hand = junction.use_paste(pieces).hover(10, 10).key(Key.TURN).key(Key.MIRROR).click(10, 10)
    assert [change.label for change in junction.done] == ["Paste 2 pieces"]
    assert len({cell.z for cell in junction.selection}) == 1
    assert not hand.tool.is_busy
