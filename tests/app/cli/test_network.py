"""``platelayer network``: what it prints, what it writes, and every kind of end.

The networks are small enough to be worked out by hand.
"""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path
from typing import Any

import networkx as nx
import pytest

from app.subcommands.network_text import in_a_row
from tests.app.cli.running import EXAMPLES, SALTERN, Done, Runner, process

BRINEPAN = EXAMPLES / "brinepan.network.json"
FORK: dict[str, Any] = {
    "format": "platelayer-network",
    "version": 1,
    "title": "A fork",
    "stations": [{"name": "Quay"}, {"name": "Fen"}, {"name": "Orchard"}],
    "junctions": [
        {
            "name": "Mill",
            "readers": [
                {"from": "East", "ways": ["South", "West"], "default": None},
                {"from": "North", "ways": ["East"]},
            ],
        }
    ],
    "links": [
        {"from": "Quay", "to": "Mill/East", "length": 64},
        {"from": "Mill/South", "to": "Fen", "length": 16},
        {"from": "Mill/West", "to": "Orchard", "length": 8},
        {"from": "Mill/East", "to": "Quay", "length": 64},
        {"from": "Fen", "to": "Mill/North", "length": 16},
        {"from": "Orchard", "to": "Mill/North", "length": 8},
    ],
    "trips": [
        {"from": "Quay", "to": "Fen", "per_week": 70},
        {"from": "Quay", "to": "Orchard", "per_week": 30},
        {"from": "Fen", "to": "Quay", "per_week": 2.5},
    ],
}
"""More ride to Fen, so an empty cart goes there, and thirty a week carry the one waybill."""


@pytest.fixture
def fork(run: Runner) -> dict[str, Any]:
    """The fork, to be changed and written; the runner's folder is the working folder."""
    return json.loads(json.dumps(FORK))


def write(network: Any, name: str = "any.network.json") -> str:
    Path(name).write_text(json.dumps(network), encoding="utf-8")
    return name


def planned(run: Runner, network: Any) -> tuple[int, dict[str, Any]]:
    """The exit status, and the object that is printed; nothing is said."""
    done = run("network", write(network), "--json")
    assert done.err == ""
    return done.status, json.loads(done.out)


def rules(printed: dict[str, Any]) -> list[tuple[str, str]]:
    return [(finding["severity"], finding["rule"]) for finding in printed["findings"]]


def test_as_json(run: Runner, fork: dict[str, Any]) -> None:
    done = run("network", write(fork), "--json")
    name = json.loads(done.out)["readers"]["Mill/East"]["name"]
    assert done == Done(
        0,
        '{"waybills_per_week":30,"distinct_names":1,"names_bound":1,'
        f'"readers":{{"Mill/East":{{"default":"South","name":"{name}"}}}},'
        '"trips":[{"from":"Quay","to":"Fen","via":["Mill/East"],"waybills":[]},'
        f'{{"from":"Quay","to":"Orchard","via":["Mill/East"],"waybills":["{name}"]}},'
        '{"from":"Fen","to":"Quay","via":[],"waybills":[]}],"findings":[]}\n',
        "",
    )


def test_in_words(run: Runner, fork: dict[str, Any]) -> None:
    fork["pins"] = [{"reader": "Mill/East", "name": "Salt"}]
    assert run("network", write(fork)) == Done(
        0,
        "any.network.json: A fork\n"
        "Readers\n"
        "  Mill/East  empty by South  takes Salt, then by West\n"
        "Trips\n"
        "  Quay → Fen      70 a week   80 cells  10.0 s  no waybill\n"
        "  Quay → Orchard  30 a week   72 cells  9.0 s   Salt\n"
        "  Fen → Quay      2.5 a week  80 cells  10.0 s  no waybill\n"
        "Pins, and what each costs\n"
        "  Mill/East  +0 waybills a week  +0 names  +0 cells\n"
        "30 waybills a week, 1 name: no plan has fewer\n"
        "0 errors, 0 warnings, 0 notes\n",
        "",
    )


