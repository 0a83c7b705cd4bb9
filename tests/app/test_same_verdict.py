"""The window and the command line say the same of a plan, with findings set aside and without."""

from __future__ import annotations

import json
from pathlib import Path
from random import Random
from typing import Any

import pytest
from PySide6.QtWidgets import QApplication

from app import cli
from app.document import Document
from app.subcommands.statuses import DONE, ERROR_FOUND
from model import edits
from model.files.plan_file import plan_bytes
from model.plan import Plan
from model.routing.junction import Junction
from model.rules import find_all, waiver_for
from model.severity import Severity
from tests.harness.plans import random_plan

Said = list[tuple[Any, ...]]


def with_some_set_aside(plan: Plan, random: Random) -> Plan:
    """About half of what is found is known to the user."""
    for finding in find_all(Junction(plan)):
        if random.random() < 0.5:
            plan = edits.set_aside(plan, waiver_for(finding, "known")).applied(plan)
    return plan


def said_by_the_window(document: Document, plan: Plan) -> tuple[int, Said]:
    document.load(plan, None)
    document.wait()
    QApplication.processEvents()
    found = document.findings
    errors = any(finding.severity is Severity.ERROR and not finding.waived for finding in found)
    said = [(f.rule, str(f.severity), [[*c] for c in f.cells], [*f.arms], f.waived, f.message) for f in found]
    return ERROR_FOUND if errors else DONE, said


def said_by_the_command_line(plan: Plan, capsys: pytest.CaptureFixture[str]) -> tuple[int, Said]:
    Path("a.plan.json").write_bytes(plan_bytes(plan))
    capsys.readouterr()
    status = cli.run(["check", "a.plan.json", "--json"])
    (file,) = json.loads(capsys.readouterr().out)["files"]
    keys = ("rule", "severity", "cells", "arms", "waived", "message")
    return status, [tuple(finding[key] for key in keys) for finding in file["findings"]]


def compare(seeds: range, capsys: pytest.CaptureFixture[str]) -> int:
    """How many of what was found was set aside."""
    document, waived = Document(), 0
    try:
        for seed in seeds:
            random = Random(seed)
            plan = with_some_set_aside(random_plan(random, most=12), random)
            window = said_by_the_window(document, plan)
            assert window == said_by_the_command_line(plan, capsys)
            waived += sum(said[4] for said in window[1])
    finally:
        document.close()
    return waived


@pytest.fixture(autouse=True)
def in_a_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qapp: QApplication) -> None:
    monkeypatch.chdir(tmp_path)


def test_50_plans_have_one_verdict(capsys: pytest.CaptureFixture[str]) -> None:
    assert compare(range(50), capsys) > 50


@pytest.mark.slow
@pytest.mark.timeout(3_600)
def test_1_000_plans_have_one_verdict(capsys: pytest.CaptureFixture[str]) -> None:
    assert compare(range(50, 1_050), capsys) > 1_000


def test_a_window_that_forgets_a_waiver_is_seen(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The control that must fail."""
    said = said_by_the_window

    def forgetful(document: Document, plan: Plan) -> tuple[int, Said]:
        return said(document, Plan(plan.pieces, plan.details.replace(waivers=())))

    monkeypatch.setattr("tests.app.test_same_verdict.said_by_the_window", forgetful)
    with pytest.raises(AssertionError):
        compare(range(10), capsys)
