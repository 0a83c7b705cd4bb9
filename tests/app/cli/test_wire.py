"""``platelayer wire``: what it prints, what it writes, and every kind of end."""

from __future__ import annotations

import json
import os
import pty
import re
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from app.subcommands import progress
from app.wire_words import progress_words, proof_words
from model.files.plan_file import plan_bytes, read_plan
from model.parts import RAILS, Part
from model.plan import Plan
from model.progress import Progress
from model.wiring.proof.proof import prove
from model.wiring.result import Wiring
from tests.app.cli.running import ROOT, Runner, process
from tests.app.wirings import Wirer, lamp

WIRE = ("wire", "-o", "out.plan.json")
POOR = (*WIRE, "good.plan.json", "--depth", "0")
"""Over in a moment: there is no room for anything."""
WROTE = "platelayer: wrote out.plan.json\n"
NOT_WROTE = "platelayer: out.plan.json was not written\n"
NOT_WRITTEN = "platelayer: {}: could not be written: {}\n"


@pytest.fixture
def wirer(monkeypatch: pytest.MonkeyPatch) -> Wirer:
    """In place of the search; it ends at once."""
    wirer = Wirer()
    wirer.may_go_on.set()
    monkeypatch.setattr("model.wiring.wire.wire", wirer)
    return wirer


def test_in_words(run: Runner, wirer: Wirer) -> None:
    done = run(*WIRE, "good.plan.json")
    assert (done.status, done.err) == (0, WROTE)
    assert done.out == (
        "wired: 2 lines, 40 dust, 1 repeater\n"
        "Lines\n"
        "  Quay  throws 1 64 −1, 3 64 1  31 dust  1 repeater\n"
        "  Fen   throws 3 64 1           9 dust   0 repeaters\n"
        "Headway, from the last cart of a called train to the next train\n"
        "  Quay  155 ticks, 7.75 s\n"
        "  Fen   120 ticks, 6 s\n"
        "room: 180 cells from above, 4 levels below the track\n"
        "proof: all 106 runs passed\n"
        "Empty the barrel of each reader before it is full, at 1,728 waybills: then its line stays on.\n"
        "The rules are common practice, from memory. A test cart before the first passenger.\n"
    )


def test_as_json(run: Runner, wirer: Wirer) -> None:
    done = run(*WIRE, "good.plan.json", "--json")
    assert (done.status, done.err) == (0, WROTE)
    assert done.out == (
        '{"wired":true,"lines":[{"arm":"Quay","switches":[[1,64,-1],[3,64,1]],"dust":31,"repeaters":1},'
        '{"arm":"Fen","switches":[[3,64,1]],"dust":9,"repeaters":0}],"footprint_cells":180,"depth":4,'
        '"verified":{"runs":106,"passed":106},"findings":[]}\n'
    )


def test_what_is_written_is_the_plan_with_the_change(run: Runner, wirer: Wirer) -> None:
    assert run(*WIRE, "good.plan.json").status == 0
    plan = read_plan("good.plan.json")
    assert Path("out.plan.json").read_bytes() == plan_bytes(lamp(plan).applied(plan))


def test_not_wired_in_words(run: Runner, wirer: Wirer) -> None:
    wirer.is_wired = False
    done = run(*WIRE, "good.plan.json")
    assert (done.status, done.err) == (3, NOT_WROTE)
    assert done.out == (
        "not wired\n"
        "Findings\n"
        "  error  not-wired           No straight of it is long enough for a reader.\n"
        "  error  not-wired  1 64 −1  Nothing fits under the switch.\n"
        "  error  not-wired  3 64 1   The line finds no way to it.\n"
    )
    assert not Path("out.plan.json").exists()


def test_not_wired_as_json(run: Runner, wirer: Wirer) -> None:
    """Findings in the form of those of a check."""
    wirer.is_wired = False
    done = run(*WIRE, "good.plan.json", "--json")
    assert (done.status, done.err) == (3, NOT_WROTE)
    told = json.loads(done.out)
    findings = told.pop("findings")
    assert told == {
        "wired": False,
        "lines": [],
        "footprint_cells": 0,
        "depth": 0,
        "verified": {"runs": 0, "passed": 0},
    }
    checked = json.loads(run("check", "error.plan.json", "--json").out)["files"][0]["findings"][0]
    assert [list(finding) for finding in findings] == [list(checked)] * 3
    assert findings[0] == {
        "rule": "not-wired",
        "severity": "error",
        "at": None,
        "cells": [],
        "arms": ["Quay"],
        "message": "No straight of it is long enough for a reader.",
        "waived": False,
    }
    assert [(each["at"], each["cells"], each["arms"]) for each in findings[1:]] == [
        ([1, 64, -1], [[1, 64, -1]], []),
        ([3, 64, 1], [[3, 64, 1]], ["Fen"]),
    ]


