"""The looks of a dry run: what is on, what is not sure, and what changes too often to be drawn."""

from __future__ import annotations

from itertools import pairwise

import pytest

from app.canvas.live import MOST_CHANGES, Live
from app.canvas.live_carts import LiveCarts, PlacedCart
from app.canvas.looks import Looks
from app.canvas.symbols import Look, Mark
from model.dry_run import Drop, DryRun, Event, Lever
from model.grid import Cell, Facing, Heading
from model.parts import Mode, Part
from model.pieces import Held, Piece
from model.plan import Plan
from model.track.layout import Layout
from model.track.shapes import Shape
from tests.app.circuits import (
    JUNCTION,
    LAMP,
    LEVER,
    THROW,
    at,
    blinker,
    dust_line,
    line_with_switch,
    on_blocks,
    piece,
    two_hoppers,
)


class Shown:
    """A plan that runs dry, with a clock on the wall that the test moves."""

    def __init__(self, plan: Plan) -> None:
        self.layout = Layout(plan)
        self.engine = DryRun(plan, self.layout)
        self.now = 0.0
        self.live = Live(self.engine, Looks(self.layout, {}, {}), lambda: self.now)

    def step(self, *events: Event, seconds: float = 0.05) -> frozenset[Cell]:
        """A tick; the cells that look otherwise."""
        self.now += seconds
        self.engine.step(events)
        return self.live.follow(self.engine.changed)

    def steps(self, count: int) -> None:
        for _ in range(count):
            self.step()

    def look(self, cell: Cell) -> Look:
        return self.live.looks[cell]


def test_dust_shows_its_strength_and_is_filled_above_0() -> None:
    """Strength falls by one a dust: common practice, no source."""
    shown = Shown(dust_line())
    assert shown.look(at(1, 0)).strength == 0
    changed = shown.step(Lever(LEVER, True))
    assert [shown.look(at(x, 0)).strength for x in (1, 2, 15, 16)] == [15, 14, 1, 0]
    assert shown.look(LEVER).on
    assert not shown.look(LAMP).on
    # The blocks under the dust are powered with it; nothing looks otherwise that did not change.
    assert changed == {LEVER, *(at(x, 0) for x in range(1, 16)), *(Cell(x, 63, 0) for x in range(16))}


def test_blocks_tell_weak_power_from_strong() -> None:
    shown = Shown(dust_line())
    weak, strong, none = Cell(3, 63, 0), Cell(0, 63, 0), Cell(17, 63, 0)
    assert weak not in shown.live.looks
    shown.step(Lever(LEVER, True))
    assert (shown.look(weak).power, shown.look(weak).strong) == (13, False)
    assert (shown.look(strong).power, shown.look(strong).strong) == (15, True)
    assert none not in shown.live.looks
    assert shown.live.added >= {weak, strong}
    shown.step(Lever(LEVER, False))
    assert shown.look(weak).power is None


def test_a_torch_is_lit_out_and_burnt_out() -> None:
    """The 9th change within 60 ticks puts a torch out for 160: common practice, no source."""
    shown = Shown(blinker())
    seen = set()
    for _ in range(230):
        shown.step(seconds=2)
        look = shown.look(at(1, 0))
        seen.add((look.on, look.burnt))
    assert seen == {(True, False), (False, False), (False, True)}


def test_a_repeater_is_locked_from_the_side() -> None:
    plan = on_blocks(
        [
            piece(0, 0, Part.REPEATER, Facing.EAST),
            piece(0, 1, Part.REPEATER, Facing.NORTH),
            piece(0, 2, Part.LEVER, Facing.UP),
        ]
    )
    shown = Shown(plan)
    shown.step(Lever(at(0, 2), True))
    assert not shown.look(at(0, 0)).locked
    shown.steps(2)
    assert shown.look(at(0, 0)).locked
    shown.step(Lever(at(0, 2), False))
    shown.steps(2)
    assert not shown.look(at(0, 0)).locked


def test_items_are_counted_while_they_go_from_hopper_to_barrel() -> None:
    """One item in 8 ticks: common practice, no source."""
    hopper = Piece(Part.HOPPER, at(0, 0), Facing.EAST, holds=(Held("waybill:Salt", 5),))
    shown = Shown(on_blocks([hopper, piece(1, 0, Part.BARREL)]))
    assert (shown.look(at(0, 0)).count, shown.look(at(1, 0)).count) == (5, 0)
    shown.steps(17)
    counts = shown.look(at(0, 0)).count, shown.look(at(1, 0)).count
    assert counts == (2, 3)


