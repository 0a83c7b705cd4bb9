"""What differs between two plans, against the files of both read anew and Python's own dictionaries."""

from __future__ import annotations

import json
from collections.abc import Mapping
from random import Random
from typing import Any

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.comparing import (
    Kind,
    compare,
    compare_as_built,
    difference_at,
    differences_beside,
    placed_elsewhere,
)
from model.files.plan_file import plan_bytes
from model.grid import Cell, Facing
from model.parts import LEVEL, Part
from model.pieces import Piece
from model.plan import Details, Plan, plan_of
from model.track.layout import Layout
from model.track.shapes import Shape
from tests import strategies

few = settings(max_examples=30)
Written = Mapping[tuple[int, ...], dict[str, Any]]


@st.composite
def pairs(draw: st.DrawFn) -> tuple[Plan, Plan]:
    """Two plans with much in common: of the first some pieces stay, in another order, and some are turned."""
    before = draw(strategies.piece_lists(most=8) | strategies.rail_lists(most=12))
    chance = Random(draw(st.integers(0, 2**16)))
    kept = chance.sample(before, chance.randint(0, len(before)))
    turned = [msgspec.structs.replace(piece, facing=chance.choice(LEVEL)) for piece in kept]
    after = {pair[0].at: chance.choice(pair) for pair in zip(kept, turned, strict=True)}
    after |= {piece.at: piece for piece in draw(strategies.piece_lists(most=4))}
    return plan_of(before), plan_of(list(after.values()))


def written(plan: Plan) -> Written:
    """The pieces of the plan's file by cell, read by the standard library; it keeps the file's order."""
    return {tuple(piece["at"]): piece for piece in json.loads(plan_bytes(plan))["pieces"]}


@few
@given(pairs())
def test_it_is_what_views_of_dictionaries_say_of_the_two_files(pair: tuple[Plan, Plan]) -> None:
    """Source: set operations on the views of ``dict``, Python's standard library."""
    old, new = map(written, pair)
    found = compare(pair[0].pieces, pair[1].pieces)
    cells = {kind: [each.at for each in found if each.kind is kind] for kind in Kind}
    assert cells[Kind.TAKEN] == [Cell(*at) for at in old if at not in new]
    assert cells[Kind.PLACED] == [Cell(*at) for at in new if at not in old]
    both = [at for at in new if at in old.keys() & new.keys() and new[at] != old[at]]
    stay = [each.at for each in found if each.kind in (Kind.TURNED, Kind.CHANGED)]
    assert stay == [Cell(*at) for at in both]
    for at in both:
        keys = {key for key in old[at].keys() | new[at].keys() if old[at].get(key) != new[at].get(key)}
        assert (Cell(*at) in cells[Kind.TURNED]) == (keys == {"facing"})
    assert not cells[Kind.RESHAPED]


@few
@given(pairs())
def test_made_to_the_earlier_plan_it_gives_the_later_one(pair: tuple[Plan, Plan]) -> None:
    cells = {piece.at: piece for piece in pair[0].pieces}
    for each in compare(pair[0].pieces, pair[1].pieces):
        if each.before is not None:
            assert cells.pop(each.before.at) == each.before
        if each.after is not None:
            cells[each.after.at] = each.after
    assert cells == {piece.at: piece for piece in pair[1].pieces}


@few
@given(pairs())
def test_a_plan_against_itself_and_the_two_exchanged(pair: tuple[Plan, Plan]) -> None:
    before, after = map(Layout, pair)
    assert compare_as_built(before, before) == ()
    there, back = compare_as_built(before, after), compare_as_built(after, before)
    assert {each.at: each.inverse for each in there} == {each.at: each for each in back}


@few
@given(pairs())
def test_rails_lie_otherwise_where_the_shapes_as_built_differ(pair: tuple[Plan, Plan]) -> None:
    """Source: the shapes of both plans, each worked out by itself, and the views of ``dict``."""
    before, after = map(Layout, pair)
    old, new = before.shapes, after.shapes
    bent = [each for each in compare_as_built(before, after) if each.lay is not None]
    found = {each.at: (each.lay, each.lies) for each in bent}
    assert found == {at: (old[at], new[at]) for at in old.keys() & new.keys() if old[at] != new[at]}
    for at in old.keys() | new.keys():
        each = difference_at(before, after, at)
        assert (each is None) == (before.plan.pieces.get(at) == after.plan.pieces.get(at) and at not in found)


