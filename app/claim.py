"""Which file a window has open, told to other windows by a lock; it only warns, and keeps nobody out."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path
from typing import Final

from PySide6.QtCore import QLockFile

ENDING: Final = ".open.lock"


class Claim:
    """The lock of one window on one file at a time."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._lock: QLockFile | None = None
        self._path: Path | None = None

    def take(self, path: Path | None) -> bool:
        """Claim a file in place of the one before; whether no other window had claimed it already."""
        if path is not None and path == self._path:
            return True
        self.release()
        if path is None:
            return True
        lock = QLockFile(str(self._folder / (_key(path) + ENDING)))
        # Only the death of its process frees a lock, never its age.
        lock.setStaleLockTime(0)
        if lock.tryLock(0):
            self._lock, self._path = lock, path
            return True
        # A folder that cannot be written to is no other window.
        return lock.error() is not QLockFile.LockError.LockFailedError

    def release(self) -> None:
        """Claim nothing any more."""
        if self._lock is not None:
            self._lock.unlock()
        self._lock = self._path = None


def _key(path: Path) -> str:
    """One word for a file, by whatever name it is opened."""
    return hashlib.sha256(os.fsencode(os.path.realpath(path))).hexdigest()[:32]