def test_what_was_there_stays_where_it_is_not_wired(run: Runner, wirer: Wirer) -> None:
    wirer.is_wired = False
    Path("out.plan.json").write_text("mine")
    assert run(*WIRE, "good.plan.json").status == 3
    assert Path("out.plan.json").read_text() == "mine"


@pytest.mark.parametrize(
    ("options", "asked"),
    [
        ((), (0, 1, 6)),
        (("--seed", "7", "--grow", "0", "--depth", "4"), (7, 0, 4)),
        (("--seed", "-1", "--depth", "0"), (-1, 1, 0)),
    ],
)
def test_seed_room_and_depth(
    run: Runner, wirer: Wirer, options: tuple[str, ...], asked: tuple[int, int, int]
) -> None:
    assert run(*WIRE, "good.plan.json", *options).status == 0
    assert wirer.asked == asked


def test_an_example_is_wired_for_good_and_the_same_again(run: Runner) -> None:
    """What is told is counted again in the plan that was written, and that plan passes its proof again."""
    done = run(*WIRE, "good.plan.json", "--json")
    assert (done.status, done.err) == (0, WROTE)
    told = json.loads(done.out)
    before, after = read_plan("good.plan.json"), read_plan("out.plan.json")
    assert after.details == before.details
    *_, proof = prove(after)
    assert told["verified"] == {"runs": 106, "passed": 106}
    assert (proof.runs, proof.passed) == (106, 106)
    assert [line["arm"] for line in told["lines"]] == ["Quay", "Fen", "Mill"]
    assert told["footprint_cells"] == len({(piece.at.x, piece.at.z) for piece in after.pieces})
    lowest = min(piece.at.y for piece in before.pieces if piece.part in RAILS)
    assert told["depth"] == lowest - min(piece.at.y for piece in after.pieces)
    assert sum(line["dust"] for line in told["lines"]) <= count(after, Part.DUST)
    assert count(after, Part.RAIL) + count(after, Part.DETECTOR_RAIL) == count(before, Part.RAIL)
    assert run("wire", "good.plan.json", "-o", "again.plan.json").status == 0
    assert Path("again.plan.json").read_bytes() == Path("out.plan.json").read_bytes()


def count(plan: Plan, part: Part) -> int:
    return sum(piece.part is part for piece in plan.pieces)


def test_where_there_is_no_room_it_says_why(run: Runner) -> None:
    done = run(*WIRE, "good.plan.json", "--depth", "0", "--json")
    assert (done.status, done.err) == (3, NOT_WROTE)
    told = json.loads(done.out)
    assert not told["wired"]
    assert all(finding["message"].endswith(".") for finding in told["findings"])
    assert told["findings"]
    assert not Path("out.plan.json").exists()


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ("wire good.plan.json", "Missing option '-o'"),
        ("wire -o out.plan.json", "Missing argument 'FILE'"),
        ("wire good.plan.json error.plan.json -o out.plan.json", "unexpected extra argument"),
        ("wire good.plan.json -o out.plan.json --seed salt", "'salt' is not a valid integer"),
        ("wire good.plan.json -o out.plan.json --grow -1", "-1 is not in the range 0<=x<=64"),
        ("wire good.plan.json -o out.plan.json --depth 65", "65 is not in the range 0<=x<=64"),
        ("wire good.plan.json -o out.plan.json --no-such-option", "No such option"),
    ],
)
def test_wrong_use(run: Runner, wirer: Wirer, arguments: str, message: str) -> None:
    done = run(*arguments.split())
    assert (done.status, done.out) == (2, "")
    assert message in done.err
    assert not Path("out.plan.json").exists()


