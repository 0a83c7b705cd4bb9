"""The isometric view against published numbers and against a library's rotations."""

from __future__ import annotations

from itertools import pairwise
from math import atan, atan2, degrees, hypot, radians, sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation
from shapely import Polygon

from app.canvas.geometry import Area
from app.depth.projection import FORESHORTENING, Isometric
from app.depth.stack import AIR, EDGE, Stack, clear_gap, corners, extent

VIEWS = [Isometric(quarter) for quarter in range(4)]
places = st.floats(-1e4, 1e4)


@pytest.mark.parametrize("view", VIEWS)
def test_axes_lie_at_120_degrees_with_one_scale(view: Isometric) -> None:
    """ISO 5456-3 (from memory): three axes at 120°, the upright one upright, the scales 1:1:1."""
    axes = [view.point(*axis) for axis in ((1, 0, 0), (0, 1, 0), (0, 0, 1))]
    assert [hypot(*axis) for axis in axes] == pytest.approx([1, 1, 1])
    assert axes[1] == pytest.approx((0, -1))
    # An axis that runs away from who looks is drawn as a line through the origin, like one towards him.
    slopes = sorted(degrees(atan2(down, right)) % 180 for right, down in axes)
    assert slopes == pytest.approx([30, 90, 150])


@pytest.mark.parametrize("quarter", range(4))
def test_is_the_rotation_by_45_and_35_degrees_but_for_the_scale(quarter: int) -> None:
    """scipy turns a cube by 45° about the upright axis and tips it by arctan(1/√2), 35.264°, to the front.

    What is left of it without the depth is the true projection, in which edges are √(2/3) as long.
    """
    # Seen from the south, with x to the right and y up, the depth is z towards who looks.
    about_upright = Rotation.from_euler("y", -45 - 90 * quarter, degrees=True)
    to_the_front = Rotation.from_euler("x", atan(1 / sqrt(2)))
    assert degrees(atan(1 / sqrt(2))) == pytest.approx(35.264, abs=1e-3)
    rng = np.random.default_rng(7)
    points = rng.uniform(-50, 50, (100, 3))
    seen = (to_the_front * about_upright).apply(points)
    drawn = np.array([Isometric(quarter).point(*point) for point in points])
    assert np.allclose(drawn[:, 0] * FORESHORTENING, seen[:, 0])
    assert np.allclose(drawn[:, 1] * FORESHORTENING, -seen[:, 1])


def test_a_cube_is_drawn_as_a_regular_hexagon() -> None:
    """Common knowledge of geometry: the outline of a cube in isometric view is a regular hexagon."""
    outline = ((0, 0, 1), (1, 0, 1), (1, 0, 0), (1, 1, 0), (0, 1, 0), (0, 1, 1), (0, 0, 1))
    points = [Isometric().point(*corner) for corner in outline]
    sides = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(points)]
    assert sides == pytest.approx([1] * 6)
    middle = Isometric().point(0.5, 0.5, 0.5)
    assert [hypot(x - middle[0], y - middle[1]) for x, y in points] == pytest.approx([1] * 7)


@given(places, places, st.sampled_from([0, 1, 2, 3]))
def test_four_quarters_make_a_full_turn(x: float, z: float, start: int) -> None:
    view = Isometric(start)
    around = [view.turned(quarters) for quarters in range(5)]
    assert around[4] == view == view.turned(-4)
    seen = [one.point(x, 3, z) for one in around]
    opposite = [-(down + 3) for _, down in seen]
    assert seen[2] == pytest.approx((-seen[0][0], opposite[0] - 3))
    assert seen[4] == pytest.approx(seen[0])


@given(places, st.floats(0, 1e3), places, st.sampled_from(VIEWS))
def test_a_place_on_the_drawing_leads_back(x: float, height: float, z: float, view: Isometric) -> None:
    assert view.place(*view.point(x, height, z), height) == pytest.approx((x, z), abs=1e-6)


@pytest.mark.parametrize("view", VIEWS)
def test_the_plane_is_linear_and_keeps_areas_alike(view: Isometric) -> None:
    """A square cell becomes a rhombus with angles of 60° and 120°: its area is sin 60°."""
    plane = view.plane
    expected = (3 * plane.east_right + 4 * plane.south_right, 3 * plane.east_down + 4 * plane.south_down)
    assert view.point(3, 0, 4) == pytest.approx(expected)
    area = plane.east_right * plane.south_down - plane.east_down * plane.south_right
    assert area == pytest.approx(np.sin(radians(60)))


def test_whoever_looks_stands_where_the_lowest_corner_is() -> None:
    towards = {"south-east": (1, 1), "north-east": (1, -1), "north-west": (-1, -1), "south-west": (-1, 1)}
    for view in VIEWS:
        nearest = max(towards.values(), key=lambda corner: view.point(corner[0], 0, corner[1])[1])
        assert nearest == towards[view.seen_from]


@given(st.integers(1, 40), st.integers(1, 40), st.sampled_from(VIEWS))
def test_levels_pulled_clear_cover_nothing_of_each_other(wide: int, deep: int, view: Isometric) -> None:
    """By the polygons of shapely: with the gap they are apart, and with a little less they meet."""
    area = Area(-3, 5, -4 + wide, 4 + deep)
    gap = clear_gap(area)
    low, high, closer = (
        Polygon([view.point(x, height, z) for x, z in corners(area)]) for height in (0, gap, gap - AIR - 0.1)
    )
    assert not high.intersects(low)
    assert closer.intersects(low)


def test_the_box_around_levels_holds_them_just_so() -> None:
    area = Area(2, -3, 9, 4)
    low, both = extent(Isometric(), area, [0]), extent(Isometric(), area, [0, 5])
    assert low.width == pytest.approx((8 + 8 + 4 * EDGE) * sqrt(3) / 2)
    assert low.height == pytest.approx((8 + 8 + 4 * EDGE) / 2)
    assert both.height == pytest.approx(low.height + 5)
    assert (both.left, both.right, both.bottom) == (low.left, low.right, low.bottom)


def test_levels_without_pieces_take_no_room() -> None:
    stack = Stack((-3, 61, 64), 5)
    assert [stack.height(level) for level in (-3, 61, 64)] == [0, 5, 10]
    assert stack.height(62) == 10, "a slope that rises to nothing ends where the next level is"
    assert stack.height(65) == 15