def test_a_pinned_default_costs_what_is_carried_more(run: Runner, fork: dict[str, Any]) -> None:
    fork["pins"] = [{"reader": "Mill/East", "default": "West"}]
    done = run("network", write(fork))
    assert "  Mill/East  +40 waybills a week  +0 names  +0 cells\n" in done.out
    assert planned(run, fork)[1]["waybills_per_week"] == 70


def test_a_given_default_is_kept(run: Runner, fork: dict[str, Any]) -> None:
    fork["junctions"][0]["readers"][0]["default"] = "West"
    status, printed = planned(run, fork)
    assert (status, printed["waybills_per_week"]) == (0, 70)
    assert printed["readers"]["Mill/East"]["default"] == "West"


def test_a_reader_that_no_trip_calls_has_no_name(run: Runner, fork: dict[str, Any]) -> None:
    del fork["trips"][1]
    _, printed = planned(run, fork)
    assert printed["readers"] == {"Mill/East": {"default": "South", "name": None}}
    assert (printed["waybills_per_week"], printed["distinct_names"], printed["names_bound"]) == (0, 0, 0)


def test_an_empty_network(run: Runner) -> None:
    assert planned(run, {"format": "platelayer-network", "version": 1}) == (
        0,
        {
            "waybills_per_week": 0,
            "distinct_names": 0,
            "names_bound": 0,
            "readers": {},
            "trips": [],
            "findings": [],
        },
    )


def test_an_error_that_is_set_aside_is_listed_and_is_none(run: Runner, fork: dict[str, Any]) -> None:
    fork["trips"].append({"from": "Orchard", "to": "Fen", "per_week": 1})
    fork["waivers"] = [{"rule": "trip-without-way", "names": ["Orchard", "Fen"], "reason": "in spring"}]
    status, printed = planned(run, fork)
    assert (status, [each["waived"] for each in printed["findings"]]) == (0, [True])


def test_a_trip_that_cannot_be_made_is_an_error(run: Runner, fork: dict[str, Any]) -> None:
    fork["trips"].append({"from": "Orchard", "to": "Fen", "per_week": 1})
    status, printed = planned(run, fork)
    assert (status, rules(printed)) == (3, [("error", "trip-without-way")])
    assert printed["trips"][3] == {"from": "Orchard", "to": "Fen", "via": [], "waybills": []}
    assert printed["findings"] == [
        {
            "rule": "trip-without-way",
            "severity": "error",
            "names": ["Orchard", "Fen"],
            "message": "No way leads from Orchard to Fen.",
            "waived": False,
        }
    ]
    done = run("network", "any.network.json")
    assert done.status == 3
    assert "  error  trip-without-way  No way leads from Orchard to Fen.\n" in done.out
    assert done.out.endswith("1 error, 0 warnings, 0 notes\n")


def test_warnings_are_no_errors(run: Runner, fork: dict[str, Any]) -> None:
    del fork["links"][3:], fork["trips"][2]
    status, printed = planned(run, fork)
    assert status == 0
    assert set(rules(printed)) == {
        ("warning", "station-unreached"),
        ("warning", "one-way-trap"),
        ("warning", "arm-without-link"),
        ("note", "arm-not-entered"),
    }


@pytest.mark.parametrize(
    ("change", "rule"),
    [
        (lambda it: it["stations"].append({"name": "Quay"}), "name-doubled"),
        (lambda it: it["junctions"].append({"name": "Mill"}), "name-doubled"),
        (lambda it: it["links"].append({"from": "Quay", "to": "Beacon/East", "length": 1}), "unknown-end"),
        (lambda it: it["trips"].append({"from": "Quay", "to": "Beacon", "per_week": 1}), "unknown-end"),
        (lambda it: it["links"].append({"from": "Mill/West", "to": "Fen", "length": 9}), "arm-doubled"),
    ],
)
def test_errors_of_the_network(run: Runner, fork: dict[str, Any], change: Any, rule: str) -> None:
    change(fork)
    status, printed = planned(run, fork)
    assert (status, rules(printed)) == (3, [("error", rule)])


