"""Judging a printed plan: its numbers against the best, and each cart reader by reader from the JSON."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from typing import Any, NamedTuple

from tests.oracle.network import Best, Paper


class Run(NamedTuple):
    """Where a cart ended (None: nowhere), the readers it passed, its cells, and what it has left."""

    end: str | None
    via: list[str]
    cells: int
    left: int


def runs(paper: Paper, readers: dict[str, Any], trip: dict[str, Any]) -> list[Run]:
    """A cart with exactly the listed waybills, reader by reader: one run for each link out of its station."""
    if trip["from"] == trip["to"]:
        return [Run(trip["to"], [], 0, len(trip["waybills"]))]
    return [_run(paper, readers, trip, first) for first in paper.links(trip["from"])]


def _run(paper: Paper, readers: dict[str, Any], trip: dict[str, Any], first: tuple[str, int]) -> Run:
    carried = Counter(trip["waybills"])
    via: list[str] = []
    at, cells = first
    seen: set[tuple[str, int]] = set()
    while at not in paper.stations:
        ways = paper.ways.get(at, ())
        left = sum(carried.values())
        if not ways or (at, left) in seen:
            return Run(None, via, cells, left)
        seen.add((at, left))
        out = ways[0]
        if len(set(ways)) == 2:
            via.append(at)
            reader = readers[at]
            default = f"{at.split('/')[0]}/{reader['default']}"
            assert default in ways
            called = reader["name"] is not None and carried[reader["name"]] > 0
            if called:
                carried[reader["name"]] -= 1
            out = next(way for way in ways if (way == default) != called)
        links = paper.links(out)
        if not links:
            return Run(None, via, cells, sum(carried.values()))
        at, more = links[0]
        cells += more
    return Run(at, via, cells, sum(carried.values()))


def faults(paper: Paper, printed: dict[str, Any], best: Best) -> list[str]:
    """What is wrong with a printed plan, in words; nothing where none is better and every cart arrives."""
    wrong = []
    if not _same(printed["waybills_per_week"], best.waybills):
        wrong.append(f"{printed['waybills_per_week']} waybills a week, not {float(best.waybills)}")
    if printed["distinct_names"] != best.names:
        wrong.append(f"{printed['distinct_names']} names, not {best.names}")
    if printed["names_bound"] > best.names:
        wrong.append(f"a bound of {printed['names_bound']} names, where {best.names} do")
    readers = printed["readers"]
    two = {key for key, ways in paper.ways.items() if len(set(ways)) == 2}
    if set(readers) != two:
        wrong.append(f"readers {sorted(set(readers) ^ two)}")
    names = {reader["name"] for reader in readers.values()} - {None}
    if len(names) != printed["distinct_names"]:
        wrong.append(f"{len(names)} names are in use, {printed['distinct_names']} told")
    for key in two & set(readers):
        default = f"{key.split('/')[0]}/{readers[key]['default']}"
        if default not in paper.defaults(key):
            wrong.append(f"{key} has the default {default}")
    return wrong + _carts(paper, printed, best)


def _same(printed: float, exact: Fraction) -> bool:
    """Trips a week may be tenths, and a sum of floats may be off in its last places."""
    return abs(Fraction(printed) - exact) <= Fraction(1, 10**9)


def _carts(paper: Paper, printed: dict[str, Any], best: Best) -> list[str]:
    wrong = []
    called: set[str] = set()
    carried = Fraction(0)
    for asked, trip, length in zip(paper.trips, printed["trips"], best.lengths, strict=True):
        label = f"{trip['from']} to {trip['to']}"
        if (asked["from"], asked["to"]) != (trip["from"], trip["to"]):
            wrong.append(f"{label} stands where {asked['from']} to {asked['to']} was asked")
        carried += Fraction(str(asked["per_week"])) * len(trip["waybills"])
        if length is None:
            if trip["via"] or trip["waybills"]:
                wrong.append(f"{label} has no way, yet readers")
            continue
        good = Run(trip["to"], trip["via"], length, 0)
        if good not in runs(paper, printed["readers"], trip):
            wrong.append(f"{label}: {runs(paper, printed['readers'], trip)}, not {good}")
        rest = list(trip["waybills"])
        for key in trip["via"]:
            if rest and printed["readers"][key]["name"] == rest[0]:
                called.add(key)
                rest.pop(0)
        if rest:
            wrong.append(f"{label}: its waybills are not in the order of its readers")
    if not _same(printed["waybills_per_week"], carried):
        wrong.append(f"the trips carry {float(carried)} waybills a week, {printed['waybills_per_week']} told")
    named = {key for key, reader in printed["readers"].items() if reader["name"] is not None}
    if named != called:
        wrong.append(f"named and called differ: {sorted(named ^ called)}")
    return wrong
