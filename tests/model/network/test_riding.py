"""Carts run through networks reader by reader."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.network.network import JunctionSpec, Link, Network, ReaderSpec, Station
from model.network.result import NetworkPlan, Planned
from model.network.riding import Ride, Rider, Stop
from tests.model.network.crossing import NETWORK, PLAN
from tests.model.network.strategies import NETWORKS

RIDER = Rider(NETWORK, PLAN)


@pytest.mark.parametrize(
    ("carries", "links", "end", "taken", "left"),
    [
        ((), (0, 1), "Mill", (), ()),
        (("Salt", "Reed"), (0, 2, 3), "Fen", ("Salt", "Reed"), ()),
        (("Reed", "Salt"), (0, 2, 3), "Fen", ("Salt", "Reed"), ()),
        (("Salt",), (0, 2, 4, 5, 1), "Mill", ("Salt",), ()),
        (("Reed",), (0, 1), "Mill", (), ("Reed",)),
        (("Salt", "Salt", "Reed", "Eel"), (0, 2, 3), "Fen", ("Salt", "Reed"), ("Eel", "Salt")),
    ],
)
def test_a_cart_goes_where_its_waybills_send_it(
    carries: tuple[str, ...],
    links: tuple[int, ...],
    end: str,
    taken: tuple[str, ...],
    left: tuple[str, ...],
) -> None:
    ride = RIDER.ride(0, carries)
    assert ride == Ride(links, end, Stop.STATION, taken, left)
    assert ride.station == end


def test_a_reader_without_a_name_takes_nothing() -> None:
    readers = {**PLAN.readers, "Gate/Town": Planned("Pans", None)}
    ride = Rider(NETWORK, msgspec.structs.replace(PLAN, readers=readers)).ride(0, ["Salt"])
    assert (ride.end, ride.left) == ("Mill", ("Salt",))


def test_a_cart_stops_where_nothing_leads_on() -> None:
    dead = NETWORK.replace(links=NETWORK.links[:1])
    assert Rider(dead, PLAN).ride(0) == Ride((0,), "Gate/Town", Stop.NO_WAY, (), ())
    assert Rider(dead, PLAN).ride(0).station is None


def test_of_two_links_out_of_an_arm_carts_take_the_first() -> None:
    forked = NETWORK.replace(links=(*NETWORK.links, Link("Gate/Pans", "Fen", 8)))
    assert Rider(forked, PLAN).ride(0).end == "Mill"


@pytest.mark.parametrize("end", ["Nowhere", "Nowhere/East", "Gate/Back"])
def test_a_cart_stops_at_what_is_not_there(end: str) -> None:
    astray = NETWORK.replace(links=(Link("Quay", end, 8),))
    assert Rider(astray, PLAN).ride(0) == Ride((0,), end, Stop.NO_WAY, (), ())


def test_a_cart_stops_at_a_reader_that_the_plan_does_not_know() -> None:
    unknown = msgspec.structs.replace(PLAN, readers={})
    assert Rider(NETWORK, unknown).ride(0).why is Stop.NO_WAY


CIRCLE = Network(
    stations=(Station("Quay"), Station("Mill")),
    junctions=(JunctionSpec("Ring", readers=(ReaderSpec("In", ("Round", "Mill")),)),),
    links=(Link("Quay", "Ring/In", 8), Link("Ring/Round", "Ring/In", 30), Link("Ring/Mill", "Mill", 8)),
)
"""An empty cart never leaves the ring."""


def circling(name: str | None, default: str = "Round") -> Rider:
    return Rider(CIRCLE, NetworkPlan(0, 0, True, {"Ring/In": Planned(default, name)}, ()))


def test_a_cart_that_circles_is_told() -> None:
    assert circling("Salt").ride(0) == Ride((0, 1), "Ring/In", Stop.LOOP, (), ())
    assert circling("Salt").ride(0, ["Salt"]).station == "Mill"


def test_a_cart_from_which_something_is_taken_does_not_circle() -> None:
    """Each round costs one waybill; with none left it leaves."""
    ride = circling("Salt", "Mill").ride(0, ["Salt"] * 3)
    assert ride == Ride((0, 1, 1, 1, 2), "Mill", Stop.STATION, ("Salt",) * 3, ())


@settings(max_examples=40, deadline=None)
@given(NETWORKS, st.lists(st.sampled_from(["Salt", "Reed"]), max_size=4))
def test_every_ride_ends(network: Network, carries: list[str]) -> None:
    """Also in networks that are full of mistakes; what was taken and what is left is what was put in."""
    readers = {key: Planned(spec.ways[0], "Salt") for key, spec in network.readers()}
    rider = Rider(network, NetworkPlan(0, 0, False, readers, ()))
    for place in range(len(network.links)):
        ride = rider.ride(place, carries)
        assert ride.links[0] == place
        assert sorted((*ride.taken, *ride.left)) == sorted(carries)
        assert ride.end == network.links[ride.links[-1]].end
