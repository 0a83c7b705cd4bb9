"""What every open document is: a value, its undo stack, and its file."""

from __future__ import annotations

from collections.abc import Generator
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoStack

from app.background import Beside, at_once
from app.translation import tr
from app.undo import ApplyChange, Step
from model.files.writer import write_bytes
from model.progress import Progress, result_of

Stamp = tuple[int, int, int]
"""Time of change in ns, length in bytes, and the number of the file on its disk."""


class Opened(QObject):
    """A document under edit, in a window of its own; who derives from it says what it is a document of."""

    changed = Signal(object, object)
    """The change just applied, and what else it touched."""
    details_changed = Signal()
    reset = Signal()
    """Another document is open."""
    dirty_changed = Signal(bool)
    stepped = Signal(object, str)
    """What became of a change (a ``Step``), and the change's label."""
    refused = Signal(str)
    """Why a wish was not carried out, for the status bar."""

    ending: str
    """Of its files."""
    untitled: str
    """What to call one that has neither title nor file."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.path: Path | None = None
        self.stamp: Stamp | None = None
        """Of the file as it was read or written last; ``None`` where there is none."""
        self.beside: Beside = at_once
        """How long work is done; who shows the document in a window gives a better one."""
        self.undo_stack = QUndoStack(self)
        self.undo_stack.cleanChanged.connect(self._tell_dirty)

    @property
    def value(self) -> Any:
        """What is open, as it is now."""
        raise NotImplementedError

    @property
    def title(self) -> str:
        """What the document calls itself; may be empty."""
        raise NotImplementedError

    @staticmethod
    def bytes_of(value: Any, path: Path | None) -> bytes:
        """What stands in the file of that value at a path; ``None``: it has no file yet."""
        raise NotImplementedError

    @property
    def is_dirty(self) -> bool:
        """Whether the document differs from its file."""
        return not self.undo_stack.isClean()

    @property
    def name(self) -> str:
        """What to call it in the window: its title, else its file, else that it has none."""
        return self.title or (self.path.name if self.path else tr(self.untitled))

    def apply(self, change: Any) -> bool:
        """Carry out a change as one undo step; an empty one is never pushed. Whether it may be made here."""
        if not change.is_empty:
            self.undo_stack.push(ApplyChange(self, change))
        return True

    def undo(self) -> None:
        """Take the newest step back."""
        self.undo_stack.undo()

    def redo(self) -> None:
        """Do the step again that was taken back last."""
        self.undo_stack.redo()

    def new(self) -> None:
        """Start with an empty one that has no file."""
        raise NotImplementedError

    @staticmethod
    def made_ready(value: Any) -> Generator[Progress, None, Any]:
        """A value with all that must be known of it before it can be loaded, in steps."""
        raise NotImplementedError

    def load_ready(self, ready: Any, path: Path | None) -> None:
        """Open a document that is the same as its file, made ready before."""
        raise NotImplementedError

    def load(self, value: Any, path: Path | None) -> None:
        """Open a document that is the same as its file."""
        self.load_ready(result_of(self.made_ready(value)), path)

    def read_again(self, ready: Any) -> bool:
        """Become what the file says now, made ready before, as one step. Whether it did."""
        if not self._become(ready):
            return False
        self._belong_to(self.path)
        self.undo_stack.setClean()
        return True

    def _become(self, ready: Any) -> bool:
        """Be another value, as one step, whatever may not be changed here by hand. Whether it is."""
        raise NotImplementedError

    def take_up(self, ready: Any, path: Path | None) -> None:
        """Open a document left over from last time, made ready before: it differs from its file."""
        self.load_ready(ready, path)
        self.undo_stack.resetClean()

    def save(self, path: Path) -> None:
        """Write it. Raises WriteError; the document then still counts as changed."""
        write_bytes(path, self.bytes_of(self.value, path))
        self._belong_to(path)
        self.undo_stack.setClean()
        self.details_changed.emit()

    def is_changed_outside(self, path: Path) -> bool:
        """Whether the document's own file is another one than was read or written last."""
        return path == self.path and self.stamp is not None and stamp_of(path) not in (None, self.stamp)

    def take(self, change: Any) -> None:
        """Make a change the newest state (the undo command calls this)."""
        raise NotImplementedError

    def show_where(self, change: Any) -> None:
        """Tell where an undo or redo acted."""
        raise NotImplementedError

    def tell_step(self, step: Step, label: str) -> None:
        """Say what became of a change."""
        self.stepped.emit(step, label)

    def close(self) -> None:
        """End the background work; to be called before the document goes away."""
        raise NotImplementedError

    def _start_clean(self, path: Path | None) -> None:
        """Belong to a file, with no step done yet and nothing changed."""
        self._belong_to(path)
        self.undo_stack.clear()
        # An empty stack that was told of a change, as where a copy was taken up, is not cleared by Qt.
        self.undo_stack.setClean()

    def _belong_to(self, path: Path | None) -> None:
        self.path = path
        self.stamp = None if path is None else stamp_of(path)

    def _tell_dirty(self, is_clean: bool) -> None:
        self.dirty_changed.emit(not is_clean)


def stamp_of(path: Path) -> Stamp | None:
    """What tells one state of a file from another; ``None`` where there is no file."""
    try:
        stat = path.stat()
    except (OSError, ValueError):  # ValueError: a path with a NUL in it
        return None
    return stat.st_mtime_ns, stat.st_size, stat.st_ino
