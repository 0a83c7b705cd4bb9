"""Plans of small networks against a second planner that tries everything, and a cart for each trip."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from app import cli
from model.files.network_file import read_network
from model.network.planning import planned
from tests.oracle.network import Paper, best_plan
from tests.oracle.network_judge import faults
from tests.oracle.small_networks import random_network


def told(path: Path) -> dict[str, Any]:
    """What the command prints of a plan, without the command."""
    plan = planned(read_network(path))
    assert plan.proved
    return {
        "waybills_per_week": plan.waybills_per_week,
        "distinct_names": plan.distinct_names,
        "names_bound": plan.names_bound,
        "readers": {key: {"default": each.default, "name": each.name} for key, each in plan.readers.items()},
        "trips": [
            {"from": trip.start, "to": trip.end, "via": list(trip.via), "waybills": list(trip.waybills)}
            for trip in plan.trips
        ],
    }


def judged(seeds: range, folder: Path) -> dict[int, list[str]]:
    """What is wrong with the plans of the random networks with these seeds."""
    wrong = {}
    for seed in seeds:
        path = random_network(seed, folder)
        paper = Paper(path)
        found = faults(paper, told(path), best_plan(paper))
        if found:
            wrong[seed] = found
    return wrong


def test_no_plan_of_a_small_network_is_better(tmp_path: Path) -> None:
    assert judged(range(110), tmp_path) == {}


@pytest.mark.slow
def test_no_plan_of_a_thousand_small_networks_is_better(tmp_path: Path) -> None:
    assert judged(range(1_000, 2_000), tmp_path) == {}


@pytest.mark.parametrize("seed", range(200, 212))
def test_the_command_prints_what_a_cart_can_ride_by(
    seed: int, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = random_network(seed, tmp_path)
    paper = Paper(path)
    best = best_plan(paper)
    status = cli.run(["network", str(path), "--json"])
    printed = json.loads(capsys.readouterr().out)
    assert faults(paper, printed, best) == []
    assert printed["names_bound"] == best.names
    errors = {finding["rule"] for finding in printed["findings"] if finding["severity"] == "error"}
    assert status == (3 if errors else 0)
    assert ("trip-without-way" in errors) == (None in best.lengths)


def test_a_plan_with_a_waybill_too_many_is_found_out(tmp_path: Path) -> None:
    """The judge itself: with one default the other way about, and names that suit, it sees the loss."""
    network = {
        "stations": [{"name": "Quay"}, {"name": "Fen"}, {"name": "Orchard"}],
        "junctions": [{"name": "Mill", "readers": [{"from": "East", "ways": ["South", "West"]}]}],
        "links": [
            {"from": "Quay", "to": "Mill/East", "length": 64},
            {"from": "Mill/South", "to": "Fen", "length": 16},
            {"from": "Mill/West", "to": "Orchard", "length": 8},
        ],
        "trips": [
            {"from": "Quay", "to": "Fen", "per_week": 70},
            {"from": "Quay", "to": "Orchard", "per_week": 30},
        ],
    }
    path = tmp_path / "fork.network.json"
    path.write_text(json.dumps(network), encoding="utf-8")
    printed: dict[str, Any] = {
        "waybills_per_week": 70,
        "distinct_names": 1,
        "names_bound": 1,
        "readers": {"Mill/East": {"default": "West", "name": "Salt"}},
        "trips": [
            {"from": "Quay", "to": "Fen", "via": ["Mill/East"], "waybills": ["Salt"]},
            {"from": "Quay", "to": "Orchard", "via": ["Mill/East"], "waybills": []},
        ],
    }
    paper = Paper(path)
    assert faults(paper, printed, best_plan(paper)) == ["70 waybills a week, not 30.0"]
    printed["trips"][1]["waybills"] = ["Salt"]
    assert any("Orchard" in fault for fault in faults(paper, printed, best_plan(paper)))
