"""The shapes that a rail can come to have: none is left out, none that needs a missing neighbour is in."""

from __future__ import annotations

import random

import pytest

from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.track.layout import Layout
from model.track.possible import possible_shapes
from model.track.shapes import Shape

HERE = Cell(0, 64, 0)
STRAIGHT = (Shape.NORTH_SOUTH, Shape.EAST_WEST)
PARTS = (Part.RAIL, Part.RAIL, Part.BOOSTER_RAIL, Part.DETECTOR_RAIL)


def among(*others: Cell, part: Part = Part.RAIL) -> tuple[Shape, ...]:
    """What a rail between these others can become."""
    pieces = [Piece(part, HERE), *(Piece(Part.RAIL, cell) for cell in others)]
    return possible_shapes(Layout(plan_of(pieces)), HERE)


def test_a_lone_rail_lies_along_either_axis() -> None:
    """World rules, section 3 (common practice, no source): it lies along the axis that the builder faces."""
    assert among() == STRAIGHT


def test_a_curve_needs_a_rail_at_both_ends() -> None:
    """World rules, section 3 (common practice, no source)."""
    assert among(Cell(1, 64, 0)) == STRAIGHT
    assert among(Cell(1, 64, 0), Cell(0, 64, 1)) == (*STRAIGHT, Shape.SOUTH_EAST)
    assert among(Cell(1, 63, 0), Cell(0, 65, -1)) == (*STRAIGHT, Shape.RISING_NORTH, Shape.NORTH_EAST)


def test_a_rail_with_four_neighbours_can_take_every_curve() -> None:
    around = [HERE.moved(dx=1), HERE.moved(dx=-1), HERE.moved(dz=1), HERE.moved(dz=-1)]
    curves = (Shape.SOUTH_EAST, Shape.SOUTH_WEST, Shape.NORTH_EAST, Shape.NORTH_WEST)
    assert among(*around) == (*STRAIGHT, *curves)


@pytest.mark.parametrize("part", [Part.BOOSTER_RAIL, Part.DETECTOR_RAIL])
def test_booster_and_detector_rails_never_curve(part: Part) -> None:
    """World rules, section 2 (common practice, no source)."""
    assert among(Cell(1, 64, 0), Cell(0, 65, 1), part=part) == (*STRAIGHT, Shape.RISING_SOUTH)


def test_where_no_rail_stands_there_is_no_answer() -> None:
    with pytest.raises(KeyError):
        possible_shapes(Layout(plan_of([])), HERE)


def random_plan(chance: random.Random) -> Plan:
    cells = [Cell(x, y, z) for x in range(3) for z in range(3) for y in (64, 65, 66)]
    count = chance.randrange(2, 11)
    facings = (Facing.NORTH, Facing.EAST)
    chosen = chance.sample(cells, count)
    return plan_of([Piece(chance.choice(PARTS), cell, chance.choice(facings)) for cell in chosen])


def test_no_order_gives_another_shape() -> None:
    chance = random.Random(11)
    seen: set[Shape] = set()
    for _ in range(3_000):
        plan = random_plan(chance)
        layout = Layout(plan)
        for cell, shape in layout.shapes.items():
            seen.add(shape)
            assert shape in possible_shapes(layout, cell), (cell, shape, list(plan.pieces))
    assert seen == set(Shape)
