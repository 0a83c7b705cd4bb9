"""The reader, run dry: which trains turn its line on, how soon, and for how long.

What is expected follows from how the parts behave; common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

import pytest

from model.dry_run import DryRun, Load, Send
from model.edits import turn_plan
from model.grid import ALL_TURNS, Cell, Turn
from model.parts import Part
from model.pieces import Pieces
from model.plan import Plan
from model.wiring.modules.modules import load_module, trial_plan
from model.wiring.readers import RINGS, Ring

EMPTY: Load = ()
SALT: Load = (("Salt", 3),)
OTHER: Load = (("Reed", 5),)
TO_HOPPER = 9
"""Cells from the first rail to the one over the hopper."""
SOON = 5
"""Ticks from a cart coming over the hopper until the line is on."""
LINES = ("ahead", "aside")


class Stretch:
    """The reader on a straight of track, in one of the eight orientations."""

    def __init__(self, ring: Ring, line: str = "ahead", turn: Turn = ALL_TURNS[0]) -> None:
        values = {"ring": ring.name, "line": line}
        plan = trial_plan("reader", **values)
        module = load_module("reader", **values)
        self.ring = ring
        self.start = turn.cell(module.port("line").at)
        self.hopper = turn.cell(Cell(0, -1, 0))
        self.plan = turn_plan(plan, turn).applied(plan)
        self.run = DryRun(self.plan)

    def without(self, cell: Cell) -> Stretch:
        """The same with a piece taken out."""
        stay = Pieces.of(piece for piece in self.plan.pieces if piece.at != cell)
        self.plan = Plan(stay, self.plan.details)
        self.run = DryRun(self.plan)
        return self

    def on_and_off(self, trains: Sequence[tuple[int, Sequence[Load], int]], ticks: int) -> list[int]:
        """The ticks in which the line goes on, off, on … while trains (tick, loads, gap) come."""
        self.run.reset()
        is_on, changes = False, list[int]()
        for tick in range(ticks):
            self.run.step([Send("Quay", tuple(loads), gap) for when, loads, gap in trains if when == tick])
            if (self.run.strength(self.start) > 0) is not is_on:
                is_on = not is_on
                changes.append(tick)
        return changes

    @property
    def stock(self) -> int:
        """Waybills in the hopper."""
        return sum(slot[1] for slot in self.run.contents(self.hopper) if slot is not None)


def last_at_detector(ring: Ring, carts: int, gap: int) -> int:
    return ceil(2.5 * (TO_HOPPER - ring.detector + (carts - 1) * (gap + 1)))


def assert_held(stretch: Stretch, carts: int, gap: int, loads: Sequence[Load]) -> None:
    on, off = stretch.on_and_off([(0, loads, gap)], 480)
    assert on == ceil(2.5 * TO_HOPPER) + SOON
    assert off - last_at_detector(stretch.ring, carts, gap) >= stretch.ring.hold
    assert stretch.stock == 22
    assert len(stretch.run.arrivals) == carts


@pytest.mark.parametrize("line", LINES)
@pytest.mark.parametrize("ring", RINGS, ids=lambda ring: ring.name)
def test_a_called_train_of_any_size_is_held_to_its_last_cart(ring: Ring, line: str) -> None:
    stretch = Stretch(ring, line)
    for carts, gap in ((1, 0), (2, 3), (3, 1), (5, 2), (8, 0), (8, 3)):
        assert_held(stretch, carts, gap, [SALT] * carts)
        assert_held(stretch, carts, gap, [SALT, *[EMPTY] * (carts - 1)])


@pytest.mark.parametrize("turn", ALL_TURNS[1:], ids=lambda turn: str(turn.number))
@pytest.mark.parametrize("ring", RINGS, ids=lambda ring: ring.name)
def test_it_works_in_all_orientations(ring: Ring, turn: Turn) -> None:
    stretch = Stretch(ring, LINES[turn.number % 2], turn)
    assert_held(stretch, 3, 3, [SALT] * 3)
    assert stretch.on_and_off([(0, [OTHER] * 3, 1)], 120) == []


@pytest.mark.parametrize("ring", RINGS, ids=lambda ring: ring.name)
def test_carts_without_the_waybill_change_nothing(ring: Ring) -> None:
    stretch = Stretch(ring)
    for load in (EMPTY, OTHER):
        for carts, gap in ((1, 0), (8, 0), (5, 3)):
            assert stretch.on_and_off([(0, [load] * carts, gap)], 200) == []
            assert stretch.stock == 22
    assert [arrival.carries for arrival in stretch.run.arrivals] == [(("Reed", 5),)] * 5


def test_a_single_cart_loses_one_waybill() -> None:
    stretch = Stretch(RINGS[0])
    stretch.on_and_off([(0, [SALT], 0)], 200)
    assert [arrival.carries for arrival in stretch.run.arrivals] == [(("Salt", 2),)]


@pytest.mark.parametrize("first", [EMPTY, SALT], ids=["empty", "called"])
@pytest.mark.parametrize("ring", [ring for ring in RINGS if ring.hold < 100], ids=lambda ring: ring.name)
def test_a_second_called_train_is_held_wherever_it_follows(ring: Ring, first: Load) -> None:
    """Also where it comes just as the hold of the first is about to end."""
    stretch = Stretch(ring)
    for behind in (4, 9, 18, 27, 40, 47, 48, 49, 50, 51, 52, 53, 54, 55, 57, 60, 62, 64, 66, 68, 70, 73, 80):
        trains = [(0, [first], 0), (behind, [SALT, SALT], 1)]
        changes = stretch.on_and_off(trains, 400)
        needed = range(
            behind + ceil(2.5 * TO_HOPPER) + SOON, behind + last_at_detector(ring, 2, 1) + ring.hold
        )
        assert all(_is_on(changes, tick) for tick in needed), (behind, changes)
        assert stretch.stock == 22
        assert not _is_on(changes, 400)


def _is_on(changes: Sequence[int], tick: int) -> bool:
    return sum(change <= tick for change in changes) % 2 == 1


def test_twenty_calls_leave_it_as_it_was() -> None:
    stretch = Stretch(RINGS[0])
    changes = stretch.on_and_off([(200 * call, [SALT], 0) for call in range(20)], 4000)
    assert len(changes) == 40
    assert stretch.stock == 22
    assert not any(stretch.run.is_burnt_out(piece.at) for piece in stretch.plan.pieces)


def _working(ring: Ring) -> list[Cell]:
    """All of its pieces but what only carries others."""
    carrying = {Part.SOLID_BLOCK, Part.GLASS, Part.BARREL}
    module = load_module("reader", ring=ring.name)
    return [piece.at for piece in module.pieces if piece.part not in carrying]


@pytest.mark.parametrize(
    ("ring", "cell"),
    [(ring, cell) for ring in RINGS for cell in _working(ring)],
    ids=lambda value: value.name if isinstance(value, Ring) else str(value),
)
def test_without_any_of_its_pieces_it_fails(ring: Ring, cell: Cell) -> None:
    stretch = Stretch(ring).without(cell)
    with pytest.raises((AssertionError, ValueError)):
        assert_held(stretch, 5, 3, [SALT] * 5)


def test_it_lies_below_the_rails_and_is_small() -> None:
    module = load_module("reader", ring="short", line="ahead")
    below = [piece.at for piece in module.pieces if piece.part is not Part.DETECTOR_RAIL]
    assert {cell.y for cell in below} == {-1, -2, -3}
    wide = len({cell.x for cell in below}), len({cell.z for cell in below})
    assert wide == (6, 3)
