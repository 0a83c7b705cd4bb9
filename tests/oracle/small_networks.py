"""Small random networks as their files tell them: ties, rings, plans, given defaults, stations far off."""

from __future__ import annotations

import json
import random
from pathlib import Path
from typing import Any

ARMS = ("North", "East", "South", "West")


def random_network(seed: int, folder: Path) -> Path:
    """One network, written into the folder with the plans of its junctions."""
    dice = random.Random(seed)
    stations = [f"Station {number}" for number in range(dice.randint(3, 6))]
    junctions = [_junction(dice, number, folder) for number in range(dice.randint(1, 6))]
    network = {
        "format": "platelayer-network",
        "version": 1,
        "stations": [{"name": name} for name in stations],
        "junctions": junctions,
        "links": _links(dice, stations, [junction["name"] for junction in junctions]),
        "trips": _trips(dice, stations),
    }
    path = folder / f"{seed}.network.json"
    path.write_text(json.dumps(network), encoding="utf-8")
    return path


def _junction(dice: random.Random, number: int, folder: Path) -> dict[str, Any]:
    name = f"Junction {number}"
    arms = ARMS[: dice.choice((3, 3, 3, 4))]
    readers: list[dict[str, Any]] = []
    for arm in arms:
        others = [way for way in arms if way != arm or dice.random() < 0.1]
        ways = dice.sample(others, 1 if dice.random() < 0.15 else 2)
        readers.append({"from": arm, "ways": ways, "default": dice.choice((None, None, None, *ways))})
    if dice.random() > 0.25:
        return {"name": name, "readers": readers}
    plan = f"{name} of {dice.randrange(10**9)}.plan.json"
    routes = [
        {"from": reader["from"], "idle": reader["ways"][0]}
        | ({"called": reader["ways"][1]} if len(reader["ways"]) == 2 else {})
        for reader in readers
    ]
    ends = {
        arm: {
            "in": {"at": [3 * i, 64, 0], "heading": "north"},
            "out": {"at": [3 * i + 1, 64, 0], "heading": "south"},
        }
        for i, arm in enumerate(arms)
    }
    told = {
        "format": "platelayer-plan",
        "version": 1,
        "pieces": [],
        "arms": [{"name": arm, **end} for arm, end in ends.items()],
        "routes": routes,
    }
    (folder / plan).write_text(json.dumps(told), encoding="utf-8")
    return {"name": name, "plan": plan}


def _links(dice: random.Random, stations: list[str], junctions: list[str]) -> list[dict[str, Any]]:
    """Lines both ways, or each way out to a way in of its own; short lengths make many ties."""
    ends = [f"{junction}/{arm}" for junction in junctions for arm in ARMS[:3]]
    dice.shuffle(ends)
    both = dice.random() < 0.7
    if both:
        # First a line between stations and junctions each, then among the ends that are left.
        pairs = list(zip(stations, ends, strict=False))
        free = ends[len(stations) :]
        pairs += list(zip(free[::2], free[1::2], strict=False))
        pairs += [(end, start) for start, end in pairs]
    else:
        outs = [*ends, *stations]
        pairs = list(zip(outs, dice.sample(outs, len(outs)), strict=True))
    outs = [*ends, *stations]
    pairs = [pair for pair in pairs if dice.random() < 0.97]
    pairs += [(dice.choice(outs), dice.choice(outs)) for _ in range(dice.choice((0, 0, 1, 2)))]
    dice.shuffle(pairs)
    return [{"from": out, "to": end, "length": dice.choice((1, 1, 2, 2, 3))} for out, end in pairs]


def _trips(dice: random.Random, stations: list[str]) -> list[dict[str, Any]]:
    pairs = [(start, end) for start in stations for end in stations if start != end]
    dice.shuffle(pairs)
    return [
        {"from": start, "to": end, "per_week": dice.choice((0, 1, 1, 2, 2.5, 7, 0.1))}
        for start, end in pairs[: dice.choice((1, 5, 10, 20))]
    ]
