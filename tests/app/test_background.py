"""Work beside the window is dropped in the middle of a step, and waits while the window is busy."""

from __future__ import annotations

import threading
from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.background import Newest
from app.window_first import window_first
from model.pauses import pause, pauses, with_pauses


@pytest.fixture
def worker(qapp: QApplication) -> Iterator[Newest]:
    worker = Newest()
    yield worker
    worker.stop()


def test_a_newer_job_ends_an_old_one_in_the_middle_of_its_step(worker: Newest, qtbot: QtBot) -> None:
    began = threading.Event()

    def endless() -> Iterator[object]:
        while True:
            began.set()
            pause()
        yield "never"

    found: list[object] = []
    worker.yielded.connect(found.append)
    worker.ask(endless)
    assert began.wait(5)
    worker.ask(lambda: iter(["new"]))
    qtbot.waitUntil(lambda: found == ["new"])


def test_work_waits_while_the_window_is_busy(
    worker: Newest, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("app.window_first.LONGEST", 60.0)
    steps: list[int] = []

    def counting() -> Iterator[object]:
        for step in range(3):
            pause()
            steps.append(step)
        yield "done"

    with window_first():
        worker.ask(counting)
        qtbot.waitUntil(lambda: worker._is_busy)
        assert steps == []
    with qtbot.waitSignal(worker.yielded):
        pass
    assert steps == [0, 1, 2]


def test_the_window_may_wait_for_work_that_waits_for_it(worker: Newest, qapp: QApplication) -> None:
    with window_first():
        worker.ask(lambda: iter(with_pauses(range(10))))
        worker.finish()


def test_pauses_come_between_items_and_only_where_they_are_asked_for() -> None:
    held: list[None] = []
    assert list(with_pauses(range(100))) == list(range(100))
    with pauses(lambda: held.append(None)):
        assert list(with_pauses(range(100))) == list(range(100))
        pause()
    assert len(held) == 5  # before items 0, 32, 64 and 96, and once at the end
    pause()
    assert len(held) == 5
