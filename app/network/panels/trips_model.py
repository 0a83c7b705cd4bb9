"""The trips as a table; how many a week is edited in place."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from msgspec import structs
from PySide6.QtCore import QObject, Qt

from app.network.document import NetworkDocument
from app.network.numbers import without_marks
from app.network.panels.common import OLD_ROLE
from app.network.times import clock_words, figure, time_words
from app.panels.table_model import Index, TableModel
from app.panels.words import plain_tip
from app.translation import QT_TR_NOOP, tr
from model.network import edits
from model.network.network import Trip
from model.network.result import TripPlan

FROM, TO, WEEK, WAYBILLS, CELLS, TIME = range(6)
NONE: Final = QT_TR_NOOP("none")


class TripsModel(TableModel):
    """A row a trip, in file order."""

    titles = (
        QT_TR_NOOP("from"),
        QT_TR_NOOP("to"),
        QT_TR_NOOP("a week"),
        QT_TR_NOOP("waybills"),
        QT_TR_NOOP("cells"),
        QT_TR_NOOP("time"),
    )
    tips = (
        QT_TR_NOOP("The station from which they ride"),
        QT_TR_NOOP("The station to which they ride"),
        QT_TR_NOOP("How many ride a week"),
        QT_TR_NOOP("What to take along, in the order in which it is taken"),
        QT_TR_NOOP("How far it is, in cells"),
        QT_TR_NOOP("How long it takes at 8 cells a second, in minutes and seconds"),
    )

    figures = frozenset({WEEK, CELLS, TIME})

    def __init__(self, document: NetworkDocument, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self._trips = document.network.trips
        document.changed.connect(lambda *_: self._take_over())
        document.reset.connect(self._take_over)
        document.plan_updated.connect(self._tell)

    def rows(self) -> Sequence[Trip]:
        """The trips."""
        return self._trips

    def planned(self, row: int) -> TripPlan | None:
        """What the plan says of a trip; ``None`` where it says nothing of it yet."""
        return planned_trip(self._document, row)

    def _take_over(self) -> None:
        trips = self._document.network.trips
        if len(trips) == len(self._trips):
            self._trips = trips
            self._tell()
        else:
            self.beginResetModel()
            self._trips = trips
            self.endResetModel()

    def _tell(self) -> None:
        if self._trips:
            self.dataChanged.emit(self.index(0, 0), self.index(len(self._trips) - 1, TIME))

    def _said(self, row: int, column: int) -> str:
        trip = self._trips[row]
        if column in (FROM, TO):
            return trip.start if column == FROM else trip.end
        if column == WEEK:
            return figure(trip.per_week)
        planned = self.planned(row)
        if planned is None:
            return "…"
        if planned.length is None:
            return tr("no way") if column == WAYBILLS else "—"
        if column == WAYBILLS:
            return ", ".join(planned.waybills) or tr(NONE)
        return figure(planned.length) if column == CELLS else clock_words(planned.length)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        said = self._said(index.row(), index.column())
        if role == Qt.ItemDataRole.DisplayRole:
            return said
        if role == Qt.ItemDataRole.ToolTipRole and index.column() in (FROM, TO, WAYBILLS):
            return plain_tip(said)
        if role == Qt.ItemDataRole.EditRole:
            return str(self._trips[index.row()].per_week)
        if role == OLD_ROLE:
            return self._document.is_old_for_long and index.column() > WEEK
        if role == Qt.ItemDataRole.AccessibleTextRole:
            if index.column() == TIME and (planned := self.planned(index.row())) is not None:
                said = time_words(planned.length)
            return f"{self.title(index.column())}: {said}"
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        return flags | Qt.ItemFlag.ItemIsEditable if index.column() == WEEK else flags

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        trip = self._trips[index.row()]
        try:
            number = float(without_marks(str(value)))
        except ValueError:
            self._document.refused.emit(tr("“{value}” is no number of trips.", value=value))
            return False
        number = int(number) if number.is_integer() else number
        if role != Qt.ItemDataRole.EditRole or number == trip.per_week:
            return False
        return self._document.edit(edits.set_trip, index.row(), structs.replace(trip, per_week=number))


def planned_trip(document: NetworkDocument, row: int) -> TripPlan | None:
    """What the plan says of a trip, as long as it speaks of one between the same stations."""
    trip = document.network.trips[row]
    trips = document.plan.trips if document.plan is not None else ()
    if row < len(trips) and (trips[row].start, trips[row].end) == (trip.start, trip.end):
        return trips[row]
    return None
