"""Networks of any kind, also such as contradict themselves, are planned, judged and ridden."""

from __future__ import annotations

from hypothesis import given, settings

from model.network.findings import findings
from model.network.network import Network
from model.network.planning import planned
from model.network.riding import Rider
from tests.model.network.strategies import JOINED_NETWORKS


@settings(max_examples=120, deadline=None)
@given(JOINED_NETWORKS)
def test_what_is_planned_can_be_ridden(network: Network) -> None:
    """A cart with the listed waybills runs over the links of its trip, ends there, and has none left."""
    plan = planned(network, 5)
    rider = Rider(network, plan)
    for trip, wanted in zip(plan.trips, network.trips, strict=True):
        assert (trip.start, trip.end) == (wanted.start, wanted.end)
        if trip.links:
            ride = rider.ride(trip.links[0], trip.waybills)
            assert (ride.links, ride.station, ride.left) == (trip.links, trip.end, ())


@settings(max_examples=120, deadline=None)
@given(JOINED_NETWORKS)
def test_no_reader_takes_what_is_meant_for_another_unless_a_pin_asks_for_it(network: Network) -> None:
    plan = planned(network, 5)
    found = {finding.rule for finding in findings(network, plan)}
    assert plan.unkept or "takes-anothers" not in found
    asked = {(trip.start, trip.end) for trip in plan.trips if trip.length is None}
    known = {station.name for station in network.stations}
    assert ("trip-without-way" in found) == any(known >= set(ends) for ends in asked)
