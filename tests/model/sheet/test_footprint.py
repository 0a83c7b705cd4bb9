"""The footprint against Pick's theorem and the shoelace formula."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from hypothesis import assume, given
from hypothesis import strategies as st

from model.grid import Cell
from model.sheet.footprint import Ring, bounds_of, footprint
from tests.strategies import cells


def shoelace(ring: Ring) -> Fraction:
    """Signed area: positive for one sense of going round, negative for the other."""
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return Fraction(sum(ax * bz - bx * az for (ax, az), (bx, bz) in pairs), 2)


def boundary_points(ring: Ring) -> int:
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return sum(gcd(bx - ax, bz - az) for (ax, az), (bx, bz) in pairs)


def interior_points(covered: set[tuple[int, int]]) -> int:
    """Corners whose four cells are all covered."""
    corners = {(x + dx, z + dz) for x, z in covered for dx in (0, 1) for dz in (0, 1)}
    return sum(all((x - dx, z - dz) in covered for dx in (0, 1) for dz in (0, 1)) for x, z in corners)


def test_the_shoelace_of_this_test_gives_the_published_area() -> None:
    """(3,4)(5,11)(12,8)(9,5)(5,6): 30, in that order −30 (Rosetta Code); by Pick B = 8, I = 27."""
    ring = ((3, 4), (5, 11), (12, 8), (9, 5), (5, 6))
    assert shoelace(ring) == -30
    assert boundary_points(ring) == 8
    assert 27 + Fraction(boundary_points(ring), 2) - 1 == abs(shoelace(ring))


@given(st.lists(cells, min_size=1, max_size=25))
def test_the_outlines_enclose_what_is_covered(placed: list[Cell]) -> None:
    seen = footprint(placed)
    assert seen is not None
    columns = {(cell.x, cell.z) for cell in placed}
    assert seen.covered == len(columns)
    area = sum(
        abs(shoelace(outline.shell)) - sum(abs(shoelace(hole)) for hole in outline.holes)
        for outline in seen.outlines
    )
    assert area == seen.covered


@given(st.lists(cells, min_size=1, max_size=25))
def test_pick_counts_the_same_area(placed: list[Cell]) -> None:
    """A = I + B/2 − 1, and one more for each hole, part by part.

    Exact where no two boundaries touch at a corner; such plans are left out.
    """
    seen = footprint(placed)
    assert seen is not None
    every = [ring for outline in seen.outlines for ring in (outline.shell, *outline.holes)]
    corners = [corner for ring in every for corner in ring]
    assume(len(set(corners)) == len(corners))
    inside = interior_points({(cell.x, cell.z) for cell in placed})
    boundary = sum(map(boundary_points, every))
    holes = sum(len(outline.holes) for outline in seen.outlines)
    assert inside + Fraction(boundary, 2) - len(seen.outlines) + holes == seen.covered


def test_a_ring_has_a_hole_and_reads_as_on_the_cover() -> None:
    ring = [Cell(x, 64, z) for x in range(4) for z in range(3) if x in (0, 3) or z in (0, 2)]
    seen = footprint([*ring, Cell(0, 63, 0)])
    assert seen is not None
    assert str(seen) == "footprint 4 × 3 cells, 10 covered"
    (outline,) = seen.outlines
    assert set(outline.shell) == {(0, 0), (4, 0), (4, 3), (0, 3)}
    assert [set(hole) for hole in outline.holes] == [{(1, 1), (3, 1), (3, 2), (1, 2)}]


def test_cells_that_touch_at_a_corner_are_two_parts() -> None:
    seen = footprint([Cell(0, 0, 0), Cell(1, 0, 1)])
    assert seen is not None
    assert len(seen.outlines) == 2


def test_nothing_has_no_footprint() -> None:
    assert footprint([]) is None
    assert bounds_of([]) is None
