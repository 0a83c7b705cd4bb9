"""Queues before readers, against the theory of queues and against a second way to work them out."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise, takewhile
from math import sqrt
from statistics import fmean, stdev

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.network.times import HOUR, WEEK
from model.network.traffic import simulate
from model.network.traffic_clock import moments
from model.network.traffic_values import (
    HOLD,
    PASSAGE,
    Journey,
    Leg,
    Traffic,
    TrafficSettings,
)
from model.progress import Progress


def run(journeys: Iterable[Journey], **said: object) -> Traffic:
    last = [*simulate(tuple(journeys), TrafficSettings(**said))][-1]  # type: ignore[arg-type]
    assert isinstance(last, Traffic)
    return last


def ride(*legs: Leg, a_second: float, start: str = "Quay", end: str = "Fen") -> Journey:
    return Journey(start, end, a_second * WEEK, legs)


def one_reader(a_second: float, *, calls: bool = True, cells: int = 8) -> Journey:
    return ride(Leg(cells, "Mill/East", calls), Leg(16, None), a_second=a_second)


def served(load: float, customers: float) -> dict[str, float]:
    """A reader that takes 1 s for each, over as long as so many come."""
    return {"hours": customers / load / HOUR, "hold": 1.0, "passage": 0.0}


MD1 = {0.5: (0.5, 0.25), 0.8: (2.0, 1.6), 0.9: (4.5, 4.05)}
"""By load, mean wait and mean length of the queue M/D/1 at a service time of 1: the formulas
Wq = ρ/(2μ(1−ρ)) and Lq = ρ²/(2(1−ρ)) stand in a chapter of a textbook on learn.saylor.org (48649)."""
FEW = {0.5: 1_000, 0.8: 3_000, 0.9: 8_000}
RUNS = 16


def waits_and_lengths(load: float, customers: int, runs: int) -> tuple[list[float], list[float]]:
    counts = [
        run([one_reader(load)], seed=seed, **served(load, customers)).readers[0].queue for seed in range(runs)
    ]
    return [count.mean_wait for count in counts], [count.mean_length for count in counts]


def close(values: list[float], wanted: float, widest: float) -> None:
    """Within four standard errors of the mean of independent runs, which are no wider than said."""
    error = stdev(values) / sqrt(len(values))
    assert abs(fmean(values) - wanted) <= 4 * error
    assert 4 * error <= widest * wanted, "too wide to tell anything"


@pytest.mark.parametrize("load", MD1)
def test_the_wait_is_that_of_md1(load: float) -> None:
    waits, lengths = waits_and_lengths(load, FEW[load], RUNS)
    wait, length = MD1[load]
    close(waits, wait, 0.4)
    close(lengths, length, 0.4)


@pytest.mark.slow
@pytest.mark.parametrize("load", MD1)
def test_the_wait_is_that_of_md1_over_a_million_customers(load: float) -> None:
    waits, lengths = waits_and_lengths(load, 50_000, 20)
    wait, length = MD1[load]
    close(waits, wait, 0.1)
    close(lengths, length, 0.1)


def test_lorries_that_come_eight_an_hour_wait_five_minutes() -> None:
    """After an exercise of Render and Heizer: 8 an hour, 5 minutes for each. The answer is from memory."""
    lorry = ride(Leg(8, "Mill/East", calls=True), Leg(8, None), a_second=8 / HOUR)
    waits = [
        run([lorry], seed=seed, hours=250, hold=300.0, passage=0.0).readers[0].queue.mean_wait
        for seed in range(RUNS)
    ]
    close(waits, 300, 0.4)


def test_carts_that_call_and_carts_that_do_not_wait_as_long_as_in_mg1() -> None:
    """Pollaczek and Khinchine, from memory: Wq = λ·E[S²]/(2(1−ρ)); S is 2 s for half of them, else 0.5 s."""
    rate, services = 0.6, (2.0, 0.5)
    load = rate * fmean(services)
    wanted = rate * fmean(service**2 for service in services) / (2 * (1 - load))
    both = [one_reader(rate / 2), one_reader(rate / 2, calls=False)]
    waits = [
        run(both, seed=seed, hours=3_000 / rate / HOUR, hold=1.5, passage=0.5).readers[0].queue.mean_wait
        for seed in range(RUNS)
    ]
    close(waits, wanted, 0.4)


@pytest.mark.parametrize("load", [0.3, 0.95, 1.2])
def test_each_wait_follows_from_the_one_before(load: float) -> None:
    """Lindley's recursion, from memory: a wait is the last one and the service, less what lies between."""
    options = TrafficSettings(seed=7, **served(load, 500))  # type: ignore[arg-type]
    first = takewhile(lambda at: at + 1 < options.seconds, moments(load * WEEK, 0, options))
    coming = [at + 1 for at in first]
    waits = [0.0]
    for earlier, later in pairwise(coming):
        waits.append(max(0.0, waits[-1] + 1 - (later - earlier)))
    cut = [min(wait, options.seconds - at) for wait, at in zip(waits, coming, strict=True)]
    found = run([one_reader(load)], seed=7, **served(load, 500)).readers[0].queue
    assert found.arrivals == len(coming)
    assert found.mean_wait == pytest.approx(fmean(cut))
    depths = [
        sum(at <= now < at + wait for at, wait in zip(coming, waits, strict=True) if wait) for now in coming
    ]
    assert found.longest == max(depths)


