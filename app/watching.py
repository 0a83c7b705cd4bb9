"""Watches the file of an open document, which another program may write, rename or delete."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Final

from PySide6.QtCore import QFileSystemWatcher, QObject, QTimer, Signal

SETTLED_MS: Final = 200
"""From the last stir until it is told: a file is often taken away for a moment while it is replaced."""


class Watch(QObject):
    """Tells that something happened to a file or in its folder; what, is for the listener to look at."""

    stirred = Signal()

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._path: Path | None = None
        self._watcher = QFileSystemWatcher(self)
        self._timer = QTimer(self, singleShot=True, interval=SETTLED_MS)
        self._timer.timeout.connect(self.stirred)
        self._watcher.fileChanged.connect(self._note)
        self._watcher.directoryChanged.connect(self._note)

    def follow(self, path: Path | None) -> None:
        """Watches this file in place of the one before."""
        watched = [*self._watcher.files(), *self._watcher.directories()]
        if watched:
            self._watcher.removePaths(watched)
        self._timer.stop()
        self._path = path
        self._watch()

    def _note(self) -> None:
        self._watch()
        self._timer.start()

    def _watch(self) -> None:
        """A file that took another one's place by its name is a new one to the system: it is added again."""
        if self._path is None:
            return
        own = self._path.absolute()
        # pathlib's own question is no answer where the system fails, but an error.
        wanted = {str(path) for path in (own, own.parent) if os.path.exists(path)}
        missing = wanted.difference(self._watcher.files(), self._watcher.directories())
        if missing:
            self._watcher.addPaths(sorted(missing))
