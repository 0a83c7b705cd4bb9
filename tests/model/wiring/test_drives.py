"""What can stand under a switch, and that it drives it: tried dry with a lever at its target block.

Resting and powered shapes: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import pytest

from model.dry_run import DryRun, Lever
from model.edits import turn_plan
from model.grid import ALL_TURNS, Cell, Facing, Heading, Turn
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.track.shapes import Shape
from model.wiring.drives import Drive, Driven, drives
from model.wiring.laying.ground import Ground

SWITCH = Cell(0, 64, 0)
ARMS = (Heading.WEST, Heading.EAST, Heading.SOUTH)
"""Its one free side is the north."""


def branch(order: str = "late", more: tuple[Piece, ...] = ()) -> Plan:
    """A switch with three arms of six rails; laid ``late`` it lies at rest, ``early`` it does not."""
    arms = [SWITCH.moved(*(step * n for step in _vector(heading))) for heading in ARMS for n in range(1, 7)]
    rails = [Piece(Part.RAIL, at, Facing.EAST) for at in arms]
    switch = Piece(Part.RAIL, SWITCH, Facing.EAST)
    ordered = [*rails, switch] if order == "late" else [*rails[:6], switch, *rails[6:]]
    blocks = [Piece(Part.SOLID_BLOCK, rail.at.moved(dy=-1)) for rail in ordered]
    return plan_of([*blocks, *more, *ordered])


def _vector(heading: Heading) -> tuple[int, int, int]:
    step = Cell(0, 0, 0).step(heading)
    return step.x, 0, step.z


def possible(plan: Plan, driven: Driven, depth: int = 6) -> list[Drive]:
    return [drive for drive in drives(Ground(plan, 1, depth), driven) if isinstance(drive, Drive)]


def why(plan: Plan, driven: Driven, depth: int = 6) -> list[str]:
    return [drive for drive in drives(Ground(plan, 1, depth), driven) if isinstance(drive, str)]


def with_lever(plan: Plan, drive: Drive) -> Iterator[tuple[Plan, Cell]]:
    """The plan with the drive, and dust with a lever behind it at a side of its target block."""
    pieces = drive.fitted.applied(plan.pieces)
    for heading in Heading:
        dust, lever = drive.target.step(heading), drive.target.step(heading).step(heading)
        cells = (dust, lever, dust.moved(dy=-1), lever.moved(dy=-1))
        if any(cell in pieces for cell in cells):
            continue
        new = [Piece(Part.SOLID_BLOCK, cell) for cell in cells[2:]]
        new += [Piece(Part.DUST, dust), Piece(Part.LEVER, lever, Facing.UP)]
        yield Plan(plan_of([*pieces, *new]).pieces, plan.details), lever


@pytest.mark.parametrize("turn", ALL_TURNS, ids=lambda turn: str(turn.number))
@pytest.mark.parametrize("order", ["late", "early"])
@pytest.mark.parametrize("inverted", [False, True])
def test_every_drive_does_as_it_should_from_every_free_side(inverted: bool, order: str, turn: Turn) -> None:
    plan = turn_plan(branch(order), turn).applied(branch(order))
    rests = DryRun(plan).shape(SWITCH) is RESTING[turn.number]
    found = possible(plan, Driven(SWITCH, inverted, 1, rests))
    assert len(found) == (1 if inverted else 5 if rests else 4)
    for drive in found:
        tried = 0
        for wired, lever in with_lever(plan, drive):
            tried += 1
            assert_driven(wired, lever, inverted, turn)
        assert tried >= 1


def assert_driven(plan: Plan, lever: Cell, inverted: bool, turn: Turn) -> None:
    run = DryRun(plan)
    for on in (False, True, False):
        if on or run.tick:
            run.step([Lever(lever, on)])
        for _ in range(12):
            run.step()
        powered = on is not inverted
        assert run.shape(SWITCH) is (POWERED if powered else RESTING)[turn.number]


def _shapes(preferred: Sequence[Shape]) -> dict[int, Shape]:
    """By the number of the turn: the first curve between sides that it has then."""
    return {
        turn.number: next(
            shape for shape in preferred if {turn.heading(heading) for heading in ARMS} >= set(shape.headings)
        )
        for turn in ALL_TURNS
    }


AT_REST = (Shape.SOUTH_EAST, Shape.SOUTH_WEST, Shape.NORTH_EAST, Shape.NORTH_WEST)
RESTING, POWERED = _shapes(AT_REST), _shapes(AT_REST[::-1])


def test_the_quickest_comes_first() -> None:
    delays = [drive.delay for drive in possible(branch(), Driven(SWITCH, False, 1, True))]
    assert delays == [0, 2, 2, 2, 4]


def test_two_lines_do_not_share_the_one_free_side() -> None:
    driven = Driven(SWITCH, False, 2, True)
    assert [drive.delay for drive in possible(branch(), driven)] == [2, 2, 2, 4]
    assert "Of the sides of the block at 0 63 0 1 are free, for 2 lines." in why(branch(), driven)


def test_a_shallow_box_leaves_out_the_deep_drives() -> None:
    assert [drive.delay for drive in possible(branch(), Driven(SWITCH, False, 1, True), 4)] == [0, 2, 2, 2]
    assert possible(branch(), Driven(SWITCH, True, 1, True), 2) == []
    (reason,) = why(branch(), Driven(SWITCH, True, 1, True), 2)
    assert "outside the box" in reason


def test_a_switch_that_is_wired_already_is_left_alone() -> None:
    torch = Piece(Part.TORCH, SWITCH.moved(dy=-2), Facing.UP)
    under = Piece(Part.SOLID_BLOCK, SWITCH.moved(dy=-3))
    plan = branch(more=(under, torch))
    (reason,) = why(plan, Driven(SWITCH, False, 1, True))
    assert "take them away first" in reason
    assert possible(plan, Driven(SWITCH, False, 1, True)) == []


def test_a_switch_that_only_needs_notice_gets_it() -> None:
    """As built it lies otherwise; a button that nobody presses brings it to rest."""
    plan = branch("early")
    (drive,) = possible(plan, Driven(SWITCH, False, 0, False))
    wired = Plan(drive.fitted.applied(plan.pieces), plan.details)
    assert DryRun(plan).shape(SWITCH) is not RESTING[1]
    assert DryRun(wired).shape(SWITCH) is RESTING[1]
