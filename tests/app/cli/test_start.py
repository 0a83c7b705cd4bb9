"""What starting the command line costs: no Qt, nothing slow to import, first output soon."""

from __future__ import annotations

import os
import resource
import subprocess
import sys

import pytest

from tests.app.cli.running import OBSERVED, ROOT, SALTERN

SLOW_TO_IMPORT = ("PySide6", "shiboken6", "networkx", "shapely", "numpy", "hypothesis")
COMMANDS = {
    "check": ["check", str(SALTERN), "--json"],
    "trace": ["trace", str(SALTERN), "--from", "Quay"],
    "materials": ["materials", str(SALTERN)],
    "compare": ["compare", str(SALTERN), str(SALTERN)],
    "turn": ["turn", str(SALTERN), "--quarter", "1", "-o", "/nowhere/out.plan.json"],
    "diagnose": ["diagnose", str(SALTERN), "--observed", str(OBSERVED)],
    "help": ["--help"],
    "help of sheet": ["sheet", "--help"],
}


@pytest.mark.parametrize("command", COMMANDS)
def test_no_qt_and_nothing_slow_is_imported(command: str) -> None:
    script = (
        "import sys; from app.cli import run; run(sys.argv[1:])\n"
        f"print([name for name in {SLOW_TO_IMPORT} if name in sys.modules], file=sys.stderr)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, *COMMANDS[command]],
        capture_output=True,
        text=True,
        cwd=ROOT,
        check=True,
    )
    assert done.stderr.splitlines()[-1] == "[]"


@pytest.mark.parametrize("command", ["check", "trace", "materials", "help"])
def test_first_output_within_twelve_times_an_empty_program(command: str, tmp_path) -> None:
    """Measured: 6 to 11. Processor time, and the best of seven, so that a busy machine does not decide."""
    compiled = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    environment = {**compiled, "PYTHONPATH": str(ROOT), "PYTHONPYCACHEPREFIX": str(tmp_path)}
    empty = min(_seconds(["-c", "pass"], environment) for _ in range(7))
    whole = min(_seconds(["-m", "app", *COMMANDS[command]], environment) for _ in range(7))
    assert whole <= 12 * empty


def _seconds(arguments: list[str], environment: dict[str, str]) -> float:
    """Processor time from the start of Python to its end, which is a little after the first output."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([sys.executable, *arguments], check=True, capture_output=True, env=environment, cwd=ROOT)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
