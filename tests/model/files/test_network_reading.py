"""What a network file is taken for, and what is said of files that cannot be read."""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import Any

import pytest

from model.files.errors import PlanFileError
from model.files.network_document import JUNCTION_LIMIT
from model.files.network_file import FILE_LIMIT, network_bytes, parse_network, read_network
from model.network.network import (
    ArmSpec,
    JunctionSpec,
    Link,
    ReaderPin,
    ReaderSpec,
    Station,
    Trip,
    WayPin,
)
from model.plan import Side
from tests.model.files.network_documents import FULL, document, one_junction, one_link, one_trip, read

EXAMPLES = Path(__file__).parents[3] / "resources" / "examples"
BRINEPAN = EXAMPLES / "brinepan.network.json"


def test_all_that_a_file_can_say() -> None:
    network = read(FULL)
    assert network.title == "Brinepan Tramway"
    assert network.stations == (
        Station("Quay", (0, 40)),
        Station("Orchard", (-2.5, 1000)),
        Station("Fen"),
    )
    assert network.junctions == (
        JunctionSpec("Fen", "fen.plan.json", at=(80, 0)),
        JunctionSpec(
            "Mill",
            None,
            (
                ReaderSpec("East", ("South", "West")),
                ReaderSpec("South", ("West", "East"), "East"),
                ReaderSpec("West", ("South",)),
            ),
            running_side=Side.LEFT,
        ),
    )
    assert network.links == (Link("Quay", "Mill/East", 64), Link("Mill/South", "Fen/North", 210))
    assert network.trips == (Trip("Quay", "Orchard", 70), Trip("Orchard", "Quay", 0.5))
    assert network.pins == (ReaderPin("Mill/East", "South", "Salt"),)
    assert network.ways == (WayPin("Quay", "Orchard", ("Mill/East", "Fen/North")),)


def test_only_format_and_version_are_needed() -> None:
    network = read(document())
    assert network == read(
        document(stations=[], junctions=[], links=[], trips=[], pins=[], ways=[], title="")
    )
    assert not network.stations


def test_whole_numbers_may_be_written_with_a_point() -> None:
    network = read(document(links=[{"from": "Quay", "to": "Fen", "length": 64.0}], version=1.0))
    assert network.links[0].length == 64
    trips = read(one_trip(per_week=7e1)).trips
    assert repr(trips[0].per_week) == "70"


@pytest.mark.parametrize(
    ("value", "place", "expected"),
    [
        ([], "top level", 'an object with "format" and "version"'),
        ({"version": 1}, "top level", 'the key "format"'),
        (document(format="anything"), "format", '"platelayer-network"'),
        (
            document(format="platelayer-plan"),
            "format",
            '"platelayer-network"; this is a plan file: "platelayer check" reads it, '
            "and the editor opens it under a name that ends in .plan.json",
        ),
        (document(version=2), "version", "1; version 2 was written by a newer Platelayer"),
        (document(version=2, stations=7), "version", "1; version 2 was written by a newer Platelayer"),
        (document(version=0), "version", "1"),
        (document(stations={}), "stations", "a list of at most 100,000 stations"),
        (document(stations=[{}]), "stations[0]", 'the key "name"'),
        (
            document(stations=[{"name": "a/b"}]),
            "stations[0].name",
            "a name of 1 to 80 characters without control characters, comma or slash",
        ),
        (
            document(stations=[{"name": "Quay", "map": [0]}]),
            "stations[0].map",
            "a place on the map: two numbers from -1,000,000 to 1,000,000",
        ),
        (one_junction(plan=""), "junctions[0].plan", "the path of a plan file, 1 to 1,000 characters"),
        (one_junction(running_side="up"), "junctions[0].running_side", "left or right"),
        (one_junction(readers=[{"from": "East"}]), "junctions[0].readers[0]", 'the key "ways"'),
        (
            one_junction(readers=[{"from": "East", "ways": []}]),
            "junctions[0].readers[0].ways",
            "a list of one or two arms",
        ),
        (
            one_junction(readers=[{"from": "East", "ways": ["a", "b", "c"]}]),
            "junctions[0].readers[0].ways",
            "a list of one or two arms",
        ),
        (
            one_junction(readers=[{"from": "East", "ways": ["a", "a"]}]),
            "junctions[0].readers[0].ways",
            "two arms, not one arm twice",
        ),
        (
            one_junction(readers=[{"from": "East", "ways": ["a", "b"], "default": "c"}]),
            "junctions[0].readers[0].default",
            "null or one of the ways, a or b",
        ),
        (
            one_junction(readers=[{"from": "East", "ways": ["a"]}, {"from": "East", "ways": ["b"]}]),
            "junctions[0].readers[1].from",
            "one reader an arm; junctions[0].readers[0] is for the same",
        ),
        (one_link(length=0), "links[0].length", "a whole number from 1 to 100,000,000"),
        (one_link(length=1.5), "links[0].length", "a whole number from 1 to 100,000,000"),
        (one_link(length=100_000_001), "links[0].length", "a whole number from 1 to 100,000,000"),
        (one_link(to="a/b/c"), "links[0].to", "a station, or a junction and its arm with a slash between"),
        (one_trip(per_week=-1), "trips[0].per_week", "a number from 0 to 1,000,000,000"),
        (one_trip(per_week="70"), "trips[0].per_week", "a number from 0 to 1,000,000,000"),
        (
            document(pins=[{"reader": "Mill"}]),
            "pins[0].reader",
            "a junction and its arm with a slash between",
        ),
        (
            document(pins=[{"reader": "Mill/East"}, {"reader": "Mill/East"}]),
            "pins[1]",
            "one pin a reader; pins[0] is for the same",
        ),
        (
            document(ways=[{"from": "Quay", "to": "Fen", "via": []}] * 2),
            "ways[1]",
            "one way for two stations; ways[0] is for the same",
        ),
        (
            document(stations=[{"name": str(number)} for number in range(100_001)]),
            "stations",
            "a list of at most 100,000 stations",
        ),
    ],
    ids=lambda value: ascii(value)[-40:],
)
def test_what_cannot_be_read_is_told_with_its_place(value: Any, place: str, expected: str) -> None:
    with pytest.raises(PlanFileError) as refused:
        read(value)
    assert str(refused.value) == f"test.network.json: {place}: expected {expected}"


