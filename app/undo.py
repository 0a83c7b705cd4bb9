"""The one undo command: it applies a change, and its inverse takes it back."""

from __future__ import annotations

from enum import Enum, auto
from typing import Any, Protocol, Self

from PySide6.QtGui import QUndoCommand


class AnyChange(Protocol):
    """A change of any document, as a value."""

    @property
    def label(self) -> str:
        """In the user's words."""

    def inverse(self) -> Self:
        """The change that undoes this one."""


class Step(Enum):
    """What became of a change."""

    DONE = auto()
    UNDONE = auto()
    DONE_AGAIN = auto()


class Takes(Protocol):
    """What a change is applied to."""

    def take(self, change: Any) -> None:
        """Make the change the newest state."""

    def show_where(self, change: Any) -> None:
        """Bring the place of a change into sight."""

    def tell_step(self, step: Step, label: str) -> None:
        """Say what became of a change."""


class ApplyChange(QUndoCommand):
    """One gesture as one step, named in the user's words."""

    def __init__(self, target: Takes, change: AnyChange) -> None:
        super().__init__(change.label)
        self._target = target
        self._change = change
        self._inverse: AnyChange | None = None
        self._is_first = True

    @property
    def change(self) -> Any:
        """What redo applies."""
        return self._change

    @property
    def inverse(self) -> Any:
        """What undo applies, the same each time: who works out what follows knows it again by that."""
        if self._inverse is None:
            self._inverse = self._change.inverse()
        return self._inverse

    def redo(self) -> None:
        """Apply the change; the user already looks at the place when it is done for the first time."""
        self._target.take(self._change)
        if not self._is_first:
            self._target.show_where(self._change)
        self._target.tell_step(Step.DONE if self._is_first else Step.DONE_AGAIN, self._change.label)
        self._is_first = False

    def undo(self) -> None:
        """Take the change back."""
        self._target.take(self.inverse)
        self._target.show_where(self.inverse)
        self._target.tell_step(Step.UNDONE, self._change.label)