def test_a_comparator_is_on_while_it_gives_anything() -> None:
    barrel = Piece(Part.BARREL, at(0, 0), Facing.NORTH, holds=(Held("waybill:Salt", 1),))
    comparator = Piece(Part.COMPARATOR, at(1, 0), Facing.EAST, mode=Mode.SUBTRACT)
    shown = Shown(on_blocks([barrel, comparator, piece(2, 0, Part.DUST)]))
    shown.steps(4)
    assert shown.look(at(1, 0)).on
    assert shown.look(at(2, 0)).strength == 1


def test_a_switch_lies_as_it_does_now_with_its_drive_filled() -> None:
    shown = Shown(line_with_switch())
    resting = shown.look(JUNCTION) if JUNCTION in shown.live.looks else None
    assert resting is not None
    assert (resting.shape, resting.powered) == (Shape.SOUTH_EAST, False)
    shown.live.bent.clear()
    shown.step(Lever(THROW, True))
    thrown = shown.look(JUNCTION)
    assert (thrown.shape, thrown.other_shape, thrown.powered) == (Shape.SOUTH_WEST, Shape.SOUTH_EAST, True)
    assert JUNCTION in shown.live.bent
    assert shown.live.shape(JUNCTION) is Shape.SOUTH_WEST


def test_a_detector_and_its_lamp_are_on_while_a_cart_is_there() -> None:
    """It looks again after 20 ticks: common practice, no source."""
    shown = Shown(line_with_switch())
    shown.step(Drop(at(4, 0), Heading.EAST))
    assert shown.look(at(4, 0)).on
    assert shown.look(at(4, -1)).on
    shown.steps(21)
    assert not shown.look(at(4, 0)).on
    assert not shown.look(at(4, -1)).on


def test_a_booster_with_a_signal_drives() -> None:
    shown = Shown(line_with_switch())
    assert not shown.look(at(2, 0)).on
    shown.step(Lever(at(2, -1), True))
    assert shown.look(at(2, 0)).on


def test_a_lever_shows_at_once_where_it_will_be() -> None:
    shown = Shown(dust_line())
    assert shown.live.pull(LEVER, True) == {LEVER}
    assert shown.look(LEVER).on
    assert shown.look(at(1, 0)).strength == 0


def test_what_is_not_sure_is_marked_until_the_start() -> None:
    shown = Shown(two_hoppers())
    shown.step()
    assert shown.look(at(0, 0)).mark is Mark.UNSURE
    assert shown.look(at(1, 0)).mark is Mark.UNSURE
    shown.engine.reset()
    shown.live.see_all()
    assert shown.look(at(0, 0)).mark is None


def test_back_at_the_start_everything_looks_as_it_did() -> None:
    shown = Shown(dust_line())
    before = dict(shown.live.looks)
    shown.step(Lever(LEVER, True))
    shown.engine.reset()
    shown.live.see_all()
    assert {cell: look for cell, look in shown.live.looks.items() if cell in before} == before


def flashes(times: list[float]) -> int:
    """The most changes in one second."""
    return max(sum(start <= time < start + 1 for time in times) for start in times)


@pytest.mark.parametrize(
    ("seconds", "wavers"), [(0.2, False), (0.05, False), (0.0125, True), (0.00625, True)]
)
def test_nothing_flashes_more_than_three_times_a_second(seconds: float, wavers: bool) -> None:
    """WCAG 2.2, 2.3.1 (from memory): a flash is a change there and back, three a second at most.

    From a quarter of real time to eight times; the blinker changes every 10 ticks.
    """
    shown = Shown(blinker(delay=8))
    drawn: dict[Cell, list[float]] = {}
    on: dict[Cell, object] = {}
    have_wavered: set[Cell] = set()
    for _ in range(400):
        shown.step(seconds=seconds)
        have_wavered |= shown.live.wavering
        for cell, look in shown.live.looks.items():
            state = (look.on, bool(look.strength), bool(look.power))
            if on.setdefault(cell, state) != state:
                drawn.setdefault(cell, []).append(shown.now)
            on[cell] = state
    assert len(drawn[at(1, 0)]) >= 4
    assert max(flashes(times) for times in drawn.values()) <= MOST_CHANGES
    assert bool(have_wavered) == wavers


