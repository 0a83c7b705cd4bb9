"""Exact exit status, standard output and standard error of every subcommand in every kind of end."""

from __future__ import annotations

import json
import os
import signal
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from app.cli import SUBCOMMANDS
from tests.app.cli.running import OBSERVED, ROOT, SALTERN, Done, Runner, line, process

BAD = (
    "platelayer: bad.plan.json: line 2, column 14: expected JSON (Expecting ',' delimiter)\n",
    "platelayer: none.plan.json: the file itself: expected a file that can be read "
    "(No such file or directory)\n",
)
OUT = ["-o", "out.plan.json"]
COMMANDS: dict[str, list[str]] = {
    "check": [],
    "trace": ["--from", "Quay"],
    "sheet": ["-o", "out.pdf"],
    "materials": [],
    "turn": ["--quarter", "1", *OUT],
    "order": ["--seconds", "0", *OUT],
    "steps": [],
    "tests": [],
    "diagnose": ["--observed", str(OBSERVED)],
    "run": ["--script", "script.json"],
    "wire": ["--depth", "0", *OUT],
    "compare": ["good.plan.json"],
    "network": ["--seconds", "0"],
}
"""Each with what it needs beside the file; there is no room for any wiring, so that it is told soon."""
QUIET = {"sheet", "turn"}
"""They print nothing, and have no other form."""
FORMS = [*COMMANDS, *(f"{name} --json" for name in COMMANDS if name not in QUIET), "materials --csv"]
PRINTING = [form for form in FORMS if form not in QUIET]
SAID = {"turn": "wrote", "order": "wrote", "order --json": "wrote", "wire": "not", "wire --json": "not"}
WORDS = {"wrote": "platelayer: wrote out.plan.json\n", "not": "platelayer: out.plan.json was not written\n"}


def call(form: str, *files: str | Path) -> list[str | Path]:
    return [*form.split(), *files, *COMMANDS[form.split()[0]]]


def good(form: str) -> str:
    return "good.network.json" if form.startswith("network") else "good.plan.json"


def status_of(form: str) -> int:
    """Where all is well; what cannot be wired is an error found."""
    return 3 if form.startswith("wire") else 0


def said_by(form: str) -> str:
    return WORDS.get(SAID.get(form, ""), "")


def test_every_subcommand_stands_in_the_table() -> None:
    assert set(COMMANDS) == set(SUBCOMMANDS)


@pytest.mark.parametrize("command", PRINTING)
def test_well_done(run: Runner, command: str) -> None:
    done = run(*call(command, good(command)))
    assert (done.status, done.err) == (status_of(command), said_by(command))
    assert done.out.endswith("\n")
    if command.endswith("--json"):
        assert isinstance(json.loads(done.out), dict)
        assert done.out.count("\n") == 1


def test_turn_well_done(run: Runner) -> None:
    assert run(*call("turn", "good.plan.json")) == (0, "", "platelayer: wrote out.plan.json\n")


def test_sheet_well_done(run: Runner) -> None:
    """In a process of its own, as Qt cannot be told twice that it has no screen; none is needed."""
    with process(*call("sheet", "small.plan.json"), cwd=run.folder) as child:
        out, err = child.communicate()
    assert (child.returncode, out, err) == (0, b"", b"platelayer: wrote out.pdf\n")
    assert Path("out.pdf").read_bytes().startswith(b"%PDF-")


@pytest.mark.parametrize("ending", ["svg", "png"])
def test_sheet_with_a_file_a_page(run: Runner, ending: str) -> None:
    arguments = ["sheet", "small.plan.json", "-o", f"out.{ending}", "--paper", "A3", "--colour"]
    with process(*arguments, cwd=run.folder) as child:
        out, err = child.communicate()
    names = sorted(path.name for path in run.folder.glob("out*"))
    assert names[0] == f"out-01.{ending}"
    assert names == [f"out-{number:02}.{ending}" for number in range(1, len(names) + 1)]
    written = "".join(f"platelayer: wrote {name}\n" for name in names)
    assert (child.returncode, out, err.decode()) == (0, b"", written)


@pytest.mark.parametrize("command", ["check", "check --json"])
def test_errors_found(run: Runner, command: str) -> None:
    done = run(*call(command, "error.plan.json"))
    assert (done.status, done.err) == (3, "")
    assert "unsupported" in done.out


