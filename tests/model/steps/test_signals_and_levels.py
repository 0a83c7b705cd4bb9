"""Signal parts come after the rails that they bear on; levels from the bottom up, and why where not."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import islice, permutations, product
from random import Random

import pytest

from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece, new_piece
from model.plan import Plan, plan_of
from model.steps import Step, build_steps
from tests.model.steps.builder import inspect, inspect_signals, pieces_of, steps_of
from tests.oracle.adapter import pieces_from
from tests.oracle.shapes import Rail, build


def track(*others: Piece, part: Part = Part.RAIL) -> Plan:
    """Three rails to the east from 0 64 0, on blocks, after other pieces."""
    blocks = [new_piece(Part.SOLID_BLOCK, Cell(x, 63, 0)) for x in range(3)]
    return plan_of([*others, *blocks, *(Piece(part, Cell(x, 64, 0), Facing.EAST) for x in range(3))])


def step_with(plan: Plan, part: Part) -> Step:
    """The only step that places such a part."""
    (found,) = (step for step in build_steps(plan) if step.place[0].part is part)
    return found


BELOW = {
    "a torch on the side of the block below": [new_piece(Part.TORCH, Cell(1, 63, 1), Facing.SOUTH)],
    "a torch under the block below": [
        new_piece(Part.SOLID_BLOCK, Cell(1, 61, 0)),
        new_piece(Part.TORCH, Cell(1, 62, 0)),
    ],
    "a repeater into the block below": [
        new_piece(Part.SOLID_BLOCK, Cell(1, 62, 1)),
        new_piece(Part.REPEATER, Cell(1, 63, 1), Facing.NORTH),
    ],
    "dust into the block below": [
        *(new_piece(Part.SOLID_BLOCK, Cell(1, 62, z)) for z in (1, 2)),
        *(new_piece(Part.DUST, Cell(1, 63, z)) for z in (1, 2)),
    ],
    "a lever under the block below": [new_piece(Part.LEVER, Cell(1, 62, 0), Facing.DOWN)],
    "a button on the side of the block below": [new_piece(Part.BUTTON, Cell(1, 63, 1), Facing.SOUTH)],
}


@pytest.mark.parametrize("name", BELOW)
def test_what_powers_the_block_under_a_rail_comes_after_the_rail(name: str) -> None:
    plan = track(*BELOW[name])
    signal = BELOW[name][-1].part
    step = build_steps(plan)[-1]
    assert step.place[0].part is signal
    assert step.why is not None
    assert "1 64 0" in step.why
    assert "while it is laid" in step.why
    inspect(pieces_of(plan), steps_of(plan))


def test_wiring_that_bears_on_no_rail_comes_with_its_level() -> None:
    """Dust along the track one block away, and dust beside the block below that runs past it."""
    blocks = [new_piece(Part.SOLID_BLOCK, Cell(x, 62, z)) for z in (1, 3) for x in range(3)]
    dust = [new_piece(Part.DUST, Cell(x, 63, z)) for z in (1, 3) for x in range(3)]
    steps = build_steps(track(*blocks, *dust))
    assert [step.level for step in steps] == [62, 62, 63, 63, 63, 64]
    assert all(step.why is None for step in steps)


def test_a_torch_beside_a_rail_comes_last_on_its_level() -> None:
    plan = track(new_piece(Part.SOLID_BLOCK, Cell(1, 63, 1)), new_piece(Part.TORCH, Cell(1, 64, 1)))
    step = build_steps(plan)[-1]
    assert (step.place[0].part, step.why) == (Part.TORCH, None)


def test_a_lever_waits_for_what_it_hangs_from() -> None:
    plan = plan_of(
        [new_piece(Part.LEVER, Cell(0, 63, 0), Facing.DOWN), new_piece(Part.GLASS, Cell(0, 64, 0))]
    )
    step = step_with(plan, Part.LEVER)
    assert (step.number, step.why) == (2, "What it hangs from stands higher, at 0 64 0.")


def test_a_signal_part_at_a_three_way_rail_waits_for_the_slope_beside() -> None:
    """Its notice turns the rail, and what is laid in its sight after that may find it otherwise."""
    tee = [Cell(0, 64, 0), Cell(-1, 64, 0), Cell(0, 64, 1), Cell(1, 64, 0), Cell(2, 65, 0)]
    blocks = [new_piece(Part.SOLID_BLOCK, cell.moved(dy=-1)) for cell in [*tee, Cell(0, 64, -1)]]
    torch = new_piece(Part.TORCH, Cell(0, 64, -1))
    plan = plan_of([*blocks, *(new_piece(Part.RAIL, cell) for cell in tee), torch])
    step = step_with(plan, Part.TORCH)
    assert step == build_steps(plan)[-1]
    assert step.why is not None
    assert "Placed before 2 65 0" in step.why
    assert "0 64 0 takes notice: it lies south-east without a signal, and south-west with one." in step.see


def test_a_detector_rail_whose_notice_turns_a_rail_says_so() -> None:
    """The line is full when the arm comes. Its notice makes the middle settle: south-east, by the bias rule.

    The rails of the line have room for the middle, since they are linked to it.
    """
    line = [Piece(Part.RAIL, Cell(x, 64, 0), Facing.EAST) for x in (0, 1, 2)]
    arm = Piece(Part.DETECTOR_RAIL, Cell(1, 64, 1), Facing.EAST)
    step = step_with(plan_of([*line, arm]), Part.DETECTOR_RAIL)
    assert step.place == (arm,)
    assert step.see.endswith("as it is placed it may turn 1 64 0 to south-east.")


def test_what_the_plan_leaves_in_the_air_is_placed_and_said() -> None:
    (step,) = build_steps(plan_of([Piece(Part.RAIL, Cell(x, 64, 0), Facing.EAST) for x in range(5)]))
    assert step.why == "Nothing in the plan carries it at 0 63 0, 1 63 0, 2 63 0 and 2 more."


def test_a_slope_laid_downhill_is_built_uphill() -> None:
    """No rail has more than two neighbours, so the levels can come from the bottom up."""
    cells = [Cell(x, 70 - max(0, x), 0) for x in range(-3, 7)]
    plan = plan_of([new_piece(Part.RAIL, cell, Facing.EAST) for cell in cells])
    steps = steps_of(plan)
    assert [step["level"] for step in steps] == sorted(range(64, 71))
    inspect(pieces_of(plan), steps)


def test_few_rails_break_the_order_of_levels_only_where_every_order_from_below_fails() -> None:
    """All orders from the bottom up are tried with the second implementation."""
    broken = 0
    for plan in islice(random_heaps(), 60):
        late = late_steps(build_steps(plan))
        assert bool(late) != any(map(gives(plan), orders_from_below(plan)))
        assert all(step.why is not None and step.why.startswith("Laid only after ") for step in late)
        broken += bool(late)
    assert broken > 5


def late_steps(steps: tuple[Step, ...]) -> list[Step]:
    """Those below the level of an earlier one."""
    return [step for step in steps if any(step.level < earlier.level for earlier in steps[: step.number])]


def test_levels_come_from_the_bottom_up_though_the_plan_was_laid_from_above() -> None:
    """Two lines that cross far above each other, the upper one laid first."""
    upper = [new_piece(Part.RAIL, Cell(0, 67, z)) for z in range(-3, 4)]
    lower = [new_piece(Part.RAIL, Cell(x, 64, 0), Facing.EAST) for x in range(-3, 4)]
    assert [step.level for step in build_steps(plan_of([*upper, *lower]))] == [64, 67]


def random_heaps() -> Iterator[Plan]:
    """Six rails in a box of two levels, in random order."""
    random = Random(0)
    while True:
        cells = [Cell(x, y, z) for x in range(3) for y in (64, 65) for z in range(3)]
        yield plan_of([Piece(Part.RAIL, cell, Facing.EAST) for cell in random.sample(cells, 6)])


def orders_from_below(plan: Plan) -> Iterator[list[Rail]]:
    """The rails in every order in which none comes after a higher one."""
    rails = pieces_from(plan)
    levels = [[rail for rail in rails if rail[1][1] == level] for level in (64, 65)]
    for low, high in product(*map(permutations, levels)):
        yield [*low, *high]


def gives(plan: Plan) -> Callable[[list[Rail]], bool]:
    """Whether an order gives the shapes of the plan."""
    wanted = build(pieces_from(plan)).shape
    return lambda rails: build(rails).shape == wanted


def test_the_inspector_sees_a_signal_part_that_comes_too_early() -> None:
    plan = track(*BELOW["a torch on the side of the block below"])
    steps = steps_of(plan)
    with pytest.raises(AssertionError):
        inspect_signals(pieces_of(plan), [steps[-1], *steps[:-1]])