@pytest.mark.parametrize(("start", "end"), [("Fen", "Mill/West"), ("Mill/North", "Fen")])
def test_a_link_against_the_wanted_routes(run: Runner, fork: dict[str, Any], start: str, end: str) -> None:
    fork["links"].append({"from": start, "to": end, "length": 1})
    status, printed = planned(run, fork)
    assert (status, rules(printed)) == (0, [("warning", "routes-contradict")])


def test_pinned_names_of_which_one_takes_the_others_are_an_error(run: Runner, fork: dict[str, Any]) -> None:
    """The cart for Orchard passes Mill by its default, and Fen must be called: of one name they cannot be."""
    fork["junctions"].append(
        {"name": "Gate", "readers": [{"from": "East", "ways": ["West", "South"], "default": "South"}]}
    )
    fork["junctions"][0]["readers"][0]["default"] = "West"
    fork["links"][2]["to"] = "Gate/East"
    fork["links"] += [
        {"from": "Gate/West", "to": "Orchard", "length": 8},
        {"from": "Gate/South", "to": "Fen", "length": 99},
    ]
    fork["pins"] = [{"reader": "Mill/East", "name": "Salt"}, {"reader": "Gate/East", "name": "Salt"}]
    status, printed = planned(run, fork)
    assert (status, rules(printed)) == (3, [("error", "takes-anothers"), ("warning", "pin-not-kept")])
    assert printed["findings"][0]["names"] == ["Mill/East", "Gate/East"]
    assert {reader["name"] for reader in printed["readers"].values()} > {"Salt"}


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"\xff", "line 1, byte 0: expected UTF-8"),
        (b"{", "line 1, column 2: expected JSON (Expecting property name enclosed in double quotes)"),
        (
            b'{"format": "platelayer-network", "version": 1, "version": 1}',
            "version: expected each key once; this one is doubled",
        ),
        (
            b'{"format": "platelayer-network", "version": 2}',
            "version: expected 1; version 2 was written by a newer Platelayer",
        ),
        (b'{"format": "platelayer-network", "version": 1, "links": 0}', "links: expected a list of at most"),
        (b'{"format": "platelayer-plan", "version": 1}', 'format: expected "platelayer-network"'),
        (None, "the file itself: expected a file that can be read (No such file or directory)"),
    ],
)
def test_a_file_that_cannot_be_read(run: Runner, data: bytes | None, says: str) -> None:
    if data is not None:
        Path("any.network.json").write_bytes(data)
    done = run("network", "any.network.json", "--json", "--graphml", "out.graphml")
    assert (done.status, done.out) == (4, "")
    assert done.err.startswith(f"platelayer: any.network.json: {says}")
    assert done.err.count("\n") == 1
    assert not Path("out.graphml").exists()


def test_a_plan_that_cannot_be_read_is_told_with_both_files(run: Runner, fork: dict[str, Any]) -> None:
    fork["junctions"].append({"name": "Fen", "plan": "bad.plan.json"})
    assert run("network", write(fork)) == Done(
        4,
        "",
        "platelayer: any.network.json: junctions[1].plan: expected a plan file that can be read; "
        "bad.plan.json: line 2, column 14: expected JSON (Expecting ',' delimiter)\n",
    )
    fork["junctions"][1]["plan"] = "none.plan.json"
    done = run("network", write(fork))
    assert done.status == 4
    assert "any.network.json: junctions[1].plan:" in done.err
    assert "none.plan.json: the file itself:" in done.err


def test_a_graph_is_not_written_over_a_plan_of_the_network(run: Runner, fork: dict[str, Any]) -> None:
    fork["junctions"].append({"name": "Fen", "plan": "good.plan.json"})
    before = (run.folder / "good.plan.json").read_bytes()
    done = run("network", write(fork), "--graphml", "./good.plan.json")
    assert (done.status, done.out) == (2, "")
    assert "a plan of the network would be written over" in done.err
    assert (run.folder / "good.plan.json").read_bytes() == before


