"""The ground for wiring: its box, and that it bars just what would couple, one foreign part at a time."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import product

import pytest

from model.grid import FACING_OF, XZ_LIMIT, Y_LOWEST, Cell, Facing, Heading
from model.parts import TRAITS, Part
from model.pieces import Piece, new_piece
from model.plan import Plan, plan_of
from model.wiring.laying.ground import Ground
from model.wiring.lines.coupling import Coupling, couplings
from tests.model.wiring.laying_bench import RAIL_LEVEL, Yard

MIDDLE = Cell(4, 61, 4)
AROUND = [
    MIDDLE.moved(dx, dy, dz)
    for dx, dy, dz in product(range(-2, 3), repeat=3)
    if abs(dx) + abs(dy) + abs(dz) <= 3
]
FACINGS = {
    Part.TORCH: (Facing.UP, Facing.EAST),
    Part.LEVER: (Facing.UP, Facing.DOWN, Facing.EAST),
    Part.HOPPER: (Facing.DOWN, Facing.EAST),
}
FOREIGN = [
    (part, facing) for part in Part if TRAITS[part].group != "track" for facing in FACINGS.get(part, (None,))
]


def yard_with(part: Part, facing: Facing | None) -> Yard:
    """One foreign part in the middle, on or at a block where it needs one, deep below the track."""
    yard = Yard(9)
    yard.put(part, MIDDLE, facing)
    if part is Part.TARGET_BLOCK:
        yard.put(Part.LAMP, MIDDLE.moved(dy=1))
    return yard


def on_block(part: Part, at: Cell, facing: Facing | None = None) -> list[Piece]:
    return [new_piece(Part.SOLID_BLOCK, at.moved(dy=-1)), new_piece(part, at, facing)]


def dust_probe(at: Cell, heading: Heading) -> list[Piece]:
    """Dust between two repeaters, so that it lies straight; what is asked is what the dust does."""
    facing = FACING_OF[heading]
    behind = on_block(Part.REPEATER, at.step(heading.opposite), facing)
    return [*behind, *on_block(Part.DUST, at), *on_block(Part.REPEATER, at.step(heading), facing)]


def repeater_probe(at: Cell, heading: Heading) -> list[Piece]:
    """A repeater between two dusts; what is asked is what the repeater does."""
    before, after = at.step(heading.opposite), at.step(heading)
    repeater = on_block(Part.REPEATER, at, FACING_OF[heading])
    return [*on_block(Part.DUST, before), *repeater, *on_block(Part.DUST, after)]


def probed(plan: Plan, probe: list[Piece], at: Cell) -> list[Coupling]:
    """What the piece at a cell, or the block under it, couples with; the rest of the probe does not count."""
    own = {at, at.moved(dy=-1)}
    new = [piece for piece in probe if piece.at not in plan.pieces]
    return [each for each in couplings(plan, new) if each.cell in own or each.through in own]


def free_places(plan: Plan, around: Iterable[Cell] = AROUND) -> Iterator[tuple[Cell, Heading]]:
    """Where a probe along an axis finds all of its cells free, but perhaps the one under its middle."""
    for at in around:
        for heading in (Heading.EAST, Heading.SOUTH):
            cells = {piece.at for piece in dust_probe(at, heading)} - {at.moved(dy=-1)}
            if not any(cell in plan.pieces for cell in cells):
                yield at, heading


def assert_sound(plan: Plan, around: Iterable[Cell] = AROUND) -> None:
    """Wherever the ground lets dust or a repeater lie, it couples with nothing."""
    ground = Ground(plan)
    for at, heading in free_places(plan, around):
        below = at.moved(dy=-1)
        stands = below in plan.pieces
        new = not stands and below not in ground.solid_barred
        is_free = at not in ground.dust_barred | ground.fronts | ground.target_sides.keys()
        if is_free and (new or ground.carries_dust(below)):
            assert not probed(plan, dust_probe(at, heading), at), at
        if at not in ground.rest_barred and (new or ground.carries_repeater(below)):
            assert not probed(plan, repeater_probe(at, heading), at), at


@pytest.mark.parametrize("part", [Part.RAIL, Part.BOOSTER_RAIL, Part.DETECTOR_RAIL])
def test_nothing_couples_with_rails(part: Part) -> None:
    yard = Yard(9)
    yard.put(part, MIDDLE)
    assert_sound(yard.plan)
    for heading in (Heading.EAST, Heading.SOUTH, Heading.WEST):
        yard.put(Part.RAIL, MIDDLE.step(heading))
    assert_sound(yard.plan)


@pytest.mark.parametrize(("part", "facing"), FOREIGN)
def test_nothing_couples_through_a_block_that_stands_there(part: Part, facing: Facing | None) -> None:
    for beside in MIDDLE.six_beside():
        yard = yard_with(part, facing)
        if beside not in yard.pieces:
            yard.put(Part.SOLID_BLOCK, beside)
            assert_sound(yard.plan, [beside.moved(dy=1)])


@pytest.mark.parametrize(("part", "facing"), FOREIGN)
def test_just_what_is_barred_couples_one_way_or_the_other(part: Part, facing: Facing | None) -> None:
    plan = yard_with(part, facing).plan
    ground = Ground(plan)
    tried = {at for at, _ in free_places(plan) if at.moved(dy=-1) not in plan.pieces}
    coupled = {
        at
        for at, heading in free_places(plan)
        if probed(plan, dust_probe(at, heading), at) or probed(plan, repeater_probe(at, heading), at)
    }
    barred = ground.dust_barred | ground.fronts | ground.rest_barred | ground.target_sides.keys()
    barred |= {cell.moved(dy=1) for cell in ground.solid_barred}
    assert coupled & tried == barred & tried


def test_a_block_that_would_cut_a_step_is_barred() -> None:
    yard = Yard(9)
    lower, upper = MIDDLE, MIDDLE.step(Heading.EAST, 1)
    yard.put(Part.DUST, lower)
    yard.put(Part.DUST, upper)
    ground = Ground(yard.plan)
    assert lower.moved(dy=1) in ground.solid_barred
    assert upper.moved(dy=1) not in ground.solid_barred


def test_a_block_cuts_dust_off_from_dust_a_step_away() -> None:
    yard = Yard(9)
    yard.put(Part.DUST, MIDDLE)
    assert MIDDLE.step(Heading.EAST, 1) in Ground(yard.plan).dust_barred
    yard.put(Part.SOLID_BLOCK, MIDDLE.moved(dy=1))
    assert MIDDLE.step(Heading.EAST, 1) not in Ground(yard.plan).dust_barred


def test_the_box_is_wider_than_the_rails_and_lies_below_them() -> None:
    ground = Ground(Yard(9).plan, grow=2, depth=3)
    levels = range(RAIL_LEVEL - 3, RAIL_LEVEL)
    expected = {Cell(x, y, z) for x in range(-2, 11) for y in levels for z in range(-2, 11)}
    assert set(ground.box.cells()) == expected
    assert not ground.allows(Cell(0, RAIL_LEVEL - 1, 0))
    assert ground.allows(Cell(1, RAIL_LEVEL - 1, 0))


def test_the_box_reaches_up_under_rails_that_stand_higher() -> None:
    yard = Yard(12)
    yard.put(Part.RAIL, Cell(6, RAIL_LEVEL + 4, 6))
    ground = Ground(yard.plan)
    assert ground.allows(Cell(6, RAIL_LEVEL + 2, 6))
    assert ground.allows(Cell(7, RAIL_LEVEL + 3, 7))
    assert not ground.allows(Cell(6, RAIL_LEVEL + 5, 6))
    assert not ground.allows(Cell(6, RAIL_LEVEL, 1))


@pytest.mark.parametrize("x", [-XZ_LIMIT, XZ_LIMIT])
def test_the_box_ends_where_the_world_does(x: int) -> None:
    rail = Piece(Part.RAIL, Cell(x, Y_LOWEST + 2, -x))
    cells = set(Ground(plan_of([rail]), grow=2, depth=6).box.cells())
    assert len(cells) == 3 * 3 * 2
    assert all(max(abs(cell.x), abs(cell.z)) <= XZ_LIMIT and cell.y >= Y_LOWEST for cell in cells)


def test_without_rails_the_box_is_empty() -> None:
    assert list(Ground(plan_of([Piece(Part.DUST, MIDDLE)])).box.cells()) == []
