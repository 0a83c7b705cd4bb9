"""The planner against brute force, carts run reader by reader, pins and their prices, and proofs."""

from __future__ import annotations

import random
from fractions import Fraction

import msgspec
import pytest

from model.network.network import JunctionSpec, Link, Network, ReaderPin, ReaderSpec, Station, Trip, WayPin
from model.network.planning import plan_network, planned
from model.network.result import NetworkPlan, Planned
from model.network.riding import Rider, Stop
from model.progress import Progress
from tests.oracle.network_plans import best
from tests.oracle.random_networks import large_network, random_network

NEVER = 10**9
"""What brute force gives where no plan keeps the pins."""


def small_network(rng: random.Random) -> Network:
    return random_network(
        rng,
        junctions=rng.choice((3, 4, 5, 6)),
        trips=rng.randint(4, 14),
        lengths=rng.choice(((1,), (1, 2), (1, 2, 3))),
        given=rng.choice((0, 0.5, 0.9)),
        stations=rng.choice((3, 4, 5)),
    )


def assert_that_carts_arrive(network: Network, plan: NetworkPlan) -> None:
    """A cart with exactly the listed waybills goes the planned way and none of them is left."""
    rider = Rider(network, plan)
    for trip, planned_trip in zip(network.trips, plan.trips, strict=True):
        assert (trip.start, trip.end) == (planned_trip.start, planned_trip.end)
        if planned_trip.length is None or trip.start == trip.end:
            assert planned_trip.links == planned_trip.via == planned_trip.waybills == ()
            continue
        ride = rider.ride(planned_trip.links[0], planned_trip.waybills)
        assert (ride.why, ride.end) == (Stop.STATION, trip.end)
        assert (ride.links, ride.taken, ride.left) == (planned_trip.links, planned_trip.waybills, ())
        entered = [network.links[link].end for link in ride.links]
        assert planned_trip.via == tuple(end for end in entered if end in plan.readers)
        assert planned_trip.length == sum(network.links[link].length for link in ride.links)


def waybills_of(network: Network, plan: NetworkPlan) -> Fraction:
    """Counted again from what is printed on the cards."""
    return sum(
        (
            Fraction(str(trip.per_week)) * len(planned_trip.waybills)
            for trip, planned_trip in zip(network.trips, plan.trips, strict=True)
        ),
        Fraction(0),
    )


def names_called(plan: NetworkPlan) -> set[str]:
    return {word for trip in plan.trips for word in trip.waybills}


@pytest.mark.parametrize("seed", [*range(60), 242, 1382])
def test_no_plan_is_better(seed: int) -> None:
    """Brute force: all ways, all defaults, all names. The last two seeds once had worse or wrong plans."""
    rng = random.Random(seed)
    network = small_network(rng)
    known = best(network, limit=20_000)
    if known is None:
        pytest.skip("too much to try")
    plan = planned(network)
    assert (plan.waybills_per_week, plan.distinct_names) == known
    assert (plan.waybills_bound, plan.names_bound, plan.proved) == (*known, True)
    assert waybills_of(network, plan) == known[0]
    assert names_called(plan) == {each.name for each in plan.readers.values()} - {None}
    assert_that_carts_arrive(network, plan)


@pytest.mark.parametrize("seed", range(60))
def test_no_plan_that_keeps_the_pins_is_better(seed: int) -> None:
    """Defaults and names are pinned, often one name to several readers."""
    rng = random.Random(seed)
    network = small_network(rng)
    specs = dict(network.readers())
    pins = tuple(
        ReaderPin(key, rng.choice((None, None, *specs[key].ways)), rng.choice((None, "Salt", "Reed", "Salt")))
        for key in rng.sample(list(specs), min(len(specs), rng.randint(1, 8)))
    )
    known = best(
        _with_defaults(network, {pin.reader: pin.default for pin in pins}),
        pinned={pin.reader: pin.name for pin in pins if pin.name is not None},
        limit=500,
    )
    if known is None:
        pytest.skip("too much to try")
    pinned_network = network.replace(pins=pins)
    plan = _without_prices(pinned_network)
    assert_that_carts_arrive(network, plan)
    if known[1] == NEVER:
        assert plan.unkept
        return
    assert plan.unkept == ()
    assert (plan.waybills_per_week, plan.distinct_names) == known
    assert (plan.names_bound, plan.proved) == (known[1], True)
    for pin in pins:
        assert pin.default in (None, plan.readers[pin.reader].default)
        assert pin.name is None or plan.readers[pin.reader].name in (None, pin.name)


