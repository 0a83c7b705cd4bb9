"""The open plan: one value, its undo stack, and what is worked out of it in the background."""

from __future__ import annotations

from collections.abc import Callable, Generator, Iterable, Iterator
from pathlib import Path
from typing import Concatenate, Final, NamedTuple, ParamSpec, TypeVar, cast

from PySide6.QtCore import QObject, QTimer, Signal

from app.background import CancelledError, Newest
from app.canvas.index import PieceIndex
from app.followed import Followed, Laid, followed, laid, nothing_laid
from app.known_findings import KnownFindings
from app.levels import Levels
from app.opened import Opened
from app.translation import QT_TR_NOOP, tr
from app.undo import ApplyChange
from app.window_first import window_first
from model.collector import look_everywhere, set_present_apart
from model.edits import EditRefused, become
from model.files.plan_file import plan_bytes
from model.grid import Cell
from model.pauses import pause
from model.plan import EMPTY_PLAN, Change, Details, Plan, Waiver
from model.progress import Progress
from model.routing.junction import Junction
from model.routing.orientations import Orientation, each_orientation
from model.rules import Finding, find_all, stale_waivers
from model.rules.local import Difference, LocalFindings, marked_anew, with_difference
from model.rules.waivers import with_waivers
from model.track.layout import Layout

Wish = ParamSpec("Wish")
Shown = TypeVar("Shown")
AGAIN: Final = QT_TR_NOOP("Reading the file again…")
BEGIN_AFTER_MS: Final = 20
"""From an edit until the background begins: the picture comes first, and would have to wait for it."""
MANY_PIECES: Final = 20_000
"""A plan of so many is kept from the collector of garbage."""
BESIDE_FROM: Final = 3_000
"""So many are not moved or turned within 100 ms, so that is done beside the window."""
FOLLOWED_UP_TO: Final = 500
"""Changed cells up to which local findings follow an edit; of larger ones the background finds all anew."""
OLD_AFTER_MS: Final = 150
"""From an edit until what is not worked out anew by then is shown as old."""


class _Judged(NamedTuple):
    junction: Junction
    found: KnownFindings
    local: LocalFindings
    shown: dict[Callable[[Junction], object], object]
    stale_waivers: tuple[Waiver, ...]


class _Turned(NamedTuple):
    orientations: tuple[Orientation, ...]


