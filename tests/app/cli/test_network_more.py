"""``platelayer network``: cards, traffic and changes."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from app.subcommands.network_traffic import traffic_text
from model.files.network_file import network_bytes
from model.network.network import JunctionSpec, Link, ReaderSpec, Station, Trip
from model.network.traffic_values import QueueCount, ReaderTraffic, Traffic, TrafficSettings
from tests.app.cli.running import Runner
from tests.app.export.sheets import texts
from tests.model.network.crossing import NETWORK

READERS = ("Gate/Town", "Halt/Gate")


@pytest.fixture
def network_file(run: Runner) -> Path:
    path = run.folder / "crossing.network.json"
    busy = NETWORK.replace(trips=(Trip("Quay", "Mill", 70_000), Trip("Quay", "Fen", 35_000)))
    path.write_bytes(network_bytes(busy))
    return path


def asked(run: Runner, *arguments: str | Path) -> dict[str, Any]:
    done = run("network", "--json", *arguments)
    assert done.status == 0, done.err
    return json.loads(done.out)


@pytest.mark.usefixtures("qapp")
def test_cards_are_written_beside_the_report(run: Runner, network_file: Path) -> None:
    cards = run.folder / "cards.pdf"
    done = run("network", network_file, "--cards", cards)
    assert done.status == 0
    assert f"wrote {cards}" in done.err
    first, *_, last = texts(cards.read_bytes())
    assert "Quay" in first
    assert "List of readers" in last
    said = json.loads(run("network", "--json", network_file).out)
    for trip in said["trips"]:
        line = next(line for line in first.splitlines() if line.startswith(trip["to"]))
        assert [word for word in trip["waybills"] if word not in line] == []


def test_cards_with_another_ending_are_wrong_use(run: Runner, network_file: Path) -> None:
    done = run("network", network_file, "--cards", "cards.doc")
    assert done.status == 2
    assert ".pdf, .svg, .png" in done.err
    assert done.out == ""


def test_cards_that_cannot_be_written_are_told_first(run: Runner, network_file: Path) -> None:
    done = run("network", network_file, "--cards", run.folder / "nowhere" / "cards.pdf")
    assert done.status == 4
    assert done.out == ""


def test_traffic_is_counted_on_demand(run: Runner, network_file: Path) -> None:
    """105,000 carts a week are 625 an hour; Gate/Town holds after those that call."""
    assert "traffic" not in asked(run, network_file)
    traffic = asked(run, network_file, "--traffic", "--hours", "2")["traffic"]
    assert traffic["hours"] == 2
    assert traffic["departed"] == pytest.approx(1250, abs=4 * 1250**0.5), "a Poisson number"
    assert 0 < traffic["departed"] - traffic["arrived"] < 20
    gate, halt = (traffic["readers"][reader] for reader in READERS)
    assert gate["arrivals"] > halt["arrivals"] > 300
    load = _load(run, network_file)
    assert gate["load"] == pytest.approx(load)
    assert gate["utilisation"] == pytest.approx(load, rel=0.15)
    assert gate["mean_queue"] == pytest.approx(gate["arrivals"] * gate["mean_wait"] / 7200)
    assert set(traffic["junctions"]) == {"Gate", "Halt"}
    trips = {trip["to"]: trip for trip in traffic["trips"]}
    assert (trips["Mill"]["free_seconds"], trips["Fen"]["free_seconds"]) == (13, 20)
    assert trips["Mill"]["mean_seconds"] > 13


def _load(run: Runner, network_file: Path) -> float:
    """Of the trips at Gate/Town: 6 s of a reader for each cart that it takes a waybill from, else 2.7 s."""
    said = asked(run, network_file)
    takes = said["readers"]["Gate/Town"]
    onward = {"Mill": "Pans", "Fen": "Fields"}
    rates = {"Mill": 70_000, "Fen": 35_000}
    return sum(rates[end] * (2.7 if takes["default"] == onward[end] else 6.0) / 604_800 for end in rates)


def test_a_seed_another_hold_and_even_spacing_are_heard(run: Runner, network_file: Path) -> None:
    hour = ("--traffic", "--hours", "1")
    plain = asked(run, network_file, *hour)["traffic"]
    assert asked(run, network_file, *hour)["traffic"] == plain
    other = asked(run, network_file, *hour, "--seed", "1")["traffic"]
    assert other["trips"] != plain["trips"]
    held = asked(run, network_file, *hour, "--hold", "Halt=9", "--hold", "1")["traffic"]
    for reader in READERS:
        before, after = plain["readers"][reader], held["readers"][reader]
        change = -2.3 if reader == "Gate/Town" else 5.7
        calls = 0 if before["called"] == 0 else 35_000 / 604_800
        assert after["load"] - before["load"] == pytest.approx(change * calls)
    even = asked(run, network_file, *hour, "--evenly")["traffic"]
    assert even["departed"] == pytest.approx(625, abs=2)


@pytest.mark.parametrize(
    "hold", ["Mill=3", "Gate/Nowhere=3", "-1", "soon", "Gate=", "nan", "Gate=inf", "90000"]
)
def test_a_hold_that_cannot_be_is_wrong_use(run: Runner, network_file: Path, hold: str) -> None:
    done = run("network", network_file, "--traffic", f"--hold={hold}")
    assert done.status == 2
    assert "--hold" in done.err
    assert done.out == ""


def test_traffic_in_words_tells_where_carts_wait_and_what_is_too_much(
    run: Runner, network_file: Path
) -> None:
    done = run("network", network_file, "--traffic", "--hours", "1", "--passage", "9")
    assert "Queues at junctions\n  Gate " in done.out
    assert "Queues at readers\n  Gate/Town " in done.out
    assert "Quay → Mill" in done.out
    assert "Gate/Town cannot take all that comes: its queue grows for ever\n" in done.out
    assert "traffic of 1 hours" not in done.out
    assert "traffic of 1 hour: " in done.out


def test_traffic_of_nobody_is_told(run: Runner) -> None:
    path = run.folder / "empty.network.json"
    path.write_bytes(network_bytes(NETWORK.replace(trips=())))
    done = run("network", path, "--traffic")
    assert done.out.endswith("traffic of 24 hours: 0 carts set out, 0 arrived\n")


def test_names_in_words_are_no_commands_to_a_terminal() -> None:
    one = ReaderTraffic("Ga\x1bte/East", QueueCount(1, 0.0, 0, 0.0), 1, 1.0, 2.0)
    assert "\x1b" not in traffic_text(Traffic(TrafficSettings(), (one,), (), ()))


def test_it_is_told_what_a_new_station_changes(run: Runner, network_file: Path) -> None:
    """Yard stands between Quay and Gate: its reader is new, and no other sign need be written anew."""
    yard = JunctionSpec("Yard", readers=(ReaderSpec("Up", ("Down", "Shed")),))
    links = (
        Link("Quay", "Yard/Up", 8),
        Link("Yard/Down", "Gate/Town", 56),
        Link("Yard/Shed", "Shed", 8),
        *NETWORK.links[1:],
    )
    later = NETWORK.replace(
        stations=(*NETWORK.stations, Station("Shed")),
        junctions=(yard, *NETWORK.junctions),
        links=links,
        trips=(Trip("Quay", "Mill", 70_000), Trip("Quay", "Fen", 35_000), Trip("Quay", "Shed", 7)),
    )
    path = run.folder / "later.network.json"
    path.write_bytes(network_bytes(later))
    said = asked(run, path, "--since", network_file)
    new = said["readers"]["Yard/Up"]
    assert said["changes"] == {
        "readers": {"Yard/Up": {"before": None, "after": new}},
        "trips": [{"from": "Quay", "to": "Shed", "before": None, "after": [new["name"]]}],
    }
    done = run("network", path, "--since", network_file)
    assert done.out.endswith("1 reader changes, 1 trip takes other waybills\n")
    assert f"Yard/Up  not there  →  empty by Down, takes {new['name']}\n" in done.out
    assert "nothing changes\n" in run("network", path, "--since", path).out
