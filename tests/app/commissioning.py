"""What the tests of commissioning in the window have in common."""

from __future__ import annotations

import threading

import pytest
from PySide6.QtWidgets import QApplication

from app.panels import commissioning_book
from app.panels.commissioning_panel import CommissioningPanel
from app.window import MainWindow
from model.commissioning import Commissioning, Fault, Run
from model.files.plan_file import read_plan
from model.plan import Plan
from model.routing.junction import Junction
from tests.app.windows import example, settle


def settle_runs(window: MainWindow) -> None:
    """Let the background work out the runs and the faults, and let both arrive."""
    settle(window)
    for _ in range(2):
        window.panels.commissioning.book.wait()
        QApplication.processEvents()


def show_runs(window: MainWindow, plan: Plan) -> CommissioningPanel:
    """Open a plan and its test runs."""
    window.activateWindow()
    window.document.load(plan, None)
    window.bound["show_runs"].trigger()
    settle_runs(window)
    return window.panels.commissioning


def example_plan(name: str) -> Plan:
    """An example."""
    return read_plan(example(name))


def commissioning_of(plan: Plan) -> Commissioning:
    """What the model says, worked out beside the window."""
    return Commissioning(Junction(plan))


def hold_up(monkeypatch: pytest.MonkeyPatch, name: str) -> threading.Event:
    """Make the background wait before it calls a function of the model; setting the event lets it go on."""
    may_go_on = threading.Event()
    function = getattr(commissioning_book, name)

    def held_up(*args: object) -> object:
        assert may_go_on.wait(30)
        return function(*args)

    monkeypatch.setattr(commissioning_book, name, held_up)
    return may_go_on


def say_what_is_seen(window: MainWindow, asked: Commissioning, faults: tuple[Fault, ...]) -> None:
    """Answer every run that is listed as it would come out with these faults."""
    book = window.panels.commissioning.book
    for run in book.rows:
        book.answer(run, asked.outcome(run, faults))
    settle_runs(window)


def shown(panel: CommissioningPanel) -> list[tuple[Fault, ...]]:
    """The faults of which the rows of the list speak."""
    return [row.faults for row in panel.list.sentences.rows] if panel.list.isVisible() else []


def words(panel: CommissioningPanel) -> list[str]:
    """The rows of the list, as they are read."""
    model = panel.list.sentences
    return [str(model.index(row).data()) for row in range(model.rowCount())]


def rows(panel: CommissioningPanel) -> list[Run]:
    """The runs in the table."""
    return list(panel.model.rows())
