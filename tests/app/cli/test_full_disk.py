"""Every subcommand that writes a file, on a disk that is full at eight sizes, and with every call failing."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Final

import pytest

from app import cli
from app.subcommands.statuses import DONE, NOT_READ_OR_WRITTEN
from model.files.plan_file import plan_bytes
from tests.app.cli.running import EXAMPLES, OBSERVED, SALTERN
from tests.app.windows import straight_plan
from tests.app.wirings import Wirer
from tests.harness.calls import FailingSystem, every_call_fails_once
from tests.harness.disk import OLD, SIZES, contents, room_for

SAID: Final = "platelayer: "
WRITING: Final[dict[str, list[str]]] = {
    "turn": ["turn", "in.plan.json", "--quarter", "1", "-o", "out/new.plan.json"],
    "order": ["order", "small.plan.json", "--seconds", "0", "-o", "out/new.plan.json"],
    "wire": ["wire", "in.plan.json", "-o", "out/new.plan.json"],
    "sheet as PDF": ["sheet", "small.plan.json", "-o", "out/new.pdf"],
    "network with a graph": ["network", "in.network.json", "--seconds", "0", "--graphml", "out/new.graphml"],
    "network with cards": ["network", "in.network.json", "--seconds", "0", "--cards", "out/new.pdf"],
}
READING: Final[dict[str, list[str]]] = {
    "check": ["check", "in.plan.json", "--json"],
    "trace": ["trace", "in.plan.json", "--from", "Quay"],
    "materials": ["materials", "in.plan.json", "--csv"],
    "steps": ["steps", "in.plan.json"],
    "diagnose": ["diagnose", "in.plan.json", "--observed", "seen.json"],
    "run": ["run", "in.plan.json", "--script", "script.json"],
    "network": ["network", "in.network.json", "--seconds", "0"],
}


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qapp: object) -> Path:
    """What the commands read; what they write goes into a folder below. A stand-in wires at once."""
    monkeypatch.chdir(tmp_path)
    shutil.copy(SALTERN, "in.plan.json")
    shutil.copy(EXAMPLES / "brinepan.network.json", "in.network.json")
    Path("small.plan.json").write_bytes(plan_bytes(straight_plan()))
    for plan in EXAMPLES.glob("*.plan.json"):
        shutil.copy(plan, plan.name)
    shutil.copy(OBSERVED, "seen.json")
    Path("script.json").write_text('{"events": [{"tick": 0, "do": "send", "arm": "Quay"}]}')
    Path("out").mkdir()
    wirer = Wirer()
    wirer.may_go_on.set()
    monkeypatch.setattr("model.wiring.wire.wire", wirer)
    return tmp_path / "out"


@pytest.mark.parametrize("name", WRITING)
def test_a_full_disk_is_told_and_the_old_file_stays(
    name: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """``capsys`` keeps in memory what is printed; a file of its own would be full, too."""
    assert cli.run(WRITING[name]) == DONE
    (new,) = contents(folder)
    size = len(new.read_bytes())
    new.write_bytes(OLD)
    capsys.readouterr()
    for number in range(SIZES):
        with room_for(number * size // SIZES):
            status = cli.run(WRITING[name])
        told = capsys.readouterr().err.splitlines()[-1]
        assert status == NOT_READ_OR_WRITTEN
        assert told == f"{SAID}out/{new.name}: could not be written: File too large"
        assert contents(folder) == {new: OLD}, "nothing half-written is left either"


@pytest.mark.parametrize("name", [name for name in WRITING if not name.startswith(("sheet", "network"))])
def test_a_command_that_writes_fails_well_whatever_call_fails(
    name: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Those that draw or plan are left out: they write in the same way, and take long."""
    assert cli.run(WRITING[name]) == DONE
    (new,) = contents(folder)
    whole = new.read_bytes()
    new.write_bytes(OLD)
    statuses: list[int] = []

    def then(system: FailingSystem) -> None:
        left = {path: data for path, data in contents(folder).items() if path.suffix != ".tmp"}
        if statuses[-1] == DONE:
            assert left == {new: whole}
        else:
            assert statuses[-1] == NOT_READ_OR_WRITTEN
            assert left == {new: OLD}
            assert capsys.readouterr().err.splitlines()[-1].startswith(SAID)
        new.write_bytes(OLD)

    asked = every_call_fails_once(lambda: statuses.append(cli.run(WRITING[name])), then)
    assert asked > 8, "reading and writing take more calls than that"
    assert NOT_READ_OR_WRITTEN in statuses
    assert statuses[-1] == DONE


@pytest.mark.parametrize("name", READING)
def test_a_command_that_reads_fails_well_whatever_call_fails(
    name: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    whole, printed = cli.run(READING[name]), capsys.readouterr()
    statuses: list[int] = []

    def then(system: FailingSystem) -> None:
        said = capsys.readouterr()
        if statuses[-1] == whole:
            assert said == printed
        else:
            assert statuses[-1] == NOT_READ_OR_WRITTEN
            assert said.err.startswith(SAID)
            assert "expected" in said.err

    asked = every_call_fails_once(lambda: statuses.append(cli.run(READING[name])), then)
    assert asked >= 2
    assert NOT_READ_OR_WRITTEN in statuses
