"""Carts while a plan runs. Common practice, no source, unless a test names one."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.dry_run import Arrival, Drop, Event, EventRefused, Lever, Result, Send, Why
from model.grid import Cell, Heading
from tests.model.dry_run.building import Bench, E, N, S, cell, off, on

EMPTY = ()
Events = list[tuple[int, Event]]


Gone = tuple[int, Cell, Why]


def gone(cart: int, at: Cell, why: Why) -> Gone:
    return cart, at, why


def lost(done: Result) -> tuple[Gone, ...]:
    """The carts that reached no arm, without the ticks in which they were lost."""
    return tuple((each.cart, each.at, each.why) for each in done.lost)


def straight(length: int) -> Bench:
    """Rails to the east from 0 0, in by Quay, out by Mill."""
    bench = Bench()
    bench.track(0, 0, length)
    bench.arm("Quay", into=(cell(0, 0), Heading.EAST))
    bench.arm("Mill", out=(cell(length - 1, 0), Heading.EAST))
    return bench


def train(carts: int, gap: int = 1) -> Send:
    return Send("Quay", (EMPTY,) * carts, gap)


@given(st.integers(1, 12), st.integers(1, 4), st.integers(0, 3), st.integers(0, 5))
def test_trains_are_timed_by_one_rounding(length: int, carts: int, gap: int, tick: int) -> None:
    """8 cells a second are 2.5 ticks a cell: T + ceil(2.5 · (n + k · (g + 1))), in exact fractions."""
    done = straight(length).watch([], [(tick, train(carts, gap))])
    expected = [tick + ceil(Fraction(5, 2) * (length + k * (gap + 1))) for k in range(carts)]
    assert done.arrivals == tuple(Arrival(k + 1, expected[k], "Mill", ()) for k in range(carts))
    assert not lost(done)
    assert done.ticks == expected[-1] + 1


def test_a_detector_rail_is_on_while_a_train_keeps_passing() -> None:
    """It looks every 20 ticks; a cart that comes and goes between two looks is not seen."""
    bench = Bench()
    bench.track(0, 0, 4)
    detector = bench.put("detector-rail", 4, 0, E)
    bench.track(5, 0, 10)
    bench.arm("Quay", into=(cell(0, 0), Heading.EAST))
    bench.arm("Mill", out=(cell(14, 0), Heading.EAST))
    assert bench.watch([detector], [(0, train(1))]).probes[detector] == ((0, 0), (10, 15), (30, 0))
    # A second cart that comes 8 cells later comes in tick 30, just as the rail looks.
    seen = bench.watch([detector], [(0, train(2, gap=7))]).probes[detector]
    assert seen == ((0, 0), (10, 15), (50, 0))
    # 9 cells later it comes in tick 33: off between.
    seen = bench.watch([detector], [(0, train(2, gap=8))]).probes[detector]
    assert seen == ((0, 0), (10, 15), (30, 0), (33, 15), (53, 0))
    # One that is there from tick 25 to 28 is not seen.
    assert bench.watch([detector], [(0, train(2, gap=5))]).probes[detector] == ((0, 0), (10, 15), (30, 0))


def test_a_cart_that_finds_no_rail_leaves_the_track() -> None:
    bench = Bench()
    bench.track(0, 0, 3)
    bench.arm("Quay", into=(cell(0, 0), Heading.EAST))
    done = bench.watch([], [(0, train(1))])
    assert lost(done) == (gone(1, cell(2, 0), Why.LEAVES_TRACK),)
    assert (done.ticks, done.lost[0].tick) == (9, 8)


def test_a_stopped_cart_stays_and_is_listed_once_and_another_runs_into_it() -> None:
    bench = Bench()
    bench.track(0, 0, 4)
    bench.put("detector-rail", 4, 0, E)
    bench.put("lamp", 5, 0)
    bench.arm("Quay", into=(cell(0, 0), Heading.EAST))
    done = bench.watch([cell(4, 0)], [(0, train(1))], 200)
    assert lost(done) == (gone(1, cell(4, 0), Why.STOPPED),)
    assert done.probes[cell(4, 0)] == ((0, 0), (10, 15))
    done = bench.watch([cell(4, 0)], [(0, train(1)), (100, train(1))])
    assert lost(done) == (gone(1, cell(4, 0), Why.STOPPED), gone(2, cell(4, 0), Why.COLLISION))
    # The rail looks in ticks 30, 50 …; in tick 110 the second cart comes in, so it looks again 20 later.
    assert done.probes[cell(4, 0)] == ((0, 0), (10, 15), (130, 0))
    assert done.ticks == 131


def test_a_run_ends_while_a_stopped_cart_keeps_a_detector_rail_on() -> None:
    bench = Bench()
    bench.track(0, 0, 1)
    bench.put("detector-rail", 1, 0, E)
    bench.put("solid-block", 2, 0)
    bench.arm("Quay", into=(cell(0, 0), Heading.EAST))
    assert bench.watch([], [(0, train(1))]).ticks == 6, "it would leave the second cell in tick 5, and stops"


def test_carts_that_meet_in_a_cell_collide_and_carts_that_change_places_pass() -> None:
    """Carts from both ends of a line of odd length meet in the middle; of even length they change places."""
    for length, meet in ((7, True), (8, False)):
        bench = Bench()
        bench.track(0, 0, length)
        bench.arm("Quay", into=(cell(0, 0), Heading.EAST), out=(cell(0, 0), Heading.WEST))
        last = cell(length - 1, 0)
        bench.arm("Mill", into=(last, Heading.WEST), out=(last, Heading.EAST))
        done = bench.watch([], [(0, train(1)), (0, Send("Mill"))])
        middle = cell(3, 0)
        collided = (gone(1, middle, Why.COLLISION), gone(2, middle, Why.COLLISION))
        assert lost(done) == (collided if meet else ())
        assert {each.arm for each in done.arrivals} == (set() if meet else {"Quay", "Mill"})


def test_three_carts_sent_into_one_cell_in_one_tick_all_collide() -> None:
    done = straight(5).watch([], [(3, train(1))] * 3)
    assert lost(done) == tuple(gone(number, cell(0, 0), Why.COLLISION) for number in (1, 2, 3))


def held_at_booster() -> tuple[Bench, Cell]:
    """Four rails, a booster beside a lever, three rails."""
    bench = Bench()
    bench.track(0, 0, 4)
    bench.put("booster-rail", 4, 0, E)
    bench.track(5, 0, 3)
    bench.arm("Quay", into=(cell(0, 0), Heading.EAST))
    bench.arm("Mill", out=(cell(7, 0), Heading.EAST))
    return bench, bench.put("lever", 4, 1)


def test_a_booster_without_a_signal_holds_a_cart_and_lets_it_go_afresh() -> None:
    bench, lever = held_at_booster()
    done = bench.watch([], [(0, train(1)), on(lever, 50)])
    # Afresh from tick 50: the fourth further cell is beyond the arm, 10 ticks later.
    assert done.arrivals == (Arrival(1, 60, "Mill", ()),)
    assert bench.watch([], [on(lever, 0), (0, train(1))]).arrivals == (Arrival(1, 20, "Mill", ()),)
    waits = bench.watch([], [(0, train(1))])
    assert lost(waits) == (gone(1, cell(4, 0), Why.RUNNING),)
    assert waits.ticks == 11, "nothing moves once it is held"


def test_a_cart_is_held_when_the_signal_goes_while_it_is_on_the_booster() -> None:
    bench, lever = held_at_booster()
    done = bench.watch([], [on(lever, 0), (0, train(1)), off(lever, 11), on(lever, 12)])
    # In at 10, held at the end of tick 11, afresh from 12: four cells are 10 ticks.
    assert done.arrivals == (Arrival(1, 22, "Mill", ()),)


def test_the_cart_behind_runs_into_a_held_one() -> None:
    bench, _ = held_at_booster()
    done = bench.watch([], [(0, train(2, gap=2))])
    assert lost(done) == (gone(1, cell(4, 0), Why.COLLISION), gone(2, cell(4, 0), Why.COLLISION))


def test_the_way_out_is_looked_up_on_the_shapes_at_the_end_of_the_last_tick() -> None:
    """The switch goes over in the tick in which the cart leaves it: too late; one tick before: in time."""
    bench = Bench()
    bench.track(0, -1, 3, N)
    bench.track(0, 1, 3, S)
    bench.track(1, 0, 4, E)
    bench.put("rail", 0, 0, N)
    bench.arm("Quay", into=(cell(4, 0), Heading.WEST))
    bench.arm("Mill", out=(cell(0, 3), Heading.SOUTH))
    bench.arm("Fen", out=(cell(0, -3), Heading.NORTH))
    lever = bench.put("lever", -1, 0)
    # The cart comes into the switch in tick 10 and leaves it in tick 13.
    for tick, arm in ((12, "Fen"), (13, "Mill")):
        done = bench.watch([], [(0, train(1)), on(lever, tick)])
        assert [each.arm for each in done.arrivals] == [arm]


def test_at_the_last_tick_carts_run_or_are_not_in_yet() -> None:
    done = straight(20).watch([], [(0, train(3, gap=3))], 11)
    assert lost(done) == (
        gone(1, cell(4, 0), Why.RUNNING),
        gone(2, cell(0, 0), Why.RUNNING),
        gone(3, cell(0, 0), Why.RUNNING),
    )
    assert done.ticks == 11


def test_a_cart_can_be_dropped_anywhere_on_a_rail() -> None:
    dry_run = straight(10).dry_run()
    dry_run.step([Drop(cell(6, 0), Heading.WEST, (("Salt", 3),))])
    (cart,) = dry_run.carts
    assert (cart.at, cart.heading, cart.carries) == (cell(6, 0), Heading.WEST, (("Salt", 3),))
    assert (cart.came, cart.goes) == (0, 3)
    for _ in range(3):
        dry_run.step()
    assert dry_run.carts[0].at == cell(5, 0)
    with pytest.raises(EventRefused):
        dry_run.step([Drop(cell(6, 5), Heading.WEST)])


@pytest.mark.parametrize(
    "event",
    [
        Send("Nowhere"),
        Send("Mill"),
        Send("Beacon"),
        Lever(cell(0, 0), True),
        Drop(cell(0, 9), Heading.WEST),
    ],
)
def test_what_the_plan_has_nothing_for_is_refused_before_anything_is_done(event: Event) -> None:
    bench = straight(5)
    bench.arm("Beacon", into=(cell(0, 7), Heading.EAST))
    dry_run = bench.dry_run()
    with pytest.raises(EventRefused):
        dry_run.step([train(1), event])
    assert (dry_run.tick, dry_run.carts) == (0, ())


def test_carts_climb_and_curve_at_one_cell_each() -> None:
    bench = Bench()
    bench.track(0, 0, 3)
    for step, y in ((3, 65), (4, 66)):
        bench.put("rail", step, 0, E, y=y)
    bench.put("rail", 5, 0, E, y=66)
    bench.put("rail", 5, 1, S, y=66)
    bench.arm("Quay", into=(cell(0, 0), Heading.EAST))
    bench.arm("Mill", out=(cell(5, 1, 66), Heading.SOUTH))
    done = bench.watch([], [(0, train(1))])
    assert done.arrivals == (Arrival(1, ceil(2.5 * 7), "Mill", ()),)


def test_carts_that_arrive_in_one_tick_are_listed_by_number() -> None:
    """The second is sent later and has a shorter way; both arrive in tick 25."""
    bench = straight(10)
    bench.track(0, 5, 4)
    bench.arm("Fen", into=(cell(0, 5), Heading.EAST), out=(cell(3, 5), Heading.EAST))
    done = bench.watch([], [(0, train(1)), (15, Send("Fen"))])
    assert [(each.cart, each.tick, each.arm) for each in done.arrivals] == [(1, 25, "Mill"), (2, 25, "Fen")]
