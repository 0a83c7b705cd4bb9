"""Circles of garbage are looked for in the window's thread alone while others work.

Among what is freed may be an object of Qt. Qt holds a lock while such an object goes, and asks Python
meanwhile: in another thread it would wait for the window's thread, and that for the lock, for ever.
"""

from __future__ import annotations

import gc
import threading
from typing import Final

from PySide6.QtCore import QCoreApplication, QTimer

LOOK_EVERY_MS: Final = 100


class _Working:
    """How many threads work beside the window."""

    def __init__(self) -> None:
        self.lock = threading.Lock()
        self.threads = 0


_working: Final = _Working()


def thread_begins() -> None:
    """Called in the window's thread: another one is about to work."""
    with _working.lock:
        _working.threads += 1
    gc.disable()
    application = QCoreApplication.instance()
    if application is not None:
        (application.findChild(_Looking) or _Looking(application)).start()


def thread_ends() -> None:
    """Called in that thread, last of all."""
    with _working.lock:
        _working.threads -= 1


def look_for_garbage() -> bool:
    """Called in the window's thread: looks through what is new; whether nobody else works any more."""
    if not _working.threads:
        gc.enable()
        return True
    (young, middle, _), (most_young, most_middle, _) = gc.get_count(), gc.get_threshold()
    # All of it is looked through when nobody works: that takes as long as some frames.
    if middle > most_middle:
        gc.collect(1)
    elif young > most_young:
        gc.collect(0)
    return False


class _Looking(QTimer):
    """Looks again and again, as long as somebody works."""

    def __init__(self, application: QCoreApplication) -> None:
        super().__init__(application, interval=LOOK_EVERY_MS)
        self.timeout.connect(self._look)

    def _look(self) -> None:
        if look_for_garbage():
            self.stop()