@pytest.mark.parametrize(
    ("before", "after", "kind"),
    [
        ({}, {"facing": Facing.EAST}, Kind.TURNED),
        ({}, {"delay": 4}, Kind.CHANGED),
        ({}, {"delay": 4, "facing": Facing.EAST}, Kind.CHANGED),
        ({}, {"part": Part.COMPARATOR}, Kind.CHANGED),
        ({}, {"kept": (("painted", '"green"'),)}, Kind.CHANGED),
    ],
)
def test_turned_means_that_the_facing_alone_differs(
    before: dict[str, Any], after: dict[str, Any], kind: Kind
) -> None:
    base = Piece(Part.REPEATER, Cell(0, 64, 0))
    plans = [plan_of([msgspec.structs.replace(base, **changed)]) for changed in (before, after)]
    assert [each.kind for each in compare(plans[0].pieces, plans[1].pieces)] == [kind]


def test_another_order_alone_makes_rails_lie_otherwise() -> None:
    """A rail with three neighbours curves to the two that came first (see the rules of track)."""
    west, east, south, middle = Cell(-1, 64, 0), Cell(1, 64, 0), Cell(0, 64, 1), Cell(0, 64, 0)
    rails = {
        west: Piece(Part.RAIL, west, Facing.EAST),
        east: Piece(Part.RAIL, east, Facing.EAST),
        south: Piece(Part.RAIL, south),
        middle: Piece(Part.RAIL, middle, Facing.EAST),
    }
    first = plan_of([rails[cell] for cell in (west, middle, east, south)])
    second = plan_of([rails[cell] for cell in (west, middle, south, east)])
    (found,) = compare_as_built(Layout(first), Layout(second))
    assert (found.kind, found.at, found.lay, found.lies) == (
        Kind.RESHAPED,
        middle,
        Shape.EAST_WEST,
        Shape.SOUTH_WEST,
    )
    assert compare(first.pieces, second.pieces) == ()
    assert placed_elsewhere(first.pieces, second.pieces) == (south,)


@few
@given(st.permutations(range(7)), st.permutations(range(7)))
def test_no_fewer_pieces_can_come_elsewhere(before: list[int], after: list[int]) -> None:
    """Against the longest common subsequence of the two orders, by the textbook recurrence (from memory)."""
    orders = [plan_of([Piece(Part.GLASS, Cell(n, 64, 0)) for n in order]).pieces for order in (before, after)]
    table = [[0] * 8 for _ in range(8)]
    for i, old in enumerate(before):
        for j, new in enumerate(after):
            table[i + 1][j + 1] = table[i][j] + 1 if old == new else max(table[i][j + 1], table[i + 1][j])
    moved = placed_elsewhere(*orders)
    assert len(moved) == 7 - table[7][7]
    stay = [piece.at for piece in orders[1] if piece.at not in moved]
    assert stay == [piece.at for piece in orders[0] if piece.at not in moved]


@few
@given(strategies.details(), strategies.details())
def test_beside_the_pieces(before: Details, after: Details) -> None:
    """Source: the two files read by the standard library, arms and routes by name."""
    old, new = (json.loads(plan_bytes(plan_of([], details))) for details in (before, after))
    found = differences_beside(before, after)
    assert differences_beside(before, before) == ()
    for what, key in (("arm", "name"), ("route", "from")):
        named = [{entry[key]: entry for entry in file.get(what + "s", [])} for file in (old, new)]
        differing = {name for name in named[0] | named[1] if named[0].get(name) != named[1].get(name)}
        assert {each.name for each in found if each.what == what} == differing
    assert any(each.what == "title" for each in found) == (old.get("title", "") != new.get("title", ""))
    assert any(each.what == "running side" for each in found) == (
        old.get("running_side") != new.get("running_side")
    )
    assert any(each.what == "sheet" for each in found) == (old.get("sheet") != new.get("sheet"))
