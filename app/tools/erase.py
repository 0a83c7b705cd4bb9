"""Erase: takes pieces away by click or drag, and an arm by a click on its tag."""

from __future__ import annotations

from dataclasses import dataclass

from app.tools.events import PointerEvent
from app.tools.host import Ghost, Tag
from app.tools.paths import Path, extended
from app.tools.tool import Tool
from app.translation import tr
from model.edits import erase, remove_arm
from model.grid import Cell
from model.parts import Part
from model.plan import Change
from model.track.layout import Layout


@dataclass(frozen=True)
class Erasing:
    """The button is down; the drag went along this path, and this is what it takes away."""

    path: Path
    change: Change


@dataclass(frozen=True)
class Untying:
    """The button went down on an arm's tag."""

    tag: Tag


class EraseTool(Tool):
    """Idle (state ``None``), erasing, or untying an arm."""

    name = "erase"
    drags_by_shift = True
    state: Erasing | Untying | None = None

    @property
    def is_busy(self) -> bool:
        """While the button is down."""
        return self.state is not None

    def press(self, event: PointerEvent) -> None:
        """Begins with what is under the pointer."""
        tag = self.host.tag_at(event)
        if tag is None:
            self._erase_along((event.cell,))
        else:
            self.state = Untying(tag)

    def drag(self, event: PointerEvent) -> None:
        """Takes the cells passed, too; a change of level drops the drag."""
        if not isinstance(self.state, Erasing) or event.cell == self.state.path[-1]:
            return
        if event.cell.y != self.state.path[0].y:
            self.interrupt()
        else:
            self._erase_along(extended(self.state.path, event.cell))

    def release(self, event: PointerEvent) -> None:
        """Erases for good, an arm only when the pointer is still on its tag."""
        if isinstance(self.state, Untying) and self.host.tag_at(event) != self.state.tag:
            self.cancel()
        self.drag(event)
        self.complete()

    def complete(self) -> bool:
        """Erases what the ghost shows."""
        state = self.state
        if state is None:
            return False
        change = state.change if isinstance(state, Erasing) else remove_arm(self.host.plan, state.tag.arm)
        words = by_hand(self.host.layout, change)
        self.cancel()
        self.host.commit(change)
        self.host.say(words)
        return True

    def cancel(self) -> bool:
        """Drops the drag."""
        if self.state is None:
            return False
        self.state = None
        self.host.show_ghost(None)
        self.host.say("")
        return True

    def _erase_along(self, path: Path) -> None:
        change = erase(self.host.plan, path)
        self.state = Erasing(path, change)
        self.host.show_ghost(Ghost(change, frozenset(entry.piece.at for entry in change.taken)))
        self.host.say(by_hand(self.host.layout, change))


def by_hand(layout: Layout, change: Change) -> str:
    """What a builder sees who takes the pieces away by hand, where it differs from the plan; else nothing.

    In the world, taking a plain or booster rail away changes no other rail; the plan becomes the one in
    which it was never placed. A detector rail gives notice as it goes, so nothing is said of rails near one.
    """
    detectors = [e.piece.at for e in change.taken if e.piece.part is Part.DETECTOR_RAIL]
    others = sorted(
        (cell, old, new)
        for cell, new in layout.preview(change).items()
        if new is not None
        and (old := layout.shape(cell)) is not None
        and not any(_near(cell, detector) for detector in detectors)
    )
    if not others:
        return ""
    cell, old, new = others[0]
    first = tr(
        "{cell} stays {old}; in the plan it becomes {new}", cell=cell, old=tr(old.word), new=tr(new.word)
    )
    if len(others) == 1:
        return tr("Taken away by hand, {first}.", first=first)
    return tr(
        "Taken away by hand, {count} rails keep the shapes that they have now: {first}, …",
        count=len(others),
        first=first,
    )


def _near(cell: Cell, detector: Cell) -> bool:
    """Whether the detector, or a block that it touches, may touch the rail."""
    return all(abs(a - b) <= 2 for a, b in zip(cell, detector, strict=True))
