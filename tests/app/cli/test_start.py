"""What is loaded at the start: no Qt by a subcommand, and nothing slow that is not needed."""

from __future__ import annotations

import subprocess
import sys

import pytest

from tests.app.cli.running import OBSERVED, ROOT, SALTERN

SLOW_TO_IMPORT = ("PySide6", "shiboken6", "networkx", "shapely", "numpy", "hypothesis")
NOT_FOR_A_WINDOW = ("networkx", "numpy", "scipy", "pysat", "hypothesis")
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


def test_a_window_with_a_plan_waits_for_nothing_that_it_does_not_need() -> None:
    """The libraries that work out networks, orders and wiring come when they are first asked."""
    script = (
        "import sys; from PySide6.QtWidgets import QApplication; application = QApplication([])\n"
        "from pathlib import Path; from app.window import MainWindow; window = MainWindow()\n"
        "window.files.open_example(Path(sys.argv[1])); window.show(); window.grab(); window.close()\n"
        f"print([name for name in {NOT_FOR_A_WINDOW} if name in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, str(SALTERN)], capture_output=True, text=True, cwd=ROOT, check=True
    )
    assert done.stdout == "[]\n"
