"""The open plan compared with another one, kept up to date edit by edit; the other is never changed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from PySide6.QtCore import QObject, Signal

from app.background import Newest
from app.compare_words import counts_words, difference_words, verb
from app.comparing.differences import Compared, Differences
from app.document import BESIDE_FROM, Document
from app.translation import tr
from model.comparing import Beside, comparison, difference_at, differences_beside
from model.grid import Cell
from model.plan import EMPTY_PLAN, Change
from model.track.layout import Layout


class Comparing(QObject):
    """Holds the other plan and what differs. An edit costs the cells that it touches, not the plans."""

    changed = Signal()
    """Another comparison, none any more, or other differences."""

    def __init__(self, document: Document, parent: QObject) -> None:
        super().__init__(parent)
        self._document = document
        self._other: Layout | None = None
        self.name = ""
        """Of the other plan."""
        self.other_is_later = False
        """Whether the other plan is what is wanted, and the open one what stands."""
        self.differences = Differences()
        self.is_old = False
        """Whether so much was edited that the plans are being compared anew; until then nothing is marked."""
        self._worker = Newest(self)
        self._worker.yielded.connect(self._take)
        document.changed.connect(self._follow)
        document.details_changed.connect(self._tell_details)
        document.reset.connect(self.end)

    @property
    def is_on(self) -> bool:
        """Whether the plan is compared with another one."""
        return self._other is not None

    @property
    def title(self) -> str:
        """What is compared, and how many of which kind differ."""
        counts = self.counts_words
        if self.other_is_later:
            return tr("Comparing, on the way to {name} · {counts}", name=self.name, counts=counts)
        return tr("Comparing with {name} · {counts}", name=self.name, counts=counts)

    @property
    def counts_words(self) -> str:
        """How many of which kind differ, where that is known."""
        return tr("the plans are being compared") if self.is_old else counts_words(self.differences.counts)

    def words_at(self, cell: Cell) -> str:
        """What is to be done in a cell; empty where nothing differs."""
        found = self.differences.get(cell)
        return "" if found is None else f"{verb(found.kind)}: {difference_words(found)}"

    @property
    def beside(self) -> tuple[Beside, ...]:
        """What differs beside the pieces."""
        if not self.is_on:
            return ()
        return differences_beside(*(layout.plan.details for layout in self.layouts))

    @property
    def layouts(self) -> tuple[Layout, Layout]:
        """The earlier plan and the later one as built."""
        other = Layout(EMPTY_PLAN) if self._other is None else self._other
        here = self._document.layout
        return (here, other) if self.other_is_later else (other, here)

    @property
    def other(self) -> Layout:
        """The other plan as built; an empty one while there is none."""
        return self.layouts[1 if self.other_is_later else 0]

    def start(self, compared: Compared, name: str) -> None:
        """Compare with that plan, which counts as the earlier one; it was compared with the plan of now."""
        self._other, self.name, self.other_is_later = compared.other, name, False
        self._show(compared.differences)

    def swap(self) -> None:
        """The plan that was the earlier one is the later one now."""
        self.other_is_later = not self.other_is_later
        if self.is_old:
            self._compare_anew()
        else:
            self._show(self.differences.inverse())

    def end(self) -> None:
        """Compare no longer."""
        if self.is_on:
            self._other = None
            self._show(Differences())

    def _follow(self, change: Change, reshaped: Iterable[Cell]) -> None:
        if not self.is_on:
            return
        cells = change.cells.union(reshaped)
        if self.is_old or len(cells) >= BESIDE_FROM:
            self._compare_anew()
            return
        layouts = self.layouts
        for cell in cells:
            self.differences.put(cell, difference_at(*layouts, cell))
        self.changed.emit()

    def _compare_anew(self) -> None:
        """Beside the window, on the plan as it is now."""
        assert self._other is not None
        here = self._document.layout.copy()
        before, after = (here, self._other) if self.other_is_later else (self._other, here)
        self.differences, self.is_old = Differences(), True
        self._worker.ask(lambda: _steps(before, after))
        self.changed.emit()

    def _take(self, found: object) -> None:
        if isinstance(found, Differences):
            self._show(found)

    def _show(self, differences: Differences) -> None:
        self._worker.drop()
        self.differences, self.is_old = differences, False
        self.changed.emit()

    def _tell_details(self) -> None:
        if self.is_on:
            self.changed.emit()


def _steps(before: Layout, after: Layout) -> Iterator[object]:
    yield Differences((yield from comparison(before, after)))