journeys_of_chance = st.lists(
    st.builds(
        lambda legs, a_second: ride(*legs, Leg(5, None), a_second=a_second),
        st.lists(st.builds(Leg, st.integers(1, 90), st.sampled_from(["A/n", "A/s", "B/n"]), st.booleans())),
        st.floats(0.001, 0.4),
    ),
    max_size=5,
)


@settings(max_examples=60, deadline=None)
@given(journeys_of_chance, st.integers(), st.booleans(), st.floats(0, 0.2))
def test_littles_law_holds_to_the_last_second(
    journeys: list[Journey], seed: int, evenly: bool, hours: float
) -> None:
    """L = λW, counted over the run: what waits at each moment against what each has waited."""
    found = run(journeys, seed=seed, evenly=evenly, hours=hours)
    for queue in [each.queue for each in (*found.readers, *found.junctions)]:
        assert queue.mean_length * hours * HOUR == pytest.approx(queue.arrivals * queue.mean_wait, abs=1e-6)
        assert queue.longest <= queue.arrivals
    for reader in found.readers:
        assert 0 <= reader.utilisation <= 1 + 1e-9
        assert reader.called <= reader.queue.arrivals
    for junction in found.junctions:
        parts = [one.queue for one in found.readers if one.reader.startswith(junction.junction)]
        assert junction.queue.arrivals == sum(part.arrivals for part in parts)
        assert junction.queue.mean_length == pytest.approx(sum(part.mean_length for part in parts))
        longest = [part.longest for part in parts]
        assert max(longest) <= junction.queue.longest <= sum(longest)
    for trip in found.trips:
        assert 0 <= trip.arrived <= trip.departed
        if trip.mean_seconds is not None and trip.longest_seconds is not None:
            assert trip.free_seconds - 1e-6 <= trip.mean_seconds <= trip.longest_seconds + 1e-6


def test_all_waits_together_are_what_the_trips_take_longer() -> None:
    """Where everybody arrives before the end: carts stop coming, and the rest have time to go through."""
    both = [one_reader(0.05), one_reader(0.02, calls=False, cells=80)]
    found = run(both, hours=10, seed=3)
    lost = sum(trip.arrived * ((trip.mean_seconds or 0) - trip.free_seconds) for trip in found.trips)
    queue = found.readers[0].queue
    under_way = found.departed - found.arrived
    assert lost == pytest.approx(queue.arrivals * queue.mean_wait, abs=60 * (under_way + 1))
    assert lost > 500


def test_evenly_spaced_carts_wait_for_none_where_there_is_time() -> None:
    found = run([one_reader(0.1)], evenly=True, hours=1, hold=9.0, passage=0.9)
    queue = found.readers[0].queue
    assert (queue.longest, queue.mean_wait) == (0, 0)
    assert found.trips[0].departed in (359, 360, 361), "every 10 s for an hour"
    assert found.trips[0].mean_seconds == pytest.approx(3), "24 cells at 8 a second"
    assert found.readers[0].utilisation == pytest.approx(0.99, abs=0.003)


def test_evenly_spaced_trips_begin_at_moments_of_their_own() -> None:
    """Five trips, each every 100 s: sent off together, four of them would wait."""
    found = run([one_reader(0.01) for _ in range(5)], evenly=True, hours=1, hold=1.0, passage=1.0)
    assert found.departed == pytest.approx(180, abs=5)
    assert found.readers[0].queue.longest == 0


def test_each_of_too_many_waits_longer_than_the_last() -> None:
    """Every 10 s one comes, every 12 s one may go in: the n-th waits 2 s longer than the one before."""
    found = run([one_reader(0.1)], evenly=True, hours=1, hold=12.0, passage=0.0)
    reader = found.readers[0]
    assert reader.load == pytest.approx(1.2)
    assert found.overloaded == (reader,)
    goes_in = 300
    come = reader.queue.arrivals
    assert reader.queue.longest == pytest.approx(come - goes_in, abs=1)
    cut = [min(2.0 * number, 10.0 * (come - number)) for number in range(come)]
    assert reader.queue.mean_wait == pytest.approx(fmean(cut), rel=0.02)
    assert reader.utilisation == pytest.approx(1, abs=0.003)


