"""Copies of changed plans and networks, so that no crash costs more than a second of work.

Each running window owns one copy and holds a lock beside it. A copy whose lock nobody holds was left
over by a run that did not end well; the start screen offers it. The plan's own file is never touched.
"""

from __future__ import annotations

import json
import os
import time
import uuid
from collections.abc import Iterable, Iterator
from contextlib import suppress
from pathlib import Path
from typing import Final, NamedTuple

from PySide6.QtCore import QLockFile, QObject, QStandardPaths, QTimer, Signal

from app.background import Newest
from app.opened import Opened, Stamp
from model.files.writer import WriteError, write_bytes

DELAY_MS: Final = 400
"""From the first change after a copy to the next copy; well inside the promised second."""
COPIES: Final = (".plan.json", ".network.json")
"""A copy of either kind may be left over; whichever window is open offers it."""
ABOUT: Final = ".about.json"
LOCK: Final = ".lock"


class LeftOver(NamedTuple):
    """A copy that a run left behind."""

    copy: Path
    title: str
    original: Path | None
    """The document's own file; ``None`` when it was never saved."""
    seconds: float
    """When the copy was written, in seconds since 1970."""
    stamp: Stamp | None = None
    """Of the document's own file as it was read or written last; ``None`` where that is not known."""


class _About(NamedTuple):
    """What is noted beside a copy."""

    title: str
    original: Path | None
    stamp: Stamp | None


def recovery_folder() -> Path:
    """Where the copies lie."""
    place = QStandardPaths.StandardLocation.AppLocalDataLocation
    return Path(QStandardPaths.writableLocation(place)) / "recovery"


class Recovery(QObject):
    """Keeps the copy of one document."""

    written = Signal(float)
    """A copy was written, at so many seconds since 1970."""
    failed = Signal(str)
    """A copy could not be written, and why."""

    def __init__(self, document: Opened, folder: Path | None = None) -> None:
        super().__init__(document)
        self._document = document
        self._folder = recovery_folder() if folder is None else folder
        with suppress(OSError):  # the first copy tells that there is no folder to keep it in
            self._folder.mkdir(parents=True, exist_ok=True)
        self._stem = uuid.uuid4().hex
        self._lock = QLockFile(str(self._folder / (self._stem + LOCK)))
        # A held lock never goes stale by age; only the death of its process frees it.
        self._lock.setStaleLockTime(0)
        self._lock.tryLock(0)
        self._worker = Newest(self)
        self._worker.yielded.connect(self._tell)
        self._timer = QTimer(self, singleShot=True, interval=DELAY_MS)
        self._timer.timeout.connect(self.write_soon)
        document.changed.connect(self._note_change)
        document.dirty_changed.connect(self._note_dirty)
        document.reset.connect(self.forget)

    @property
    def folder(self) -> Path:
        """Where the copies and the locks of all windows lie."""
        return self._folder

    @property
    def copy(self) -> Path:
        """The file of this document's copy."""
        return self._folder / (self._stem + self._document.ending)

    def write_soon(self) -> None:
        """Write the copy beside the window's own work."""
        value, about = self._document.value, self._about()
        self._worker.ask(lambda: self._write(value, about))

    def write_now(self) -> None:
        """Write the copy before anything else happens, as after a mishap."""
        if self._document.is_dirty:
            self._timer.stop()
            self._worker.stop()
            for result in self._write(self._document.value, self._about()):
                self._tell(result)

    def forget(self) -> None:
        """The plan is safe in its file, or given up: take the copy away."""
        self._timer.stop()
        self._worker.stop()
        self._take_away(self._stem, (self._document.ending, ABOUT))

    def close(self) -> None:
        """End well: nothing is left over."""
        self.forget()
        self._lock.unlock()

    def left_over(self) -> list[LeftOver]:
        """The copies of runs that did not end well, newest first; none where the folder cannot be read."""
        try:
            notes = [*self._folder.glob("*" + ABOUT)]
        except OSError:
            return []
        found = [entry for note in notes if (entry := self._read(note)) is not None]
        return sorted(found, key=lambda entry: entry.seconds, reverse=True)

    def discard(self, entry: LeftOver) -> None:
        """Take away a copy that is wanted no more, or is safe in a new copy or file."""
        self._take_away(entry.copy.name.partition(".")[0], (*COPIES, ABOUT, LOCK))

    def _note_change(self, *_: object) -> None:
        # Later changes do not put the clock back, so that steady work is copied too.
        if not self._timer.isActive():
            self._timer.start()

    def _note_dirty(self, is_dirty: bool) -> None:
        if is_dirty:
            self._note_change()
        else:
            self.forget()

    def _about(self) -> _About:
        return _About(self._document.title, self._document.path, self._document.stamp)

    def _write(self, value: object, about: _About) -> Iterator[object]:
        now = time.time()
        note = {
            "title": about.title,
            "original": None if about.original is None else str(about.original),
            "stamp": about.stamp,
            "seconds": now,
        }
        try:
            write_bytes(self.copy, self._document.bytes_of(value, about.original))
            write_bytes(self._folder / (self._stem + ABOUT), json.dumps(note).encode())
        except (WriteError, OSError) as error:
            yield str(error)
        else:
            yield now

    def _tell(self, result: object) -> None:
        if isinstance(result, float):
            self.written.emit(result)
        else:
            self.failed.emit(str(result))

    def _read(self, about: Path) -> LeftOver | None:
        stem = about.name.removesuffix(ABOUT)
        copies = (self._folder / (stem + ending) for ending in COPIES)
        copy = next((path for path in copies if os.path.exists(path)), None)
        if stem == self._stem or copy is None or self._is_held(stem):
            return None
        try:
            said = json.loads(about.read_bytes())
            original = Path(said["original"]) if said["original"] else None
            return LeftOver(
                copy, str(said["title"]), original, float(said["seconds"]), _stamp_in(said.get("stamp"))
            )
        except (ValueError, KeyError, TypeError, OverflowError, OSError):
            # The copy itself is what matters; a broken note beside it only costs its title.
            return LeftOver(copy, "", None, _time_of(copy))

    def _take_away(self, stem: str, endings: Iterable[str]) -> None:
        for ending in endings:
            # A copy that cannot be taken away is offered once more; that must not stop the present work.
            with suppress(OSError):
                (self._folder / (stem + ending)).unlink(missing_ok=True)

    def _is_held(self, stem: str) -> bool:
        lock = QLockFile(str(self._folder / (stem + LOCK)))
        lock.setStaleLockTime(0)
        if not lock.tryLock(0):
            return True
        lock.unlock()
        return False


def _stamp_in(said: object) -> Stamp | None:
    """A note of another version says nothing of it. Raises ValueError."""
    if not isinstance(said, list):
        return None
    time_ns, size, number = map(int, said)
    return time_ns, size, number


def _time_of(path: Path) -> float:
    try:
        return path.stat().st_mtime
    except OSError:
        return 0.0
