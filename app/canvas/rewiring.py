"""Wiring one line anew, beside the window: the search, what is said of it, and the step at its end."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from PySide6.QtCore import QObject, QTimer, Signal

from app.document import Document
from app.search import Search
from app.translation import QT_TR_NOOP, tr
from model.grid import Cell
from model.plan import Change
from model.wiring.lines.lines import FoundLine, line_at, lines
from model.wiring.lines.rewire import Rewired, rewire

CHANGED: Final = QT_TR_NOOP("The plan has changed, so the line stays as it is.")


class Rewiring(QObject):
    """One line at a time. An edit of the plan ends it, and the line stays as it is."""

    status = Signal(str)

    def __init__(self, document: Document, parent: QObject) -> None:
        super().__init__(parent)
        self._document = document
        self._result: Rewired | None = None
        self.search = Search(self)
        self.search.found.connect(self._keep)
        self.search.ended.connect(self._settle)
        self.search.ticked.connect(self._tell)
        document.changed.connect(self._follow)
        document.reset.connect(self._forget)

    def start(self, chosen: frozenset[Cell], cursor: Cell) -> None:
        """Wire the line anew of which a cell is chosen, or else the one under the cursor."""
        self.search.stop()
        line = self._line(chosen, cursor)
        if line is None:
            return
        self._result = None
        document = self._document
        plan, junction = document.plan, document.junction
        wired = frozenset() if junction is None else junction.choice.wired

        def steps() -> Iterator[object]:
            yield from rewire(plan, line, wired)

        self.search.start(steps)
        self._tell()

    def stop(self) -> None:
        """Stop looking; the line stays."""
        self.search.stop()
        self.status.emit(tr("Stopped: the line stays as it is."))

    def _line(self, chosen: frozenset[Cell], cursor: Cell) -> FoundLine | None:
        """The line that is meant; where none is, or more than one, that is said."""
        found = lines(self._document.plan, self._document.layout)
        meant = [line for line in found if line.cells & chosen]
        if not meant:
            under = line_at(found, cursor)
            meant = [] if under is None else [under]
        if len(meant) == 1:
            return meant[0]
        self.status.emit(
            tr("Pieces of several lines are chosen; choose one.")
            if meant
            else tr("No line here: choose a dust or a repeater of one, or put the cursor on it.")
        )
        return None

    def _keep(self, result: object) -> None:
        if isinstance(result, Rewired):
            self._result = result

    def _settle(self) -> None:
        if self._result is None:
            return
        if self._result.change is not None:
            self._document.apply(self._result.change)
        self.status.emit(self._result.message)

    def _tell(self) -> None:
        self.status.emit(tr("Wiring the line anew, {seconds} s; Esc stops.", seconds=self.search.seconds))

    def _forget(self) -> None:
        """Another plan: nothing is wired anew in it."""
        if self.search.is_running:
            self.search.stop()
            self.status.emit("")

    def _follow(self, change: Change) -> None:
        if self.search.is_running and change.cells:
            self.search.stop()
            # The window first takes away what was said of the plan before.
            QTimer.singleShot(0, self, lambda: self.status.emit(tr(CHANGED)))
