"""Edits of networks: what they change and refuse, and that what they leave can be written and undone."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.edits.refusals import EditRefused
from model.files.network_file import network_bytes, parse_network, read_network
from model.network import edits
from model.network.network import (
    EMPTY_NETWORK,
    JunctionSpec,
    Link,
    Network,
    NetworkChange,
    NetworkWaiver,
    ReaderPin,
    ReaderSpec,
    Station,
    Trip,
    WayPin,
)
from tests.model.network.strategies import NAMES, NETWORKS, READER_KEYS

BRINEPAN = Path(__file__).parents[3] / "resources" / "examples" / "brinepan.network.json"
MILL = JunctionSpec("Mill", None, (ReaderSpec("East", ("South", "West")),))
SMALL = Network(
    "",
    (Station("Quay"), Station("Mill")),
    (MILL, JunctionSpec("Fen", "fen.plan.json", kept=(("readers", "[]"), ("colour", "1")))),
    (Link("Quay", "Mill/East", 64), Link("Mill/South", "Mill", 20), Link("Mill/West", "Fen/North", 9)),
    (Trip("Quay", "Mill", 70),),
    (ReaderPin("Mill/East", "South"),),
    (WayPin("Quay", "Mill", ("Mill/East",)),),
)


def test_a_station_is_added_after_the_others() -> None:
    change = edits.add_station(SMALL, "Fen", (40, 0))
    assert change.label == "Add station Fen"
    assert change.before is SMALL
    assert change.after.stations == (*SMALL.stations, Station("Fen", (40, 0)))


def test_a_station_and_a_junction_may_share_a_name() -> None:
    after = edits.add_station(SMALL, "Fen").after
    assert after.station("Fen")
    assert after.junction("Fen")


def test_a_station_is_renamed_with_all_that_names_it() -> None:
    after = edits.rename_station(SMALL, 1, "Tithe Barn").after
    assert after.stations[1] == Station("Tithe Barn")
    assert after.links[1] == Link("Mill/South", "Tithe Barn", 20)
    assert after.links[0] == SMALL.links[0]
    assert after.trips == (Trip("Quay", "Tithe Barn", 70),)
    assert after.ways == (WayPin("Quay", "Tithe Barn", ("Mill/East",)),)


def test_a_junction_is_renamed_with_all_that_names_it() -> None:
    after = edits.rename_junction(SMALL, 0, "Salt Mill").after
    assert [link.start for link in after.links] == ["Quay", "Salt Mill/South", "Salt Mill/West"]
    assert after.links[1].end == "Mill"
    assert after.pins == (ReaderPin("Salt Mill/East", "South"),)
    assert after.ways == (WayPin("Quay", "Mill", ("Salt Mill/East",)),)


def test_what_names_two_things_stays_with_the_other() -> None:
    doubled = SMALL.replace(stations=(*SMALL.stations, Station("Mill")))
    after = edits.rename_station(doubled, 1, "Saltern").after
    assert after.links == doubled.links
    assert after.trips == doubled.trips


def test_a_pin_that_waited_for_the_new_name_gives_way() -> None:
    waiting = SMALL.replace(pins=(ReaderPin("Beacon/East", name="Eel"), *SMALL.pins))
    after = edits.rename_junction(waiting, 0, "Beacon").after
    assert after.pins == (ReaderPin("Beacon/East", "South"),)


def test_with_a_station_go_its_links_trips_and_ways() -> None:
    change = edits.remove(SMALL, stations=[1])
    assert change.label == "Remove Mill"
    assert change.after == SMALL.replace(
        stations=SMALL.stations[:1], links=(SMALL.links[0], SMALL.links[2]), trips=(), ways=()
    )


def test_with_a_junction_go_its_links_pins_and_ways() -> None:
    after = edits.remove(SMALL, junctions=[0]).after
    assert (after.junctions, after.links, after.pins, after.ways) == (SMALL.junctions[1:], (), (), ())
    assert after.trips == SMALL.trips


def test_the_second_of_two_things_with_a_name_goes_alone() -> None:
    doubled = SMALL.replace(stations=(*SMALL.stations, Station("Mill")))
    assert edits.remove(doubled, stations=[2]).after == SMALL


def test_one_thing_that_is_removed_is_named() -> None:
    link, trip = SMALL.links[0], SMALL.trips[0]
    doubled = SMALL.replace(stations=(*SMALL.stations, Station("Mill")))
    assert edits.remove(SMALL, links=[0]).label == f"Remove link {link.start} → {link.end}"
    assert edits.remove(SMALL, trips=[0]).label == f"Remove trip {trip.start} → {trip.end}"
    assert edits.remove(doubled, stations=[2]).label == "Remove Mill"


def test_links_and_trips_are_removed_by_their_places() -> None:
    change = edits.remove(SMALL, links=[0, 2], trips=[0])
    assert change.label == "Remove 3 things"
    assert change.after == SMALL.replace(links=SMALL.links[1:2], trips=())


def test_things_are_moved_in_one_step() -> None:
    change = edits.move(SMALL, {0: (1, 2)}, {1: (3, 4)})
    assert change.label == "Move 2 things"
    assert [station.at for station in change.after.stations] == [(1, 2), None]
    assert [junction.at for junction in change.after.junctions] == [None, (3, 4)]
    assert edits.move(SMALL, {0: (1, 2)}, {}).label == "Move Quay"


def test_a_junction_without_its_plan_keeps_no_second_list_of_readers() -> None:
    after = edits.set_junction(SMALL, 1, MILL).after
    assert after.junctions[1] == JunctionSpec("Fen", None, MILL.readers, kept=(("colour", "1"),))
    assert parse_network(network_bytes(after), "again") == after


def test_readers_are_set_and_removed() -> None:
    other = ReaderSpec("East", ("South", "West"), "West")
    south = ReaderSpec("South", ("West",))
    both = edits.set_reader(edits.set_reader(SMALL, 0, other).after, 0, south).after
    assert both.junctions[0].readers == (other, south)
    assert edits.remove_reader(both, 0, "East").after.junctions[0].readers == (south,)
    with pytest.raises(EditRefused, match="The readers of Fen are the wanted routes of its plan"):
        edits.set_reader(SMALL, 1, other)


def test_a_pin_takes_the_place_of_the_last_and_one_of_nothing_goes() -> None:
    change = edits.pin_reader(SMALL, ReaderPin("Mill/East", name="Salt"))
    assert (change.label, change.after.pins) == ("Pin Mill/East", (ReaderPin("Mill/East", name="Salt"),))
    change = edits.pin_reader(SMALL, ReaderPin("Mill/East"))
    assert (change.label, change.after.pins) == ("Unpin Mill/East", ())
    assert edits.pin_way(SMALL, WayPin("Quay", "Mill", ())).after.ways == ()
    assert edits.pin_way(SMALL, WayPin("Mill", "Quay", ("Mill/East",))).label == "Pin the way Mill → Quay"


def test_links_both_ways_are_one_step() -> None:
    there, back = Link("Mill", "Fen/East", 5), Link("Fen/East", "Mill", 5)
    change = edits.add_links(SMALL, [there, back])
    assert (change.label, change.after.links[3:]) == ("Add 2 links", (there, back))
    assert edits.add_links(SMALL, [there]).label == "Add link Mill → Fen/East"
    assert edits.add_links(SMALL, []).is_empty
    trip = Trip("Mill", "Quay", 1)
    assert edits.add_trip(SMALL, trip).after.trips == (*SMALL.trips, trip)


def test_lengths_and_numbers_are_changed_in_place() -> None:
    assert edits.set_link(SMALL, 1, Link("Mill/West", "Mill", 7)).after.links[1] == Link(
        "Mill/West", "Mill", 7
    )
    assert edits.set_trip(SMALL, 0, Trip("Quay", "Mill", 3)).after.trips == (Trip("Quay", "Mill", 3),)
    assert edits.set_trip(SMALL, 0, SMALL.trips[0]).is_empty


@pytest.mark.parametrize(
    ("edit", "why"),
    [
        (lambda: edits.add_station(SMALL, "Quay"), "There is a station Quay already."),
        (lambda: edits.add_station(SMALL, "a/b"), "A name takes no comma and no slash."),
        (lambda: edits.add_station(SMALL, "Fen", (0, 1e9)), "The map goes from −1,000,000 to 1,000,000."),
        (lambda: edits.add_station(SMALL, "Fen", (0, float("nan"))), "The map goes"),
        (lambda: edits.add_junction(SMALL, MILL), "There is a junction Mill already."),
        (lambda: edits.rename_station(SMALL, 0, "Mill"), "There is a station Mill already."),
        (lambda: edits.rename_junction(SMALL, 0, "Fen"), "There is a junction Fen already."),
        (
            lambda: edits.add_links(SMALL, [Link("Quay", "Quay", 1)]),
            "A link leads from one place to another.",
        ),
        (
            lambda: edits.add_links(SMALL, [Link("Quay", "Mill/a/b", 1)]),
            "A name takes no comma and no slash.",
        ),
        (lambda: edits.add_links(SMALL, [Link("Quay", "Mill/", 1)]), "A name cannot be empty."),
        (lambda: edits.set_link(SMALL, 0, Link("Quay", "Fen", 0)), "A link has 1 to 100,000,000 cells."),
        (
            lambda: edits.set_trip(SMALL, 0, Trip("Quay", "Mill", -1)),
            "A trip has 0 to 1,000,000,000 carts a week.",
        ),
        (lambda: edits.pin_reader(SMALL, ReaderPin("Mill", "South")), "Mill is no arm of a junction."),
        (lambda: edits.pin_way(SMALL, WayPin("Quay", "Mill", ("Fen",))), "Fen is no arm of a junction."),
        (
            lambda: edits.set_reader(SMALL, 0, ReaderSpec("South", ("East", "East"))),
            "Carts from South leave by one arm, or by one of two.",
        ),
        (
            lambda: edits.set_reader(SMALL, 0, ReaderSpec("South", ("East", "West"), "North")),
            "Carts from South cannot leave by North.",
        ),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_what_cannot_be_is_refused_with_a_reason(edit: Callable[[], NetworkChange], why: str) -> None:
    with pytest.raises(EditRefused, match=why.replace(".", r"\.")):
        edit()


def test_the_example_can_be_renamed_and_taken_apart() -> None:
    network = read_network(BRINEPAN)
    renamed = edits.rename_junction(network, 3, "Ring").after
    back = edits.rename_junction(renamed, 3, "Fen Ring").after
    assert back == network
    assert edits.remove(network, range(7), range(7)).after == EMPTY_NETWORK.replace(title=network.title)


@settings(max_examples=60, deadline=None)
@given(NETWORKS, st.data())
def test_what_edits_leave_can_be_written_and_undone(network: Network, data: st.DataObject) -> None:
    for _ in range(4):
        try:
            change = any_edit(network, data)
        except (EditRefused, IndexError):
            continue
        assert change.inverse().after == change.before == network
        assert change.is_empty == (change.after == network)
        network = change.after
        assert parse_network(network_bytes(network), "again") == network


def any_edit(network: Network, data: st.DataObject) -> NetworkChange:
    """An edit that may be refused, or ask for a thing that is not there."""
    place, name, key = data.draw(st.integers(0, 3)), data.draw(NAMES), data.draw(READER_KEYS)
    readers = (ReaderSpec(name, ("South", "West")),)
    choices: list[Callable[[], NetworkChange]] = [
        lambda: edits.add_station(network, name, (place, 0.5)),
        lambda: edits.add_junction(network, JunctionSpec(name, None, readers)),
        lambda: edits.set_junction(network, place, JunctionSpec("", None, readers)),
        lambda: edits.set_reader(network, place, readers[0]),
        lambda: edits.rename_station(network, place, name),
        lambda: edits.rename_junction(network, place, name),
        lambda: edits.remove(network, [place], [place], [place], [place]),
        lambda: edits.add_links(network, [Link(name, key, place)]),
        lambda: edits.pin_reader(network, ReaderPin(key, name)),
        lambda: edits.pin_way(network, WayPin(name, name, (key,) * place)),
        lambda: edits.set_title(network, name),
        lambda: edits.set_aside(network, NetworkWaiver("empty-loop", (name, key), name)),
        lambda: edits.take_up(network, NetworkWaiver("empty-loop", (name, key), name)),
    ]
    return data.draw(st.sampled_from(choices))()