@pytest.mark.parametrize("file", ["bad.plan.json", "none.plan.json"])
def test_bad_input(run: Runner, wirer: Wirer, file: str) -> None:
    done = run(*WIRE, file)
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
def test_unwritable_and_nothing_is_searched(run: Runner, wirer: Wirer, output: str, reason: str) -> None:
    Path("folder").mkdir()
    done = run("wire", "good.plan.json", "-o", output)
    assert done == (4, "", NOT_WRITTEN.format(output, reason))
    assert wirer.asked is None


def test_help(run: Runner) -> None:
    done = run("wire", "--help")
    assert (done.status, done.err) == (0, "")
    assert done.out.startswith("Usage: platelayer wire [OPTIONS] FILE\n")


def test_the_help_waits_for_no_search_and_the_search_for_no_qt(run: Runner) -> None:
    code = (
        "import sys; from app.cli import run; run(['wire', '--help'])\n"
        "print([name for name in sys.modules if name.startswith('model.wiring')], file=sys.stderr)\n"
        "run(sys.argv[1:]); print('PySide6' in sys.modules, file=sys.stderr)"
    )
    command = [sys.executable, "-c", code, *POOR]
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    done = subprocess.run(
        command, cwd=run.folder, env=environment, capture_output=True, text=True, check=True
    )
    assert done.stderr == f"[]\n{NOT_WROTE}False\n"


def test_a_full_disk_behind_standard_output(run: Runner) -> None:
    with (
        open("/dev/full", "wb") as full,
        process(*POOR, cwd=run.folder, stdout=full) as child,
    ):
        assert child.stderr is not None
        err = child.stderr.read().decode()
    assert (child.returncode, err) == (4, NOT_WRITTEN.format("standard output", "No space left on device"))


def test_a_closed_pipe(run: Runner) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    with process(*POOR, cwd=run.folder, stdout=writing) as child:
        os.close(writing)
        assert child.stderr is not None
        assert child.stderr.read().decode() == NOT_WROTE
    assert child.returncode == 3


def test_ctrl_c_in_the_search_leaves_nothing_written(run: Runner) -> None:
    """On a terminal it tells how far it is, over and over in one line, and wipes that at the end."""
    ours, theirs = pty.openpty()
    with process(*WIRE, "good.plan.json", cwd=run.folder, stderr=theirs) as child:
        os.close(theirs)
        told = os.read(ours, 4096)
        child.send_signal(signal.SIGINT)
        assert child.stdout is not None
        out = child.stdout.read()
        child.wait(20)
    told += _rest(ours)
    os.close(ours)
    assert re.match(rb"\r\d+ s: [a-z ]+", told)
    assert b"\n" not in told
    assert told.endswith(b" \r")
    assert (child.returncode, out) == (130, b"")
    assert sorted(path.name for path in run.folder.glob("out*")) == []


def test_without_a_terminal_it_tells_nothing_on_the_way(
    run: Runner, wirer: Wirer, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(progress, "TOLD_EVERY", 0)
    assert run(*WIRE, "good.plan.json").err == WROTE


@pytest.mark.parametrize(
    ("step", "words"),
    [
        (Progress("control table", 0, 1), "control table: 0 of 1"),
        (Progress("attempts", 2, 40), "attempt: 3 of 40"),
        (Progress("lines", 4, 30), "lines: round 4 of 30"),
        (Progress("shortening", 4, 6), "lines: made shorter, 4 of 6"),
        (Progress("proof", 1200, 3400), "proof: run 1,200 of 3,400"),
        (Progress("tea", 1, 2), "tea: 1 of 2"),
    ],
)
def test_how_far_it_is_in_words(step: Progress, words: str) -> None:
    assert progress_words(step) == words


@pytest.mark.parametrize(
    ("runs", "passed", "words"),
    [
        (0, 0, "not run"),
        (1, 1, "its one run passed"),
        (1200, 1200, "all 1,200 runs passed"),
        (12, 11, "11 of 12 runs passed"),
        (1, 0, "0 of 1 run passed"),
    ],
)
def test_a_proof_in_words(runs: int, passed: int, words: str) -> None:
    assert proof_words(Wiring(True, None, (), 0, 0, runs, passed, ())) == words


def _rest(terminal: int) -> bytes:
    """What is left to read; the other end is closed."""
    read = b""
    try:
        while more := os.read(terminal, 4096):
            read += more
    except OSError:
        pass
    return read
