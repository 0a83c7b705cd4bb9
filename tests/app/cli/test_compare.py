"""``platelayer compare``: what it prints, against the two files read by the standard library."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from tests.app.cli.running import EXAMPLES, SALTERN, Runner, process

BEACON = EXAMPLES / "beacon-wye.plan.json"


def write(name: str, pieces: list[dict[str, Any]], **more: Any) -> None:
    Path(name).write_text(
        json.dumps({"format": "platelayer-plan", "version": 1, "pieces": pieces, **more}), encoding="utf-8"
    )


def rail(x: int, z: int, facing: str, **more: Any) -> dict[str, Any]:
    return {"part": "rail", "at": [x, 64, z], "facing": facing, **more}


OLD = [
    {"part": "solid-block", "at": [0, -3, 0]},
    {"part": "torch", "at": [1, 64, 5], "facing": "up"},
    {"part": "repeater", "at": [2, 64, 5], "facing": "east", "delay": 2},
    {"part": "lever", "at": [3, 64, 5], "facing": "up"},
    rail(-1, 0, "east"),
    rail(0, 0, "east"),
    rail(1, 0, "east"),
    rail(0, 1, "north"),
]
NEW = [
    {
        "part": "barrel",
        "at": [9, 65, 0],
        "holds": [{"item": "waybill:Salt", "count": 22}],
        "painted": "green",
    },
    {"part": "glass", "at": [0, -3, 0]},
    {"part": "torch", "at": [1, 64, 5], "facing": "north"},
    {"part": "repeater", "at": [2, 64, 5], "facing": "east", "delay": 6},
    rail(-1, 0, "east"),
    rail(0, 0, "east"),
    rail(0, 1, "north"),
    rail(1, 0, "west"),
]
ROUTE = {"from": "Quay", "idle": "Mill"}


@pytest.fixture
def two_plans(run: Runner) -> Runner:
    """old.plan.json and new.plan.json, of an invented junction."""
    write("old.plan.json", OLD, title="Beacon", routes=[ROUTE])
    write("new.plan.json", NEW, title="Beacon Wye", routes=[ROUTE | {"called": "Fen", "waybill": "Salt"}])
    return run


def test_three_lists_of_pieces_as_files_have_them(two_plans: Runner) -> None:
    done = two_plans("compare", "old.plan.json", "new.plan.json", "--json")
    assert (done.status, done.err) == (0, "")
    pairs = [(OLD[0], NEW[1]), (OLD[1], NEW[2]), (OLD[2], NEW[3]), (OLD[6], NEW[7])]
    assert json.loads(done.out) == {
        "placed": [NEW[0]],
        "taken": [OLD[3]],
        "changed": [{"at": old["at"], "before": old, "after": new} for old, new in pairs],
    }


def test_the_text_says_what_to_do_level_by_level_and_what_comes_of_it(two_plans: Runner) -> None:
    assert two_plans("compare", "old.plan.json", "new.plan.json").out == (
        "From old.plan.json to new.plan.json\n"
        "By part\n"
        "  rail                 1 turned, 1 lying otherwise\n"
        "  solid block → glass  1 changed\n"
        "  torch                1 turned\n"
        "  repeater             1 changed\n"
        "  lever                1 taken away\n"
        "  barrel               1 placed\n"
        "Level −3\n"
        "  change  0 −3 0  solid block → glass\n"
        "Level 64\n"
        "  take away       3 64 5  lever, facing up\n"
        "  turn            1 64 5  torch: facing up → facing north\n"
        "  turn            1 64 0  rail: facing east → facing west; lies the same\n"
        "  change          2 64 5  repeater: delay 2 ticks → delay 6 ticks\n"
        "  lies otherwise  0 64 0  rail: east-west → south-west\n"
        "Level 65\n"
        "  place  9 65 0  barrel, holding 22 waybills “Salt”\n"
        "Beside the pieces\n"
        "  title             Beacon → Beacon Wye\n"
        "  route Quay        idle Mill → idle Mill, called Fen, with Salt\n"
        "  order of placing  1 piece earlier or later\n"
        "Shapes are those of each plan built anew in its own order; beside track that stands already, "
        "rails placed by hand may come to lie otherwise.\n"
        "1 placed, 1 taken away, 2 turned, 2 changed, 1 lying otherwise\n"
    )


def test_two_examples_against_sets_of_cells_and_back_again(run: Runner) -> None:
    """Source: operations on the views of ``dict``, Python's standard library."""
    old, new = (
        {tuple(piece["at"]): piece for piece in json.loads(path.read_text())["pieces"]}
        for path in (SALTERN, BEACON)
    )
    there = json.loads(run("compare", SALTERN, BEACON, "--json").out)
    back = json.loads(run("compare", BEACON, SALTERN, "--json").out)
    assert there["placed"] == [piece for at, piece in new.items() if at not in old]
    assert there["taken"] == [piece for at, piece in old.items() if at not in new]
    assert [each["at"] for each in there["changed"]] == [
        list(at) for at in new if at in old and old[at] != new[at]
    ]
    by_cell = sorted(there["changed"], key=lambda each: each["at"])
    exchanged = [each | {"before": each["after"], "after": each["before"]} for each in back["changed"]]
    assert by_cell == sorted(exchanged, key=lambda each: each["at"])
    assert sorted(map(str, there["placed"])) == sorted(map(str, back["taken"]))


def test_a_plan_and_itself(run: Runner) -> None:
    assert run("compare", "good.plan.json", "good.plan.json", "--json").out == (
        '{"placed":[],"taken":[],"changed":[]}\n'
    )
    said = "From good.plan.json to good.plan.json\nno piece differs\n"
    assert run("compare", "good.plan.json", "good.plan.json") == (0, said, "")


def test_names_and_items_cannot_command_the_terminal(run: Runner) -> None:
    write("a.plan.json", [], title="\x1b[31mred")
    write("b.plan.json", [{"part": "barrel", "at": [0, 0, 0], "holds": [{"item": "\x1b[2J", "count": 1}]}])
    assert "\x1b" not in run("compare", "a.plan.json", "b.plan.json").out


@pytest.mark.parametrize("form", [[], ["--json"]])
def test_two_processes_print_the_same(form: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    printed = []
    for seed in ("0", "1"):
        monkeypatch.setenv("PYTHONHASHSEED", seed)
        started = process("compare", SALTERN, BEACON, *form)
        printed.append(started.communicate()[0])
        assert started.returncode == 0
    assert printed[0] == printed[1] != b""
