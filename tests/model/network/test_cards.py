"""What stands on departure cards and on the signs of readers."""

from __future__ import annotations

import msgspec

from model.network.cards import (
    Departure,
    DepartureCard,
    EmptyRun,
    ReaderSign,
    departure_cards,
    reader_signs,
)
from model.network.network import Link, Station, Trip
from model.network.result import TripPlan
from model.network.riding import Ride, Rider, Stop
from tests.model.network.crossing import NETWORK, PLAN

TO_MILL = EmptyRun(None, Ride((0, 1), "Mill", Stop.STATION, (), ()))


def test_a_card_for_every_station() -> None:
    assert departure_cards(NETWORK, PLAN) == (
        DepartureCard(
            "Quay",
            (Departure("Fen", ("Salt", "Reed"), None, 160), Departure("Mill", (), None, 104)),
            (TO_MILL,),
        ),
        DepartureCard("Mill", (), ()),
        DepartureCard("Fen", (Departure("Quay", (), None, None),), ()),
    )


def test_whoever_takes_what_the_card_says_arrives() -> None:
    rider = Rider(NETWORK, PLAN)
    for departure in departure_cards(NETWORK, PLAN)[0].departures:
        ride = rider.ride(0, departure.waybills)
        assert (ride.station, ride.left, ride.taken) == (departure.end, (), departure.waybills)


def test_a_station_with_two_tracks_says_which_to_take() -> None:
    network = NETWORK.replace(links=(*NETWORK.links, Link("Quay", "Mill", 500)))
    card = departure_cards(network, PLAN)[0]
    assert [(departure.end, departure.by) for departure in card.departures] == [
        ("Fen", "Gate/Town"),
        ("Mill", "Gate/Town"),
    ]
    assert [(run.by, run.ride.end) for run in card.empty] == [("Gate/Town", "Mill"), ("Mill", "Mill")]


def test_departures_go_by_name_whatever_the_case() -> None:
    ends = ("fen", "Mill", "Beacon", "Ärmel", "beacon")
    network = NETWORK.replace(trips=tuple(Trip("Quay", end, 1) for end in ends))
    trips = tuple(TripPlan("Quay", end, length=8, links=(0, 1)) for end in ends)
    card = departure_cards(network, msgspec.structs.replace(PLAN, trips=trips))[0]
    assert [departure.end for departure in card.departures] == ["Beacon", "beacon", "fen", "Mill", "Ärmel"]


def test_a_trip_that_is_there_twice_stands_on_the_card_once() -> None:
    network = NETWORK.replace(trips=(*NETWORK.trips, NETWORK.trips[0]))
    plan = msgspec.structs.replace(PLAN, trips=(*PLAN.trips, PLAN.trips[0]))
    assert departure_cards(network, plan) == departure_cards(NETWORK, PLAN)


def test_two_stations_of_one_name_have_one_card() -> None:
    network = NETWORK.replace(stations=(*NETWORK.stations, Station("Quay")))
    assert [card.station for card in departure_cards(network, PLAN)] == ["Quay", "Mill", "Fen"]


def test_signs_say_both_ways_and_the_waybill() -> None:
    assert reader_signs(NETWORK, PLAN) == (
        ReaderSign("Gate", "Town", "Pans", "Fields", "Salt"),
        ReaderSign("Halt", "Gate", "Ring", "Fen", "Reed"),
    )