def test_nobody_waits_at_a_second_reader_that_is_as_quick_as_the_first() -> None:
    legs = (Leg(8, "Mill/East", True), Leg(40, "Fen/North", True), Leg(8, None))
    found = run([ride(*legs, a_second=0.1)], seed=1, hours=3)
    first, second = found.readers
    assert first.queue.longest > 3
    assert second.queue.longest == 0
    assert [reader.reader for reader in found.readers] == ["Mill/East", "Fen/North"]
    assert [junction.junction for junction in found.junctions] == ["Mill", "Fen"]


def test_the_hold_of_a_reader_goes_before_that_of_its_junction() -> None:
    options = TrafficSettings(hold=5, passage=2, holds={"Mill": 7, "Mill/East": 9})
    asked = ("Mill/East", "Mill/West", "Fen/North")
    assert [options.headway(reader, calls=True) for reader in asked] == [11, 9, 7]
    assert [options.headway(reader, calls=False) for reader in asked] == [2, 2, 2]


def test_the_headway_is_that_of_the_reader_of_this_program() -> None:
    """118 to 121 ticks is what ``platelayer wire`` prints for the arms of Saltern Junction."""
    ticks = 20 * TrafficSettings().headway("Mill/East", calls=True)
    assert 118 <= ticks <= 121
    assert ticks == pytest.approx(20 * (HOLD + PASSAGE))


def test_the_queue_of_a_junction_is_what_waits_at_one_time() -> None:
    """Two queues are seldom at their longest in the same moment, and here they are not."""
    west = ride(Leg(8, "Mill/West", True), Leg(8, None), a_second=0.8)
    found = run([one_reader(0.8), west], seed=5, **served(0.8, 1000))
    longest_east, longest_west = (reader.queue.longest for reader in found.readers)
    both = found.junctions[0].queue.longest
    assert max(longest_east, longest_west) <= both < longest_east + longest_west


def test_a_seed_gives_one_run_and_another_gives_another() -> None:
    trips = [one_reader(0.05), one_reader(0.08, calls=False)]
    assert run(trips, seed=4, hours=4) == run(trips, seed=4, hours=4)
    assert run(trips, seed=4, hours=4) != run(trips, seed=5, hours=4)
    assert run(trips, seed=4, hours=4, evenly=True) == run(trips, seed=4, hours=4, evenly=True)
    assert run(trips, seed=4, hours=4, evenly=True) != run(trips, seed=5, hours=4, evenly=True)


def test_a_trip_more_leaves_the_others_as_they_were() -> None:
    away = ride(Leg(8, "Fen/North", True), Leg(8, None), a_second=0.03)
    assert run([one_reader(0.05), away], seed=4).trips[0] == run([one_reader(0.05)], seed=4).trips[0]


def test_nobody_sets_out_where_nobody_rides_or_no_way_leads() -> None:
    nowhere = Journey("Quay", "Beacon", 700, ())
    found = run([one_reader(0), nowhere])
    assert [trip.departed for trip in found.trips] == [0, 0]
    assert [trip.mean_seconds for trip in found.trips] == [None, None]
    assert found.readers[0].queue.arrivals == 0
    assert found.readers[0].load == 0


def test_what_lies_beyond_the_end_is_not_counted() -> None:
    """An hour is not enough for 28,801 cells at 8 a second."""
    slow = ride(Leg(8, "Mill/East", True), Leg(28_801 - 8, None), a_second=0.01)
    found = run([slow], hours=1)
    assert found.arrived == 0
    assert found.departed > 20
    assert found.trips[0].free_seconds > HOUR


def test_as_many_set_out_as_the_week_asks_for() -> None:
    found = run([Journey("Quay", "Fen", 7 * 600, (Leg(8, None),))], seed=2)
    assert found.departed == pytest.approx(600, abs=4 * sqrt(600)), (
        "a Poisson number: its variance is its mean"
    )
    assert run([Journey("Quay", "Fen", 7 * 600, (Leg(8, None),))], evenly=True).departed in (599, 600, 601)


def test_it_tells_how_far_it_is_and_can_be_given_up() -> None:
    steps = simulate([one_reader(0.5)], TrafficSettings())
    told = [step for step, _ in zip(steps, range(3), strict=False) if isinstance(step, Progress)]
    assert len(told) == 3
    assert all(step.of == 24 * HOUR for step in told)
    assert sorted(step.done for step in told) == [step.done for step in told]
    assert 0 < told[0].done < told[2].done < 24 * HOUR
    steps.close()  # type: ignore[attr-defined]
