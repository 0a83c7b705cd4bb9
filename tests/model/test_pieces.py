"""The persistent ordered set of pieces, and changes over it."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.grid import Cell, Facing
from model.parts import TRAITS, Part
from model.pieces import Piece, Pieces, Placed, new_piece
from model.plan import Change, Details, Plan, plan_of
from tests.strategies import piece_lists, plans

A, B, C = (Piece(Part.RAIL, Cell(x, 64, 0)) for x in range(3))


@given(piece_lists())
def test_pieces_come_in_the_order_given(pieces: list[Piece]) -> None:
    ordered = Pieces.of(pieces)
    assert list(ordered) == pieces
    assert len(ordered) == len(pieces)
    assert all(ordered.get(piece.at) is piece and piece.at in ordered for piece in pieces)


@given(piece_lists(least=2), st.data())
def test_equal_when_the_same_pieces_come_in_the_same_order(pieces: list[Piece], data: st.DataObject) -> None:
    other = data.draw(st.permutations(pieces))
    assert (Pieces.of(other) == Pieces.of(pieces)) is (other == pieces)


def test_ranks_have_gaps_and_do_not_count() -> None:
    gapped = Pieces.of([A, B, C]).replaced([Placed(1, B)], [])
    assert gapped == Pieces.of([A, C])
    assert hash(gapped) == hash(Pieces.of([A, C]))
    assert gapped != Pieces.of([C, A])


def test_a_changed_copy_leaves_the_first_alone() -> None:
    first = Pieces.of([A, B])
    second = first.replaced([Placed(0, A)], [Placed(first.next_rank, C)])
    assert list(first) == [A, B]
    assert list(second) == [B, C]
    assert second.get(A.at) is None
    assert second.part_at(A.at) is None
    assert second.placed(C.at) == Placed(2, C)


def test_a_piece_back_at_its_rank_comes_where_it_was() -> None:
    first = Pieces.of([A, B, C])
    without = first.replaced([Placed(1, B)], [])
    assert without.replaced([], [Placed(1, B)]) == first


def test_a_new_rank_is_after_all_others_even_after_a_removal() -> None:
    pieces = Pieces.of([A, B]).replaced([Placed(1, B)], [])
    assert list(pieces.replaced([], [Placed(pieces.next_rank, C)])) == [A, C]


def test_two_pieces_never_share_a_cell() -> None:
    with pytest.raises(ValueError, match="two pieces"):
        Pieces.of([A, A])
    with pytest.raises(ValueError, match="two pieces"):
        Pieces.of([A]).replaced([], [Placed(1, A)])


def test_what_is_not_there_cannot_be_taken() -> None:
    with pytest.raises(KeyError):
        Pieces.of([A]).replaced([Placed(0, B)], [])


def test_a_new_piece_faces_as_its_part_does_at_first() -> None:
    assert new_piece(Part.TORCH, A.at).facing is Facing.UP
    assert new_piece(Part.HOPPER, A.at).facing is Facing.DOWN
    assert new_piece(Part.RAIL, A.at, Facing.EAST).facing is Facing.EAST
    assert all(traits.first_facing in traits.facings for traits in TRAITS.values())


@given(plans())
def test_a_change_that_puts_back_what_it_takes_is_empty(plan: Plan) -> None:
    entries = plan.pieces.in_order()
    same = Change("Move 0 pieces", entries, entries, plan.details, plan.details)
    assert same.is_empty
    assert same.applied(plan) == plan
    assert same.cells == {piece.at for piece in plan.pieces}


def test_a_change_of_details_alone_keeps_the_pieces() -> None:
    plan = plan_of([A, B])
    change = Change("Set title", before=plan.details, after=Details(title="Fen"))
    assert not change.is_empty
    assert change.applied(plan).pieces is plan.pieces
    assert change.inverse().applied(change.applied(plan)) == plan
    assert change.inverse().label == change.label


def test_the_order_after_many_edits_is_that_of_the_ranks() -> None:
    """Now and then somebody asks for the order, mostly after several edits."""
    chance = random.Random(1)
    ranks = iter(chance.sample(range(40, 100_000), 2_000))
    kept = {rank: Piece(Part.GLASS, Cell(rank, 64, 0)) for rank in range(40)}
    pieces = Pieces.of(kept.values())
    for step in range(600):
        taken = [Placed(rank, kept.pop(rank)) for rank in chance.sample(sorted(kept), 3)]
        again = Placed(taken[0].rank, Piece(Part.LAMP, taken[0].piece.at))
        new = [Placed(next(ranks), Piece(Part.SLAB, Cell(step, 65, z))) for z in range(2)]
        pieces = pieces.replaced(taken, [again, *new])
        kept |= dict([again, *new])
        if chance.random() < 0.1:
            assert list(pieces.in_order()) == [Placed(*entry) for entry in sorted(kept.items())]
