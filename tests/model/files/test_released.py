"""Every file that a released version may have written opens for good, and says what it said then.

A folder of ``tests/data/released/`` stands for a major version; files are added to it, never changed.
``said.json`` there holds what was read of each when it was put there.
"""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from model.files.errors import PlanFileError
from model.files.network_file import network_bytes, parse_network
from model.files.plan_file import parse_plan, plan_bytes
from model.track.layout import Layout
from tests.harness.readers import ROOT

RELEASED = ROOT / "tests" / "data" / "released"
FILES = sorted(path for path in RELEASED.glob("*/*.json") if path.name != "said.json")


def what_it_says(path: Path) -> dict[str, Any]:
    """A few figures of all that is in the file."""
    if path.name.endswith(".network.json"):
        network = parse_network(path.read_bytes(), path.name)
        return {
            "title": network.title,
            "stations": [station.name for station in network.stations],
            "junctions": [junction.name for junction in network.junctions],
            "readers": sum(len(junction.readers) for junction in network.junctions),
            "lengths": sum(link.length for link in network.links),
            "per week": sum(trip.per_week for trip in network.trips),
        }
    plan = parse_plan(path.read_bytes(), path.name)
    return {
        "title": plan.details.title,
        "pieces": dict(sorted(Counter(piece.part for piece in plan.pieces).items())),
        "shapes": dict(sorted(Counter(shape.name for shape in Layout(plan).shapes.values()).items())),
        "arms": [arm.name for arm in plan.arms],
        "routes": [[route.start, route.idle, route.called] for route in plan.routes],
        "waivers": len(plan.details.waivers),
    }


def written_again(path: Path) -> bytes:
    data = path.read_bytes()
    if path.name.endswith(".network.json"):
        return network_bytes(parse_network(data, path.name))
    return plan_bytes(parse_plan(data, path.name))


def all_values(value: Any) -> Counter[str]:
    """Every key and every plain value, wherever it stands."""
    if isinstance(value, dict):
        return sum((all_values(inner) for inner in value.values()), Counter(value.keys()))
    if isinstance(value, list):
        return sum(map(all_values, value), Counter())
    return Counter([json.dumps(value)])


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_a_released_file_says_what_it_said(path: Path) -> None:
    said = json.loads((path.parent / "said.json").read_text(encoding="utf-8"))
    assert what_it_says(path) == said[path.name]


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_nothing_in_a_released_file_is_lost_by_saving(path: Path) -> None:
    """Keys that no version knows too: whatever stood there stands there again."""
    before, after = json.loads(path.read_bytes()), json.loads(written_again(path))
    assert all_values(before) <= all_values(after)


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_the_same_file_of_a_newer_major_version_is_refused_by_name(path: Path) -> None:
    newer = json.loads(path.read_bytes()) | {"version": 2}
    read = parse_network if path.name.endswith(".network.json") else parse_plan
    with pytest.raises(PlanFileError, match="newer") as refusal:
        read(json.dumps(newer).encode(), path.name)
    assert refusal.value.file == path.name
    assert refusal.value.place == "version"


def test_a_released_file_that_reads_otherwise_is_seen(tmp_path: Path) -> None:
    """The control that must fail: one rail is gone."""
    path = RELEASED / "1" / "fen-ring.plan.json"
    value = json.loads(path.read_bytes())
    value["pieces"].remove(next(piece for piece in value["pieces"] if piece["part"] == "rail"))
    changed = tmp_path / path.name
    changed.write_text(json.dumps(value))
    assert what_it_says(changed) != what_it_says(path)
    assert not all_values(json.loads(path.read_bytes())) <= all_values(json.loads(changed.read_bytes()))
