"""Work beside the window: only the newest job counts, and its results arrive on the window's thread."""

from __future__ import annotations

import threading
from collections.abc import Iterator

from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.background import Newest
from app.window import MainWindow


def collect(worker: Newest) -> list[object]:
    """What is delivered, with a check of the thread that it is delivered on."""
    found: list[object] = []

    def take(result: object) -> None:
        assert threading.current_thread() is threading.main_thread()
        found.append(result)

    worker.yielded.connect(take)
    return found


def test_results_arrive_in_order_on_the_main_thread(qtbot: QtBot) -> None:
    worker = Newest()
    found = collect(worker)
    ran_on: list[threading.Thread] = []

    def job() -> Iterator[object]:
        ran_on.append(threading.current_thread())
        yield "one"
        yield None
        yield "two"

    worker.ask(job)
    worker.finish()
    QApplication.processEvents()
    assert found == ["one", "two"]
    assert ran_on[0] is not threading.main_thread()


def test_a_newer_job_stops_the_older_one_between_two_steps(qtbot: QtBot) -> None:
    worker = Newest()
    found = collect(worker)
    is_in_step, may_go_on = threading.Event(), threading.Event()
    steps: list[str] = []

    def older() -> Iterator[object]:
        is_in_step.set()
        assert may_go_on.wait(5)
        steps.append("first")
        yield "stale"
        steps.append("second")
        yield "stale too"

    worker.ask(older)
    assert is_in_step.wait(5)
    worker.ask(lambda: iter(["skipped"]))
    worker.ask(lambda: iter(["new"]))
    may_go_on.set()
    worker.finish()
    QApplication.processEvents()
    assert found == ["new"]
    assert steps == ["first"]


def test_what_was_delivered_too_late_is_dropped(qtbot: QtBot) -> None:
    """A result that lies in the queue when a newer job is asked for is of an older plan."""
    worker = Newest()
    found = collect(worker)
    worker.ask(lambda: iter(["old"]))
    worker.finish()
    worker.ask(lambda: iter(["new"]))
    worker.finish()
    QApplication.processEvents()
    assert found == ["new"]


def test_a_mistake_in_a_job_is_reported_and_the_next_job_runs(qtbot: QtBot) -> None:
    worker = Newest()
    found = collect(worker)
    errors: list[object] = []
    worker.failed.connect(errors.append)

    def bad() -> Iterator[object]:
        raise RuntimeError("no")
        yield

    worker.ask(bad)
    worker.finish()
    QApplication.processEvents()
    assert [str(error) for error in errors] == ["no"]
    worker.ask(lambda: iter(["fine"]))
    worker.finish()
    QApplication.processEvents()
    assert found == ["fine"]


def test_stopping_drops_everything(qtbot: QtBot) -> None:
    worker = Newest()
    found = collect(worker)
    worker.ask(lambda: iter(["never seen"]))
    worker.stop()
    QApplication.processEvents()
    assert found == []


def test_the_window_is_gone_before_it_waits_for_a_step_in_the_background(
    window: MainWindow, qtbot: QtBot
) -> None:
    """A step of a large plan may take many seconds, and cannot be cut short."""
    is_hidden, has_begun = threading.Event(), threading.Event()
    seen: list[bool] = []

    class Watch(QObject):
        def eventFilter(self, watched: QObject, event: QEvent) -> bool:
            if event.type() is QEvent.Type.Hide:
                is_hidden.set()
            return False

    def job() -> Iterator[object]:
        has_begun.set()
        seen.append(is_hidden.wait(10))
        yield None

    watch = Watch()
    window.installEventFilter(watch)
    worker = Newest(window)
    worker.ask(job)
    assert has_begun.wait(10)
    assert window.close()
    assert seen == [True]
