"""Begins and ends previews, and waits for the junction where it is still being worked out."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from app.canvas.preview import NO_PREVIEW, Preview, cart_from, cart_in_by, reader_holds, thrown
from app.document import Document
from app.translation import tr
from model.grid import Cell, Heading
from model.routing.junction import Junction

Start = Callable[[Junction], Preview]


class Previews(QObject):
    """What is previewed now. An edit of the plan ends every preview."""

    changed = Signal()
    cart_sent = Signal()
    """The newest run of ``shown`` has a cart to be driven."""
    status = Signal(str)

    def __init__(self, document: Document, parent: QObject) -> None:
        super().__init__(parent)
        self._document = document
        self._waiting: Start | None = None
        self.shown = NO_PREVIEW
        document.junction_updated.connect(self._go_on)

    @property
    def is_on(self) -> bool:
        """Whether anything is previewed or about to be."""
        return self.shown is not NO_PREVIEW or self._waiting is not None

    def clear(self) -> None:
        """Ends every preview."""
        self._waiting = None
        if self.shown is not NO_PREVIEW:
            self._show(NO_PREVIEW)

    def throw(self, powered: frozenset[Cell]) -> None:
        """Exactly these switches are shown powered."""
        if not powered:
            self.clear()
            return
        junction = self._document.junction
        names = {switch.at: switch.name for switch in junction.switches} if junction else {}
        self._waiting = None
        self._show(thrown(self._document.layout, names, powered))

    def hold(self, arm: str) -> None:
        """The reader of an arm holds."""
        self._begin(lambda junction: reader_holds(junction, arm))

    def run_cart(self, arm: str, called: bool) -> None:
        """A test cart comes in by an arm."""

        def start(junction: Junction) -> Preview:
            if not junction.can_enter(arm):
                self.status.emit(
                    tr("No cart can come in by {arm}: it has no in, or no rail lies there.", arm=arm)
                )
                return self.shown
            return cart_in_by(junction, self.shown, arm, called)

        self._begin(start)

    def send_cart(self, cell: Cell, heading: Heading, called: bool) -> None:
        """A test cart is set on a rail."""

        def start(junction: Junction) -> Preview:
            if junction.layout.shape(cell) is None:
                return self.shown
            return cart_from(junction, self.shown, cell, heading, called)

        self._begin(start)

    def _begin(self, start: Start) -> None:
        junction = self._document.junction
        if junction is None or self._document.junction_is_old:
            self._waiting = start
            self.status.emit(tr("Working out the routes…"))
        else:
            self._show(start(junction))

    def _go_on(self) -> None:
        start = self._waiting
        if start is not None and not self._document.junction_is_old:
            self._waiting = None
            self.status.emit("")
            self._begin(start)

    def _show(self, preview: Preview) -> None:
        before, self.shown = self.shown, preview
        self.changed.emit()
        newest = preview.runs[-1] if preview.runs else None
        # A cart sent the same way once more runs once more: two equal runs are two.
        if newest is not None and newest.driven and not any(run is newest for run in before.runs):
            self.cart_sent.emit()