def test_the_readers_of_a_plan_are_its_wanted_routes(run: Runner) -> None:
    network = {
        "format": "platelayer-network",
        "version": 1,
        "stations": [{"name": "Quay"}, {"name": "Fen"}, {"name": "Mill"}],
        "junctions": [{"name": "Saltern", "plan": "good.plan.json"}],
        "links": [
            link
            for name in ("Quay", "Fen", "Mill")
            for link in (
                {"from": name, "to": f"Saltern/{name}", "length": 8},
                {"from": f"Saltern/{name}", "to": name, "length": 8},
            )
        ],
        "trips": [
            {"from": "Quay", "to": "Mill", "per_week": 90},
            {"from": "Quay", "to": "Fen", "per_week": 1},
        ],
    }
    status, printed = planned(run, network)
    assert status == 0
    assert {key: reader["default"] for key, reader in printed["readers"].items()} == {
        "Saltern/Quay": "Fen",
        "Saltern/Fen": "Mill",
        "Saltern/Mill": "Quay",
    }
    assert printed["waybills_per_week"] == 90
    assert not printed["findings"]


def test_graphml_beside_the_plan(run: Runner, fork: dict[str, Any]) -> None:
    done = run("network", write(fork), "--json", "--graphml", "out.graphml")
    assert (done.status, done.err) == (0, "platelayer: wrote out.graphml\n")
    assert json.loads(done.out)["waybills_per_week"] == 30
    graph = nx.read_graphml("out.graphml", edge_key_type=int, force_multigraph=True)
    assert set(graph) == {"Quay", "Fen", "Orchard", "Mill"}
    assert [length for *_, length in graph.edges(data="length")].count(64) == 2
    assert graph.edges["Quay", "Mill", 0]["carts_per_week"] == 100


@pytest.mark.parametrize(
    ("output", "reason"),
    [
        ("none/out.graphml", "No such file or directory"),
        ("folder", "there is a folder of that name"),
        ("/dev/null", "it is no ordinary file"),
    ],
)
def test_graphml_that_cannot_be_written(run: Runner, fork: dict[str, Any], output: str, reason: str) -> None:
    Path("folder").mkdir()
    done = run("network", write(fork), "--graphml", output)
    assert done == Done(4, "", f"platelayer: {output}: could not be written: {reason}\n")


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ("network", "Missing argument 'FILE'"),
        ("network any.network.json --no-such-option", "No such option"),
        ("network any.network.json other.network.json", "unexpected extra argument"),
        ("network any.network.json --seconds -1", "-1.0 is not in the range x>=0"),
        ("network any.network.json --seconds salt", "'salt' is not a valid float"),
    ],
)
def test_wrong_use(run: Runner, fork: dict[str, Any], arguments: str, message: str) -> None:
    write(fork)
    done = run(*arguments.split())
    assert (done.status, done.out) == (2, "")
    assert message in done.err


@pytest.mark.parametrize("option", ["--seconds", "--hours", "--passage"])
def test_what_is_no_number_is_wrong_use(run: Runner, fork: dict[str, Any], option: str) -> None:
    done = run("network", write(fork), "--traffic", option, "nan")
    assert (done.status, done.out) == (2, "")
    assert "'nan' is not a number" in done.err


