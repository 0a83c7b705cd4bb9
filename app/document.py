"""The open plan: one value, its undo stack, and its shapes."""

from __future__ import annotations

from collections.abc import Callable, Generator
from pathlib import Path
from typing import Concatenate, Final, ParamSpec

from PySide6.QtCore import QObject, QTimer, Signal

from app.background import CancelledError
from app.canvas.index import PieceIndex
from app.followed import Followed, Laid, followed, laid, nothing_laid
from app.levels import Levels
from app.translation import QT_TR_NOOP, tr
from app.undo import ApplyChange
from app.window_first import window_first
from app.worked_out import WorkedOut
from model.edits import EditRefused, become
from model.files.plan_file import plan_bytes
from model.plan import EMPTY_PLAN, Change, Details, Plan
from model.progress import Progress
from model.track.layout import Layout

Wish = ParamSpec("Wish")
AGAIN: Final = QT_TR_NOOP("Reading the file again…")
BESIDE_FROM: Final = 3_000
"""So many are not moved or turned within 100 ms, so that is done beside the window."""


class Document(WorkedOut):
    """A plan under edit. The plan and the shapes of its rails are always of now."""

    acted_at = Signal(object)
    """The cells where an undo or redo acted."""
    acted_on = Signal(object)
    """The names of the plan's details that an undo or redo changed, where it changed no piece."""

    ending = ".plan.json"
    untitled = QT_TR_NOOP("Untitled plan")

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._laid = nothing_laid()
        self._ready: Followed | None = None
        """What was worked out for the change that is about to be taken."""
        self._is_making = False
        """Whether an edit is worked out beside the window: until then no other can be made."""
        self._is_closed = False
        self.levels = Levels(self)

    @property
    def layout(self) -> Layout:
        """The shapes of the plan's rails."""
        return self._laid.layout

    @property
    def index(self) -> PieceIndex:
        """Which of the plan's pieces lie where."""
        return self._laid.index

    @property
    def plan(self) -> Plan:
        """The plan as it is now."""
        return self._laid.plan

    @property
    def value(self) -> Plan:
        """The plan, as every document has a value."""
        return self.plan

    @property
    def title(self) -> str:
        """The plan's title."""
        return self.plan.details.title

    @staticmethod
    def bytes_of(value: Plan, path: Path | None) -> bytes:  # noqa: ARG004
        """The plan file, the same wherever it lies."""
        return plan_bytes(value)

    def edit(
        self, function: Callable[Concatenate[Plan, Wish], Change], *args: Wish.args, **kwargs: Wish.kwargs
    ) -> bool:
        """Carry out an edit of model.edits; say why not when it refuses. Whether it was carried out."""
        return self.make(lambda plan: function(plan, *args, **kwargs)) is not None

    def make(self, function: Callable[[Plan], Change], pieces: int = 0, words: str = "") -> Change | None:
        """Carry out what is made of the plan; where it is made of many pieces, beside the window.

        What was done; ``None`` where it was refused or cancelled, which is said. ``words`` say what is done.
        """
        return self._make(function, pieces, words, self._push)

    def _make(
        self, function: Callable[[Plan], Change], pieces: int, words: str, push: Callable[..., Change | None]
    ) -> Change | None:
        """The same, carried out by ``push``."""
        if self._is_held():
            return None
        if pieces >= BESIDE_FROM:
            ready = self._followed(function, words)
            return None if ready is None else push(ready.change, ready)
        try:
            return push(function(self.plan))
        except EditRefused as error:
            self.refused.emit(str(error))
            return None

    def _become(self, ready: Laid) -> bool:
        """What something else has written takes no heed of levels that are locked here."""
        plan = ready.plan
        return (
            self._make(lambda own: become(own, plan), len(plan.pieces), tr(AGAIN), self._carry_out)
            is not None
        )

    def apply(self, change: Change) -> bool:
        """Carry out a change as one undo step, unless it touches a level that is locked."""
        return not self._is_held() and self._push(change) is not None

    def undo(self) -> None:
        """Take the newest step back, unless that is cancelled."""
        at = self.undo_stack.index() - 1
        if at < 0 or self._is_held():
            return
        if self._make_ready(self._step(at).inverse):
            self.undo_stack.undo()

    def redo(self) -> None:
        """Do the step again that was taken back last, unless that is cancelled."""
        at = self.undo_stack.index()
        if at >= self.undo_stack.count() or self._is_held():
            return
        if self._make_ready(self._step(at).change):
            self.undo_stack.redo()

    def _step(self, at: int) -> ApplyChange:
        step = self.undo_stack.command(at)
        assert isinstance(step, ApplyChange)
        return step

    def _is_held(self) -> bool:
        """Whether another edit is being worked out; then it is said."""
        if self._is_making:
            self.refused.emit(tr("Another edit is being worked out: it must be done, or cancelled, first."))
        return self._is_making

    def _push(self, change: Change, ready: Followed | None = None) -> Change | None:
        if self.levels.locked and (refusal := self.levels.refusal(change.cells)):
            # Whoever asked may go on to say what was done; this has the last word.
            QTimer.singleShot(0, self, lambda: self.refused.emit(refusal))
            return None
        return self._carry_out(change, ready)

    def _carry_out(self, change: Change, ready: Followed | None = None) -> Change | None:
        if ready is None and not self._make_ready(change):
            return None
        self._ready = ready or self._ready
        super().apply(change)
        self._ready = None  # nobody took it where it was empty
        return change

    def _make_ready(self, change: Change) -> bool:
        """Work out what follows a change of many pieces; whether it may go on."""
        if max(len(change.taken), len(change.placed)) >= BESIDE_FROM:
            self._ready = self._followed(lambda _plan: change, f"{change.label}…")
            return self._ready is not None
        return True

    def _followed(self, function: Callable[[Plan], Change], words: str) -> Followed | None:
        """An edit with all that follows, worked out beside the window; ``None`` where nothing comes of it."""
        before, plan = self._laid.copy(), self.plan
        # What is worked out of the present plan would only hold this up.
        self._drop_work()
        found = None
        self._is_making = True
        try:
            found = self.beside(words, lambda: followed(before, function))
        except EditRefused as error:
            self.refused.emit(str(error))
        except CancelledError:
            if not self._is_closed:
                self.refused.emit(tr("Cancelled: the plan is as it was."))
        finally:
            self._is_making = False
        if found is not None and self.plan is plan:
            return found
        if not self._is_closed:
            self._go_on()
        return None

    def new(self) -> None:
        """Start with an empty plan that has no file."""
        self.load(EMPTY_PLAN, None)

    @staticmethod
    def made_ready(value: Plan) -> Generator[Progress, None, Laid]:
        """A plan as built, in steps."""
        return laid(value)

    def load_ready(self, ready: Laid, path: Path | None) -> None:
        """Open a plan that is the same as its file, laid before."""
        self._laid = ready
        self._start_clean(path)
        self.levels.clear()
        self._forget()
        self.reset.emit()
        self.details_changed.emit()
        self._set_large_apart()
        self._work_out()
        self._tell_worked_out()

    def take(self, change: Change) -> None:
        """Make a change the newest state (the undo command calls this)."""
        ready, self._ready = self._ready, None
        self._drop_work()  # it is of an older plan from here on
        with window_first():
            before = self.plan.details
            if ready is not None and ready.change is change:
                cells = ready.reshaped
                self._laid.become(ready.laid)
            else:
                cells = self._laid.follow(change)
            self.changed.emit(change, cells)
            self._follow_findings(before, change, cells)
            if self.plan.details != before:
                self.details_changed.emit()
        self._work_out()

    def show_where(self, change: Change) -> None:
        """Tell where the change of an undo or redo acted: on the plan, or else beside it."""
        if change.cells:
            # A move empties cells far away; what the user looks for is where the pieces are now.
            filled = frozenset(entry.piece.at for entry in change.placed)
            self.acted_at.emit(filled or change.cells)
        elif change.before is not None and change.after is not None:
            self.acted_on.emit(changed_fields(change.before, change.after))

    def close(self) -> None:
        """Ends what works on it beside the window."""
        self._is_closed = True
        super().close()


def changed_fields(before: Details, after: Details) -> frozenset[str]:
    """The details that differ, by name."""
    names = before.__struct_fields__
    return frozenset(name for name in names if getattr(before, name) != getattr(after, name))
