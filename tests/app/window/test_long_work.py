"""What makes the window stand still is said before it begins; what is quick is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from app.commands import files
from app.commands.plan import CLOCKWISE
from app.window import MainWindow
from model.files.plan_file import plan_bytes
from model.plan import EMPTY_PLAN
from tests.app.windows import straight_plan


@pytest.fixture
def said(window: MainWindow) -> list[tuple[str, object]]:
    """Every message of the status bar, with the plan that there was then."""
    window.document.load(straight_plan(), None)
    heard: list[tuple[str, object]] = []
    window.panels.status.said.connect(lambda text: heard.append((text, window.document.plan)))
    return heard


def test_turning_many_pieces_is_said_before_it_is_done(
    window: MainWindow, said: list[tuple[str, object]], monkeypatch: pytest.MonkeyPatch
) -> None:
    plan = window.document.plan
    window.turn_plan(CLOCKWISE)
    assert not [text for text, _ in said if text.endswith("…")]  # control: a small plan is turned at once
    window.document.undo_stack.undo()
    monkeypatch.setattr("app.document.MANY_PIECES", len(plan.pieces))
    window.turn_plan(CLOCKWISE)
    assert ("Turning the plan…", plan) in said
    assert window.document.plan != plan
    assert not window.panels.status.here.text().endswith("…")


def test_opening_a_large_file_is_said_first(
    window: MainWindow, said: list[tuple[str, object]], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    path = tmp_path / "empty.plan.json"
    path.write_bytes(plan_bytes(EMPTY_PLAN))
    monkeypatch.setattr(files, "MANY_BYTES", 1)
    before = window.document.plan
    assert window.files.open_path(path)
    assert ("Opening empty.plan.json…", before) in said
    assert not window.panels.status.here.text().endswith("…")
