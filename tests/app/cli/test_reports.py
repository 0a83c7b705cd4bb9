"""What the subcommands print, checked against plans whose answers are known."""

from __future__ import annotations

import csv
import io
import json
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from model.files.plan_file import plan_bytes, read_plan
from model.grid import ALL_TURNS, Cell, Heading, Turn
from model.plan import Plan
from tests.app.cli.running import EXAMPLES, SALTERN, Runner

ALL_EXAMPLES = sorted(EXAMPLES.glob("*.plan.json"))

RAIL_KEYS = ["at", "part", "shape", "resting", "powered", "switch"]
SWITCH_KEYS = ["at", "name", "resting", "powered", "idle", "called_by", "inverter"]
ROUTE_KEYS = ["from", "idle", "idle_reached", "called", "called_reached"]
ORIENTATION_KEYS = ["quarter", "mirror", "inverters", "buildable"]
FINDING_KEYS = ["rule", "severity", "at", "cells", "arms", "message", "waived"]


def three_way(**members: Any) -> dict[str, Any]:
    """A rail with neighbours to the north, south and east on blocks: a switch.

    The common practice of the trade: it rests south-east and lies north-east when powered.
    """
    cells = [[0, 64, -1], [0, 64, 1], [1, 64, 0], [0, 64, 0]]
    blocks = [{"part": "solid-block", "at": [x, 63, z]} for x, _, z in cells]
    rails = [{"part": "rail", "at": cell, "facing": "east" if cell[0] else "north"} for cell in cells]
    arms = [
        {
            "name": "Quay",
            "in": {"at": [1, 64, 0], "heading": "west"},
            "out": {"at": [1, 64, 0], "heading": "east"},
        },
        {"name": "Mill", "out": {"at": [0, 64, 1], "heading": "south"}},
        {"name": "Fen", "out": {"at": [0, 64, -1], "heading": "north"}},
    ]
    routes = [{"from": "Quay", "idle": "Mill", "called": "Fen"}]
    plan = {
        "format": "platelayer-plan",
        "version": 1,
        "pieces": blocks + rails,
        "arms": arms,
        "routes": routes,
    }
    return plan | members


@pytest.fixture
def switch_plan(run: Runner) -> Path:
    path = run.folder / "switch.plan.json"
    path.write_text(json.dumps(three_way()))
    return path


def test_check_of_a_single_switch(run: Runner, switch_plan: Path) -> None:
    done = run("check", "switch.plan.json", "--json")
    assert done.status == 0
    (file,) = json.loads(done.out)["files"]
    assert list(file) == ["file", "rails", "switches", "routes", "orientations", "findings"]
    assert file["file"] == "switch.plan.json"
    assert file["rails"][-1] == {
        "at": [0, 64, 0],
        "part": "rail",
        "shape": "south-east",
        "resting": "south-east",
        "powered": "north-east",
        "switch": True,
    }
    assert file["switches"] == [
        {
            "at": [0, 64, 0],
            "name": "S1",
            "resting": "south-east",
            "powered": "north-east",
            "idle": "south-east",
            "called_by": ["Quay"],
            "inverter": False,
        }
    ]
    reached = {"from": "Quay", "idle": "Mill", "idle_reached": True, "called": "Fen", "called_reached": True}
    assert file["routes"] == [reached]


def test_check_as_text_says_the_same(run: Runner, switch_plan: Path) -> None:
    text = run("check", "switch.plan.json").out
    assert text.startswith("switch.plan.json\nRails\n")
    assert "  S1  0 64 0  rests south-east  powered north-east  idle south-east  called by Quay\n" in text
    assert "  Quay  idle    Mill  reached\n  Quay  called  Fen   reached\n" in text
    assert f"  1  {'as drawn':37}  0 inverters\n" in text
    assert text.endswith(" notes\n")


