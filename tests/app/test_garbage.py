"""What is of Qt is freed in the window's thread, whoever held it last; elsewhere all may stand still."""

from __future__ import annotations

import gc
import threading
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.background import Newest
from app.document import Document
from app.garbage import look_for_garbage
from tests.app.windows import straight_plan

MAIN = threading.main_thread()
MANY = 20_000
"""So many lists make the collector look several times."""


class Going(QObject):
    """Notes the thread in which it goes."""

    def __init__(self, gone: list[threading.Thread]) -> None:
        super().__init__()
        self._gone = gone
        self.itself: Going | None = None

    def __del__(self) -> None:
        self._gone.append(threading.current_thread())


@pytest.fixture
def newest(qapp: QApplication, qtbot: QtBot) -> Iterator[Newest]:
    worker = Newest(qapp)
    yield worker
    worker.stop()
    qtbot.waitUntil(look_for_garbage)  # its thread has ended
    worker.deleteLater()


def job_with(held: Going) -> Iterator[object]:
    yield held.objectName()


def test_a_job_that_holds_it_last_gives_it_back(newest: Newest) -> None:
    gone: list[threading.Thread] = []
    held = Going(gone)
    newest.ask(lambda held=held: job_with(held))  # type: ignore[misc]
    del held
    newest.finish()
    assert gone == []
    newest.stop()
    assert gone == [MAIN]


def test_a_thread_that_holds_it_last_is_seen() -> None:
    """The control that must fail."""
    gone: list[threading.Thread] = []
    held = [Going(gone)]
    thread = threading.Thread(target=held.clear)
    thread.start()
    thread.join()
    assert gone == [thread]


def circles(gone: list[threading.Thread]) -> Iterator[object]:
    circle = Going(gone)
    circle.itself = circle
    del circle
    yield [[] for _ in range(MANY)]


def test_circles_are_looked_for_by_the_window_alone(newest: Newest, qtbot: QtBot) -> None:
    gone: list[threading.Thread] = []
    newest.ask(lambda: circles(gone))
    newest.finish()
    newest.stop()
    assert gone == []
    assert not gc.isenabled()
    qtbot.waitUntil(look_for_garbage)
    assert gc.isenabled()
    gc.collect()
    assert gone == [MAIN]


def test_without_that_a_circle_may_go_anywhere() -> None:
    """The control that must fail."""
    gone: list[threading.Thread] = []
    thread = threading.Thread(target=lambda: [*circles(gone)])
    thread.start()
    thread.join()
    assert gone == [thread]


def test_what_is_new_is_looked_through_while_others_work(newest: Newest) -> None:
    gone: list[threading.Thread] = []
    may_end = threading.Event()
    newest.ask(lambda: iter([may_end.wait(20)]))
    kept = [*circles(gone)]
    assert gone == []
    assert not look_for_garbage()
    assert gone == [MAIN]
    assert kept
    may_end.set()


def test_what_was_set_apart_for_large_plans_is_so_until_the_last_of_them_is_gone(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("app.worked_out.MANY_PIECES", 3)
    one, other, small = (Document(qapp) for _ in range(3))
    one.load(straight_plan(), None)
    other.load(straight_plan(), None)
    small.new()
    assert gc.get_freeze_count() > 0
    one.new()
    small.close()
    assert gc.get_freeze_count() > 0
    other.close()
    assert gc.get_freeze_count() == 0
    for document in (one, small):
        document.close()
    for document in (one, other, small):
        document.deleteLater()
