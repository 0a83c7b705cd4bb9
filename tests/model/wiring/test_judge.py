"""The judge of wired junctions passes one that was wired by hand, and finds whatever is spoilt in it."""

from __future__ import annotations

import json
from collections.abc import Callable
from copy import deepcopy

import pytest

from model.files.plan_file import parse_plan, plan_bytes
from model.plan import plan_of
from model.wiring.modules.modules import load_module
from tests.oracle.wiring import (
    Box,
    Document,
    Line,
    faults_of_plan,
    faults_of_report,
    lines_in,
    pieces_in,
    touching_faults,
)
from tests.oracle.wiring_runners import both_runners, model_runner
from tests.oracle.wiring_runs import Train, faults_of, faults_of_runs, wanted_in

DUST = [(x, -2, 2) for x in range(3, 9)] + [(8, -2, 1), (8, -2, 0), (8, -2, -1), (9, -2, -1), (10, -1, -1)]
REPORT = {
    "wired": True,
    "lines": [{"arm": "Quay", "switches": [[10, 0, 0]], "dust": len(DUST), "repeaters": 0}],
    "footprint_cells": 0,
    "depth": 3,
    "verified": {"runs": 9, "passed": 9},
    "findings": [],
}

Spoil = Callable[[dict[tuple, dict]], None]


def fork() -> Document:
    """Carts from the west run on to the east, or turn south at a switch that rests south-east."""
    rails = [(x, 0, 0) for x in range(-9, 16)] + [(10, 0, z) for z in range(1, 6)]
    pieces = [{"part": "solid-block", "at": [x, y - 1, z]} for x, y, z in rails]
    pieces += [{"part": "rail", "at": list(at), "facing": "east" if at[2] == 0 else "north"} for at in rails]
    return {
        "format": "platelayer-plan",
        "version": 1,
        "pieces": pieces,
        "arms": [
            {"name": "Quay", "in": {"at": [-9, 0, 0], "heading": "east"}},
            {"name": "Mill", "out": {"at": [15, 0, 0], "heading": "east"}},
            {"name": "Fen", "out": {"at": [10, 0, 5], "heading": "south"}},
        ],
        "routes": [{"from": "Quay", "idle": "Mill", "called": "Fen", "waybill": "Salt"}],
    }


def nothing(_: dict[tuple, dict]) -> None:
    """Spoils nothing."""


def wired(spoil: Spoil = nothing) -> Document:
    """The fork with a reader and a line to the block under the switch; ``spoil`` changes pieces by cell."""
    document = fork()
    there = {tuple(piece["at"]): piece for piece in document["pieces"]}
    module = plan_of(load_module("reader", waybill="Salt").pieces)
    new = json.loads(plan_bytes(module))["pieces"]
    new += [{"part": "solid-block", "at": [x, y - 1, z]} for x, y, z in DUST]
    new += [{"part": "dust", "at": list(at)} for at in DUST]
    new += [{"part": "target-block", "at": [10, -1, 0]}]
    for piece in new:
        there[tuple(piece["at"])] = piece
    spoil(there)
    document["pieces"] = list(there.values())
    return document


def all_faults(after: Document) -> str:
    runs = faults_of_runs(after, model_runner(after), [(1, 0)])
    return "\n".join([*faults_of_plan(fork(), after, Box()), *runs])


def test_one_that_is_right_passes() -> None:
    after = wired()
    assert faults_of_plan(fork(), after, Box()) == []
    assert faults_of_runs(after, model_runner(after)) == []


def test_the_second_implementation_shows_the_same() -> None:
    after = wired()
    for route in wanted_in(after):
        assert faults_of(both_runners(after), [Train(route, 2, 1)]) == []


def becomes(at: tuple, **words: object) -> Spoil:
    def spoil(pieces: dict[tuple, dict]) -> None:
        pieces[at] = {**pieces.get(at, {"at": list(at)}), **words}

    return spoil


def gone(at: tuple) -> Spoil:
    return lambda pieces: pieces.pop(at) and None