@pytest.mark.parametrize("command", ["network", "network --json"])
def test_errors_found_in_a_network(run: Runner, command: str) -> None:
    done = run(*call(command, "error.network.json"))
    assert (done.status, done.err) == (3, "")
    assert ("trip-without-way" if "--json" in command else "Quay") in done.out


@pytest.mark.parametrize("command", [form for form in FORMS if not form.startswith("network")])
def test_a_plan_with_an_error_is_none_for_whoever_does_not_look_for_errors(run: Runner, command: str) -> None:
    """A bare rail without arms: what needs an arm is wrong use, the rest has nothing to complain of."""
    if command == "sheet":
        return  # drawn in a process of its own, and tested there
    done = run(*call(command, "error.plan.json"))
    needs = {"trace": 2, "check": 3, "run": 2, "diagnose": 4}
    assert done.status == needs.get(command.split()[0], 0)
    assert "Traceback" not in done.err


@pytest.mark.parametrize("command", FORMS)
@pytest.mark.parametrize(("file", "message"), [("bad.plan.json", BAD[0]), ("none.plan.json", BAD[1])])
def test_bad_input(run: Runner, command: str, file: str, message: str) -> None:
    done = run(*call(command, file))
    assert (done.status, done.err) == (4, message)
    assert done.out == ('{"files":[]}\n' if command == "check --json" else "")
    assert not list(run.folder.glob("out*"))


@pytest.mark.parametrize("command", FORMS)
def test_a_file_of_another_kind_is_called_by_its_name(run: Runner, command: str) -> None:
    is_network = command.startswith("network")
    form, kind, reads = ("network", "plan", "check") if is_network else ("plan", "network", "network")
    (run.folder / "other.json").write_bytes((run.folder / f"good.{kind}.json").read_bytes())
    done = run(*call(command, "other.json"))
    assert (done.status, done.err) == (
        4,
        f'platelayer: other.json: format: expected "platelayer-{form}"; this is a {kind} file: '
        f'"platelayer {reads}" reads it, and the editor opens it under a name that ends in .{kind}.json\n',
    )
    assert not list(run.folder.glob("out*"))


class Careless:
    """The control: a command line that ends a little otherwise than it should."""

    def __init__(self, run: Runner, careless: Callable[[Done], Done]) -> None:
        self.folder = run.folder
        self._run, self._careless = run, careless

    def __call__(self, *arguments: str | Path) -> Done:
        return self._careless(self._run(*arguments))


@pytest.mark.parametrize(
    "careless",
    [
        lambda done: done._replace(status=1),
        lambda done: done._replace(status=0, err=""),
        lambda done: done._replace(err="Traceback (most recent call last):\n" + done.err),
        lambda done: done._replace(out=done.err, err=""),
    ],
    ids=["another status", "says nothing", "a traceback", "errors among the data"],
)
@pytest.mark.parametrize("command", FORMS)
def test_an_end_that_is_otherwise_is_seen(
    run: Runner, command: str, careless: Callable[[Done], Done]
) -> None:
    with pytest.raises(AssertionError):
        test_bad_input(Careless(run, careless), command, "bad.plan.json", BAD[0])
    with pytest.raises(AssertionError):
        test_wrong_use(Careless(run, careless), command.split()[0], [])


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize("more", [["--no-such-option"], []], ids=["an unknown option", "no file"])
def test_wrong_use(run: Runner, command: str, more: list[str]) -> None:
    needs = [] if command == "compare" else COMMANDS[command]
    done = run(command, *([good(command)] if more else []), *needs, *more)
    assert (done.status, done.out) == (2, "")
    assert done.err.startswith(f"Usage: platelayer {command.split()[0]} ")
    assert "\n\nError: " in done.err


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ("no-such-command", "'no-such-command' is neither a subcommand nor a file."),
        ("none.plan.json", "'none.plan.json' is neither a subcommand nor a file."),
        ("good.plan.json error.plan.json", "The editor opens one file; 'error.plan.json' is one too many."),
        ("materials good.plan.json error.plan.json", "unexpected extra argument"),
        ("materials good.plan.json --csv --json", "exclude each other"),
        ("trace good.plan.json", "Missing option '--from'"),
        ("trace good.plan.json --from Orchard", "there is no arm 'Orchard'"),
        ("trace good.plan.json --from Quay --called Orchard", "there is no arm 'Orchard'"),
        ("trace good.plan.json --from Quay --called Quay,", "there is no arm ''"),
        ("trace good.plan.json --from Quay --called Quay --throw=0,0,0", "exclude each other"),
        ("trace good.plan.json --from Quay --throw=0,0,0", "there is no switch at 0 0 0"),
        ("trace good.plan.json --from Quay --throw=0,0", "'0,0' is no cell"),
        ("trace good.plan.json --from Quay --throw=a,b,c", "'a,b,c' is no cell"),
        ("diagnose good.plan.json", "Missing option '--observed'"),
        ("turn good.plan.json -o out.plan.json", "Missing option '--quarter'"),
        ("turn good.plan.json --quarter one -o out.plan.json", "'one' is not a valid integer"),
        ("turn good.plan.json --quarter 1", "Missing option '-o'"),
        (f"order good.plan.json -o out.plan.json --seconds {'9' * 400}", "is not in the range"),
        ("compare good.plan.json", "Missing argument 'B'"),
        ("compare good.plan.json error.plan.json good.plan.json", "unexpected extra argument"),
        ("compare good.plan.json a.network.json", "'a.network.json' is a network, and only plans are"),
        ("compare a.network.json good.plan.json", "platelayer network NEW --since OLD"),
        ("sheet good.plan.json -o out.docx", "must end in .pdf, .svg, .png"),
        ("sheet good.plan.json -o out.pdf --paper A5", "'A5' is not one of 'A4', 'A3'"),
    ],
)
def test_other_wrong_use(run: Runner, arguments: str, message: str) -> None:
    done = run(*arguments.split())
    assert (done.status, done.out) == (2, "")
    assert message in done.err
    assert not list(run.folder.glob("out*"))