@pytest.mark.parametrize("also", [(), ("--since", "old.network.json")])
def test_no_graph_is_written_over_a_network_that_is_read(
    run: Runner, fork: dict[str, Any], also: tuple[str, ...]
) -> None:
    new, old = Path(write(fork)), Path(write(fork, "old.network.json"))
    done = run("network", new, *also, "--graphml", f"./{old if also else new}")
    assert (done.status, done.out) == (2, "")
    assert "written over" in done.err
    assert [json.loads(path.read_text(encoding="utf-8")) for path in (new, old)] == [fork, fork]


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ("--cards out.pdf --graphml ./out.pdf", "the cards are to be written there"),
        ("--cards network.pdf", "the network itself would be written over"),
    ],
)
def test_nothing_is_written_twice_nor_over_what_is_read(
    run: Runner, fork: dict[str, Any], more: str, says: str
) -> None:
    file = write(fork, "network.pdf")
    before = Path(file).read_bytes()
    done = run("network", file, *more.split())
    assert (done.status, done.out) == (2, "")
    assert says in done.err
    assert Path(file).read_bytes() == before
    assert not Path("out.pdf").exists()


def test_with_no_time_there_is_a_plan_all_the_same(run: Runner) -> None:
    done = run("network", BRINEPAN, "--json", "--seconds", "0")
    assert done.status == 0
    printed = json.loads(done.out)
    assert printed["names_bound"] <= printed["distinct_names"]
    assert _strays(BRINEPAN, printed) == []


def test_every_cart_of_the_example_arrives(run: Runner) -> None:
    done = run("network", BRINEPAN, "--json")
    assert (done.status, done.err) == (0, "")
    assert _strays(BRINEPAN, json.loads(done.out)) == []


def test_in_a_process_of_its_own(run: Runner) -> None:
    with process("network", BRINEPAN, cwd=run.folder) as child:
        out, err = child.communicate()
    assert (child.returncode, err) == (0, b"")
    assert out.startswith(str(BRINEPAN).encode())


def test_a_full_disk_behind_standard_output() -> None:
    with open("/dev/full", "wb") as full, process("network", BRINEPAN, "--json", stdout=full) as child:
        assert child.stderr is not None
        err = child.stderr.read().decode()
    assert child.returncode == 4
    assert err == "platelayer: standard output: could not be written: No space left on device\n"


def test_a_plan_file_is_no_network(run: Runner) -> None:
    assert run("network", SALTERN).status == 4


def test_what_to_carry_in_words() -> None:
    assert in_a_row(["Salt", "Salt", "Reed", "Salt"]) == "2 Salt, Reed, Salt"
    assert in_a_row([]) == ""


def _strays(path: Path, printed: dict[str, Any]) -> list[str]:
    """The trips whose cart, run reader by reader with the listed waybills, ends elsewhere, or with some left.

    Looks at nothing but the two objects of JSON and the plan files.
    """
    network = json.loads(path.read_bytes())
    ways = {f"{name}/{start}": goals for name, start, goals in _ways(network, path.parent)}
    onward = {link["from"]: link["to"] for link in network["links"]}
    stations = {station["name"] for station in network["stations"]}
    assert [(trip["from"], trip["to"]) for trip in network["trips"]] == [
        (trip["from"], trip["to"]) for trip in printed["trips"]
    ]
    strays = []
    for trip in printed["trips"]:
        cart, at = Counter(trip["waybills"]), onward[trip["from"]]
        via = []
        while at not in stations:
            goals, reader = ways[at], printed["readers"].get(at)
            goal = goals[0]
            if reader is not None:
                via.append(at)
                finds = cart[reader["name"]] > 0
                cart[reader["name"]] -= finds
                goal = next(way for way in goals if (way == reader["default"]) != finds)
            at = onward[f"{at.partition('/')[0]}/{goal}"]
        if at != trip["to"] or +cart or via != trip["via"]:
            strays.append(f"{trip['from']} → {trip['to']}")
    return strays


def _ways(network: dict[str, Any], folder: Path) -> list[tuple[str, str, list[str]]]:
    found = []
    for junction in network["junctions"]:
        if "plan" in junction:
            routes = json.loads((folder / junction["plan"]).read_bytes())["routes"]
            found += [(junction["name"], route["from"], [route["idle"], route["called"]]) for route in routes]
        else:
            found += [(junction["name"], reader["from"], reader["ways"]) for reader in junction["readers"]]
    return found
