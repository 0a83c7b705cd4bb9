"""What the pictures of the steps show: what is new, what is bent, and what stands by then."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings

from model.grid import Cell, Facing
from model.parts import RAILS, Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.routing.junction import Junction
from model.sheet import build_sheet, materials
from model.sheet.steps import StepPicture
from model.track.layout import Layout
from model.track.shapes import Shape
from tests.strategies import plans, tracks

EAST, NORTH = Facing.EAST, Facing.NORTH
CORNER = plan_of(
    [
        *(Piece(Part.RAIL, Cell(x, 64, 0), EAST) for x in range(3)),
        *(Piece(Part.RAIL, Cell(2, 64, z), NORTH) for z in (1, 2)),
    ]
)


def pictures_of(plan: Plan) -> tuple[StepPicture, ...]:
    return build_sheet(Junction(plan), ()).steps


@settings(max_examples=40, deadline=None)
@given(plans() | tracks().map(plan_of))
def test_everything_is_new_once_and_stands_from_then_on(plan: Plan) -> None:
    """Counts over the plan, over what the pictures show as new, and the list of materials."""
    placed: list[Piece] = []
    for picture in pictures_of(plan):
        placed += [one.piece for one in picture.new]
        assert [*picture.standing] == placed
    assert Counter(placed) == Counter(plan.pieces)
    counts = Counter(piece.part for piece in placed)
    assert counts == {material.part: material.pieces for material in materials(plan).parts}


@settings(max_examples=40, deadline=None)
@given(plans() | tracks().map(plan_of))
def test_rails_lie_as_a_plan_of_what_stands_has_them(plan: Plan) -> None:
    """Each picture against a layout worked out afresh from the pieces placed so far."""
    before: dict[Cell, Shape] = {}
    for picture in pictures_of(plan):
        shapes = dict(Layout(plan_of([*picture.standing])).shapes)
        assert dict(picture.shapes) == shapes
        bent = {cell for cell, shape in before.items() if shapes[cell] is not shape}
        assert {one.piece.at for one in picture.bent} == bent
        for one in (*picture.new, *picture.bent):
            assert (one.rail is not None) is (one.piece.part in RAILS)
            assert one.rail is None or one.rail.shape is shapes[one.piece.at]
        before = shapes
    assert before == dict(Layout(plan).shapes)


@settings(max_examples=40, deadline=None)
@given(plans() | tracks().map(plan_of))
def test_numbers_and_arrows_are_those_of_the_levels_and_rise(plan: Plan) -> None:
    sheet = build_sheet(Junction(plan), ())
    marks = {one.piece.at: one.rail for page in sheet.levels for one in page.pieces}
    numbers: list[int] = []
    for picture in sheet.steps:
        for one in picture.new:
            rail = marks[one.piece.at]
            if one.rail is not None and rail is not None:
                assert (one.rail.number, one.rail.faces) == (rail.number, rail.faces)
                numbers += [] if one.rail.number is None else [one.rail.number]
    assert numbers == [*range(1, len(numbers) + 1)]


def test_bounds_hold_what_is_new_and_what_it_bends() -> None:
    """The end of a track bends to the rail that comes beside it: common practice, no source."""
    bending = [picture for picture in pictures_of(CORNER) if picture.bent]
    assert bending
    for picture in bending:
        bounds = picture.bounds
        for one in (*picture.new, *picture.bent):
            assert bounds.west <= one.piece.at.x <= bounds.east
            assert bounds.north <= one.piece.at.z <= bounds.south


def test_a_cell_is_told_as_it_stands_at_that_step() -> None:
    first, *_, last = pictures_of(CORNER)
    later = last.new[-1].piece.at
    assert first.at(later) is None
    shown = last.at(later)
    assert shown is not None
    assert shown.piece.part is Part.RAIL
    assert shown.rail is not None