@pytest.mark.parametrize(
    ("data", "message"),
    [
        (b"\xff", "line 1, byte 0: expected UTF-8"),
        (
            b"\xef\xbb\xbf{}",
            "line 1, column 1: expected UTF-8 without a byte order mark; save it again without one",
        ),
        (b"{", "line 1, column 2: expected JSON (Expecting property name enclosed in double quotes)"),
        (
            b'{"format": "platelayer-network", "version": NaN}',
            "line 1, column 45: expected JSON, which has no NaN",
        ),
        (
            b'{"format": "platelayer-network", "version": 1, "stations": [{"name": "a", "name": "b"}]}',
            "stations[0].name: expected each key once; this one is doubled",
        ),
        (
            b'{"format": "platelayer-network", "version": 1, "own": ' + b"[" * 66 + b"]" * 66 + b"}",
            "own: expected at most 64 lists and objects inside one another",
        ),
        (
            b'{"format": "platelayer-network", "version": 1, "title": "\\ud800"}',
            "title: expected whole characters; there is half of a surrogate pair",
        ),
    ],
    ids=lambda value: ascii(value)[:50],
)
def test_what_is_no_strict_json_is_told_with_its_place(data: bytes, message: str) -> None:
    with pytest.raises(PlanFileError) as refused:
        parse_network(data, "test.network.json")
    assert str(refused.value) == f"test.network.json: {message}"


def test_unknown_keys_come_back_where_they_were() -> None:
    value = json.loads(json.dumps(FULL))
    places = [value, *value["stations"], *value["junctions"], *value["junctions"][1]["readers"]]
    places += [*value["links"], *value["trips"], *value["pins"], *value["ways"]]
    for number, place in enumerate(places):
        place["colour"] = [number, 1.50, {"z": None}]
    again = json.loads(network_bytes(read(value)))
    value["junctions"][1]["readers"][2]["default"] = None
    assert again == value
    assert len(places) == 1 + 3 + 2 + 3 + 2 + 2 + 1 + 1


def test_numbers_under_unknown_keys_stay_as_written() -> None:
    data = b'{"format": "platelayer-network", "version": 1, "own": [1.50, 1e2, 123456789012345678901]}'
    assert b'"own": [1.50,1e2,123456789012345678901]' in network_bytes(parse_network(data, "x"))


def test_readers_beside_a_plan_are_kept_and_mean_nothing() -> None:
    network = read(one_junction(plan="mill.plan.json", readers=[{"from": "East", "ways": ["West"]}]))
    assert network.junctions[0].readers == ()
    assert b'"plan":"mill.plan.json","readers":[{"from":"East","ways":["West"]}]' in network_bytes(network)


