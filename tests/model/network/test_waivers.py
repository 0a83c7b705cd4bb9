"""A finding of a network is set aside with a reason, and stays so through saving, renaming and undoing."""

from __future__ import annotations

import pytest

from model.edits import EditRefused
from model.files.network_file import network_bytes, parse_network
from model.network import edits
from model.network.findings import NetworkFinding, findings, waiver_for
from model.network.network import Network, NetworkWaiver
from tests.model.network.notation import Notation

TEXT = """
    stations Quay, Fen
    Mill: East → West* or South takes Salt
    Mill/West → Mill/East
    Mill/South → Quay
    """


def found(network: Network, rule: str = "empty-loop") -> NetworkFinding:
    (only,) = (each for each in findings(network, Notation(TEXT).plan) if each.rule == rule)
    return only


def aside() -> Network:
    network = Notation(TEXT).network
    return edits.set_aside(network, waiver_for(found(network), "a siding")).after


def test_what_is_set_aside_stays_in_the_list_with_its_reason() -> None:
    network = Notation(TEXT).network
    assert not found(network).waived
    assert (found(aside()).waived, found(aside()).reason) == (True, "a siding")
    others = [each for each in findings(aside(), Notation(TEXT).plan) if each.rule != "empty-loop"]
    assert others
    assert not any(each.waived for each in others)


def test_a_trip_is_set_aside_and_its_way_back_is_not() -> None:
    said = Notation("""
        stations Quay, Fen
        trip Quay → Fen 1
        trip Fen → Quay 1
        """)
    there, _ = (each for each in findings(said.network, said.plan) if each.rule == "trip-without-way")
    network = edits.set_aside(said.network, waiver_for(there, "x")).after
    trips = [each.waived for each in findings(network, said.plan) if each.rule == "trip-without-way"]
    assert trips == [True, False]


def test_it_is_told_by_rule_and_names() -> None:
    network = Notation(TEXT).network
    names = found(network).names
    assert found(edits.set_aside(network, NetworkWaiver("empty-loop", names, "x")).after).waived
    assert not found(edits.set_aside(network, NetworkWaiver("one-way-trap", names, "x")).after).waived
    assert not found(edits.set_aside(network, NetworkWaiver("empty-loop", ("Fen",), "x")).after).waived


def test_a_second_reason_takes_the_place_of_the_first() -> None:
    again = edits.set_aside(aside(), waiver_for(found(aside()), "it goes in spring")).after
    assert [waiver.reason for waiver in again.waivers] == ["it goes in spring"]


def test_it_is_taken_up_again_and_all_is_undone() -> None:
    change = edits.take_up(aside(), waiver_for(found(aside()), ""))
    assert change.after == Notation(TEXT).network
    assert change.inverse().after == aside()
    assert edits.take_up(change.after, waiver_for(found(aside()), "")).is_empty


def test_it_outlives_ten_savings() -> None:
    network = aside()
    for _ in range(10):
        network = parse_network(network_bytes(network), "again")
    assert network.waivers == aside().waivers
    assert found(network).waived


def test_it_follows_what_it_names_to_other_names() -> None:
    renamed = edits.rename_junction(aside(), 0, "Saltern").after
    assert renamed.waivers[0].names == ("Saltern/East",)
    station = edits.set_aside(aside(), NetworkWaiver("station-unreached", ("Fen",), "x")).after
    assert edits.rename_station(station, 1, "Orchard").after.waivers[1].names == ("Orchard",)
    junction = edits.set_aside(aside(), NetworkWaiver("plan-unread", ("Mill",), "x")).after
    assert edits.rename_junction(junction, 0, "Saltern").after.waivers[1].names == ("Saltern",)


def test_a_reason_takes_no_control_characters() -> None:
    with pytest.raises(EditRefused, match="control characters"):
        edits.set_aside(aside(), waiver_for(found(aside()), "a\nb"))
