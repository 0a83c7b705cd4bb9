"""A second planner of small networks, from the text of the file's form alone: it tries everything there is.

It reads the JSON file, never the program's values, and knows nothing of how the program plans. A cart that
reaches a station stops there; of several links out of one arm carts take the first.
"""

from __future__ import annotations

import itertools
import json
from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any, NamedTuple

Passed = tuple[tuple[str, str], ...]
"""The readers of a way, in order, each with the arm by which the cart must leave."""


class Best(NamedTuple):
    """What the best plan needs: waybills in a week, names, and the length of each trip (None: no way)."""

    waybills: Fraction
    names: int
    lengths: tuple[int | None, ...]


class Paper:
    """A network as its file tells it: the ways and the given default by entry, the links by their start."""

    def __init__(self, path: Path) -> None:
        data = json.loads(path.read_text(encoding="utf-8"))
        self.stations = {station["name"] for station in data["stations"]}
        self.trips: list[dict[str, Any]] = data["trips"]
        self.ways: dict[str, tuple[str, ...]] = {}
        self.given: dict[str, str | None] = {}
        for junction in data["junctions"]:
            for start, ways, default in _readers(junction, path.parent):
                self.ways[f"{junction['name']}/{start}"] = tuple(f"{junction['name']}/{way}" for way in ways)
                self.given[f"{junction['name']}/{start}"] = default and f"{junction['name']}/{default}"
        self.after: dict[str, list[tuple[str, int]]] = {}
        for link in data["links"]:
            self.after.setdefault(link["from"], []).append((link["to"], link["length"]))

    def links(self, start: str) -> list[tuple[str, int]]:
        """The links that a cart can take from a station (all) or an arm (the first)."""
        return self.after.get(start, [])[: None if start in self.stations else 1]

    def defaults(self, key: str) -> tuple[str, ...]:
        """The arms that may be the default of a reader: the given one, or each of its ways."""
        given = self.given[key]
        return self.ways[key] if given is None else (given,)


def _readers(junction: dict[str, Any], folder: Path) -> Iterator[tuple[str, list[str], str | None]]:
    """Where each reader stands, its one or two ways, and the default that is given."""
    if junction.get("plan") is None:
        for reader in junction.get("readers", []):
            yield reader["from"], reader["ways"], reader.get("default")
        return
    for route in json.loads((folder / junction["plan"]).read_text(encoding="utf-8")).get("routes", []):
        called = route.get("called")
        yield route["from"], [route["idle"], *([called] if called else [])], route["idle"]


def shortest_ways(paper: Paper, start: str, end: str) -> tuple[int | None, set[Passed]]:
    """The least length from station to station, and all ways of that length, by trying every way there is."""
    if start == end:
        return 0, {()}
    best: int | None = None
    found: set[Passed] = set()

    def go(at: str, length: int, seen: frozenset[str], passed: Passed) -> None:
        nonlocal best, found
        for to, cells in paper.links(at):
            total = length + cells
            if to in seen or (best is not None and total > best):
                continue
            if to == end:
                if best is None or total < best:
                    best, found = total, set()
                found.add(passed)
            elif to not in paper.stations:
                ways = paper.ways.get(to, ())
                for way in ways:
                    go(way, total, seen | {to}, (*passed, (to, way)) if len(set(ways)) == 2 else passed)

    go(start, 0, frozenset(), ())
    return best, found


def best_plan(paper: Paper) -> Best:
    """The fewest waybills in a week, then the fewest names, over all shortest ways and all defaults."""
    looked = [shortest_ways(paper, trip["from"], trip["to"]) for trip in paper.trips]
    weeks = [Fraction(str(trip["per_week"])) for trip in paper.trips]
    readers = sorted({key for _length, ways in looked for way in ways for key, _arm in way})
    fewest: Fraction | None = None
    names = 0
    for choice in itertools.product(*(paper.defaults(key) for key in readers)):
        default = dict(zip(readers, choice, strict=True))
        total, kept = Fraction(0), []
        for (_length, ways), week in zip(looked, weeks, strict=True):
            if not ways:
                continue
            cost = {way: week * sum(default[key] != arm for key, arm in way) for way in ways}
            total += min(cost.values())
            kept.append([way for way in ways if cost[way] == min(cost.values())])
        if fewest is not None and total > fewest:
            continue
        needed = min((_names(default, trips) for trips in itertools.product(*kept)), default=0)
        names = needed if fewest is None or total < fewest else min(names, needed)
        fewest = total
    return Best(fewest or Fraction(0), names, tuple(length for length, _ways in looked))


def _names(default: dict[str, str], trips: tuple[Passed, ...]) -> int:
    """The fewest names with which no reader takes a waybill that is meant for a later one."""
    called = sorted({key for way in trips for key, arm in way if default[key] != arm})

    def named(names: dict[str, int], used: int, most: int) -> bool:
        if len(names) == len(called):
            return all(_keeps(default, names, way) for way in trips)
        key = called[len(names)]
        for name in range(min(used + 1, most)):
            trial = {**names, key: name}
            sure = all(_keeps(default, trial, way) for way in trips)
            if sure and named(trial, max(used, name + 1), most):
                return True
        return False

    return next(most for most in range(len(called) + 1) if named({}, 0, most))


def _keeps(default: dict[str, str], names: dict[str, int], way: Passed) -> bool:
    """Whether a cart with its waybills (of the readers that have a name so far) keeps to its way."""
    carried = Counter(names[key] for key, arm in way if default[key] != arm and key in names)
    for key, arm in way:
        takes = key in names and carried[names[key]] > 0
        if key in names and takes != (default[key] != arm):
            return False
        if takes:
            carried[names[key]] -= 1
    return True
