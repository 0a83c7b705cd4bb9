"""What the shells offer on Tab, as click's own classes for them ask for it."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from click.shell_completion import BashComplete, CompletionItem, ShellComplete, ZshComplete

from app.cli import SUBCOMMANDS, program, run
from app.subcommands.completing import VARIABLE
from tests.app.cli.running import EXAMPLES, ROOT, SALTERN


def offered(*words: str, shell: type[ShellComplete] = ZshComplete) -> list[CompletionItem]:
    """For the last of the words."""
    asked = shell(program, {}, "platelayer", VARIABLE)
    return asked.get_completions(list(words[:-1]), words[-1])


def values(*words: str) -> list[str]:
    return [item.value for item in offered(*words) if item.type == "plain"]


@pytest.fixture(autouse=True)
def in_examples(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(EXAMPLES)


def test_subcommands_and_options() -> None:
    assert values("") == list(SUBCOMMANDS)
    assert values("st") == ["steps"]
    assert values("trace", "x", "--c") == ["--called"]
    assert values("sheet", "x", "--paper", "") == ["A4", "A3"]
    assert "--help" in values("--")


def test_plans_and_networks_by_their_endings(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    plans = sorted(file.name for file in EXAMPLES.glob("*.plan.json"))
    assert values("check", "") == plans
    assert values("check", plans[0], "salt") == [SALTERN.name], "any number of files"
    assert values("salt") == [SALTERN.name], "a plan alone opens the editor"
    assert values("steps", f"{EXAMPLES}/fen") == [f"{EXAMPLES}/fen-ring.plan.json"]
    assert values("network", "") == ["brinepan.network.json"]
    monkeypatch.chdir(tmp_path)
    for words in (["check", ""], ["run", "x", "--script", ""], ["turn", "x", "-o", "gone/"]):
        assert [item.type for item in offered(*words)] == ["file"], "the shell lists files and folders itself"


def test_names_that_no_shell_can_be_told_are_left_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    """One that is no UTF-8, and one that goes over two lines: a line is all that a name can be."""
    monkeypatch.chdir(tmp_path)
    for name in (b"\xff.plan.json", b"two\nlines.plan.json", b"fen.plan.json"):
        (tmp_path / os.fsdecode(name)).touch()
    monkeypatch.setenv(VARIABLE, "fish_complete")
    monkeypatch.setenv("COMP_WORDS", "platelayer check ")
    monkeypatch.setenv("COMP_CWORD", "")
    assert run() == 0
    assert capfd.readouterr() == ("plain,fen.plan.json\n", "")


def test_a_subcommand_that_there_is_not_is_no_wrong_use_while_it_is_typed() -> None:
    assert values("stpes", "") == list(SUBCOMMANDS)


def test_arms_of_the_plan_that_was_named() -> None:
    assert values("trace", SALTERN.name, "--from", "") == ["Quay", "Fen", "Mill"]
    assert values("trace", "--from", "Mi") == [], "no plan is named"
    assert values("trace", "gone.plan.json", "--from", "") == []
    assert "Quay,Mill" in values("trace", SALTERN.name, "--called", "Quay,")
    assert "Quay,Quay" not in values("trace", SALTERN.name, "--called", "Quay,")


def test_bash_takes_names_with_spaces_as_one_word(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(VARIABLE, "bash_complete")
    monkeypatch.chdir(tmp_path)
    (tmp_path / "Tithe Barn.plan.json").touch()
    assert [item.value for item in offered("check", "Ti", shell=BashComplete)] == [r"Tithe\ Barn.plan.json"]


def test_what_waits_for_tab_loads_no_qt() -> None:
    asked = (
        "import os, sys; from app.cli import run\n"
        "os.environ |= {'_PLATELAYER_COMPLETE': 'fish_complete',"
        " 'COMP_WORDS': sys.argv[1], 'COMP_CWORD': ''}\n"
        "run(); heavy = {'PySide6', 'scipy', 'numpy', 'networkx', 'shapely'} & sys.modules.keys()\n"
        "assert not heavy, heavy\n"
    )
    line = f"platelayer trace {SALTERN} --from "
    done = subprocess.run(
        [sys.executable, "-c", asked, line], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert "Quay" in done.stdout


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_each_shell_takes_the_script_that_it_is_given(shell: str) -> None:
    program_line = "import sys; from app.cli import run; sys.exit(run())"
    done = subprocess.run(
        [sys.executable, "-c", program_line],
        cwd=ROOT,
        env={VARIABLE: f"{shell}_source", "PATH": "/usr/bin:/bin"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert "_platelayer_completion" in done.stdout
    if (found := shutil.which(shell)) is not None:
        read = subprocess.run([found, "-n"], input=done.stdout, capture_output=True, text=True, check=False)
        assert (read.returncode, read.stderr) == (0, "")


ASK_BASH = "COMP_WORDS=(platelayer che); COMP_CWORD=1; _platelayer_completion platelayer; echo $COMPREPLY"
ASK_ZSH = "echo ${_comps[platelayer]/_platelayer_completion/check}"
PROBES = {
    "bash": ("", ASK_BASH),
    "zsh": ("autoload -Uz compinit && compinit -u;", ASK_ZSH),
    "fish": ("", "complete -C 'platelayer che'"),
}
"""By shell, what is done before the line of the README, and what asks whether it took."""


@pytest.mark.parametrize("shell", PROBES)
def test_the_lines_of_the_readme_make_a_shell_complete(shell: str, tmp_path: Path) -> None:
    if shutil.which(shell) is None:
        pytest.skip(f"{shell} is not installed")
    lines = (ROOT / "README.md").read_text("utf-8").splitlines()
    (line,) = (each.partition("  #")[0] for each in lines if f"_PLATELAYER_COMPLETE={shell}_source" in each)
    program = tmp_path / "platelayer"
    program.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m app "$@"\n')
    program.chmod(0o755)
    before, probe = PROBES[shell]
    environment = {
        **os.environ,
        "HOME": str(tmp_path),
        "PATH": f"{tmp_path}{os.pathsep}{os.environ['PATH']}",
        "PYTHONPATH": str(ROOT),
    }
    done = subprocess.run(
        [shell, "-c", f"{before} {line.strip()}; {probe}"], env=environment, capture_output=True, check=False
    )
    assert done.stdout.decode().strip() == "check", done.stderr.decode()
