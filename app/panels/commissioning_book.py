"""The test runs of the open plan, what the builder saw of each, and what may be wrong.

What was seen belongs to the junction that was built, not to the drawing: it stands in no file, and no undo
step changes it. An edit keeps it; it counts for as long as the plan has the run, and the arm, of which it
tells.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from PySide6.QtCore import QObject, QTimer, Signal

from app.background import Newest
from app.document import Document
from app.worked_out import OLD_AFTER_MS
from model.commissioning import STAYS, Commissioning, Diagnosis, Fault, Observed, Run, diagnose
from model.routing.junction import Junction


class Worked(NamedTuple):
    """What is worked out of a plan."""

    junction: Junction
    commissioning: Commissioning
    """Not to be asked by the window itself: what it has not worked out yet may take long."""
    runs: tuple[Run, ...]
    """All that can be made."""
    tests: tuple[Run, ...]
    """The fewest that show every fault that can be shown."""
    expected: dict[Run, str]
    """Where the cart of each run must come out."""
    faults: int
    """How many can be there."""
    hidden: tuple[Fault, ...]
    """Those that no run shows."""
    alike: tuple[tuple[Fault, ...], ...]
    """Groups that no run tells apart."""
    serves: bool
    """Whether every wanted route arrives."""

    @property
    def shown(self) -> int:
        """How many faults some run shows."""
        return self.faults - len(self.hidden)


class Explained(NamedTuple):
    """What may be wrong, given what was seen of a junction."""

    junction: Junction
    observed: tuple[Observed, ...]
    diagnosis: Diagnosis


class RunBook(QObject):
    """Keeps the answers, and has the rest worked out beside the window while somebody looks."""

    changed = Signal()

    def __init__(self, document: Document, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self._answers: dict[Run, str] = {}
        self._cleared: tuple[dict[Run, str], list[Run]] = ({}, [])
        """The answers and the added runs that were cleared last."""
        self._added: list[Run] = []
        self._asked: Junction | None = None
        self._is_watched = False
        self.worked: Worked | None = None
        """Of an older plan while ``is_old``."""
        self.explained: Explained | None = None
        """Of older answers or of an older plan while ``is_explained`` does not hold."""
        self.looks_old = False
        """Whether what is shown has been old for so long that it is to be marked."""
        self._old_for_long = QTimer(self, singleShot=True, interval=OLD_AFTER_MS)
        self._old_for_long.timeout.connect(self._mark_old)
        self._worker = Newest(self)
        self._worker.yielded.connect(self._settle)
        self._worker.failed.connect(_give_up)
        document.changed.connect(self._old_soon)
        document.details_changed.connect(self._old_soon)
        document.junction_updated.connect(self._follow)
        document.reset.connect(self._forget)

    @property
    def is_old(self) -> bool:
        """Whether the runs are those of an older plan, or not known at all."""
        junction = None if self._document.junction_is_old else self._document.junction
        return junction is None or self.worked is None or self.worked.junction is not junction

    @property
    def runs_look_old(self) -> bool:
        """Whether the runs are to be marked as old: not while only a fault is looked for."""
        return self.looks_old and self.is_old

    @property
    def rows(self) -> tuple[Run, ...]:
        """The fewest runs, then those that were added or answered besides, as far as they can be made."""
        if self.worked is None:
            return ()
        besides = (run for run in (*self._added, *self._answers) if run in self.worked.expected)
        return tuple(dict.fromkeys((*self.worked.tests, *besides)))

    @property
    def others(self) -> tuple[Run, ...]:
        """The runs that can be made besides."""
        rows = set(self.rows)
        runs = () if self.worked is None else self.worked.runs
        return tuple(run for run in runs if run not in rows)

    @property
    def outlets(self) -> tuple[str, ...]:
        """The arms by which carts can come out."""
        return tuple(arm.name for arm in self._document.plan.arms if arm.leave is not None)

    @property
    def observed(self) -> tuple[Observed, ...]:
        """What was seen, of runs that can be made and arms that are there."""
        return tuple(Observed(run, saw) for run in self.rows if (saw := self.saw(run)) is not None)

    @property
    def differs(self) -> bool:
        """Whether some cart did not do what it must."""
        return any(seen.saw != self.must(seen.run) for seen in self.observed)

    @property
    def is_explained(self) -> bool:
        """Whether what is known of the faults is of this plan and of these answers."""
        known = self.explained
        return (
            known is not None
            and not self.is_old
            and known.junction is self._document.junction
            and known.observed == self.observed
        )

    @property
    def can_clear(self) -> bool:
        """Whether there is anything to clear."""
        return bool(self._answers) or (self.worked is not None and len(self.rows) > len(self.worked.tests))

    @property
    def can_restore(self) -> bool:
        """Whether what was cleared can be brought back."""
        return any(self._cleared) and not self._answers

    def saw(self, run: Run) -> str | None:
        """Where the cart of a run came out, an arm or STAYS; ``None`` when that is not known."""
        saw = self._answers.get(run)
        return saw if saw in (None, STAYS) or saw in self.outlets else None

    def must(self, run: Run) -> str:
        """Where the cart of a run must come out: an arm, or STAYS where the plan serves no better."""
        assert self.worked is not None
        return self.worked.expected[run]

    def answer(self, run: Run, saw: str | None) -> None:
        """Note where the cart of a run came out; ``None`` takes it back."""
        if self._answers.get(run) == saw:
            return
        if saw is None:
            del self._answers[run]
            # A run that was answered besides the fewest stays listed: it may be run once more.
            self._added.append(run)
        else:
            self._answers[run] = saw
        self._cleared = ({}, [])
        self._explain()

    def add(self, run: Run) -> None:
        """List a run besides the fewest."""
        self._added.append(run)
        self.changed.emit()

    def clear(self) -> None:
        """Forget every answer and every run that was added."""
        self._cleared = (self._answers, self._added)
        self._answers, self._added = {}, []
        self._explain()

    def restore(self) -> None:
        """Bring back what was cleared last."""
        self._answers, self._added = self._cleared
        self._cleared = ({}, [])
        self._explain()

    def watch(self, is_watched: bool) -> None:
        """Work only while somebody looks."""
        self._is_watched = is_watched
        self._follow()

    def wait(self) -> None:
        """Wait until what was asked is worked out; it arrives with the next events."""
        self._worker.finish()

    def _follow(self) -> None:
        """Have the runs of a new plan worked out, once."""
        junction = self._document.junction
        if junction is None or self._document.junction_is_old or not self._is_watched:
            return
        if self._asked is not junction:
            self._asked = junction
            self._old_soon()
            self._worker.ask(lambda: _work(junction))

    def _explain(self) -> None:
        """Have the answers explained, once the runs are those of the plan."""
        worked, observed = self.worked, self.observed
        if worked is not None and not self.is_old:
            if self.differs and not self.is_explained:
                self._old_soon()
                self._worker.ask(lambda: _find_faults(worked, observed))
            else:
                # What is still being looked for would explain answers that were taken back.
                self._worker.drop()
                self._is_new()
        self.changed.emit()

    def _settle(self, result: object) -> None:
        if isinstance(result, Worked):
            self.worked = result
            self._explain()
        elif isinstance(result, Explained):
            self.explained = result
            self._is_new()
            self.changed.emit()

    def _forget(self) -> None:
        self._answers, self._cleared, self._added = {}, ({}, []), []
        self._asked = self.worked = self.explained = None
        self._worker.drop()
        self._is_new()
        self.changed.emit()

    def _old_soon(self, *_: object) -> None:
        # What is there again in a moment need not be marked.
        if not self.looks_old:
            self._old_for_long.start()

    def _mark_old(self) -> None:
        self.looks_old = True
        self.changed.emit()

    def _is_new(self) -> None:
        self._old_for_long.stop()
        self.looks_old = False


def _work(junction: Junction) -> Iterator[object]:
    """The runs of a plan, in steps between which they may be dropped."""
    found = Commissioning(junction)
    expected: dict[Run, str] = {}
    for run in found.runs:
        expected[run] = found.outcome(run)
        yield None
    for step in (lambda: found.hidden, lambda: found.tests):
        step()
        yield None
    yield Worked(
        junction=junction,
        commissioning=found,
        runs=found.runs,
        tests=found.tests,
        expected=expected,
        faults=len(found.faults),
        hidden=found.hidden,
        alike=found.alike,
        serves=junction.control.serves,
    )


def _find_faults(worked: Worked, observed: tuple[Observed, ...]) -> Iterator[object]:
    yield Explained(worked.junction, observed, diagnose(worked.commissioning, observed))


def _give_up(error: object) -> None:
    """A mistake of the program in the background is handled like one in the foreground."""
    raise error if isinstance(error, Exception) else RuntimeError(str(error))
