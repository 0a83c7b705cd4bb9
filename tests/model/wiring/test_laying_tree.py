"""What a line bars for itself and for others, and branches that would hold themselves."""

from __future__ import annotations

import pytest

from model.grid import Cell, Heading
from model.parts import Part
from model.wiring.laying.field import Field
from model.wiring.laying.goals import Goals
from model.wiring.laying.ground import Ground
from model.wiring.laying.growth import Others
from model.wiring.laying.laid import Line, Routed
from model.wiring.laying.search import DEAREST, Budget, Search, Tables
from model.wiring.laying.site import Site
from model.wiring.laying.tree import Step, Tree
from tests.model.wiring.laying_bench import Yard, routed

FIELD = Field(Ground(Yard(16).plan))


def tree_at(at: Cell) -> Tree:
    return Tree(FIELD, FIELD.pack(at))


def step(
    tree: Tree, at: Cell, segment: int = 0, repeater: Cell | None = None, head: Cell | None = None
) -> None:
    """Adds a dust with what leads to it."""
    between = 0 if repeater is None else FIELD.pack(repeater)
    clear = 0 if head is None else FIELD.pack(head)
    tree.add([Step(FIELD.pack(at), 9, 0, segment, between, clear, FIELD.pack(at))])


def test_dust_beside_two_segments_would_join_them() -> None:
    tree = tree_at(Cell(4, 61, 4))
    step(tree, Cell(6, 61, 4), segment=1, repeater=Cell(5, 61, 4))
    step(tree, Cell(6, 61, 5), segment=1)
    step(tree, Cell(4, 61, 5))
    assert tree.near[FIELD.pack(Cell(5, 61, 5))] == -1
    assert tree.near[FIELD.pack(Cell(7, 61, 5))] == 1
    assert tree.near[FIELD.pack(Cell(3, 61, 5))] == 0
    assert tree.segments == 2


def test_a_block_in_the_head_of_a_step_is_a_conflict_for_both() -> None:
    climbing, crossing = tree_at(Cell(4, 60, 4)), tree_at(Cell(4, 62, 3))
    step(climbing, Cell(5, 61, 4), head=Cell(4, 61, 4))
    assert not Others([crossing]).conflicts(climbing)
    step(crossing, Cell(4, 62, 5), segment=1, repeater=Cell(4, 62, 4))
    assert Others([crossing]).conflicts(climbing) == {FIELD.pack(Cell(4, 61, 4))}
    assert Others([climbing]).conflicts(crossing) == {FIELD.pack(Cell(4, 62, 4))}


def test_a_repeater_is_in_the_way_of_what_would_stand_there() -> None:
    one, other = tree_at(Cell(4, 61, 4)), tree_at(Cell(8, 61, 8))
    step(one, Cell(6, 61, 4), segment=1, repeater=Cell(5, 61, 4))
    step(other, Cell(5, 62, 4))
    assert FIELD.pack(Cell(5, 62, 4)) in Others([one]).conflicts(other)
    assert Others([other]).conflicts(one) >= {FIELD.pack(Cell(5, 61, 4))}


def test_dust_may_pass_the_side_of_a_repeater_of_another_line() -> None:
    one, other = tree_at(Cell(4, 61, 4)), tree_at(Cell(8, 61, 8))
    step(one, Cell(6, 61, 4), segment=1, repeater=Cell(5, 61, 4))
    step(other, Cell(5, 61, 5))
    assert not Others([one]).conflicts(other)
    step(other, Cell(4, 61, 5))
    assert Others([one]).conflicts(other)


def branch(goal: Cell, *, already: bool) -> list[Step] | None:
    """A branch over few cells: from a dust of strength 2 to its neighbour, a repeater, and round it.

    ``already``: that neighbour belongs to the tree from before.
    """
    yard = Yard(16)
    source = yard.source(Cell(4, 61, 2), Heading.SOUTH)
    target = yard.put(Part.TARGET_BLOCK, goal.step(Heading.SOUTH))
    field = Field(Ground(yard.plan))
    site = Site(field, Line("round", source.start, ((target,),)), {})
    dust_ok, rest_ok = bytearray(field.size), bytearray(field.size)
    for x, z in ((4, 4), (6, 4), (6, 5), (5, 5), (4, 5)):
        dust_ok[field.pack(Cell(x, 61, z))] = 1
    rest_ok[field.pack(Cell(5, 61, 4))] = 1
    tree, start = site.start(), field.pack(source.start)
    tree.add([Step(start, 2, 0, 0, 0, 0, 0)])
    if already:
        tree.add([Step(field.pack(Cell(4, 61, 4)), 1, 0, 0, 0, 0, start)])
    tables = Tables(dust_ok, rest_ok, field.clear, {}, {}, {})
    return Search(tables, tree, Goals(site, [0]), field.headings).run(Budget(1000), DEAREST)


@pytest.mark.parametrize("already", [False, True])
def test_a_branch_does_not_come_back_beside_what_feeds_it(already: bool) -> None:
    """The cell before the last lies beside the repeater alone, the last beside the dust that feeds it."""
    steps = branch(Cell(5, 61, 5), already=already)
    assert steps is not None
    assert len(steps) == (3 if already else 4)
    assert branch(Cell(4, 61, 5), already=already) is None


def test_nothing_to_lay_is_laid() -> None:
    assert routed(Yard(6).plan, []) == Routed((), ())
