"""Plans in a folder of their own, and a runner that starts there."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from model.files.plan_file import plan_bytes
from tests.app.cli.running import SALTERN, Runner
from tests.app.windows import straight_plan

NO_WAY = {
    "format": "platelayer-network",
    "version": 1,
    "stations": [{"name": "Quay"}, {"name": "Fen"}],
    "trips": [{"from": "Quay", "to": "Fen", "per_week": 1}],
}
"""Nobody can ride from Quay to Fen."""


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> Runner:
    """A runner in a folder with a good, an error and a bad plan and network, and a script."""
    monkeypatch.chdir(tmp_path)
    shutil.copy(SALTERN, "good.plan.json")
    unsupported = {"format": "platelayer-plan", "version": 1, "pieces": [{"part": "rail", "at": [0, 64, 0]}]}
    Path("error.plan.json").write_text(json.dumps(unsupported))
    Path("bad.plan.json").write_text('{"format": "platelayer-plan",\n "version": 1')
    Path("good.network.json").write_text('{"format": "platelayer-network", "version": 1}')
    Path("error.network.json").write_text(json.dumps(NO_WAY))
    Path("small.plan.json").write_bytes(plan_bytes(straight_plan()))
    Path("script.json").write_text('{"events": [{"tick": 0, "do": "send", "arm": "Quay"}]}')
    return Runner(tmp_path, capfd)