@pytest.mark.parametrize(
    ("output", "reason"),
    [
        ("none/out.plan.json", "No such file or directory"),
        ("folder", "there is a folder of that name"),
        ("/dev/null", "it is no ordinary file"),
    ],
)
def test_turn_unwritable(run: Runner, output: str, reason: str) -> None:
    Path("folder").mkdir()
    done = run("turn", "good.plan.json", "--quarter", "1", "-o", output)
    assert done == (4, "", f"platelayer: {output}: could not be written: {reason}\n")


@pytest.mark.parametrize(
    ("output", "file", "reason"),
    [
        ("none/out.pdf", "none/out.pdf", "No such file or directory"),
        ("none/out.svg", "none/out-01.svg", "No such file or directory"),
        ("folder.pdf", "folder.pdf", "there is a folder of that name"),
    ],
)
def test_sheet_unwritable(run: Runner, output: str, file: str, reason: str) -> None:
    Path("folder.pdf").mkdir()
    with process("sheet", "small.plan.json", "-o", output, cwd=run.folder) as child:
        out, err = child.communicate()
    assert (child.returncode, out) == (4, b"")
    assert err.decode() == f"platelayer: {file}: could not be written: {reason}\n"


@pytest.mark.parametrize("command", [name for name in COMMANDS if name not in QUIET])
def test_a_full_disk_behind_standard_output(run: Runner, command: str) -> None:
    arguments = call(command, good(command))
    with open("/dev/full", "wb") as full, process(*arguments, cwd=run.folder, stdout=full) as child:
        assert child.stderr is not None
        err = child.stderr.read().decode()
    assert child.returncode == 4
    assert err == "platelayer: standard output: could not be written: No space left on device\n"


@pytest.mark.parametrize("arguments", ["--help", "order --help"])
def test_help_on_a_full_disk(run: Runner, arguments: str) -> None:
    with open("/dev/full", "wb") as full, process(*arguments.split(), cwd=run.folder, stdout=full) as child:
        assert child.stderr is not None
        err = child.stderr.read().decode()
    assert child.returncode == 4
    assert err == "platelayer: standard output: could not be written: No space left on device\n"


SAYING = [("check none.plan.json", 4), ("turn good.plan.json --quarter 1 -o out.plan.json", 0), ("check", 2)]
"""What says something on standard error, and how it ends."""


@pytest.mark.parametrize(("arguments", "status"), SAYING)
def test_a_full_disk_behind_standard_error(run: Runner, arguments: str, status: int) -> None:
    """Nothing can be said any more; the exit status says what it would have said."""
    with open("/dev/full", "wb") as full, process(*arguments.split(), cwd=run.folder, stderr=full) as child:
        assert child.stdout is not None
        assert child.stdout.read() == b""
    assert child.returncode == status


