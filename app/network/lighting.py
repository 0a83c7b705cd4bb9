"""What is lit on the map: the trip or the reader that is chosen in its list."""

from __future__ import annotations

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QKeySequence, QShortcut

from app.network.arms import reader_words
from app.network.document import NetworkDocument
from app.network.frame import NetworkPanels
from app.network.items import Ends
from app.network.lit import NOTHING_LIT, Lit, calls_of, reader_lit, trip_lit
from app.network.map_view import MapView
from app.network.panels.trips_model import planned_trip
from app.network.times import length_words
from app.translation import QT_TR_NOOP, from_to, tr
from model.network.network import junction_and_arm


class Lighting(QObject):
    """One thing is lit at a time; it follows the plan."""

    def __init__(self, document: NetworkDocument, view: MapView, panels: NetworkPanels) -> None:
        super().__init__(view)
        self._document, self._view, self._panels = document, view, panels
        self._trip = -1
        self._reader = ""
        panels.trips.trip_chosen.connect(self.light_trip)
        panels.readers.reader_chosen.connect(self.light_reader)
        view.light_ended.connect(self.put_out)
        for table in (panels.trips.table, panels.readers.table):
            ends = QShortcut(QKeySequence(Qt.Key.Key_Escape), table)
            ends.setContext(Qt.ShortcutContext.WidgetShortcut)
            ends.activated.connect(self.put_out)
        document.plan_updated.connect(self._show)
        document.changed.connect(lambda *_: self._show())
        document.reset.connect(self.put_out)

    def light_trip(self, place: int) -> None:
        """Light the way of a trip; −1: none, if it was a trip."""
        if place >= 0:
            self._panels.readers.choose("")
            self._trip, self._reader = place, ""
        else:
            self._trip = -1
        self._show()

    def light_reader(self, key: str) -> None:
        """Light all that passes a reader; empty: none, if it was a reader."""
        if key:
            self._panels.trips.choose(-1)
            self._trip, self._reader = -1, key
            self._bring_into_sight(key)
        else:
            self._reader = ""
        self._show()

    def put_out(self) -> None:
        """Light nothing."""
        self._panels.trips.choose(-1)
        self._panels.readers.choose("")
        self._trip, self._reader = -1, ""
        self._show()

    def _bring_into_sight(self, key: str) -> None:
        node = Ends(self._document.network).node(key)
        if node is not None:
            self._view.bring_into_sight(frozenset({node}))

    def _show(self) -> None:
        self._view.light(self._lit())

    def _lit(self) -> Lit:
        """Only what the plan says of the network as it is: the places of links must be true."""
        document, plan = self._document, self._document.plan
        network = document.network
        if plan is None or [(k.start, k.end) for k in document.planned.links] != [
            (k.start, k.end) for k in network.links
        ]:
            return NOTHING_LIT
        if 0 <= self._trip < len(network.trips):
            planned = planned_trip(document, self._trip)
            if planned is None:
                return NOTHING_LIT
            trip = from_to(planned.start, planned.end)
            if planned.length is None:
                return Lit(tr("{trip}: no way leads there", trip=trip))
            names = ", ".join(call.waybill for call in calls_of(document.planned, plan, planned))
            text = QT_TR_NOOP("{trip}: take {names}") if names else QT_TR_NOOP("{trip}: take nothing")
            said = f"{tr(text, trip=trip, names=names)} · {length_words(planned.length)}"
            return trip_lit(network, plan, planned, said)
        if self._reader in plan.readers and junction_and_arm(self._reader) is not None:
            reader = plan.readers[self._reader]
            takes = (
                tr("takes {name}", name=reader.name) if reader.name else tr("takes nothing: no trip calls it")
            )
            words = tr(
                "Reader at {place}: default {default}, {takes}",
                place=reader_words(self._reader),
                default=reader.default,
                takes=takes,
            )
            return reader_lit(network, plan, self._reader, words)
        return NOTHING_LIT
