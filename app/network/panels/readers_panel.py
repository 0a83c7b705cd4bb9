"""The readers; choosing one lights all that passes it. A default or a name can be pinned, at a price."""

from __future__ import annotations

from msgspec import structs
from PySide6.QtCore import QPointF, QRect, Qt, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QGridLayout, QLineEdit, QPushButton, QWidget

from app import theme as themes
from app.network.document import NetworkDocument
from app.network.lit import passing
from app.network.panels.common import Facts, RowDelegate, empty_words, keep_chosen_in_sight, stacked
from app.network.panels.readers_model import PINNED_ROLE, ReaderRow, ReadersModel
from app.network.panels.trips_panel import price_words
from app.panels.choice_box import ChoiceBox
from app.panels.look import heads, named
from app.panels.row_menu import RowMenu
from app.panels.table_model import Index
from app.panels.tables import Table
from app.panels.words import listed
from app.translation import QT_TR_NOOP, from_to, tr
from model.network import edits
from model.network.network import ReaderPin
from model.plan import NAME_LIMIT

WIDTHS = (0, 76, 76, 44, 42)
FREE = QT_TR_NOOP("chosen by the program")
SHOWN = 3
"""Trips that are told one by one."""


class ReadersPanel(QWidget):
    """A row a reader; below, who passes the chosen one, and its pins."""

    reader_chosen = Signal(str)
    """``Mill/East``; empty: none."""

    def __init__(self, document: NetworkDocument, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self.model = ReadersModel(document, self)
        self.table = Table(tr("Readers"), self.model)
        self.table.setItemDelegate(_ReaderDelegate(self.table, frozenset(), self.model.figures))
        self.table.set_widths(WIDTHS)
        self.facts = Facts((QT_TR_NOOP("Call"), QT_TR_NOOP("Pass"), QT_TR_NOOP("Price")))
        self.default = named(ChoiceBox(), tr("Default"))
        self.name = named(QLineEdit(placeholderText=tr(FREE), maxLength=NAME_LIMIT), tr("Name"))
        self.unpin_button = QPushButton(tr("Unpin"))
        self.pins = self._lay_out_pins()
        self.empty = empty_words(
            tr("A junction's reader sends a cart one of two ways; what each takes is listed here.")
        )
        stacked(self, self.table, self.empty, self.facts, self.pins)
        self.table.selectionModel().selectionChanged.connect(lambda *_: self._choose())
        self.table.clicked.connect(lambda _index: self.reader_chosen.emit(self.chosen))
        self.model.modelReset.connect(self._choose)
        self.default.activated.connect(lambda _index: self._pin_default())
        self.name.editingFinished.connect(self._pin_name)
        self.unpin_button.clicked.connect(self._unpin)
        RowMenu(self.table, (self.unpin_button,))
        self.model.dataChanged.connect(lambda *_: self._show_chosen())
        document.plan_updated.connect(self._show_chosen)
        self._show_chosen()

    @property
    def row(self) -> ReaderRow | None:
        """The chosen reader."""
        rows = self.table.selectionModel().selectedRows()
        return self.model.rows()[rows[0].row()] if rows else None

    @property
    def chosen(self) -> str:
        """``Mill/East``; empty: none."""
        return self.row.key if self.row is not None else ""

    def choose(self, key: str) -> None:
        """Choose a reader; empty: none."""
        row = self.model.row_of(key) if key else None
        if row is None:
            self.table.clearSelection()
        else:
            self.table.selectRow(row)

    def finish_edit(self) -> None:
        """Take over a name that is being typed."""
        if self.name.isModified():
            self._pin_name()

    def _lay_out_pins(self) -> QWidget:
        made = QWidget()
        grid = QGridLayout(made)
        grid.setContentsMargins(14, 4, 14, 12)
        grid.setHorizontalSpacing(8)
        words = heads((tr("Default"), tr("Name")), 56)
        for row, (head, field) in enumerate(zip(words, (self.default, self.name), strict=True)):
            grid.addWidget(head, row, 0)
            grid.addWidget(field, row, 1)
        grid.addWidget(self.unpin_button, 0, 2, 2, 1)
        grid.setColumnStretch(1, 1)
        return made

    def _choose(self) -> None:
        self._show_chosen()
        keep_chosen_in_sight(self.table)
        self.reader_chosen.emit(self.chosen)

    def _show_chosen(self) -> None:
        row = self.row
        has_rows = bool(self.model.rows())
        self.empty.setVisible(not has_rows)
        self.table.setVisible(has_rows)
        self.facts.setVisible(row is not None)
        self.pins.setVisible(row is not None)
        if row is None:
            return
        pin = row.pin or ReaderPin(row.key)
        self.default.clear()
        self.default.addItems([tr(FREE), *row.spec.ways])
        self.default.setCurrentText(pin.default or tr(FREE))
        if not self.name.hasFocus() or not self.name.isModified():
            self.name.setText(pin.name or "")
        self.unpin_button.setEnabled(row.pin is not None)
        self.facts.show_facts(self._facts(row))

    def _facts(self, row: ReaderRow) -> dict[str, str]:
        document, plan = self._document, self._document.plan
        if plan is None or not row.is_planned:
            return {"Call": tr("Being worked out…")}
        found = passing(document.planned, plan, row.key)
        said = {}
        for word, calls in ((tr("Call"), True), (tr("Pass"), False)):
            trips = [plan.trips[each.trip] for each in found if each.calls is calls]
            names = [from_to(trip.start, trip.end) for trip in trips[:SHOWN]]
            more = [tr("{count} more", count=len(trips) - SHOWN)] if len(trips) > SHOWN else []
            said[word] = listed([*names, *more]) if trips else tr("no trip")
        prices = [price_words(price) for price in plan.prices if price.pin == row.pin]
        if row.pin is not None:
            said["Price"] = prices[0] if prices else tr("Being worked out…")
        return said

    def _pin_default(self) -> None:
        word = self.default.currentText()
        self._pin(default=None if word == tr(FREE) else word)

    def _pin_name(self) -> None:
        self.name.setModified(False)
        self._pin(name=self.name.text().strip() or None)

    def _pin(self, **settled: str | None) -> None:
        row = self.row
        if row is not None:
            pin = structs.replace(row.pin or ReaderPin(row.key), **settled)
            if pin != (row.pin or ReaderPin(row.key)) and not self._document.edit(edits.pin_reader, pin):
                self._show_chosen()

    def _unpin(self) -> None:
        row = self.row
        if row is not None:
            self._document.edit(edits.pin_reader, ReaderPin(row.key))


class _ReaderDelegate(RowDelegate):
    """A dot before what is pinned; a reader that nobody calls in grey."""

    cut = Qt.TextElideMode.ElideMiddle
    """Readers of one junction differ in the arm, which stands last."""

    def paint_content(self, painter: QPainter, room: QRect, index: Index) -> None:
        if index.data(PINNED_ROLE):
            painter.setBrush(themes.current().ink)
            painter.setPen(themes.current().ink)
            painter.drawEllipse(QPointF(room.left() + 3, room.center().y() + 1), 2.5, 2.5)
            room = room.adjusted(12, 0, 0, 0)
        super().paint_content(painter, room, index)