def _without_prices(network: Network) -> NetworkPlan:
    """The plan that comes before the prices are worked out."""
    last: NetworkPlan | None = None
    for step in plan_network(network):
        if isinstance(step, Progress) and step.stage == "prices":
            break
        last = step if isinstance(step, NetworkPlan) else last
    assert last is not None
    return last


def _with_defaults(network: Network, defaults: dict[str, str | None]) -> Network:
    return network.replace(
        junctions=tuple(
            msgspec.structs.replace(
                junction,
                readers=tuple(
                    msgspec.structs.replace(
                        reader,
                        default=defaults.get(f"{junction.name}/{reader.start}") or reader.default,
                    )
                    for reader in junction.readers
                ),
            )
            for junction in network.junctions
        )
    )


@pytest.mark.parametrize("seed", range(6))
def test_sixty_readers_are_planned_with_proof(seed: int) -> None:
    """All links equally long, so that many ways are: the hard case."""
    network = large_network(random.Random(seed), junctions=10, trips=150, lengths=range(64, 65))
    assert len(list(network.readers())) == 60
    plan = planned(network)
    assert plan.proved
    assert plan.distinct_names == plan.names_bound > 3
    assert_that_carts_arrive(network, plan)


def test_more_readers_are_planned_with_a_bound() -> None:
    network = large_network(random.Random(1), junctions=100, trips=600, lengths=range(64, 65))
    plan = planned(network, seconds=1)
    assert 0 < plan.waybills_bound <= plan.waybills_per_week <= 1.2 * plan.waybills_bound
    assert 0 < plan.names_bound <= plan.distinct_names
    assert waybills_of(network, plan) == plan.waybills_per_week
    assert_that_carts_arrive(network, plan)


# Out of the form of network files: the Brinepan Tramway, invented.
LINE = Network(
    stations=tuple(map(Station, ("Quay", "Orchard", "Beacon"))),
    junctions=(
        JunctionSpec("Mill", readers=(ReaderSpec("East", ("South", "West")),)),
        JunctionSpec("Fen", readers=(ReaderSpec("North", ("East", "West")),)),
    ),
    links=(
        Link("Quay", "Mill/East", 64),
        Link("Mill/South", "Fen/North", 210),
        Link("Mill/West", "Orchard", 100),
        Link("Fen/East", "Orchard", 30),
        Link("Fen/West", "Beacon", 20),
    ),
    trips=(Trip("Quay", "Orchard", 70), Trip("Quay", "Beacon", 30)),
)


def test_most_ride_without_a_waybill() -> None:
    plan = planned(LINE)
    assert plan.readers == {"Mill/East": Planned("West", "Salt"), "Fen/North": Planned("West", None)}
    assert (plan.waybills_per_week, plan.distinct_names, plan.names_bound) == (30, 1, 1)
    assert [trip.waybills for trip in plan.trips] == [(), ("Salt",)]
    assert plan.trips[1].via == ("Mill/East", "Fen/North")
    assert [trip.length for trip in plan.trips] == [164, 294]


def test_a_pinned_default_has_its_price() -> None:
    pin = ReaderPin("Mill/East", default="South")
    plan = planned(LINE.replace(pins=(pin,)))
    assert (plan.waybills_per_week, plan.readers["Mill/East"].default) == (70, "South")
    assert [(price.pin, price.waybills_per_week, price.names) for price in plan.prices] == [(pin, 40, 0)]


def test_a_pinned_way_has_its_price_in_cells_too() -> None:
    pin = WayPin("Quay", "Orchard", ("Mill/East", "Fen/North"))
    plan = planned(LINE.replace(ways=(pin,)))
    assert plan.trips[0].via == ("Mill/East", "Fen/North")
    assert plan.trips[0].length == 304
    # At Mill all go south now. At Fen those to Beacon carry one, as they did at Mill.
    assert plan.waybills_per_week == 30
    assert [(price.waybills_per_week, price.names, price.length) for price in plan.prices] == [(0, 0, 140)]


def test_a_pinned_name_has_its_price() -> None:
    """Two readers in a row, both called by their own trips: one name would do, but for the pins."""
    trips = (*LINE.trips, Trip("Quay", "Orchard", 1))
    pins = (ReaderPin("Mill/East", "South", "Peat"), ReaderPin("Fen/North", "East", "Eel"))
    plan = planned(LINE.replace(trips=trips, pins=pins))
    assert plan.readers == {"Mill/East": Planned("South", "Peat"), "Fen/North": Planned("East", "Eel")}
    assert [trip.waybills for trip in plan.trips] == [("Peat",), ("Eel",), ("Peat",)]
    assert plan.distinct_names == 2
    assert [price.names for price in plan.prices] == [1, 1]