@pytest.mark.parametrize(("arguments", "status"), SAYING)
def test_no_standard_error_at_all(run: Runner, arguments: str, status: int) -> None:
    """What is meant for people does not go among the data instead."""
    shell = ["sh", "-c", 'exec "$@" 2>&-', "sh", *line(*arguments.split())]
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    done = subprocess.run(shell, capture_output=True, cwd=run.folder, env=environment, check=False)
    assert (done.returncode, done.stdout) == (status, b"")


@pytest.mark.parametrize(
    ("command", "file", "status"),
    [
        *((name, good(name), status_of(name)) for name in COMMANDS if name not in QUIET),
        ("check --json", "good.plan.json", 0),
        ("check", "error.plan.json", 3),
        ("network", "error.network.json", 3),
    ],
)
def test_a_closed_pipe(run: Runner, command: str, file: str, status: int) -> None:
    """The reader has seen enough: no message, and the exit status says what it would have said."""
    reading, writing = os.pipe()
    os.close(reading)
    with process(*call(command, file), cwd=run.folder, stdout=writing) as child:
        os.close(writing)
        assert child.stderr is not None
        assert child.stderr.read().decode() == said_by(command)
    assert child.returncode == status


@pytest.mark.parametrize("command", ["check", "order", "network"])
def test_no_standard_output_at_all(run: Runner, command: str) -> None:
    shell = ["sh", "-c", 'exec "$@" >&-', "sh", *line(*call(command, good(command)))]
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    done = subprocess.run(shell, capture_output=True, cwd=run.folder, env=environment, check=False)
    assert (done.returncode, done.stderr.decode()) == (0, said_by(command))


@pytest.mark.parametrize("command", COMMANDS)
def test_ctrl_c(run: Runner, command: str) -> None:
    """While it waits for a pipe that nobody writes to."""
    os.mkfifo("slow.plan.json")
    child = process(*call(command, "slow.plan.json"), cwd=run.folder)
    with child, open("slow.plan.json", "wb"):  # opens as soon as the program does
        child.send_signal(signal.SIGINT)
        out, err = child.communicate(timeout=20)
    assert (child.returncode, out, err) == (130, b"", b"")


@pytest.mark.parametrize("command", ["", *COMMANDS])
def test_help(run: Runner, command: str) -> None:
    done = run(*command.split(), "--help")
    assert (done.status, done.err) == (0, "")
    assert done.out.startswith(f"Usage: platelayer {command}".rstrip())


def test_several_files_the_readable_ones_are_still_reported(run: Runner) -> None:
    done = run("check", "error.plan.json", "bad.plan.json", "good.plan.json", "none.plan.json")
    assert done.status == 4
    assert done.err == "".join(BAD)
    assert "error.plan.json\n" in done.out
    assert "good.plan.json: Saltern Junction" in done.out
    assert run("check", "good.plan.json", "error.plan.json").status == 3
    assert run("check", "error.plan.json", "good.plan.json").status == 3
    assert run("check", "bad.plan.json", "error.plan.json").status == 4


@pytest.mark.parametrize("arguments", [[], [str(SALTERN)]], ids=["nothing", "a file"])
def test_the_editor_without_a_screen(
    run: Runner, arguments: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    for screen in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(screen, raising=False)
    done = run(*arguments)
    assert (done.status, done.out) == (2, "")
    assert done.err.endswith(
        "Error: The editor needs a screen, and there is none; the subcommands need none.\n"
    )


def test_the_editor_opens_with_nothing_or_a_file_alone(run: Runner, monkeypatch: pytest.MonkeyPatch) -> None:
    opened: list[str | None] = []
    monkeypatch.setattr("app.cli.edit", lambda path: opened.append(path) or 0)
    assert run() == (0, "", "")
    assert run("good.plan.json") == (0, "", "")
    assert run("bad.plan.json") == (0, "", "")
    assert opened == [None, "good.plan.json", "bad.plan.json"]


def test_a_file_whose_name_begins_like_an_option_is_opened_behind_two_dashes(
    run: Runner, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened: list[str | None] = []
    monkeypatch.setattr("app.cli.edit", lambda path: opened.append(path) or 0)
    Path("-good.plan.json").write_bytes(Path("good.plan.json").read_bytes())
    assert run("--", "-good.plan.json") == (0, "", "")
    assert opened == ["-good.plan.json"]
    assert "'-none' is neither a subcommand nor a file" in run("--", "-none").err
    assert "No such option '-g'" in run("-good.plan.json").err