def test_what_changes_too_often_is_marked_and_drawn_again_when_it_is_calm() -> None:
    shown = Shown(dust_line())
    for number in range(MOST_CHANGES + 4):
        shown.step(Lever(LEVER, number % 2 == 0))
    assert shown.look(at(1, 0)).mark is Mark.WAVERING
    assert at(1, 0) in shown.live.wavering
    shown.step(Lever(LEVER, True))
    assert shown.look(at(1, 0)).mark is Mark.WAVERING
    shown.now += 1.1
    assert at(1, 0) in shown.live.settle()
    assert (shown.look(at(1, 0)).strength, shown.look(at(1, 0)).mark) == (15, None)
    assert not shown.live.wavering


def test_figures_that_count_do_not_count_as_flashes() -> None:
    hopper = Piece(Part.HOPPER, at(0, 0), Facing.EAST, holds=(Held("waybill:Salt", 60),))
    shown = Shown(on_blocks([hopper, piece(1, 0, Part.BARREL)]))
    for _ in range(200):
        shown.step(seconds=0.00625)
    assert shown.look(at(1, 0)).count == 25
    assert not shown.live.wavering


# Carts


def places(shown: Shown, times: int, reduced: bool = False, *events: Event) -> list[tuple[PlacedCart, ...]]:
    """The carts at each quarter of a tick."""
    carts, seen = LiveCarts(shown.engine, shown.layout), []
    shown.step(*events)
    for _ in range(times):
        for quarter in range(4):
            now = shown.engine.tick - 1 + quarter / 4
            seen.append(carts.placed(now, (), reduced))
        shown.step()
    return seen


def test_a_cart_runs_smoothly_from_cell_to_cell() -> None:
    """0.4 cell a tick: common practice, no source."""
    shown = Shown(line_with_switch())
    xs = [carts[0].cell.x + carts[0].x for carts in places(shown, 10, False, Drop(at(-2, 0), Heading.EAST))]
    steps = [b - a for a, b in pairwise(xs)]
    assert xs[0] == -2.5
    assert min(steps) >= 0
    assert max(steps) <= 0.13


def test_with_reduced_motion_it_stands_in_the_middle_of_its_cell() -> None:
    shown = Shown(line_with_switch())
    for carts in places(shown, 10, True, Drop(at(-2, 0), Heading.EAST)):
        assert (carts[0].x, carts[0].z) == (0.0, 0.0)


def test_a_held_cart_rolls_to_the_middle_and_goes_on_from_there() -> None:
    shown = Shown(line_with_switch())
    seen = places(shown, 8, False, Drop(at(1, 0), Heading.EAST))
    assert seen[-1][0].cell == at(2, 0)
    assert (seen[-1][0].x, seen[-1][0].z) == (0.0, 0.0)
    carts = LiveCarts(shown.engine, shown.layout)
    carts.placed(shown.engine.tick - 1, (), False)
    # Another view of the same run knows only that the cart is held since long.
    held = carts.placed(shown.engine.tick, (), False)[0]
    assert held.x == 0.0
    shown.step(Lever(at(2, -1), True))
    xs = []
    for quarter in range(5):
        cart = carts.placed(shown.engine.tick - 1 + quarter / 4, (), False)[0]
        xs.append(cart.cell.x + cart.x)
    assert xs[0] == 2.0
    assert xs == sorted(xs)


def test_a_cart_before_a_block_stops_in_the_middle() -> None:
    shown = Shown(line_with_switch())
    seen = places(shown, 20, False, Drop(at(13, 0), Heading.EAST))
    assert max(carts[0].cell.x + carts[0].x for carts in seen if carts) == 15.0


def test_a_cart_is_filled_while_it_carries_a_waybill() -> None:
    shown = Shown(line_with_switch())
    drop = Drop(at(5, 0), Heading.EAST, (("Salt", 1),))
    assert places(shown, 1, False, drop)[0][0].loaded
    waiting = LiveCarts(shown.engine, shown.layout).placed(1.0, (Drop(at(7, 0), Heading.WEST),), False)
    assert [(cart.cell, cart.loaded) for cart in waiting][-1] == (at(7, 0), False)
