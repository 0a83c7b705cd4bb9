"""Plans in a folder of their own, and a runner that starts there."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from tests.app.cli.running import SALTERN, Runner


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> Runner:
    """A runner in a folder with good.plan.json, error.plan.json and bad.plan.json."""
    monkeypatch.chdir(tmp_path)
    shutil.copy(SALTERN, "good.plan.json")
    unsupported = {"format": "platelayer-plan", "version": 1, "pieces": [{"part": "rail", "at": [0, 64, 0]}]}
    Path("error.plan.json").write_text(json.dumps(unsupported))
    Path("bad.plan.json").write_text('{"format": "platelayer-plan",\n "version": 1')
    return Runner(tmp_path, capfd)
