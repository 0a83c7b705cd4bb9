"""What all tools have in common: a small state machine that answers the pointer and the keys."""

from __future__ import annotations

from typing import ClassVar

from app.tools.events import Key, Modifiers, PointerEvent
from app.tools.host import Host


class Tool:
    """A tool. Its gestures preview from the plan at the press and commit once, at the end.

    Invariant: until the end of a gesture the plan is untouched, so dropping the preview is all that
    cancelling takes.
    """

    name: ClassVar[str]
    drags_by_key: ClassVar[bool] = False
    """Whether Enter begins a drag that the arrow keys go on with and a second Enter ends."""
    drags_by_shift: ClassVar[bool] = False
    """Whether Shift and Enter begins such a drag, where Enter alone acts at once."""

    def __init__(self, host: Host) -> None:
        self.host = host

    @property
    def is_busy(self) -> bool:
        """Whether a gesture is under way."""
        return False

    @property
    def waits_for_drag(self) -> bool:
        """Whether the gesture that Enter has begun goes on until the next Enter."""
        return self.drags_by_key

    def enter(self) -> None:
        """The tool is taken up."""

    def leave(self) -> None:
        """Another tool is taken up."""
        self.interrupt()

    def hover(self, event: PointerEvent) -> None:
        """The pointer moved with no button down."""

    def press(self, event: PointerEvent) -> None:
        """The button went down."""

    def drag(self, event: PointerEvent) -> None:
        """The pointer moved with the button down."""

    def release(self, event: PointerEvent) -> None:
        """The button went up."""

    def complete(self) -> bool:
        """Enter: ends the gesture as a release would. False where there is none."""
        return False

    def cancel(self) -> bool:
        """Esc: drops the gesture. False where there is none."""
        return False

    def interrupt(self) -> None:
        """Something from outside (another tool, undo, another plan) ends the gesture without a change."""
        self.cancel()

    def key(self, key: Key, modifiers: Modifiers) -> bool:  # for those who override it
        """A key went down. False where it means nothing to the tool."""
        return False
