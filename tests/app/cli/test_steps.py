"""``platelayer steps``: whoever builds by what it prints gets the plan."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from model.grid import ALL_TURNS, Turn
from tests.app.cli.running import EXAMPLES, SALTERN, Runner, process
from tests.model.steps.builder import inspect

ALL_EXAMPLES = sorted(EXAMPLES.glob("*.plan.json"))
KEYS = ["step", "level", "title", "place", "why", "see", "shapes"]


@pytest.mark.parametrize("turn", ALL_TURNS, ids=str)
@pytest.mark.parametrize("path", ALL_EXAMPLES, ids=lambda path: path.name)
def test_each_example_in_each_orientation_is_built_from_its_steps(
    run: Runner, path: Path, turn: Turn
) -> None:
    mirror = ["--mirror"] if turn.mirror else []
    run("turn", path, "--quarter", str(turn.quarter), *mirror, "-o", "turned.plan.json")
    done = run("steps", "turned.plan.json", "--json")
    assert (done.status, done.err) == (0, "")
    (name, steps), *more = json.loads(done.out).items()
    assert (name, more) == ("steps", [])
    for step in steps:
        assert list(step) == [key for key in KEYS if key != "why" or "why" in step]
    inspect(json.loads(Path("turned.plan.json").read_text())["pieces"], steps)
    assert not any("why" in step for step in steps)
    assert len(steps) < 60


def test_pieces_stand_in_the_steps_as_in_the_file(run: Runner) -> None:
    """With what they hold, how they are set, and keys that only a later version knows."""
    pieces = [
        {"part": "barrel", "at": [0, 63, 0], "holds": [{"item": "waybill:Salt", "count": 22}]},
        {"part": "hopper", "at": [3, 63, 0], "facing": "east", "holds": [{"item": "ingot", "count": 1}]},
        {"part": "repeater", "at": [0, 64, 0], "facing": "west", "delay": 6},
        {"part": "comparator", "at": [3, 64, 0], "facing": "west", "mode": "subtract", "painted": "green"},
        {"part": "button", "at": [0, 63, 1], "facing": "south", "wooden": True},
    ]
    plan = {"format": "platelayer-plan", "version": 1, "pieces": pieces}
    Path("set.plan.json").write_text(json.dumps(plan))
    steps = json.loads(run("steps", "set.plan.json", "--json").out)["steps"]
    placed = [piece for step in steps for piece in step["place"]]
    assert sorted(placed, key=str) == sorted(pieces, key=str)
    inspect(pieces, steps)


RING = """\
Cells are x y z: x to the east, y up, z to the south. Lay each run from the first cell to the last.
A rail without a facing may be laid facing any way.
Level 63
    1  9 solid blocks from 0 63 0 to 2 63 2, 3 × 3
       see: A floor of 3 × 3 solid blocks at level 63.
Level 64
    2  3 rails from 0 64 0 to 2 64 0
       see: All lie east-west, 0 64 0 and 2 64 0 only for now.
    3  2 rails from 2 64 1 to 2 64 2
       see: Both lie north-south, 2 64 2 only for now. 2 64 0 has turned from east-west to south-west.
    4  2 rails from 1 64 2 to 0 64 2
       see: Both lie east-west, 0 64 2 only for now. 2 64 2 has turned from north-south to north-west.
    5  1 rail at 0 64 1
       see: 0 64 1 lies north-south. 0 64 0 has turned from east-west to south-east. \
0 64 2 has turned from east-west to north-east.
Level 63
    6  1 torch at 1 63 −1, facing north
       why here: Placed before 1 64 0, a signal could reach the track while it is laid.
       see: 1 torch at level 63.
"""


def test_a_small_plan_as_text_and_as_json(run: Runner) -> None:
    """A ring on a floor, and a torch on the side of the floor that would power one of its rails."""
    ring = [(0, 0), (1, 0), (2, 0), (2, 1), (2, 2), (1, 2), (0, 2), (0, 1)]
    rails = [{"part": "rail", "at": [x, 64, z], "facing": "east"} for x, z in ring]
    torch = {"part": "torch", "at": [1, 63, -1], "facing": "north"}
    floor = [{"part": "solid-block", "at": [x, 63, z]} for x in range(3) for z in range(3)]
    plan = {"format": "platelayer-plan", "version": 1, "pieces": [torch, *rails, *floor]}
    Path("ring.plan.json").write_text(json.dumps(plan))
    assert run("steps", "ring.plan.json").out == RING
    *_, fifth, last = json.loads(run("steps", "ring.plan.json", "--json").out)["steps"]
    assert fifth["shapes"] == [
        {"at": [0, 64, 1], "shape": "north-south"},
        {"at": [0, 64, 0], "shape": "south-east"},
        {"at": [0, 64, 2], "shape": "north-east"},
    ]
    assert last == {
        "step": 6,
        "level": 63,
        "title": "1 torch at 1 63 −1, facing north",
        "place": [torch],
        "why": "Placed before 1 64 0, a signal could reach the track while it is laid.",
        "see": "1 torch at level 63.",
        "shapes": [],
    }


@pytest.mark.parametrize("form", [[], ["--json"]])
def test_two_processes_print_the_same(form: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing hangs on the order in which a process happens to keep sets of words."""
    printed = []
    for seed in ("0", "1"):
        monkeypatch.setenv("PYTHONHASHSEED", seed)
        started = process("steps", SALTERN, *form)
        printed.append(started.communicate()[0])
        assert started.returncode == 0
    assert printed[0] == printed[1] != b""


def test_a_word_in_a_container_cannot_command_the_terminal(run: Runner) -> None:
    piece = {"part": "barrel", "at": [0, 63, 0], "holds": [{"item": "\x1b[31msalt", "count": 1}]}
    plan = {"format": "platelayer-plan", "version": 1, "pieces": [piece]}
    Path("word.plan.json").write_text(json.dumps(plan))
    assert "\x1b" not in run("steps", "word.plan.json").out


def test_what_cannot_be_read_and_wrong_use(run: Runner) -> None:
    for form in ([], ["--json"]):
        done = run("steps", "bad.plan.json", *form)
        assert (done.status, done.out) == (4, "")
    assert run("steps").status == 2
    assert run("steps", "good.plan.json", "error.plan.json").status == 2
