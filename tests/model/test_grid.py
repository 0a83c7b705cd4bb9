"""Cells, headings and the eight turns, against the dihedral group of order 8.

The group's table, classes and orders are general knowledge of algebra, recomputed by brute force apart from
this code; the counts of grids are OEIS A054247, read on its page.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import product

import pytest
from hypothesis import given

from model.grid import ALL_TURNS, Cell, Facing, Heading, Turn
from tests.strategies import cells, headings, turns

NORTH, EAST, SOUTH, WEST = Heading
STAY = Turn()


def test_quarters_go_clockwise_seen_from_above() -> None:
    """z grows to the south, so (x, z) to (−z, x) is clockwise for one who looks down with north up."""
    quarter = Turn(1)
    assert quarter.cell(Cell(0, 5, -1)) == Cell(1, 5, 0)
    assert [quarter.heading(heading) for heading in Heading] == [EAST, SOUTH, WEST, NORTH]


def test_the_mirror_changes_east_and_west_and_comes_first() -> None:
    mirror = Turn(mirror=True)
    assert mirror.cell(Cell(3, 0, 2)) == Cell(-3, 0, 2)
    assert [mirror.heading(heading) for heading in Heading] == [NORTH, WEST, SOUTH, EAST]
    assert Turn(1, True).cell(Cell(3, 0, 2)) == Cell(-2, 0, -3)


def test_turns_are_numbered_one_to_eight() -> None:
    assert [turn.number for turn in ALL_TURNS] == [1, 2, 3, 4, 5, 6, 7, 8]


def element(s: int, r: int) -> Turn:
    """s^j r^k, where r takes (x, y) to (−y, x) and s takes (x, y) to (x, −y); y is z here."""
    reflection = Turn(2, True)
    assert reflection.cell(Cell(3, 0, 2)) == Cell(3, 0, -2)
    return reflection.then(Turn(r % 4)) if s else Turn(r % 4)


@pytest.mark.parametrize(("a", "b"), [*product(range(4), repeat=2)])
def test_turns_multiply_as_the_dihedral_group(a: int, b: int) -> None:
    """The four relations that make up the table of D4."""
    assert element(0, a).then(element(0, b)) == element(0, a + b)
    assert element(0, a).then(element(1, b)) == element(1, b - a)
    assert element(1, a).then(element(0, b)) == element(1, a + b)
    assert element(1, a).then(element(1, b)) == element(0, b - a)


def test_rows_of_the_table() -> None:
    """Rows r1 and s1 as printed: r1 r2 r3 r0 | s3 s0 s1 s2 and s1 s2 s3 s0 | r3 r0 r1 r2."""
    columns = [element(s, r) for s in (0, 1) for r in range(4)]
    row_r1 = [element(*name) for name in ((0, 1), (0, 2), (0, 3), (0, 0), (1, 3), (1, 0), (1, 1), (1, 2))]
    row_s1 = [element(*name) for name in ((1, 1), (1, 2), (1, 3), (1, 0), (0, 3), (0, 0), (0, 1), (0, 2))]
    assert [element(0, 1).then(column) for column in columns] == row_r1
    assert [element(1, 1).then(column) for column in columns] == row_s1


def order(turn: Turn) -> int:
    power, steps = turn, 1
    while power != STAY:
        power, steps = power.then(turn), steps + 1
    return steps


def test_element_orders() -> None:
    """One element of order 1, five of order 2, two of order 4."""
    assert Counter(map(order, ALL_TURNS)) == {1: 1, 2: 5, 4: 2}


def test_classes_and_centre() -> None:
    """Class sizes 1, 1, 2, 2, 2; the centre is the identity and the half turn."""
    classes = {frozenset(by.inverse.then(turn).then(by) for by in ALL_TURNS) for turn in ALL_TURNS}
    assert sorted(map(len, classes)) == [1, 1, 2, 2, 2]
    centre = {t for t in ALL_TURNS if all(t.then(u) == u.then(t) for u in ALL_TURNS)}
    assert centre == {STAY, Turn(2)}


def permutations(n: int, group: Iterable[Turn]) -> Iterator[tuple[int, ...]]:
    """What each turn does to the places of an n×n grid; doubled and centred, so that the middle is 0."""
    centred = [Cell(2 * x - (n - 1), 0, 2 * z - (n - 1)) for z in range(n) for x in range(n)]
    for turn in group:
        yield tuple(centred.index(turn.cell(cell)) for cell in centred)


def grids_up_to(n: int, group: Iterable[Turn]) -> int:
    moves = list(permutations(n, group))
    grids = product((0, 1), repeat=n * n)
    return len({min(tuple(grid[at] for at in move) for move in moves) for grid in grids})


@pytest.mark.parametrize(("n", "count"), [(0, 1), (1, 2), (2, 6), (3, 102)])
def test_grids_up_to_the_eight_turns(n: int, count: int) -> None:
    """OEIS A054247: n×n binary grids under rotations and reflections."""
    assert grids_up_to(n, ALL_TURNS) == count


@pytest.mark.slow
def test_grids_of_four_up_to_the_eight_turns() -> None:
    """OEIS A054247(4) = 8548."""
    assert grids_up_to(4, ALL_TURNS) == 8548


@pytest.mark.parametrize(("n", "count"), [(1, 2), (2, 6), (3, 140)])
def test_grids_up_to_rotations_alone(n: int, count: int) -> None:
    """Recomputed by brute force apart from this code."""
    assert grids_up_to(n, [Turn(quarter) for quarter in range(4)]) == count


@given(turns, turns, cells, headings)
def test_then_is_one_turn_after_the_other(first: Turn, later: Turn, cell: Cell, heading: Heading) -> None:
    both = first.then(later)
    assert both.cell(cell) == later.cell(first.cell(cell))
    assert both.heading(heading) == later.heading(first.heading(heading))


@given(turns, cells, headings)
def test_the_inverse_turns_back(turn: Turn, cell: Cell, heading: Heading) -> None:
    assert turn.inverse.cell(turn.cell(cell)) == cell
    assert turn.inverse.heading(turn.heading(heading)) == heading


@given(turns, cells, headings)
def test_headings_follow_cells(turn: Turn, cell: Cell, heading: Heading) -> None:
    assert turn.cell(cell.step(heading)) == turn.cell(cell).step(turn.heading(heading))


@pytest.mark.parametrize("facing", Facing)
def test_facings_follow_cells(facing: Facing) -> None:
    cell = Cell(2, 64, -1)
    for turn in ALL_TURNS:
        assert turn.cell(cell.beside(facing)) == turn.cell(cell).beside(turn.facing(facing))
        assert turn.facing(facing.opposite) is turn.facing(facing).opposite


@given(cells, headings)
def test_a_step_and_back(cell: Cell, heading: Heading) -> None:
    assert cell.step(heading, 1).step(heading.opposite, -1) == cell
    assert heading.clockwise.clockwise is heading.opposite
    assert heading.lies_north_south is not heading.clockwise.lies_north_south


def test_the_six_cells_beside_touch_a_face() -> None:
    cell = Cell(0, 64, 0)
    distances = [sum(abs(a - b) for a, b in zip(cell, near, strict=True)) for near in cell.six_beside()]
    assert distances == [1] * 6
    assert len(set(cell.six_beside())) == 6


def test_a_place_reads_with_the_true_minus() -> None:
    assert str(Cell(-4, 64, 1)) == "−4 64 1"
