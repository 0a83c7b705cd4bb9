"""What tools have in common that work along a drag: the path so far is all that they remember."""

from __future__ import annotations

from dataclasses import dataclass

from app.tools.events import PointerEvent
from app.tools.paths import Path, extended
from app.tools.tool import Tool
from model.edits import EditRefused
from model.plan import Change


@dataclass(frozen=True)
class Stroking:
    """The button is down; the drag went along this path."""

    path: Path


class StrokeTool(Tool):
    """Idle (state ``None``) or stroking. A change of level drops the drag: it works level by level."""

    state: Stroking | None = None

    @property
    def is_busy(self) -> bool:
        """While the button is down."""
        return self.state is not None

    def press(self, event: PointerEvent) -> None:
        """Begins with one cell."""
        self.state = Stroking((event.cell,))
        self.show()

    def drag(self, event: PointerEvent) -> None:
        """Goes on through every cell passed."""
        if self.state is None:
            return
        if event.cell.y != self.state.path[0].y:
            self.interrupt()
            return
        self.state = Stroking(extended(self.state.path, event.cell))
        self.show()

    def release(self, event: PointerEvent) -> None:
        """Ends where the pointer is."""
        self.drag(event)
        self.complete()

    def complete(self) -> bool:
        """Makes what the ghost shows."""
        if self.state is None:
            return False
        change = self.change(self.state.path)
        self.cancel()
        if change is not None:
            self.host.commit(change)
        return True

    def cancel(self) -> bool:
        """Drops the drag."""
        if self.state is None:
            return False
        self.state = None
        self.host.show_ghost(None)
        return True

    def show(self) -> None:
        """Shows what the path so far would make."""
        raise NotImplementedError

    def edit(self, path: Path) -> Change:
        """The edit along a path; raises EditRefused."""
        raise NotImplementedError

    def change(self, path: Path) -> Change | None:
        """The edit along a path; where it is refused, says why and gives ``None``."""
        try:
            return self.edit(path)
        except EditRefused as refused:
            self.host.say(str(refused))
            return None
