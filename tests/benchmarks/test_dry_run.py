"""The dry run of 500 signal parts with two carts, and of the same in a plan ten times as large."""

from __future__ import annotations

from typing import Final

import pytest

from model.dry_run import DryRun, Send
from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Held, Piece, new_piece
from model.plan import Arm, ArmEnd, Details, Plan, plan_of
from tests.benchmarks.conftest import AddRow, Ratio
from tests.benchmarks.measuring import seconds

pytestmark = pytest.mark.slow

LINES: Final = 20
APART: Final = 6
TICKS: Final = 4_000
TICKS_A_SECOND: Final = 20
"""Of the block world."""


def circuit(more: int = 0) -> Plan:
    """A closed track with 20 detector rails, each at the head of a line of dust, repeaters and a gate of
    torches that throws a lamp: 500 signal parts. ``more`` blocks, rails and dust lie far off.
    """
    pieces = [*_ring(LINES * APART // 2), *(piece for line in range(LINES) for piece in _line(line))]
    pieces += [piece for number in range(more // 2) for piece in _idle(number)]
    enter = ArmEnd(Cell(1, 64, 0), Heading.EAST)
    return plan_of(pieces, Details(arms=(Arm("Quay", enter),)))


def _ring(length: int) -> list[Piece]:
    """Two straights with curves between them, all on blocks; a detector rail at the head of each line."""
    heads = {_head(line) for line in range(LINES)}
    cells = [Cell(x, 64, 0) for x in range(length + 1)]
    cells += [Cell(length, 64, z) for z in (1, 2)]
    cells += [Cell(x, 64, 3) for x in range(length, -1, -1)] + [Cell(0, 64, z) for z in (2, 1)]
    rails = []
    for cell in cells:
        facing = Facing.EAST if cell.z in (0, 3) else Facing.NORTH
        part = Part.DETECTOR_RAIL if cell in heads else Part.RAIL
        rails += [Piece(Part.SOLID_BLOCK, cell.moved(dy=-1)), Piece(part, cell, facing)]
    return rails


def _head(line: int) -> Cell:
    return Cell(line // 2 * APART + 3, 64, 3 * (line % 2))


def _line(line: int) -> list[Piece]:
    """Twenty-four signal parts away from a detector rail."""
    head = _head(line)
    way = Heading.NORTH if line % 2 == 0 else Heading.SOUTH
    facing, at = (Facing.NORTH if line % 2 == 0 else Facing.SOUTH), head
    pieces = []
    kinds = "ddddddddRdddddddRdd#TdddRO"
    for kind in kinds:
        at = at.step(way)
        pieces.append(Piece(Part.SOLID_BLOCK, at.moved(dy=-1)))
        part = {"d": Part.DUST, "R": Part.REPEATER, "#": Part.SOLID_BLOCK, "T": Part.TORCH, "O": Part.LAMP}
        pieces.append(Piece(part[kind], at, facing))
    return pieces


def _idle(number: int) -> list[Piece]:
    at = Cell(1_000 + number % 100 * 2, 63, number // 100 * 2)
    part = (Part.RAIL, Part.DUST, Part.TORCH, Part.BOOSTER_RAIL)[number % 4]
    return [Piece(Part.SOLID_BLOCK, at), new_piece(part, at.moved(dy=1))]


def test_500_parts_against_real_time(add_row: AddRow) -> None:
    add_row(
        "dry run of 500 parts with two carts, the time that passes in it",
        "real time",
        1 / TICKS_A_SECOND / seconds_a_tick(circuit()),
        200,
        at_least=True,
    )


def test_a_plan_ten_times_as_large(add_row: AddRow) -> None:
    small = circuit()
    large = circuit(9 * len(small.pieces))
    assert len(large.pieces) >= 10 * len(small.pieces) - 1
    add_row(
        "a tick of these 500 parts in a plan ten times as large",
        "the same in the small plan",
        seconds_a_tick(large) / seconds_a_tick(small),
        1.2,
    )


def test_hoppers_that_have_nothing_to_do_with_each_other(ratio: Ratio) -> None:
    """Where each hopper looked at all others it would be 16."""
    ratio(
        "200 ticks of 400 pairs of hoppers",
        lambda: pass_items(400),
        against="the same of 100 pairs",
        bound=lambda: pass_items(100),
        goal=6,
    )


def pass_items(pairs: int) -> None:
    """Two hoppers each, that pass items on all the time."""
    pieces = []
    for number in range(pairs):
        full = Piece(Part.HOPPER, Cell(3 * number, 64, 0), Facing.EAST, holds=(Held("ingot", 60),))
        pieces += [full, Piece(Part.HOPPER, Cell(3 * number + 1, 64, 0), Facing.EAST)]
    dry_run = DryRun(plan_of(pieces))
    go_on(dry_run, 200)


def seconds_a_tick(plan: Plan) -> float:
    """The best of three runs with two carts, one a little behind the other."""
    return min(_seconds(plan) for _ in range(3)) / TICKS


def _seconds(plan: Plan) -> float:
    dry_run = DryRun(plan)
    dry_run.step((Send("Quay"),))
    go_on(dry_run, 60)
    dry_run.step((Send("Quay"),))
    taken = seconds(lambda: go_on(dry_run, TICKS))
    assert len(dry_run.carts) == 2
    assert any(dry_run.strength(_head(line)) for line in range(LINES))
    return taken


def go_on(dry_run: DryRun, ticks: int) -> None:
    for _ in range(ticks):
        dry_run.step()