def test_names_that_cannot_be_alike_are_given_up_the_last_first() -> None:
    """Who rides to Beacon passes Mill by its default, with a waybill for Fen."""
    pins = (ReaderPin("Mill/East", "South", "Peat"), ReaderPin("Fen/North", "East", "Peat"))
    plan = planned(LINE.replace(pins=pins))
    assert plan.unkept == pins[1:]
    assert [price.pin for price in plan.prices] == [pins[0]]
    assert plan.readers["Mill/East"] == Planned("South", "Peat")


@pytest.mark.parametrize(
    "pin",
    [
        ReaderPin("Mill/East", default="North"),
        ReaderPin("Moor/East", name="Salt"),
        WayPin("Quay", "Orchard", ("Moor/East",)),
        WayPin("Quay", "Beacon", ("Fen/North", "Mill/East")),
    ],
)
def test_what_cannot_be_is_not_kept(pin: ReaderPin | WayPin) -> None:
    pinned = LINE.replace(pins=(pin,)) if isinstance(pin, ReaderPin) else LINE.replace(ways=(pin,))
    plan = planned(pinned)
    assert plan.unkept == (pin,)
    assert plan.prices == ()
    assert plan.readers == planned(LINE).readers


def test_names_that_a_plan_proposes_are_taken() -> None:
    junction = LINE.junctions[0]
    reader = msgspec.structs.replace(junction.readers[0], waybill="Malt")
    named = LINE.replace(junctions=(msgspec.structs.replace(junction, readers=(reader,)), LINE.junctions[1]))
    assert planned(named).readers["Mill/East"].name == "Malt"


def test_halves_of_trips_are_counted_exactly() -> None:
    trips = (Trip("Quay", "Orchard", 0.3), Trip("Quay", "Beacon", 0.1), Trip("Quay", "Beacon", 0.1))
    assert planned(LINE.replace(trips=trips)).waybills_per_week == 0.2
    trips = (*trips, Trip("Quay", "Beacon", 0.2))
    assert planned(LINE.replace(trips=trips)).waybills_per_week == 0.3


def test_trips_that_nobody_rides_get_their_waybills_for_nothing() -> None:
    plan = planned(LINE.replace(trips=(Trip("Quay", "Orchard", 0), Trip("Quay", "Beacon", 0))))
    assert (plan.waybills_per_week, plan.distinct_names, plan.proved) == (0, 1, True)
    assert sorted(len(trip.waybills) for trip in plan.trips) == [0, 1]


def test_whom_no_way_leads_there_carries_nothing() -> None:
    trips = (Trip("Orchard", "Quay", 5), Trip("Quay", "Quay", 5), Trip("Quay", "Moor", 5))
    plan = planned(LINE.replace(trips=trips))
    assert [trip.length for trip in plan.trips] == [None, 0, None]
    assert (plan.waybills_per_week, plan.distinct_names, plan.names_bound, plan.proved) == (0, 0, 0, True)
    assert all(each.name is None for each in plan.readers.values())


def test_a_reader_that_nobody_passes_leads_to_a_station() -> None:
    """By its first way empty carts would circle for ever."""
    ring = Network(
        stations=(Station("Quay"),),
        junctions=(JunctionSpec("Mill", readers=(ReaderSpec("East", ("West", "South")),)),),
        links=(
            Link("Quay", "Mill/East", 5),
            Link("Mill/West", "Mill/East", 9),
            Link("Mill/South", "Quay", 5),
        ),
    )
    assert planned(ring).readers == {"Mill/East": Planned("South", None)}
    settled = ring.replace(pins=(ReaderPin("Mill/East", default="West"),))
    assert planned(settled).readers == {"Mill/East": Planned("West", None)}


def test_an_empty_network_has_a_plan() -> None:
    assert planned(Network()) == NetworkPlan(0, 0, True, {}, ())


def test_the_same_network_gets_the_same_plan() -> None:
    network = small_network(random.Random(7)).replace(pins=())
    assert planned(network) == planned(network)


def test_plans_get_better_and_a_caller_may_stop() -> None:
    network = large_network(random.Random(3), junctions=10, trips=200, lengths=range(1, 4))
    plans: list[NetworkPlan] = []
    for step in plan_network(network):
        if isinstance(step, NetworkPlan):
            plans.append(step)
            assert_that_carts_arrive(network, step)
    quality = [(plan.waybills_per_week, plan.distinct_names, -plan.names_bound) for plan in plans]
    assert quality == sorted(quality, reverse=True)
    steps = plan_network(network)
    assert isinstance(next(steps), Progress)
    steps.close()  # type: ignore[attr-defined]
