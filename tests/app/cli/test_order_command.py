"""``platelayer order``: what it prints, what it writes, and every kind of end."""

from __future__ import annotations

import json
import os
import pty
import re
import shutil
import signal
from pathlib import Path
from typing import Any

import pytest

from model.files.plan_file import read_plan
from model.grid import ALL_TURNS
from model.pieces import Piece
from model.plan import Plan
from model.routing.junction import Junction
from tests.app.cli.running import EXAMPLES, Runner, process

ORDER = ("order", "-o", "out.plan.json")
WROTE = "platelayer: wrote out.plan.json\n"
NOT_WRITTEN = "platelayer: {}: could not be written: {}\n"
LONG = EXAMPLES / "fen-ring.plan.json"
"""The search in this one goes on for as long as it may."""


@pytest.fixture
def folder(run: Runner) -> Path:
    """With a plan that can be served better than it is drawn, one that cannot be served, and a long one."""
    shutil.copy(EXAMPLES / "beacon-wye.plan.json", "wye.plan.json")
    shutil.copy(LONG, "long.plan.json")
    Path("apart.plan.json").write_text(json.dumps(apart()))
    return run.folder


def apart() -> dict[str, Any]:
    """Two rails with a gap between them, and a route that would have to cross it."""
    ends = {"Quay": [0, 64, 0], "Fen": [5, 64, 0]}
    return {
        "format": "platelayer-plan",
        "version": 1,
        "pieces": [{"part": "rail", "at": at, "facing": "east"} for at in ends.values()],
        "arms": [
            {"name": "Quay", "in": {"at": ends["Quay"], "heading": "east"}},
            {"name": "Fen", "out": {"at": ends["Fen"], "heading": "east"}},
        ],
        "routes": [{"from": "Quay", "idle": "Fen"}],
    }


def counts(plan: Plan) -> dict[str, int | bool]:
    """What a plan needs as it is, worked out afresh."""
    control = Junction(plan).control
    choice = control.choice
    thrown = sum(len(cells) for cells in choice.thrown.values())
    return {
        "served": control.serves,
        "inverters": len(choice.idle),
        "thrown": thrown,
        "wired": len(choice.wired),
    }


def unplaced(pieces: tuple[Piece, ...]) -> set[tuple[object, ...]]:
    """The pieces without their order, and rails without their facing."""
    return {(piece.part, piece.at, None if piece.part.endswith("rail") else piece.facing) for piece in pieces}


def test_in_words(run: Runner, folder: Path) -> None:
    done = run(*ORDER, "wye.plan.json")
    assert done == (0, "served: 0 inverters, 3 thrown, 1 wired; no order is better\n", WROTE)


def test_as_json_and_the_plan_written_needs_just_that(run: Runner, folder: Path) -> None:
    done = run(*ORDER, "wye.plan.json", "--json")
    assert (done.status, done.err) == (0, WROTE)
    assert done.out == '{"served":true,"inverters":0,"thrown":3,"wired":1,"proved":true}\n'
    before, after = read_plan("wye.plan.json"), read_plan("out.plan.json")
    assert {**counts(after), "proved": True} == json.loads(done.out)
    assert after.details == before.details
    assert unplaced(tuple(after.pieces)) == unplaced(tuple(before.pieces))


def test_in_every_orientation(run: Runner, folder: Path) -> None:
    """The wye needs an inverter in four of the eight; counted again with the plan turned that way."""
    done = run(*ORDER, "wye.plan.json", "--orientations", "--json")
    assert (done.status, done.err) == (0, WROTE)
    told = json.loads(done.out)
    own = {key: value for key, value in told.items() if key != "orientations"}
    turns = [(each["quarter"], each["mirror"]) for each in told["orientations"]]
    assert turns == [(turn.quarter, turn.mirror) for turn in ALL_TURNS]
    assert told["orientations"][0] == {"quarter": 0, "mirror": False, **own}
    assert {**counts(read_plan("out.plan.json")), "proved": True} == own
    turned = ("turn", "wye.plan.json", "--quarter", "3", "--mirror", "-o", "turned.plan.json")
    assert run(*turned).status == 0
    alone = json.loads(run(*ORDER, "turned.plan.json", "--json").out)
    assert told["orientations"][7] == {"quarter": 3, "mirror": True, **alone}


def test_the_cheapest_orientation_in_words(run: Runner, folder: Path) -> None:
    lines = run(*ORDER, "wye.plan.json", "--orientations").out.splitlines()
    assert lines[:2] == ["served: 0 inverters, 3 thrown, 1 wired; no order is better", "Orientations"]
    assert len(lines) == 11
    assert lines[9].startswith("  8  mirrored, a quarter counter-clockwise  served: ")
    without = [line.split()[0] for line in lines[2:10] if "0 inverters" in line]
    assert lines[10] == f"cheapest: orientations {', '.join(without)}"


