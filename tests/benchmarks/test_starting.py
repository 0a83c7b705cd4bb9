"""How soon the program answers: the command line, and the window with an example."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import Final

import pytest

from tests.benchmarks.conftest import Ratio

pytestmark = pytest.mark.slow

ROOT: Final = Path(__file__).parents[2]
EXAMPLE: Final = ROOT / "resources" / "examples" / "beacon-wye.plan.json"
WINDOW: Final = f"""
import os
from PySide6.QtWidgets import QApplication
application = QApplication([])
from app.window import MainWindow
from model.files.plan_file import read_plan
window = MainWindow()
window.document.load(read_plan({str(EXAMPLE)!r}), None)
window.show()
window.grab()
print(len(window.document.plan.pieces), flush=True)
os._exit(0)
"""
"""Ends without tidying up: what is measured is how soon a user sees the plan."""


def run(*arguments: str) -> str:
    """What a fresh Python prints; as with an installed program, the bytecode of its modules is there."""
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    result = subprocess.run(
        [sys.executable, *arguments],
        cwd=ROOT,
        env=environment,
        capture_output=True,
        text=True,
        check=True,
        timeout=600,
    )
    return result.stdout


@pytest.mark.parametrize("arguments", [("--help",), ("check", str(EXAMPLE)), ("materials", str(EXAMPLE))])
def test_the_command_line(ratio: Ratio, arguments: tuple[str, ...]) -> None:
    assert run("-m", "app", *arguments)
    ratio(
        f"platelayer {arguments[0]}" + (" of an example" if len(arguments) > 1 else ""),
        lambda: run("-m", "app", *arguments),
        against="python -c pass",
        bound=lambda: run("-c", "pass"),
        goal=12,
    )


def test_the_window(ratio: Ratio) -> None:
    assert int(run("-c", WINDOW)) > 0
    ratio(
        "window with an example shown",
        lambda: run("-c", WINDOW),
        against="importing PySide6.QtWidgets",
        bound=lambda: run("-c", "import PySide6.QtWidgets"),
        goal=5,
    )