class Document(Opened):
    """A plan under edit.

    The plan, the shapes of its rails and, once they were all found, the findings that hang on no route are
    always of now. The junction, the other findings and the orientations follow; until then those of an older
    plan stay, marked as old.
    """

    junction_updated = Signal()
    findings_changed = Signal(object)
    """What came and went with the newest edit, a ``Difference``; ``None`` where any may be otherwise."""
    orientations_updated = Signal()
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
        self.junction: Junction | None = None
        self.junction_is_old = True
        self.found = KnownFindings()
        self._local: LocalFindings | None = None
        """``None`` until all findings of the plan were found once."""
        self.stale_waivers: tuple[Waiver, ...] = ()
        """Those that set no finding aside any more."""
        self.orientations: tuple[Orientation, ...] = ()
        self.orientations_are_old = True
        self._shown_of: list[Callable[[Junction], object]] = []
        self._shown: dict[Callable[[Junction], object], object] = {}
        self._gone: list[object] = []
        self._old_for_long = QTimer(self, singleShot=True, interval=OLD_AFTER_MS)
        self._old_for_long.timeout.connect(self._tell_worked_out)
        self._begin = QTimer(self, singleShot=True, interval=BEGIN_AFTER_MS)
        self._begin.timeout.connect(self._begin_work)
        self._worker = Newest(self)
        self._worker.yielded.connect(self._settle)
        self._worker.failed.connect(self._give_up)

    @property
    def is_old_for_long(self) -> bool:
        """Whether what hangs on routes is of an older plan, and has been long enough to be shown as old."""
        return self.junction_is_old and not self._old_for_long.isActive()

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
    def findings(self) -> list[Finding]:
        """All findings in their order."""
        return self.found.all

    @property
    def value(self) -> Plan:
        """The plan, as every document has a value."""
        return self.plan

    @property
    def title(self) -> str:
        """The plan's title."""
        return self.plan.details.title

    @staticmethod
    def bytes_of(value: Plan, path: Path | None) -> bytes:  # noqa: ARG004  # noqa: ARG004
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
        self._begin.stop()
        self._worker.drop()
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
        if self.orientations_are_old and not self._is_closed:
            self._begin.start()
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
        self._belong_to(path)
        self.undo_stack.clear()
        self.levels.clear()
        self.junction = None
        self._shown = {}
        self.found = KnownFindings()
        self._local = None
        self.stale_waivers = ()
        self.orientations = ()
        self.reset.emit()
        self.details_changed.emit()
        self._set_large_apart()
        self._work_out()
        self._tell_worked_out()

    def take(self, change: Change) -> None:
        """Make a change the newest state (the undo command calls this)."""
        ready, self._ready = self._ready, None
        self._worker.drop()  # what it works on is an older plan from here on
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

    def findings_at(self, cell: Cell) -> list[Finding]:
        """The findings that concern a cell, the gravest first."""
        return self.found.at(cell)

    def work_out_beside(self, show: Callable[[Junction], object]) -> None:
        """Has what somebody shows of each junction worked out beside the window, too."""
        self._shown_of.append(show)

    def shown(self, show: Callable[[Junction], Shown]) -> Shown | None:
        """What ``show`` makes of the junction; what it made beside the window it need not make again."""
        if self.junction is None:
            return None
        if show not in self._shown:
            self._shown[show] = show(self.junction)
        return cast("Shown", self._shown[show])

    def wait(self) -> None:
        """Wait until the background has worked out the plan; the results arrive with the next events."""
        if self._begin.isActive():
            self._begin_work()
        self._worker.finish()

    def close(self) -> None:
        """Ends what works on it beside the window."""
        self._is_closed = True
        self._begin.stop()
        self._old_for_long.stop()
        self._worker.stop()
        look_everywhere()

    def _follow_findings(self, before: Details, change: Change, reshaped: frozenset[Cell]) -> None:
        """What hangs on no route is found with the edit itself, where that costs less than its picture."""
        if self._local is None or len(change.cells) > FOLLOWED_UP_TO:
            self._local = None
            return
        cells = change.cells | reshaped
        if len(cells) > FOLLOWED_UP_TO:
            self._local = None
            return
        gone, come = self._local.follow(cells)
        difference = Difference(gone, tuple(with_waivers(self.plan, come)))
        if self.plan.details.waivers != before.waivers:
            findings = with_difference(self.plan, self.findings, difference)
            self.found = KnownFindings(marked_anew(self.plan, findings))
            self.findings_changed.emit(None)
        elif any(difference):
            self.found.follow(self.plan, difference)
            self.findings_changed.emit(difference)

    def _work_out(self) -> None:
        self.junction_is_old = True
        self.orientations_are_old = True
        # What is there again in a moment need not be greyed: the picture of the edit comes first.
        self._old_for_long.start()
        self._worker.drop()
        self._begin.start()

    def _begin_work(self) -> None:
        self._begin.stop()
        plan, layout = self.plan, self.layout
        self._worker.ask(lambda: _work(plan, layout, self._shown_of, self._gone))

    def _set_large_apart(self) -> None:
        """The collector of garbage would hold the window up."""
        if len(self.plan.pieces) >= MANY_PIECES:
            set_present_apart()

    def _tell_worked_out(self) -> None:
        self.junction_updated.emit()
        self.orientations_updated.emit()

    def _settle(self, result: object) -> None:
        if isinstance(result, _Judged):
            self._let_go()
            self.junction, self._shown = result.junction, result.shown
            self.stale_waivers = result.stale_waivers
            self.found, self._local = result.found, result.local
            self.junction_is_old = False
            self._set_large_apart()
            self.junction_updated.emit()
        elif isinstance(result, _Turned):
            self.orientations = result.orientations
            self.orientations_are_old = False
            self._old_for_long.stop()
            self.orientations_updated.emit()

    def _let_go(self) -> None:
        """To free what was worked out before takes as long as a frame; the next work begins with that."""
        for one in (self.junction, self.found, self._local):
            self._gone += () if one is None else vars(one).values()
        self._gone += self._shown.values()

    def _give_up(self, error: object) -> None:
        """A mistake of the program in the background is handled like one in the foreground."""
        raise error if isinstance(error, Exception) else RuntimeError(str(error))


def changed_fields(before: Details, after: Details) -> frozenset[str]:
    """The details that differ, by name."""
    names = before.__struct_fields__
    return frozenset(name for name in names if getattr(before, name) != getattr(after, name))


def _work(
    plan: Plan, layout: Layout, shown_of: Iterable[Callable[[Junction], object]], gone: list[object]
) -> Iterator[object]:
    """All that is worked out of a plan, in steps between which it may be dropped.

    ``layout`` is that of the window, which nobody looks at here: the local findings will follow it. ``gone``
    is what the window needs no more.

    What a junction works out when first asked is asked for here, so that the window never waits for it.
    """
    while gone:
        gone.pop()
        pause()
    junction = Junction(plan)
    asked = ("control", "switches", "routes", "routes_through")
    for name in asked:
        getattr(junction, name)
        yield None
    findings = find_all(junction)
    yield None
    local, found = LocalFindings(layout, findings), KnownFindings(findings)
    shown: dict[Callable[[Junction], object], object] = {}
    for show in shown_of:
        shown[show] = show(junction)
        yield None
    yield _Judged(junction, found, local, shown, stale_waivers(junction, findings))
    turned: list[Orientation] = []
    for orientation in each_orientation(junction):
        turned.append(orientation)
        yield None
    yield _Turned(tuple(turned))
