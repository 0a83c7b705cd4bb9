"""Running the command line: inside the test for speed, or as a process of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from app import cli

ROOT = Path(__file__).parents[3]
EXAMPLES = ROOT / "resources" / "examples"
SALTERN = EXAMPLES / "saltern-junction.plan.json"
OBSERVED = ROOT / "tests" / "data" / "commissioning" / "saltern.observed.json"


class Done(NamedTuple):
    """What came of a run."""

    status: int
    out: str
    err: str


class Runner:
    """Runs the command line in this process; ``folder`` is the one in which it runs."""

    def __init__(self, folder: Path, capture: pytest.CaptureFixture[str]) -> None:
        self.folder = folder
        self._capture = capture

    def __call__(self, *arguments: str | Path) -> Done:
        self._capture.readouterr()
        status = cli.run([str(argument) for argument in arguments])
        return Done(status, *self._capture.readouterr())


def line(*arguments: str | Path) -> list[str]:
    """What a shell would run."""
    return [sys.executable, "-m", "app", *map(str, arguments)]


def process(*arguments: str | Path, **options: Any) -> subprocess.Popen[bytes]:
    """The command line as a process, with pipes for its two outputs."""
    options = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE} | options
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "LC_ALL": "C"}
    return subprocess.Popen(line(*arguments), env=environment, **{"cwd": ROOT, **options})
