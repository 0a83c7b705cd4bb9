"""What the edits of pieces and track do, beyond that they come undone."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model import edits
from model.edits import EditRefused
from model.files.plan_file import parse_plan, plan_bytes
from model.grid import ALL_TURNS, XZ_LIMIT, Cell, Facing, Turn
from model.parts import Mode, Part
from model.pieces import Held, Piece, new_piece
from model.plan import EMPTY_PLAN, Change, Plan, plan_of
from tests.strategies import changes, chosen, drags, filled_plans, turns

A, B, C, D = (Cell(x, 64, 0) for x in range(4))
RAILS = plan_of([Piece(Part.RAIL, A), Piece(Part.BOOSTER_RAIL, B), Piece(Part.RAIL, C)])


def after(change: Change, plan: Plan = RAILS) -> list[Piece]:
    return list(change.applied(plan).pieces)


@given(filled_plans, st.data())
def test_a_label_and_no_change_of_what_was_given(plan: Plan, data: st.DataObject) -> None:
    before, details = list(plan.pieces), plan.details
    change = data.draw(changes(plan))
    change.applied(plan)
    assert change.label[0].isupper()
    assert list(plan.pieces) == before
    assert plan.details == details


def test_a_drag_lays_rails_that_face_its_way() -> None:
    corner = [A, B, B.moved(dz=1), B.moved(dz=2)]
    change = edits.lay_track(EMPTY_PLAN, corner)
    assert change.label == "Lay 4 rails"
    laid = after(change, EMPTY_PLAN)
    assert [piece.at for piece in laid] == corner
    assert [piece.facing for piece in laid] == [Facing.EAST, Facing.EAST, Facing.SOUTH, Facing.SOUTH]


def test_a_drag_skips_what_stands_there_and_goes_on_facing_from_it() -> None:
    change = edits.lay_track(RAILS, [C, D, D.moved(dz=-1)], Part.DETECTOR_RAIL)
    assert change.label == "Lay 2 detector rails"
    assert [(piece.at, piece.facing) for piece in after(change)[3:]] == [
        (D, Facing.EAST),
        (D.moved(dz=-1), Facing.NORTH),
    ]


def test_a_click_lays_one_rail_as_it_is_held() -> None:
    change = edits.lay_track(EMPTY_PLAN, [A], facing=Facing.WEST)
    assert change.label == "Lay 1 rail"
    assert after(change, EMPTY_PLAN) == [Piece(Part.RAIL, A, Facing.WEST)]


@given(drags())
def test_a_drag_over_itself_lays_each_cell_once(drag: list[Cell]) -> None:
    laid = after(edits.lay_track(EMPTY_PLAN, drag), EMPTY_PLAN)
    assert [piece.at for piece in laid] == list(dict.fromkeys(drag))


def test_a_drag_that_jumps_is_a_mistake_of_the_caller() -> None:
    with pytest.raises(ValueError, match="not beside"):
        edits.lay_track(EMPTY_PLAN, [A, C])
    with pytest.raises(ValueError, match="not beside"):
        edits.lay_track(EMPTY_PLAN, [A, B.moved(dy=1)])


def test_a_placed_piece_comes_last_and_replaces() -> None:
    change = edits.place(RAILS, Piece(Part.RAIL, B))
    assert change.label == "Place rail, replacing 1"
    assert [piece.at for piece in after(change)] == [A, C, B]


def test_the_same_piece_again_changes_nothing() -> None:
    assert edits.place(RAILS, Piece(Part.RAIL, A)).is_empty


def test_erasing_nothing_is_empty() -> None:
    assert edits.erase(RAILS, [D]).is_empty
    assert edits.erase(RAILS, [A, A, D]).label == "Erase 1 piece"


def test_moved_pieces_keep_their_place_in_the_order_and_replace_others() -> None:
    change = edits.move(RAILS, [A], 2, 0, 0)
    assert change.label == "Move 1 piece, replacing 1"
    assert [(piece.part, piece.at) for piece in after(change)] == [
        (Part.RAIL, C),
        (Part.BOOSTER_RAIL, B),
    ]
    assert not edits.move(RAILS, [A, B, C], 1, 0, 0).label.endswith("replacing 2")
    assert edits.move(RAILS, [A, B], 0, 0, 0).is_empty


def test_pasted_pieces_come_last_in_their_own_order() -> None:
    copied = edits.copy_pieces(RAILS, [C, A])
    assert [piece.at for piece in copied] == [A, C]
    change = edits.paste(RAILS, [Piece(Part.RAIL, D), Piece(Part.RAIL, A, Facing.EAST)])
    assert change.label == "Paste 2 pieces, replacing 1"
    assert [piece.at for piece in after(change)] == [B, C, D, A]
    with pytest.raises(ValueError, match="two pieces"):
        edits.paste(RAILS, [Piece(Part.RAIL, D), Piece(Part.LAMP, D)])


@pytest.mark.parametrize(
    ("old", "new", "label"),
    [
        (Piece(Part.RAIL, A), Piece(Part.RAIL, A, Facing.EAST), "Turn rail to east"),
        (Piece(Part.REPEATER, A), Piece(Part.REPEATER, A, delay=6), "Set delay of repeater to 6 ticks"),
        (
            Piece(Part.COMPARATOR, A),
            Piece(Part.COMPARATOR, A, mode=Mode.SUBTRACT),
            "Set comparator to subtract",
        ),
        (Piece(Part.RAIL, A), Piece(Part.DETECTOR_RAIL, A), "Change rail to detector rail"),
    ],
)
def test_a_piece_set_anew_keeps_its_rank(old: Piece, new: Piece, label: str) -> None:
    plan = plan_of([old, Piece(Part.RAIL, B)])
    change = edits.set_piece(plan, new)
    assert change.label == label
    assert after(change, plan) == [new, Piece(Part.RAIL, B)]


def test_only_what_stands_there_can_be_set() -> None:
    with pytest.raises(KeyError):
        edits.set_piece(RAILS, Piece(Part.RAIL, D))


@given(filled_plans, turns, st.data())
def test_a_selection_turned_back_is_as_before(plan: Plan, turn: Turn, data: st.DataObject) -> None:
    cells = {piece.at for piece in edits.copy_pieces(plan, data.draw(chosen(plan)))}
    alone = plan_of(edits.copy_pieces(plan, cells))
    turned = edits.turn_pieces(alone, cells, turn).applied(alone)
    back = edits.turn_pieces(turned, {piece.at for piece in turned.pieces}, turn.inverse).applied(turned)
    assert back == alone


def test_a_selection_turns_about_its_middle() -> None:
    ell = plan_of([Piece(Part.RAIL, A), Piece(Part.RAIL, B), Piece(Part.RAIL, C), Piece(Part.RAIL, D)])
    cells = [A, B, C]
    change = edits.turn_pieces(ell, cells, Turn(1))
    assert change.label == "Turn 3 pieces"
    assert [piece.at for piece in after(change, ell)] == [Cell(1, 64, -1), Cell(1, 64, 0), Cell(1, 64, 1), D]
    assert [piece.facing for piece in after(change, ell)][:3] == [Facing.EAST] * 3
    assert edits.turn_pieces(ell, [A, B], Turn(0, True)).label == "Mirror 2 pieces"


def test_rails_in_another_build_order_keep_the_ranks_of_all() -> None:
    block = Piece(Part.SOLID_BLOCK, D)
    plan = plan_of([Piece(Part.RAIL, A), block, Piece(Part.BOOSTER_RAIL, B)])
    change = edits.set_build_order(plan, [(B, Facing.NORTH), (A, Facing.EAST)])
    assert after(change, plan) == [Piece(Part.BOOSTER_RAIL, B), block, Piece(Part.RAIL, A, Facing.EAST)]
    assert change.label == "Set the build order of 2 rails"
    assert edits.set_build_order(plan, [(A, Facing.NORTH), (B, Facing.NORTH)]).is_empty
    with pytest.raises(KeyError):
        edits.set_build_order(plan, [(C, Facing.NORTH)])


def test_reordered_pieces_take_each_others_ranks() -> None:
    change = edits.reorder(RAILS, [C, A])
    assert change.label == "Reorder 2 pieces"
    assert [piece.at for piece in after(change)] == [C, B, A]
    assert edits.reorder(RAILS, [A, C]).is_empty
    with pytest.raises(KeyError):
        edits.reorder(RAILS, [A, D])


def test_blocks_are_added_where_nothing_stands() -> None:
    change = edits.add_blocks(RAILS, [D, A, D, D.moved(dy=-1)])
    assert change.label == "Add 2 blocks"
    assert after(change)[3:] == [Piece(Part.SOLID_BLOCK, D), Piece(Part.SOLID_BLOCK, D.moved(dy=-1))]


FAR = Cell(XZ_LIMIT, 1_023, -XZ_LIMIT)


@pytest.mark.parametrize("step", [(1, 0, 0), (0, 1, 0), (0, 0, -1)])
def test_nothing_goes_out_of_reach(step: tuple[int, int, int]) -> None:
    edge = plan_of([Piece(Part.RAIL, FAR)])
    beyond = Piece(Part.RAIL, FAR.moved(*step))
    for refused in (
        lambda: edits.place(edge, beyond),
        lambda: edits.paste(edge, [beyond]),
        lambda: edits.move(edge, [FAR], *step),
        lambda: edits.move_plan(edge, *step),
        lambda: edits.add_blocks(edge, [beyond.at]),
    ):
        with pytest.raises(EditRefused, match="out of reach"):
            refused()
    assert list(edge.pieces) == [Piece(Part.RAIL, FAR)]


def test_a_plan_at_the_edge_turns() -> None:
    """The limits are the same in x and z, so a turn never leaves them."""
    edge = plan_of([Piece(Part.RAIL, FAR)])
    assert all(len(edits.turn_plan(edge, turn).applied(edge).pieces) == 1 for turn in ALL_TURNS)


def test_parts_point_only_where_they_can() -> None:
    with pytest.raises(EditRefused, match="A repeater cannot point up"):
        edits.place(RAILS, Piece(Part.REPEATER, D, Facing.UP))
    with pytest.raises(EditRefused, match="2, 4, 6 or 8"):
        edits.place(RAILS, Piece(Part.REPEATER, D, delay=3))


@pytest.mark.parametrize(
    ("part", "holds", "message"),
    [
        (Part.HOPPER, [Held("salt", 64 * 5)], None),
        (Part.HOPPER, [Held("salt", 1)] * 5, None),
        (Part.HOPPER, [Held("salt", 64 * 5 + 1)], "5 slots"),
        (Part.HOPPER, [Held("salt", 1)] * 6, "5 slots"),
        (Part.BARREL, [Held("salt", 64)] * 27, None),
        (Part.RAIL, [Held("salt", 1)], "0 slots"),
        (Part.HOPPER, [Held("salt", 0)], "cannot be 0"),
        (Part.HOPPER, [Held("", 1)], "1 to 88 characters"),
        (Part.HOPPER, [Held("waybill:Salt", 22)], None),
        (Part.HOPPER, [Held("waybill:", 22)], "empty"),
        (Part.HOPPER, [Held("waybill:a/b", 22)], "no slash"),
        (Part.HOPPER, [Held("a\nb", 22)], "control"),
    ],
)
def test_a_container_holds_what_a_file_can_say(part: Part, holds: list[Held], message: str | None) -> None:
    piece = new_piece(part, D)
    piece = msgspec.structs.replace(piece, holds=tuple(holds))
    if message is not None:
        with pytest.raises(EditRefused, match=message):
            edits.place(RAILS, piece)
        return
    plan = edits.place(RAILS, piece).applied(RAILS)
    assert parse_plan(plan_bytes(plan), "held.plan.json") == plan


def test_what_only_others_have_is_a_mistake_of_the_caller() -> None:
    """Such a piece would be lost in saving, or be refused in opening."""
    for stray in ({"delay": 4}, {"mode": Mode.SUBTRACT}, {"wooden": True}):
        with pytest.raises(ValueError, match="of its own"):
            edits.place(RAILS, Piece(Part.RAIL, D, **stray))


def test_a_plan_takes_so_many_pieces(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("model.edits.refusals.PIECE_LIMIT", 3)
    with pytest.raises(EditRefused, match="3 pieces at most"):
        edits.place(RAILS, Piece(Part.RAIL, D))
    assert len(after(edits.place(RAILS, Piece(Part.LAMP, A)))) == 3
