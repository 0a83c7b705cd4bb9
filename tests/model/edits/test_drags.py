"""The track that drags give: curves where the drag turns, as people expect."""

from __future__ import annotations

import pytest

from model.edits import lay_track
from model.grid import Cell
from model.parts import Part
from model.plan import EMPTY_PLAN
from model.track.layout import Layout

Drag = list[tuple[int, int]]
LINE: Drag = [(0, 0), (1, 0), (2, 0)]


def shapes(*drags: Drag, part: Part = Part.RAIL) -> dict[tuple[int, int], str]:
    plan = EMPTY_PLAN
    for drag in drags:
        plan = lay_track(plan, [Cell(x, 64, z) for x, z in drag], part).applied(plan)
    return {(cell.x, cell.z): shape.word for cell, shape in Layout(plan).shapes.items()}


def test_a_drag_round_corners_closes_a_ring() -> None:
    ring = [*LINE, (2, 1), (2, 2), (1, 2), (0, 2), (0, 1), (0, 0)]
    assert shapes(ring) == {
        (0, 0): "south-east",
        (1, 0): "east-west",
        (2, 0): "south-west",
        (2, 1): "north-south",
        (2, 2): "north-west",
        (1, 2): "east-west",
        (0, 2): "north-east",
        (0, 1): "north-south",
    }


def test_a_drag_back_from_the_other_end_gives_the_same_track() -> None:
    corner = [*LINE, (2, 1), (2, 2)]
    assert shapes(corner) == shapes(corner[::-1])


@pytest.mark.parametrize("part", [Part.RAIL, Part.BOOSTER_RAIL, Part.DETECTOR_RAIL])
def test_a_straight_drag_lies_straight(part: Part) -> None:
    assert set(shapes(LINE, part=part).values()) == {"east-west"}
    assert set(shapes([(0, 0), (0, 1), (0, 2)], part=part).values()) == {"north-south"}


def test_a_drag_off_a_full_rail_points_at_it() -> None:
    """The rail in the line has no room, so only the facing says how the first one beside it lies."""
    branch = shapes(LINE, [(1, 0), (1, 1)])
    assert branch[1, 1] == "north-south"
    assert branch[1, 0] == "east-west"


def test_a_drag_off_the_end_of_a_line_bends_it() -> None:
    assert shapes(LINE, [(2, 0), (2, 1)])[2, 0] == "south-west"
