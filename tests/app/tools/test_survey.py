"""Surveying: rails are drawn as they stand in the world, and the plan stays as it is."""

from __future__ import annotations

import pytest

from app.tools.events import Modifiers, PointerEvent
from model.grid import Cell
from model.parts import Part
from model.pieces import Piece
from model.plan import plan_of
from model.track.shapes import Shape
from tests.app.tools.desk import LEVEL, Desk

SWITCH = Cell(0, LEVEL, 0)
CAN_BE = [Shape.NORTH_SOUTH, Shape.EAST_WEST, Shape.SOUTH_EAST, Shape.SOUTH_WEST]
"""What the rail in the middle of the tee can be; it is drawn as one of them."""
MIDDLES = {"north": (0.5, 0.05), "east": (0.95, 0.5), "south": (0.5, 0.95), "west": (0.05, 0.5)}


def stroke(desk: Desk, *points: tuple[float, float]) -> None:
    """Presses at the first of these points, in cells, goes over the others and lets go at the last."""
    tool = desk.use("survey").tool
    events = [PointerEvent(Cell(int(x // 1), LEVEL, int(z // 1)), (x % 1, z % 1)) for x, z in points]
    tool.press(events[0])
    for event in events[1:]:
        tool.drag(event)
    tool.release(events[-1])


def test_a_click_steps_on_and_comes_round(junction: Desk) -> None:
    drawn = junction.layout.shape(SWITCH)
    assert drawn is not None
    start = CAN_BE.index(drawn)
    hand, seen = junction.use("survey"), []
    for _ in CAN_BE:
        hand.click(0, 0)
        seen.append(junction.surveyed[SWITCH])
    assert seen == CAN_BE[start + 1 :] + CAN_BE[: start + 1]
    assert not junction.done


def test_shift_steps_back(junction: Desk) -> None:
    hand = junction.use("survey").click(0, 0).click(0, 0, Modifiers.SHIFT)
    assert junction.surveyed[SWITCH] is junction.layout.shape(SWITCH)
    hand.click(0, 0, Modifiers.SHIFT).click(0, 0)
    assert junction.surveyed[SWITCH] is junction.layout.shape(SWITCH)


def test_where_no_rail_stands_nothing_is_surveyed(junction: Desk) -> None:
    junction.use("survey").click(9, 9)
    assert junction.surveyed == {}
    assert junction.said[-1] == "No rail at 9 64 9."


@pytest.mark.parametrize(
    ("start", "end", "shape"),
    [
        ("south", "west", Shape.SOUTH_WEST),
        ("west", "south", Shape.SOUTH_WEST),
        ("east", "south", Shape.SOUTH_EAST),
        ("north", "south", Shape.NORTH_SOUTH),
        ("east", "west", Shape.EAST_WEST),
    ],
)
def test_a_drag_within_a_rail_joins_the_two_edges(junction: Desk, start: str, end: str, shape: Shape) -> None:
    stroke(junction, MIDDLES[start], (0.5, 0.5), MIDDLES[end])
    assert junction.surveyed == {SWITCH: shape}


def test_a_drag_along_the_track_draws_every_rail_that_it_crosses(junction: Desk) -> None:
    stroke(junction, (-1.5, 0.5), (-0.5, 0.5), (0.5, 0.5), (0.5, 1.5), (0.5, 2.5))
    assert junction.surveyed == {
        Cell(-1, LEVEL, 0): Shape.EAST_WEST,
        SWITCH: Shape.SOUTH_WEST,
        Cell(0, LEVEL, 1): Shape.NORTH_SOUTH,
    }


def test_a_drag_shows_what_it_draws_and_nothing_is_taken_down_before_its_end(junction: Desk) -> None:
    hand = junction.use("survey").press(-1, 0).drag_to(0, 0).drag_to(0, 1)
    assert junction.ghost is not None
    assert junction.ghost.surveyed == {SWITCH: Shape.SOUTH_WEST}
    assert junction.surveyed == {}
    hand.tool.cancel()
    assert junction.ghost is None
    hand.release()
    assert junction.surveyed == {}


def test_a_drag_to_where_no_neighbour_is_is_refused_in_words(junction: Desk) -> None:
    stroke(junction, MIDDLES["north"], (0.5, 0.5), MIDDLES["east"])
    assert junction.surveyed == {}
    assert junction.said[-1] == "No order of placing makes the rail at 0 64 0 lie like that."


def test_a_drag_that_crosses_nothing_says_what_to_do(junction: Desk) -> None:
    stroke(junction, (0.5, 0.5), (1.5, 0.5))
    assert junction.surveyed == {}
    assert junction.said[-1].startswith("Drag across a rail")


def test_a_short_slip_of_the_pointer_is_still_a_click(junction: Desk) -> None:
    stroke(junction, (0.05, 0.1), (0.1, 0.05))
    assert list(junction.surveyed) == [SWITCH]


def test_a_drag_towards_a_rail_one_up_draws_a_slope_and_a_click_the_flat_one() -> None:
    low, high = Cell(0, LEVEL, 0), Cell(0, LEVEL + 1, -1)
    desk = Desk(plan_of([Piece(Part.RAIL, low), Piece(Part.RAIL, high)]))
    desk.surveyed[low] = Shape.EAST_WEST
    stroke(desk, MIDDLES["south"], (0.5, 0.5), MIDDLES["north"])
    assert desk.surveyed == {low: Shape.RISING_NORTH}
    desk.use("survey").click(0, 0)
    assert desk.surveyed == {low: Shape.NORTH_SOUTH}
    stroke(desk, MIDDLES["south"], (0.5, 0.5), MIDDLES["north"])
    assert desk.surveyed == {low: Shape.NORTH_SOUTH}, "what lies between these edges already stays"


def test_a_change_of_level_drops_the_drag(junction: Desk) -> None:
    hand = junction.use("survey").press(-1, 0).drag_to(0, 0)
    junction.level += 1
    hand.drag_to(0, 1).release()
    assert junction.surveyed == {}
    assert not hand.tool.is_busy
