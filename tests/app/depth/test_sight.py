"""Turning, pulling, zooming and pointing, without a widget."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.canvas.geometry import Area
from app.depth.camera import STEPS, Camera, stepped
from app.depth.sight import Sight
from app.depth.stack import WIDEST, Extent, gaps, widest_gap
from app.depth.which import Which, levels_shown
from model.grid import Cell

ROOM = Extent(90, 30, 800, 700)
AREA = Area(-8, -2, 8, 9)
LEVELS = (61, 63, 64)


def sight(area: Area = AREA, levels: tuple[int, ...] = LEVELS) -> Sight:
    """All of a plan fitted into the room."""
    made = Sight()
    made.take(levels, area, levels[-1])
    made.fit(ROOM)
    return made


def corner_pixels(shown: Sight) -> list[tuple[float, float]]:
    area = shown.area
    xs, zs = (area.west, area.east + 1), (area.north, area.south + 1)
    return [shown.pixel(level, x, z) for level in shown.stack.levels for x in xs for z in zs]


@given(st.integers(1, 60), st.integers(1, 60), st.integers(1, 6), st.integers(0, 3))
def test_fitting_brings_all_into_the_room(wide: int, deep: int, levels: int, quarter: int) -> None:
    shown = sight(Area(5, -7, 4 + wide, deep - 8), tuple(range(60, 60 + levels)))
    shown.turn(quarter, ROOM)
    for x, y in corner_pixels(shown):
        assert ROOM.left <= x <= ROOM.right
        assert ROOM.top <= y <= ROOM.bottom


@given(st.integers(-8, 8), st.integers(-2, 9), st.sampled_from(LEVELS), st.integers(0, 3))
def test_a_click_on_a_piece_finds_its_cell(x: int, z: int, level: int, quarter: int) -> None:
    shown = sight()
    shown.turn(quarter, ROOM)
    cell = Cell(x, level, z)
    assert shown.cell_at(*shown.pixel(level, x + 0.5, z + 0.5), {cell}) == cell


def test_what_is_higher_hides_what_is_below() -> None:
    shown = sight()
    while shown.gap > 1:
        shown.pull(-1, 64, ROOM)
    below = Cell(3, 61, 4)
    # What is a cell higher, and a cell further south and east, is seen at the same place.
    above = Cell(4, 63, 5)
    pixel = shown.pixel(61, 3.5, 4.5)
    assert shown.cell_at(*pixel, {below}) == below
    assert shown.cell_at(*pixel, {below, above}) == above


def test_beside_all_levels_there_is_no_cell() -> None:
    shown = sight()
    assert shown.cell_at(ROOM.left, ROOM.top, set()) is None
    assert shown.cell_at(*shown.pixel(63, 0.5, 0.5), set()) == Cell(0, 63, 0)


@pytest.mark.parametrize("is_fitted", [True, False])
def test_four_turns_come_back_to_the_same_picture(is_fitted: bool) -> None:
    shown = sight()
    if not is_fitted:
        shown.pan(31, -17)
    before = corner_pixels(shown)
    for _ in range(4):
        shown.turn(1, ROOM)
    assert [place for pixel in corner_pixels(shown) for place in pixel] == pytest.approx(
        [place for pixel in before for place in pixel]
    )


def test_what_is_looked_at_stays_when_levels_come_and_go_or_move_apart() -> None:
    shown = sight()
    shown.zoom(2, 400, 300)
    before = shown.pixel(63, 0, 0)
    shown.take((60, *LEVELS), AREA, 63)
    assert shown.pixel(63, 0, 0) == pytest.approx(before)
    shown.pull(1, 63, ROOM)
    assert shown.pixel(63, 0, 0) == pytest.approx(before)


@given(st.sampled_from(STEPS), st.integers(-3, 3), st.floats(0, 900), st.floats(0, 700))
def test_zooming_keeps_the_place_under_the_pointer(c: float, steps: int, px: float, py: float) -> None:
    camera = Camera(c, 17, -40)
    assert camera.zoomed(steps, px, py).drawing(px, py) == pytest.approx(camera.drawing(px, py), abs=1e-6)


def test_zooming_from_between_two_steps_goes_to_the_next_one() -> None:
    assert stepped(14, 1) == 16
    assert stepped(14, -1) == 12
    assert stepped(STEPS[-1], 1) == STEPS[-1]
    assert stepped(STEPS[0], -1) == STEPS[0]


@pytest.mark.parametrize(
    ("which", "levels"),
    [(Which.ALL, (58, 61, 63, 64)), (Which.NEAR, (63, 64)), (Which.OWN, (64,)), (Which.CHOSEN, (58, 63))],
)
def test_which_levels(which: Which, levels: tuple[int, ...]) -> None:
    assert levels_shown(which, {64, 58, 61, 63}, 64, [63, 63, 58, 7]) == levels


@pytest.mark.parametrize(
    ("which", "levels"),
    [(Which.ALL, (61, 64)), (Which.NEAR, (64,)), (Which.OWN, (64,)), (Which.CHOSEN, (61,))],
)
def test_hidden_levels_stay_hidden_but_for_the_one_drawn_on(which: Which, levels: tuple[int, ...]) -> None:
    assert levels_shown(which, {64, 58, 61, 63}, 64, [61, 58], hidden={58, 63, 64}) == levels


def test_the_choices_go_round() -> None:
    assert [which.next for which in Which] == [Which.NEAR, Which.OWN, Which.CHOSEN, Which.ALL]


@given(st.integers(1, 3_000), st.integers(1, 3_000), st.integers(0, 4_000))
def test_the_widest_gap_is_that_of_trying_all(wide: int, deep: int, most: int) -> None:
    area = Area(0, 0, wide - 1, deep - 1)
    tried = [float(gap) for gap in gaps(area)]
    assert widest_gap(area, lambda gap: gap <= most) == next((gap for gap in tried if gap <= most), tried[-1])


def test_pieces_at_the_edges_of_the_world_are_fitted_with_a_gap_that_is_of_use() -> None:
    shown = sight(Area(-10_000_000, -10_000_000, 10_000_000, 10_000_000), (-1024, 64, 1023))
    assert shown.gap <= WIDEST
    for steps in (-1, 1, 1):
        shown.pull(steps, 64, ROOM)
        assert 1 <= shown.gap <= WIDEST
