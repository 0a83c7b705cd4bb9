"""The stations: how many set out and arrive in a week; choosing one shows it on the map."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Sequence
from typing import NamedTuple

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QPushButton, QWidget

from app.network.document import NetworkDocument
from app.network.items import Item, Kind
from app.network.panels.common import RowDelegate, button_row, empty_words, stacked
from app.network.times import figure
from app.panels.row_menu import RowMenu
from app.panels.table_model import Index, TableModel
from app.panels.tables import Table
from app.shown_keys import follow_keys, in_brackets
from app.translation import QT_TR_NOOP, tr
from model.network.network import Network

NAME, OUT, ARRIVING, LINKS = range(4)


class StationRow(NamedTuple):
    """What is told of a station."""

    name: str
    out: int | float
    arriving: int | float
    links: int


class StationsModel(TableModel):
    """A row a station, in file order."""

    titles = (QT_TR_NOOP("station"), QT_TR_NOOP("set out"), QT_TR_NOOP("arrive"), QT_TR_NOOP("links"))
    tips = (
        QT_TR_NOOP("The station"),
        QT_TR_NOOP("Carts a week that set out from it"),
        QT_TR_NOOP("Carts a week that go to it"),
        QT_TR_NOOP("Links from it and to it"),
    )
    figures = frozenset({OUT, ARRIVING, LINKS})

    def __init__(self, document: NetworkDocument, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self._rows = rows_of(document.network)
        document.changed.connect(lambda *_: self._take_over())
        document.reset.connect(self._take_over)

    def rows(self) -> Sequence[StationRow]:
        """The stations."""
        return self._rows

    def _take_over(self) -> None:
        rows = rows_of(self._document.network)
        if len(rows) == len(self._rows):
            self._rows = rows
            if rows:
                self.dataChanged.emit(self.index(0, 0), self.index(len(rows) - 1, LINKS))
        else:
            self.beginResetModel()
            self._rows = rows
            self.endResetModel()

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        row = self._rows[index.row()]
        value = row[index.column()]
        said = value if isinstance(value, str) else figure(value)
        if role == Qt.ItemDataRole.DisplayRole:
            return said
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{self.title(index.column())}: {said}"
        return None


def rows_of(network: Network) -> list[StationRow]:
    """The stations with what begins and ends at each."""
    out: defaultdict[str, int | float] = defaultdict(int)
    arriving: defaultdict[str, int | float] = defaultdict(int)
    for trip in network.trips:
        out[trip.start] += trip.per_week
        arriving[trip.end] += trip.per_week
    links = Counter(end for link in network.links for end in (link.start, link.end))
    return [
        StationRow(each.name, out[each.name], arriving[each.name], links[each.name])
        for each in network.stations
    ]


class StationsPanel(QWidget):
    """Choosing a station goes there."""

    station_chosen = Signal(object)
    """An Item."""
    change_asked = Signal(object)

    def __init__(self, document: NetworkDocument, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self.model = StationsModel(document, self)
        self.table = Table(tr("Stations"), self.model)
        self.table.setItemDelegate(RowDelegate(self.table, frozenset({NAME}), self.model.figures))
        self.table.set_widths((0, 72, 72, 56))
        self.change_button = QPushButton(tr("Change…"))
        self.change_button.setAccessibleName(tr("Change station"))
        self.empty = empty_words("")
        follow_keys(self, self._tell_empty)
        stacked(self, self.table, self.empty, button_row(self.change_button))
        self.table.selectionModel().selectionChanged.connect(lambda *_: self._choose())
        self.table.clicked.connect(lambda _index: self._choose())
        self.table.doubleClicked.connect(lambda _index: self._change())
        self.change_button.clicked.connect(self._change)
        RowMenu(self.table, (self.change_button,))
        document.changed.connect(lambda *_: self._show())
        document.reset.connect(self._show)
        self._show()

    @property
    def chosen(self) -> Item | None:
        """The chosen station."""
        rows = self.table.selectionModel().selectedRows()
        return Item(Kind.STATION, rows[0].row()) if rows else None

    def _tell_empty(self) -> None:
        self.empty.setText(
            tr(
                "Where carts start and end is listed here. Take up Station{key} and click on the map.",
                key=in_brackets("tool_station"),
            )
        )

    def _choose(self) -> None:
        self.change_button.setEnabled(self.chosen is not None)
        if self.chosen is not None:
            self.station_chosen.emit(self.chosen)

    def _change(self) -> None:
        if self.chosen is not None:
            self.change_asked.emit(self.chosen)

    def _show(self) -> None:
        has_rows = bool(self.model.rows())
        self.empty.setVisible(not has_rows)
        self.table.setVisible(has_rows)
        self.change_button.setVisible(has_rows)
        self.change_button.setEnabled(self.chosen is not None)