SPOILT = {
    "a gap in the line": (gone((8, -2, 0)), "called from Quay to Fen, 1 carts 0 apart: cart 1 came to Mill"),
    "a switch that is always on": (
        becomes((11, -1, -1), part="torch"),
        "idle from Quay to Mill, 1 carts 0 apart: cart 1 came to Fen",
    ),
    "a torch that puts itself out": (
        becomes((10, -2, 0), part="torch", facing="south"),
        "only, before any cart",
    ),
    "a reader that counts too few": (
        becomes((0, -1, 0), holds=[{"item": "waybill:Salt", "count": 20}]),
        "cart 1 came to Mill",
    ),
    "a reader for all waybills": (
        becomes((0, -1, 0), holds=[{"item": "waybill:Nowhere", "count": 22}]),
        "cart 1 lost 1 of Nowhere, which no reader of its arm takes",
    ),
    "a rail that is gone": (gone((4, 0, 0)), "rail at (4, 0, 0) is gone"),
    "a switch that detects": (becomes((10, 0, 0), part="detector-rail"), "cart 1 came to Mill"),
    "a booster in place of a rail": (becomes((4, 0, 0), part="booster-rail"), "became booster-rail"),
    "a rail that faces otherwise": (becomes((4, 0, 0), facing="north"), "became rail facing north"),
    "a carrier that carries nothing": (becomes((4, -1, 0), part="dust"), "rail at (4, 0, 0) lacks"),
    "dust in the air": (gone((8, -3, 2)), "dust at (8, -2, 2) lacks (8, -3, 2)"),
    "a block too far": (becomes((17, -2, 0), part="solid-block"), "solid-block at (17, -2, 0) stands"),
    "a block too deep": (becomes((3, -7, 0), part="solid-block"), "solid-block at (3, -7, 0) stands"),
    "a block beside the track": (becomes((3, 0, 1), part="solid-block"), "solid-block at (3, 0, 1) stands"),
    "one rail more": (becomes((12, -3, 3), part="rail"), "a new rail at (12, -3, 3)"),
}


@pytest.mark.parametrize(("spoil", "fault"), SPOILT.values(), ids=SPOILT.keys())
def test_what_is_spoilt_is_found(spoil: Spoil, fault: str) -> None:
    assert fault in all_faults(wired(spoil))


def test_another_order_is_found() -> None:
    """First two rails, then two blocks."""
    for first, second, words in ((25 + 5, 26 + 5, "other rails"), (0, 1, "placed in another order")):
        after = wired()
        after["pieces"][first], after["pieces"][second] = after["pieces"][second], after["pieces"][first]
        assert words in "\n".join(faults_of_plan(fork(), after, Box()))


def test_lines_that_touch_are_found() -> None:
    """Two lines may end at the same target block, but have no dust in common."""
    line = lines_in([], pieces_in(wired()))[0]
    other = Line((0, -2, -2), frozenset({(0, -2, -2)}), frozenset(), line.targets)
    assert touching_faults([line, other]) == []
    assert touching_faults([line, other._replace(dust=other.dust | {(9, -2, -1)})]) == [
        "the lines from (3, -2, 2) and (0, -2, -2) touch"
    ]


def test_other_routes_are_found() -> None:
    after = wired()
    after["routes"] = []
    assert faults_of_plan(fork(), after, Box()) == ["routes differs"]


def test_wrong_numbers_are_found() -> None:
    after = wired()
    columns = len({(piece["at"][0], piece["at"][2]) for piece in after["pieces"]})
    right = REPORT | {"footprint_cells": columns}
    assert faults_of_report(fork(), after, right) == []
    for key, value in (("wired", False), ("footprint_cells", 3), ("depth", 6)):
        assert faults_of_report(fork(), after, right | {key: value}) != []
    for key in ("dust", "repeaters"):
        wrong = deepcopy(right)
        wrong["lines"][0][key] += 1
        assert len(faults_of_report(fork(), after, wrong)) == 1
    assert faults_of_report(fork(), after, right | {"verified": {"runs": 9, "passed": 8}}) != []


def test_the_file_is_one() -> None:
    """What the other tests spoil is a plan that the program reads."""
    assert len(parse_plan(json.dumps(wired()).encode(), "wired").pieces) == len(wired()["pieces"])