def test_a_file_has_one_thing_a_line() -> None:
    assert (
        network_bytes(read(FULL)).decode()
        == """\
{
  "format": "platelayer-network",
  "version": 1,
  "title": "Brinepan Tramway",
  "stations": [
    {"name":"Quay","map":[0,40]},
    {"name":"Orchard","map":[-2.5,1000]},
    {"name":"Fen"}
  ],
  "junctions": [
    {"name":"Fen","plan":"fen.plan.json","map":[80,0]},
    {"name":"Mill","readers":[{"from":"East","ways":["South","West"],"default":null},\
{"from":"South","ways":["West","East"],"default":"East"},\
{"from":"West","ways":["South"],"default":null}],"running_side":"left"}
  ],
  "links": [
    {"from":"Quay","to":"Mill/East","length":64},
    {"from":"Mill/South","to":"Fen/North","length":210}
  ],
  "trips": [
    {"from":"Quay","to":"Orchard","per_week":70},
    {"from":"Orchard","to":"Quay","per_week":0.5}
  ],
  "pins": [
    {"reader":"Mill/East","default":"South","name":"Salt"}
  ],
  "ways": [
    {"from":"Quay","to":"Orchard","via":["Mill/East","Fen/North"]}
  ],
  "waivers": [
    {"rule":"arm-without-link","names":["Mill/West"],"reason":"the line goes there in spring"},
    {"rule":"empty-loop"}
  ]
}
"""
    )


def test_the_example_is_as_the_program_writes_it() -> None:
    assert network_bytes(read_network(BRINEPAN)) == BRINEPAN.read_bytes()


def test_a_plan_gives_its_readers_and_arms() -> None:
    fen = read_network(BRINEPAN).junction("Fen Ring")
    assert fen is not None
    assert fen.readers == (
        ReaderSpec("Quay", ("Beacon", "Orchard"), "Beacon", "Salt"),
        ReaderSpec("Beacon", ("Orchard", "Quay"), "Orchard", "Reed"),
        ReaderSpec("Orchard", ("Quay", "Beacon"), "Quay", "Apple"),
    )
    assert fen.arms == tuple(
        ArmSpec(name, enters=True, leaves=True, side=Side.LEFT) for name in ("Quay", "Beacon", "Orchard")
    )


def test_a_plan_is_looked_for_beside_the_network(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "plans").mkdir()
    (tmp_path / "plans" / "fen.plan.json").write_bytes((EXAMPLES / "fen-ring.plan.json").read_bytes())
    _write(tmp_path / "any.network.json", one_junction(plan="plans/fen.plan.json"))
    monkeypatch.chdir(tmp_path / "plans")
    assert len(read_network("../any.network.json").junctions[0].readers) == 3


@pytest.mark.parametrize(
    ("plan", "says"),
    [
        (None, "the file itself: expected a file that can be read (No such file or directory)"),
        (b"{", "line 1, column 2: expected JSON (Expecting property name enclosed in double quotes)"),
        (b'{"format":"platelayer-plan","version":1}', 'top level: expected the key "pieces"'),
        (b"\xff", "line 1, byte 0: expected UTF-8"),
    ],
)
def test_a_plan_that_cannot_be_read_is_told_with_both_files(
    tmp_path: Path, plan: bytes | None, says: str
) -> None:
    network, there = tmp_path / "any.network.json", tmp_path / "mill.plan.json"
    _write(network, one_junction(plan="mill.plan.json"))
    if plan is not None:
        there.write_bytes(plan)
    with pytest.raises(PlanFileError) as refused:
        read_network(network)
    place = f"{network}: junctions[0].plan: expected a plan file that can be read"
    assert str(refused.value) == f"{place}; {there}: {says}"


def test_a_pipe_that_a_network_names_is_not_waited_for(tmp_path: Path) -> None:
    """Who sent the network may never write into it."""
    os.mkfifo(tmp_path / "mill.plan.json")
    _write(tmp_path / "any.network.json", one_junction(plan="mill.plan.json"))
    with pytest.raises(PlanFileError, match="expected an ordinary file, no pipe and no device"):
        read_network(tmp_path / "any.network.json")


def test_a_network_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(PlanFileError, match="the file itself: expected a file that can be read"):
        read_network(tmp_path / "none.network.json")


def test_a_file_over_the_limit_is_refused_before_it_is_read(tmp_path: Path) -> None:
    large = tmp_path / "large.network.json"
    with large.open("wb") as stream:
        stream.truncate(FILE_LIMIT + 1)
    with pytest.raises(PlanFileError, match="expected at most 134,217,728 bytes"):
        read_network(large)


def test_the_limits_hold_for_lists() -> None:
    junctions = [{"name": "Mill"}] * JUNCTION_LIMIT
    assert len(read(document(junctions=junctions)).junctions) == JUNCTION_LIMIT


def _write(path: Path, value: Any) -> None:
    path.write_text(json.dumps(value), encoding="utf-8")
