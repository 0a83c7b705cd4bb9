"""Network files as JSON values, for the tests to bend. The company is invented."""

from __future__ import annotations

import json
from typing import Any

from model.files.network_file import parse_network
from model.network.network import Network

FULL: dict[str, Any] = {
    "format": "platelayer-network",
    "version": 1,
    "title": "Brinepan Tramway",
    "stations": [{"name": "Quay", "map": [0, 40]}, {"name": "Orchard", "map": [-2.5, 1e3]}, {"name": "Fen"}],
    "junctions": [
        {"name": "Fen", "plan": "fen.plan.json", "map": [80, 0]},
        {
            "name": "Mill",
            "readers": [
                {"from": "East", "ways": ["South", "West"], "default": None},
                {"from": "South", "ways": ["West", "East"], "default": "East"},
                {"from": "West", "ways": ["South"]},
            ],
            "running_side": "left",
        },
    ],
    "links": [
        {"from": "Quay", "to": "Mill/East", "length": 64},
        {"from": "Mill/South", "to": "Fen/North", "length": 210},
    ],
    "trips": [
        {"from": "Quay", "to": "Orchard", "per_week": 70},
        {"from": "Orchard", "to": "Quay", "per_week": 0.5},
    ],
    "pins": [{"reader": "Mill/East", "default": "South", "name": "Salt"}],
    "ways": [{"from": "Quay", "to": "Orchard", "via": ["Mill/East", "Fen/North"]}],
    "waivers": [
        {"rule": "arm-without-link", "names": ["Mill/West"], "reason": "the line goes there in spring"},
        {"rule": "empty-loop"},
    ],
}


def document(**members: Any) -> dict[str, Any]:
    """A small valid network with other members."""
    return {"format": "platelayer-network", "version": 1, **members}


def one_junction(**members: Any) -> dict[str, Any]:
    """A network with one junction."""
    return document(junctions=[{"name": "Mill", **members}])


def one_link(**members: Any) -> dict[str, Any]:
    """A network with one link."""
    return document(links=[{"from": "Quay", "to": "Mill/East", "length": 64, **members}])


def one_trip(**members: Any) -> dict[str, Any]:
    """A network with one trip."""
    return document(trips=[{"from": "Quay", "to": "Fen", "per_week": 1, **members}])


def read(value: Any) -> Network:
    """The network that a JSON value stands for."""
    return parse_network(json.dumps(value).encode(), "test.network.json")
