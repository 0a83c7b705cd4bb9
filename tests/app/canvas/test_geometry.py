"""Pixels and cells."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from app.canvas.geometry import (
    ZOOM_STEPS,
    Area,
    Viewport,
    area_between,
    fitting_step,
    next_step,
)
from model.grid import XZ_LIMIT, Cell

pixels = st.integers(0, 32_000).map(lambda eighths: eighths / 8)
"""Positions as screens report them: no finer than an eighth of a pixel."""
origins = st.integers(-1_000_000, 1_000_000)
steps = st.sampled_from(ZOOM_STEPS)
views = st.builds(Viewport, steps, origins, origins)


def test_x_grows_to_the_right_and_z_downward() -> None:
    view = Viewport(48, 100, 200)
    assert view.cell_at(100, 200, 64) == Cell(0, 64, 0)
    assert view.cell_at(99, 200, 64) == Cell(-1, 64, 0)
    assert view.cell_at(148, 296, 64) == Cell(1, 64, 2)


@given(views, st.integers(-5000, 5000), st.integers(-5000, 5000))
def test_each_corner_of_a_cell_lies_in_the_cell(view: Viewport, x: int, z: int) -> None:
    left, top = view.corner(x, z)
    last = view.scale - 1
    for px, py in ((left, top), (left + last, top), (left, top + last), (left + last, top + last)):
        assert view.cell_at(px, py, 0) == Cell(x, 0, z)


@given(views, steps, pixels, pixels)
def test_zooming_keeps_the_cell_under_the_pointer(view: Viewport, scale: int, px: float, py: float) -> None:
    assert view.zoomed(scale, px, py).cell_at(px, py, 0) == view.cell_at(px, py, 0)


def test_a_pixel_beyond_the_limits_means_the_last_cell() -> None:
    assert Viewport(1, 0, 0).cell_at(XZ_LIMIT + 5, -XZ_LIMIT - 5, 0) == Cell(XZ_LIMIT, 0, -XZ_LIMIT)


def test_the_area_of_a_rectangle_holds_just_the_cells_that_it_touches() -> None:
    view = Viewport(10, 0, 0)
    assert view.area(0, 0, 10, 20) == Area(0, 0, 0, 1)
    assert view.area(-1, 9, 11, 11) == Area(-1, 0, 1, 1)


def test_fitting_takes_the_largest_step_that_has_room() -> None:
    area = area_between(Cell(0, 0, 0), Cell(9, 0, 4))
    assert fitting_step(area, 330, 330) == 32
    assert fitting_step(area, 319, 330) == 24
    assert fitting_step(area, 3300, 3300) == 48
    assert fitting_step(area, 3, 3) == 1


def test_zoom_ends_at_the_last_step() -> None:
    assert next_step(96, 1) == 96
    assert next_step(1, -1) == 1
    assert [next_step(48, step) for step in (-1, 0, 1)] == [32, 48, 64]
