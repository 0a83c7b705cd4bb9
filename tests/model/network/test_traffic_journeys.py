"""The trips of a planned network as the traffic sees them."""

from __future__ import annotations

from model.network.result import NetworkPlan, TripPlan
from model.network.traffic import simulate
from model.network.traffic_journeys import journeys
from model.network.traffic_values import Journey, Leg, Traffic, TrafficSettings
from tests.model.network.crossing import NETWORK, PLAN


def test_legs_run_from_reader_to_reader_and_tell_who_calls() -> None:
    assert journeys(NETWORK, PLAN) == (
        Journey("Quay", "Mill", 70, (Leg(64, "Gate/Town"), Leg(40, None))),
        Journey("Quay", "Fen", 35, (Leg(64, "Gate/Town", True), Leg(80, "Halt/Gate", True), Leg(16, None))),
        Journey("Fen", "Quay", 10, ()),
    )


def test_an_arm_without_a_reader_holds_nobody_up() -> None:
    """Halt/Round and Gate/Fields each have one way only: their links are one stretch."""
    trip = TripPlan("Quay", "Mill", ("Gate/Town", "Halt/Gate"), ("Salt",), 216, (0, 2, 4, 5, 1))
    network = NETWORK.replace(trips=NETWORK.trips[:1])
    plan = NetworkPlan(70, 1, True, PLAN.readers, (trip,))
    (journey,) = journeys(network, plan)
    assert journey.legs == (Leg(64, "Gate/Town", True), Leg(80, "Halt/Gate", False), Leg(72, None))
    assert journey.seconds == 27, "216 cells at 8 a second"


def test_the_load_is_what_the_trips_of_a_week_ask_for() -> None:
    """Gate/Town: 35 that call and 70 that do not; 6 s and 2.7 s of 604,800."""
    *_, traffic = simulate(journeys(NETWORK, PLAN), TrafficSettings(hours=1))
    assert isinstance(traffic, Traffic)
    loads = {reader.reader: round(reader.load * 604_800, 6) for reader in traffic.readers}
    assert loads == {"Gate/Town": 35 * 6 + 70 * 2.7, "Halt/Gate": 35 * 6}
    assert traffic.overloaded == ()
