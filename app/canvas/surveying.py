"""The survey of a junction that stands already: kept beside the plan, no part of it and no step of undo.

One takes a step back by clicking again. Ending the survey keeps it, and so does undoing its order; clearing
it keeps what was cleared until the next survey begins. Where the whole plan is turned or moved, and where
that is undone, the survey goes with it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

import msgspec
from PySide6.QtCore import QObject, Signal

from app.canvas.carries import Carries, GoesTo
from app.document import Document
from app.panels.words import listed
from app.search import Search
from app.translation import QT_TR_NOOP, tr
from model.edits import set_build_order
from model.grid import Cell, Heading
from model.ordering import Survey, survey
from model.plan import Change
from model.track.layout import Layout
from model.track.shapes import Shape

SECONDS: Final = 60
NAMED_AT_MOST: Final = 4
"""Rails that a sentence names; of more it gives the number."""
STEP_NAME: Final = QT_TR_NOOP("Order from survey")


class Surveying(QObject):
    """What was taken down so far, and the search for an order that gives it."""

    changed = Signal()
    status = Signal(str)

    def __init__(self, document: Document, parent: QObject) -> None:
        super().__init__(parent)
        self._document = document
        self.carries = Carries()
        self._cleared: dict[Cell, Shape] = {}
        self._result: Survey | None = None
        self.shapes: dict[Cell, Shape] = {}
        """The rails surveyed, with the shape in which each stands in the world."""
        self.verdict = ""
        """Why no order came of the last search; empty where none was made or one did."""
        self.impossible: frozenset[Cell] = frozenset()
        """The rails that no order gives as they were surveyed."""
        self.search = Search(self)
        self.search.found.connect(self._keep)
        self.search.ended.connect(self._settle)
        self.search.ticked.connect(self.changed)
        document.changed.connect(self._follow)
        document.reset.connect(self._open)

    @property
    def differing(self) -> dict[Cell, Shape]:
        """The surveyed rails that lie otherwise as drawn, each as it stands in the world."""
        drawn = {cell: self._document.layout.shape(cell) for cell in self.shapes}
        return {cell: shape for cell, shape in self.shapes.items() if drawn[cell] not in (None, shape)}

    @property
    def words(self) -> str:
        """How the survey stands, in a few words."""
        if self.search.is_running:
            return tr("Survey: searching for an order, {seconds} s", seconds=self.search.seconds)
        count = len(self.differing)
        if count > 1:
            return tr("Survey: {count:,} rails differ from the plan", count=count)
        return (
            tr("Survey: 1 rail differs from the plan")
            if count
            else tr("Survey: no rail differs from the plan")
        )

    def words_at(self, cell: Cell) -> str:
        """How a rail stands and how it is drawn; empty where the two are the same."""
        shape, drawn = self.differing.get(cell), self._document.layout.shape(cell)
        if shape is None or drawn is None:
            return ""
        return tr(
            "{cell} stands {shape} there, as drawn it lies {drawn}",
            cell=cell,
            shape=tr(shape.word),
            drawn=tr(drawn.word),
        )

    def take(self, shapes: Mapping[Cell, Shape]) -> None:
        """Take down in which shape each of these rails stands."""
        self._begin_anew()
        self.shapes = {**self.shapes, **shapes}
        self._cleared = {}
        self.changed.emit()

    def clear(self) -> None:
        """Forget the survey; once more brings it back."""
        self._begin_anew()
        self.shapes, self._cleared = self._cleared, self.shapes
        if self._cleared:
            self.status.emit(tr("The survey is cleared; Clear survey once more brings it back."))
        elif not self.shapes:
            self.status.emit(tr("Nothing is surveyed."))
        self.changed.emit()

    def find(self) -> None:
        """Look for an order of placing that gives every rail the shape in which it stands."""
        if self.search.is_running:
            return
        if not self.differing:
            self.status.emit(tr("No surveyed rail differs from the plan: it is in such an order already."))
            return
        self._begin_anew()
        plan, differing = self._document.plan, self.differing

        def steps() -> Iterator[object]:
            """What was not drawn anew stands as it is drawn."""
            yield from survey(plan, {**Layout(plan).shapes, **differing}, SECONDS)

        self.search.start(steps)
        self.changed.emit()

    def stop(self) -> None:
        """Stop looking."""
        self.search.stop()
        self.verdict = tr("The search was stopped after {seconds} s.", seconds=self.search.seconds)
        self.changed.emit()

    def _begin_anew(self) -> None:
        """Drop what was found for another survey or another plan."""
        self.search.stop()
        self._result, self.verdict, self.impossible = None, "", frozenset()

    def _follow(self, change: Change) -> None:
        if not change.cells:
            return
        was_running = self.search.is_running
        self._begin_anew()
        if was_running:
            self.verdict = tr("The plan has changed, so the search has ended.")
        goes_to = self.carries.by(change)
        if goes_to is not None:
            self.shapes, self._cleared = _carried(self.shapes, goes_to), _carried(self._cleared, goes_to)
        self.changed.emit()

    def _open(self) -> None:
        self._begin_anew()
        self.shapes, self._cleared = {}, {}
        self.carries.forget()
        self.changed.emit()

    def _keep(self, result: object) -> None:
        if isinstance(result, Survey):
            self._result = result

    def _settle(self) -> None:
        result = self._result
        if result is not None and result.rails is not None:
            self._place(result)
            return
        self.impossible = frozenset() if result is None else frozenset(result.impossible)
        self.verdict = self._refusal(result)
        self.changed.emit()

    def _place(self, result: Survey) -> None:
        assert result.rails is not None
        change = set_build_order(self._document.plan, result.rails)
        if self._document.apply(msgspec.structs.replace(change, label=tr(STEP_NAME))):
            self.status.emit(
                tr("The plan is in an order now that gives every rail the shape in which it stands.")
            )

    def _refusal(self, result: Survey | None) -> str:
        if result is None or not result.impossible:
            return tr(
                "No order was found in {seconds} s that gives this survey; there may be one.",
                seconds=self.search.seconds,
            )
        cells = result.impossible
        none = tr("No order of placing") if result.proved else tr("No order was found that")
        if len(cells) == 1:
            shape = self.shapes.get(cells[0], self._document.layout.shape(cells[0]))
            assert shape is not None
            return tr(
                "{none} makes {cell} lie {shape}.",
                none=none,
                cell=_unbroken(cells[0]),
                shape=tr(shape.word),
            )
        named = [_unbroken(cell) for cell in cells[:NAMED_AT_MOST]]
        if len(cells) > NAMED_AT_MOST:
            named.append(tr("{count} more", count=len(cells) - NAMED_AT_MOST))
        if result.alone:
            return tr("{none} makes any of these lie so: {names}.", none=none, names=listed(named))
        return tr("{none} makes these lie so together: {names}.", none=none, names=listed(named))


def _unbroken(cell: Cell) -> str:
    """A place that no line break tears apart."""
    return str(cell).replace(" ", "\N{NO-BREAK SPACE}")


def _carried(shapes: Mapping[Cell, Shape], goes_to: GoesTo) -> dict[Cell, Shape]:
    return {goes_to(cell): _carried_shape(cell, shape, goes_to) for cell, shape in shapes.items()}


def _carried_shape(cell: Cell, shape: Shape, goes_to: GoesTo) -> Shape:
    """The shape in its new place: its ends point to where the neighbours of the old cell have gone."""
    here = goes_to(cell)
    ends = {(_heading(here, goes_to(cell.step(end.heading))), end.rise) for end in shape.ends}
    return next(other for other in Shape if {(end.heading, end.rise) for end in other.ends} == ends)


def _heading(a: Cell, b: Cell) -> Heading:
    return next(heading for heading in Heading if a.step(heading) == b)
