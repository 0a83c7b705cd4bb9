"""What is worked out of a plan while it is edited: with the edit itself, or in the background."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import Final, NamedTuple, TypeVar, cast

from PySide6.QtCore import QObject, QTimer, Signal

from app.background import Newest
from app.known_findings import KnownFindings
from app.opened import Opened
from model.collector import look_everywhere, set_present_apart
from model.grid import Cell
from model.pauses import pause
from model.plan import Change, Details, Plan, Waiver
from model.routing.junction import Junction
from model.routing.orientations import Orientation, each_orientation
from model.rules import Finding, find_all, stale_waivers
from model.rules.local import Difference, LocalFindings, marked_anew, with_difference
from model.rules.waivers import with_waivers
from model.track.layout import Layout

Shown = TypeVar("Shown")
BEGIN_AFTER_MS: Final = 20
"""From an edit until the background begins: the picture comes first, and would have to wait for it."""
MANY_PIECES: Final = 20_000
"""A plan of so many is kept from the collector of garbage."""
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


class WorkedOut(Opened):
    """A plan with what is worked out of it; who derives from it edits the plan.

    Once they were all found, the findings that hang on no route are always of now. The junction, the other
    findings and the orientations follow; until then those of an older plan stay, marked as old.
    """

    junction_updated = Signal()
    findings_changed = Signal(object)
    """What came and went with the newest edit, a ``Difference``; ``None`` where any may be otherwise."""
    orientations_updated = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
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
    def plan(self) -> Plan:
        """The plan as it is now."""
        raise NotImplementedError

    @property
    def layout(self) -> Layout:
        """The shapes of the plan's rails."""
        raise NotImplementedError

    @property
    def is_old_for_long(self) -> bool:
        """Whether what hangs on routes is of an older plan, and has been long enough to be shown as old."""
        return self.junction_is_old and not self._old_for_long.isActive()

    @property
    def findings(self) -> list[Finding]:
        """All findings in their order."""
        return self.found.all

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
        self._begin.stop()
        self._old_for_long.stop()
        self._worker.stop()
        look_everywhere(self)

    def _forget(self) -> None:
        """Another plan is open."""
        self.junction = None
        self._shown = {}
        self.found = KnownFindings()
        self._local = None
        self.stale_waivers = ()
        self.orientations = ()

    def _drop_work(self) -> None:
        """What is worked out of the present plan is not wanted any more."""
        self._begin.stop()
        self._worker.drop()

    def _go_on(self) -> None:
        """Work out what was dropped."""
        if self.orientations_are_old:
            self._begin.start()

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
        """The collector of garbage would hold the window up; of a small plan it looks at all again."""
        if len(self.plan.pieces) >= MANY_PIECES:
            set_present_apart(self)
        else:
            look_everywhere(self)

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