@pytest.mark.parametrize("path", ALL_EXAMPLES, ids=lambda path: path.name)
def test_check_json_has_the_keys_that_others_rely_on(run: Runner, path: Path) -> None:
    done = run("check", "--json", path)
    assert done.status == 0
    (file,) = json.loads(done.out)["files"]
    lists = {
        "rails": RAIL_KEYS,
        "switches": SWITCH_KEYS,
        "routes": ROUTE_KEYS,
        "orientations": ORIENTATION_KEYS,
        "findings": FINDING_KEYS,
    }
    for name, keys in lists.items():
        assert all(list(entry) == keys for entry in file[name])
    turns = [(orientation["quarter"], orientation["mirror"]) for orientation in file["orientations"]]
    assert turns == [(turn.quarter, turn.mirror) for turn in ALL_TURNS]
    for finding in file["findings"]:
        assert finding["at"] == (finding["cells"][0] if finding["cells"] else None)


def test_a_waived_error_stays_in_the_list_and_is_no_error(run: Runner) -> None:
    plan = {
        "format": "platelayer-plan",
        "version": 1,
        "pieces": [{"part": "rail", "at": [0, 64, 0]}],
        "waivers": [{"rule": "unsupported", "cells": [[0, 64, 0]], "reason": "comes tomorrow"}],
    }
    Path("waived.plan.json").write_text(json.dumps(plan))
    done = run("check", "waived.plan.json", "--json")
    assert done.status == 0
    waived = [f["waived"] for f in json.loads(done.out)["files"][0]["findings"] if f["rule"] == "unsupported"]
    assert waived == [True]
    assert "(set aside: comes tomorrow)" in run("check", "waived.plan.json").out


def test_trace_with_readers_and_with_switches(run: Runner, switch_plan: Path) -> None:
    empty = {
        "from": "Quay",
        "path": [[1, 64, 0], [0, 64, 0], [0, 64, 1]],
        "outcome": "arm",
        "arm": "Mill",
        "heading": "south",
    }
    called = empty | {"path": [[1, 64, 0], [0, 64, 0], [0, 64, -1]], "arm": "Fen", "heading": "north"}
    trace = ("trace", "switch.plan.json", "--from", "Quay", "--json")
    assert json.loads(run(*trace).out) == empty
    assert json.loads(run(*trace, "--called", "Quay").out) == called
    assert json.loads(run(*trace, "--called", "Quay,Quay").out) == called
    assert json.loads(run(*trace, "--throw=0,64,0").out) == called
    text = run("trace", "switch.plan.json", "--from", "Quay").out
    assert text == "  1 64 0\n  0 64 0\n  0 64 1\nA cart from Quay leaves by Mill, heading south.\n"


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ("--from Mill", "the arm Mill has no way in"),
        ("--from Quay --called Mill", "the arm Mill has no called route"),
        ("--from Beacon", "no rail lies where the arm Beacon comes in"),
        ("--from Quay --throw=1,64,0", "there is no switch at 1 64 0"),
    ],
)
def test_trace_wrongly_used(run: Runner, arguments: str, message: str) -> None:
    arms = [*three_way()["arms"], {"name": "Beacon", "in": {"at": [9, 64, 9], "heading": "west"}}]
    Path("switch.plan.json").write_text(json.dumps(three_way(arms=arms)))
    done = run("trace", "switch.plan.json", *arguments.split())
    assert (done.status, done.out) == (2, "")
    assert message in done.err


def test_a_cell_can_be_copied_from_what_is_printed(run: Runner) -> None:
    trace = ("trace", SALTERN, "--from", "Quay", "--json")
    assert run(*trace, "--throw=−1,64,3").out == run(*trace, "--throw=-1,64,3").out != ""


def test_materials_in_three_forms(run: Runner, switch_plan: Path) -> None:
    assert json.loads(run("materials", "switch.plan.json", "--json").out) == {
        "parts": [
            {"part": "rail", "pieces": 4, "levels": {"64": 4}},
            {"part": "solid-block", "pieces": 4, "levels": {"63": 4}},
        ]
    }
    assert run("materials", "switch.plan.json").out == (
        "  rail         4  0 × 64 + 4  level 64: 4\n  solid block  4  0 × 64 + 4  level 63: 4\n8 pieces\n"
    )