def test_not_served(run: Runner, folder: Path) -> None:
    done = run(*ORDER, "apart.plan.json")
    assert done == (3, "not served; no order serves all wanted routes\n", WROTE)
    assert read_plan("out.plan.json") == read_plan("apart.plan.json")
    done = run(*ORDER, "apart.plan.json", "--orientations")
    assert (done.status, done.out.splitlines()[-1]) == (3, "served in no orientation")


def test_a_plan_without_routes_is_written_as_it_is(run: Runner) -> None:
    done = run(*ORDER, "error.plan.json", "--orientations")
    assert (done.status, done.out.splitlines()[-1]) == (0, "all orientations cost the same")
    assert read_plan("out.plan.json") == read_plan("error.plan.json")


def test_no_time_at_all(run: Runner, folder: Path) -> None:
    done = run(*ORDER, "long.plan.json", "--seconds", "0", "--json")
    assert done.status == (0 if json.loads(done.out)["served"] else 3)
    assert json.loads(done.out)["proved"] is False


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ("order wye.plan.json", "Missing option '-o'"),
        ("order -o out.plan.json", "Missing argument 'FILE'"),
        ("order wye.plan.json apart.plan.json -o out.plan.json", "unexpected extra argument"),
        ("order wye.plan.json -o out.plan.json --seconds long", "'long' is not a valid integer"),
        ("order wye.plan.json -o out.plan.json --seconds -1", "-1 is not in the range 0<=x<=1000000"),
        ("order wye.plan.json -o out.plan.json --no-such-option", "No such option"),
    ],
)
def test_wrong_use(run: Runner, folder: Path, arguments: str, message: str) -> None:
    done = run(*arguments.split())
    assert (done.status, done.out) == (2, "")
    assert message in done.err
    assert not Path("out.plan.json").exists()


@pytest.mark.parametrize("file", ["bad.plan.json", "none.plan.json"])
def test_bad_input(run: Runner, file: str) -> None:
    done = run(*ORDER, file)
    assert (done.status, done.out) == (4, "")
    assert done.err.startswith(f"platelayer: {file}: ")
    assert not Path("out.plan.json").exists()


@pytest.mark.parametrize(
    ("output", "reason"),
    [
        ("none/out.plan.json", "No such file or directory"),
        ("folder", "there is a folder of that name"),
        ("/dev/null", "it is no ordinary file"),
    ],
)
def test_unwritable(run: Runner, folder: Path, output: str, reason: str) -> None:
    Path("folder").mkdir()
    done = run("order", "wye.plan.json", "-o", output)
    assert done == (4, "", NOT_WRITTEN.format(output, reason))


def test_nothing_is_searched_where_nothing_can_be_written(
    run: Runner, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("app.subcommands.order._search", None)
    assert run("order", "wye.plan.json", "-o", "none/out.plan.json")[0] == 4


def test_a_full_disk_behind_standard_output(folder: Path) -> None:
    with open("/dev/full", "wb") as full, process(*ORDER, "wye.plan.json", cwd=folder, stdout=full) as child:
        assert child.stderr is not None
        err = child.stderr.read().decode()
    assert (child.returncode, err) == (4, NOT_WRITTEN.format("standard output", "No space left on device"))


@pytest.mark.parametrize(("file", "status"), [("wye.plan.json", 0), ("apart.plan.json", 3)])
def test_a_closed_pipe(folder: Path, file: str, status: int) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    with process(*ORDER, file, cwd=folder, stdout=writing) as child:
        os.close(writing)
        assert child.stderr is not None
        assert child.stderr.read().decode() == WROTE
    assert child.returncode == status


def test_ctrl_c_in_the_search_leaves_nothing_written(folder: Path) -> None:
    """On a terminal it tells how far it is, over and over in one line, and wipes that at the end."""
    ours, theirs = pty.openpty()
    with process(*ORDER, "long.plan.json", "--orientations", cwd=folder, stderr=theirs) as child:
        os.close(theirs)
        told = os.read(ours, 4096)
        child.send_signal(signal.SIGINT)
        assert child.stdout is not None
        out = child.stdout.read()
        child.wait(20)
    told += _rest(ours)
    os.close(ours)
    assert re.match(rb"\r\d+ s: orientation \d, (not )?served", told)
    assert b"\n" not in told
    assert told.endswith(b" \r")
    assert (child.returncode, out) == (130, b"")
    assert sorted(path.name for path in folder.glob("out*")) == []


def test_without_a_terminal_it_tells_nothing_on_the_way(run: Runner, folder: Path) -> None:
    done = run(*ORDER, "long.plan.json", "--seconds", "1")
    assert done.err == WROTE


def _rest(terminal: int) -> bytes:
    """What is left to read; the other end is closed."""
    read = b""
    try:
        while more := os.read(terminal, 4096):
            read += more
    except OSError:
        pass
    return read
