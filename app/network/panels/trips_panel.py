"""The trips; choosing one lights its way on the map and says what to take along."""

from __future__ import annotations

from math import ceil

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from app.network.arms import reader_words
from app.network.document import NetworkDocument
from app.network.lit import Call, calls_of
from app.network.panels.common import (
    Facts,
    RowDelegate,
    button_row,
    empty_words,
    keep_chosen_in_sight,
    stacked,
)
from app.network.panels.trips_model import FROM, TO, TripsModel
from app.network.times import figure, length_words
from app.panels.row_menu import RowMenu
from app.panels.tables import Table
from app.panels.words import listed
from app.shown_keys import follow_keys, in_brackets
from app.translation import QT_TR_NOOP, tr
from model.network import edits
from model.network.network import WayPin
from model.network.result import Price

WIDTHS = (0, 0, 52, 0, 50, 46)
AMOUNTS = (
    QT_TR_NOOP("{amount} waybill(s) a week"),
    QT_TR_NOOP("{amount} name(s)"),
    QT_TR_NOOP("{amount} cell(s) a trip"),
)
"""What a pin may cost."""


class TripsPanel(QWidget):
    """A row a trip; below, the way of the chosen one."""

    trip_chosen = Signal(int)
    """The place of a trip in the network; −1: none."""
    add_asked = Signal()
    way_asked = Signal(int)
    """Another way is to be pinned for this trip."""

    def __init__(self, document: NetworkDocument, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self.model = TripsModel(document, self)
        self.table = Table(tr("Trips"), self.model)
        self.table.setItemDelegate(RowDelegate(self.table, frozenset({FROM, TO}), self.model.figures))
        self.table.set_widths(WIDTHS)
        self.facts = Facts((QT_TR_NOOP("Take"), QT_TR_NOOP("Way"), QT_TR_NOOP("Length"), QT_TR_NOOP("Pin")))
        self.add_button = QPushButton(tr("Add trip…"))
        self.remove_button = QPushButton(tr("Remove"))
        self.remove_button.setAccessibleName(tr("Remove trip"))
        self.way_button = QPushButton(tr("Pin way…"))
        self.unpin_button = QPushButton(tr("Unpin way"))
        self.empty = empty_words("")
        follow_keys(self, self._tell_empty)
        stacked(
            self,
            self.table,
            self.empty,
            self.facts,
            button_row(self.add_button, self.remove_button, self.way_button, self.unpin_button),
        )
        self.table.selectionModel().selectionChanged.connect(lambda *_: self._choose())
        self.table.clicked.connect(lambda _index: self.trip_chosen.emit(self.chosen))
        self.model.modelReset.connect(self._choose)
        self.add_button.clicked.connect(self.add_asked)
        self.remove_button.clicked.connect(self.remove)
        self.way_button.clicked.connect(lambda: self.way_asked.emit(self.chosen))
        self.unpin_button.clicked.connect(self._unpin)
        RowMenu(self.table, (self.add_button, self.remove_button, self.way_button, self.unpin_button))
        document.plan_updated.connect(self._show_chosen)
        document.changed.connect(lambda *_: self._show_chosen())
        self._show_chosen()

    @property
    def chosen(self) -> int:
        """The place of the chosen trip; −1: none."""
        rows = self.table.selectionModel().selectedRows()
        return rows[0].row() if rows else -1

    def choose(self, place: int) -> None:
        """Choose a trip; −1: none."""
        if place < 0:
            self.table.clearSelection()
        else:
            self.table.selectRow(place)

    def remove(self) -> None:
        """Take the chosen trip away."""
        if self.chosen >= 0:
            self._document.edit(edits.remove, trips=(self.chosen,))

    def _tell_empty(self) -> None:
        self.empty.setText(
            tr(
                "Who rides from where to where is listed here. "
                "Take up Trip{key} and drag from a station to another.",
                key=in_brackets("tool_trip"),
            )
        )

    def _choose(self) -> None:
        self._show_chosen()
        keep_chosen_in_sight(self.table)
        self.trip_chosen.emit(self.chosen)

    def _show_chosen(self) -> None:
        network, place = self._document.network, self.chosen
        has_trips, has_choice = bool(network.trips), 0 <= place < len(network.trips)
        self.empty.setVisible(not has_trips)
        self.table.setVisible(has_trips)
        for button in (self.remove_button, self.way_button):
            button.setVisible(has_trips)
            button.setEnabled(has_choice)
        self.facts.setVisible(has_choice)
        self.unpin_button.setVisible(has_choice and self._pin() is not None)
        if has_choice:
            self.facts.show_facts(self._facts(place))

    def _facts(self, place: int) -> dict[str, str]:
        planned, plan = self.model.planned(place), self._document.plan
        if planned is None or plan is None:
            return {"Way": tr("Being worked out…")}
        if planned.length is None:
            return {"Way": tr("No way leads there.")}
        calls = calls_of(self._document.planned, plan, planned)
        passed = [reader_words(key) for key in planned.via]
        return {
            "Take": take_words(calls),
            "Way": tr("by {arms}", arms=listed(passed)) if passed else tr("past no reader"),
            "Length": length_words(planned.length),
            "Pin": self._pin_words(),
        }

    def _pin(self) -> WayPin | None:
        trip = self._document.network.trips[self.chosen]
        ways = self._document.network.ways
        return next((way for way in ways if (way.start, way.end) == (trip.start, trip.end)), None)

    def _pin_words(self) -> str:
        pin, plan = self._pin(), self._document.plan
        if pin is None or plan is None:
            return ""
        prices = [price for price in plan.prices if price.pin == pin]
        return (
            tr("The way is pinned. {price}", price=price_words(prices[0]))
            if prices
            else tr("The way is pinned.")
        )

    def _unpin(self) -> None:
        pin = self._pin()
        if pin is not None:
            self._document.edit(edits.pin_way, WayPin(pin.start, pin.end, ()))


def take_words(calls: tuple[Call, ...]) -> str:
    """``1 Salt at Mill, from East; 2 Reed at …``"""
    if not calls:
        return tr("Nothing: the defaults lead there.")
    return "; ".join(
        tr(
            "{place} {waybill} at {reader}",
            place=call.place,
            waybill=call.waybill,
            reader=reader_words(call.reader),
        )
        for call in calls
    )


def price_words(price: Price) -> str:
    """What a pin costs; one against the default of a plan may also save something."""
    amounts = (price.waybills_per_week, price.names, price.length)
    costs = [_amount_words(kind, amount) for kind, amount in enumerate(amounts) if amount > 0]
    saves = [_amount_words(kind, -amount) for kind, amount in enumerate(amounts) if amount < 0]
    if costs and saves:
        return tr("It costs {costs}, and saves {saves}.", costs=listed(costs), saves=listed(saves))
    if costs:
        return tr("It costs {costs}.", costs=listed(costs))
    return tr("It saves {saves}.", saves=listed(saves)) if saves else tr("It costs nothing.")


def _amount_words(kind: int, amount: int | float) -> str:
    return tr(AMOUNTS[kind], "", ceil(amount), amount=figure(amount))