@pytest.mark.parametrize("path", ALL_EXAMPLES, ids=lambda path: path.name)
def test_materials_as_csv_keep_to_rfc_4180_and_count_every_piece(run: Runner, path: Path) -> None:
    """RFC 4180: a header, CR LF after each row. OWASP: no text cell begins with = + - @ TAB CR LF."""
    text = run("materials", path, "--csv").out
    assert text.count("\r\n") == text.count("\n") == text.count("\r")
    header, *rows = csv.reader(io.StringIO(text, newline=""), strict=True)
    assert header == ["part", "level", "pieces"]
    counted = Counter((piece.part.value, str(piece.at.y)) for piece in read_plan(path).pieces)
    assert {(part, level): int(pieces) for part, level, pieces in rows} == dict(counted)
    assert len(rows) == len(counted)
    assert not any(part.startswith(tuple("=+-@\t\r\n\0")) for part, _, _ in rows)


@pytest.mark.parametrize("turn", ALL_TURNS, ids=str)
def test_turn_takes_everything_with_it(run: Runner, turn: Turn) -> None:
    mirror = ["--mirror"] if turn.mirror else []
    assert run("turn", SALTERN, "--quarter", str(turn.quarter), *mirror, "-o", "out.plan.json").status == 0
    old, new = read_plan(SALTERN), read_plan("out.plan.json")
    assert [_turned(piece.at, turn) for piece in old.pieces] == [piece.at for piece in new.pieces]
    for before, after in zip(old.arms, new.arms, strict=True):
        if before.enter is not None and after.enter is not None:
            assert after.enter.at == _turned(before.enter.at, turn)
            assert after.enter.heading == _turned_heading(before.enter.heading, turn)
    assert (new.details.running_side != old.details.running_side) == turn.mirror


def test_four_quarters_give_the_same_bytes(run: Runner) -> None:
    plan: Plan = read_plan(SALTERN)
    Path("0.plan.json").write_bytes(plan_bytes(plan))
    for number in range(4):
        run("turn", f"{number}.plan.json", "--quarter", "1", "-o", f"{number + 1}.plan.json")
    assert Path("4.plan.json").read_bytes() == Path("0.plan.json").read_bytes()


def test_turn_over_the_file_itself(run: Runner) -> None:
    assert run("turn", "good.plan.json", "--quarter", "0", "-o", "good.plan.json").status == 0
    assert read_plan("good.plan.json") == read_plan(SALTERN)


def test_nothing_is_coloured_and_no_title_commands_the_terminal(run: Runner) -> None:
    Path("title.plan.json").write_text(json.dumps(three_way(title="\x1b[31mred\x07\nnext")))
    for command in ("check", "materials"):
        assert "\x1b" not in run(command, "title.plan.json").out
    head = run("check", "title.plan.json").out.split("\n")[0]
    assert (
        head == "title.plan.json: \N{REPLACEMENT CHARACTER}[31mred" + "\N{REPLACEMENT CHARACTER}" * 2 + "next"
    )


def _turned(cell: Cell, turn: Turn) -> Cell:
    """The mirror first (x to -x), then each quarter takes (x, z) to (-z, x), written out apart."""
    x, z = (-cell.x, cell.z) if turn.mirror else (cell.x, cell.z)
    for _ in range(turn.quarter):
        x, z = -z, x
    return Cell(x, cell.y, z)


def _turned_heading(heading: Heading, turn: Turn) -> Heading:
    """By words: a mirror swaps east and west, a quarter goes on to the next."""
    words = ["NORTH", "EAST", "SOUTH", "WEST"]
    mirrored = (
        {"EAST": "WEST", "WEST": "EAST"}.get(heading.name, heading.name) if turn.mirror else heading.name
    )
    return Heading[words[(words.index(mirrored) + turn.quarter) % 4]]


@pytest.mark.usefixtures("qapp")
def test_pages_that_a_longer_sheet_left_are_named(run: Runner) -> None:
    """A builder must not lay them beside the new ones."""
    Path("out-98.svg").write_text("of an older one")
    Path("out-x.svg").write_text("no page")
    Path("another-99.svg").write_text("of another")
    done = run("sheet", "small.plan.json", "-o", "out.svg")
    assert done.status == 0
    assert done.err.splitlines()[-1].endswith("pages of an older one are still there: out-98.svg")
    Path("out-98.svg").unlink()
    assert "still there" not in run("sheet", "small.plan.json", "-o", "out.svg").err
    Path("out-98.pdf").write_bytes(b"no page of a file that holds all")
    assert "still there" not in run("sheet", "small.plan.json", "-o", "out.pdf").err
