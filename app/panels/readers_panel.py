"""The readers: what each throws; choosing one previews it on the plan."""

from __future__ import annotations

from typing import Final, NamedTuple

from PySide6.QtCore import QItemSelection, QModelIndex, QSize, QStringListModel, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import (
    QHBoxLayout,
    QListView,
    QPushButton,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from app import theme as themes
from app.document import Document
from app.panels.choosing_list import ChoosingList
from app.panels.look import font, label, named, panel
from app.panels.row_menu import RowMenu
from app.panels.rows import FRAME, MARGIN, paint_ground, paint_text, rect_of
from app.panels.switches_model import reader_sentence
from app.panels.table_model import Index
from app.translation import from_to, tr
from model.routing.junction import Junction

ROW: Final = 48


class Reader(NamedTuple):
    """What is told of a reader."""

    arm: str
    waybill: str
    throws: str


def readers_of(junction: Junction) -> list[Reader]:
    """The readers of a junction: one for each arm with a called route."""
    names = {switch.at: switch.name for switch in junction.switches}
    found = []
    for route in junction.plan.routes:
        if route.called is not None:
            thrown = junction.choice.thrown.get(route.start, frozenset())
            throws = reader_sentence([name for cell, name in names.items() if cell in thrown])
            found.append(Reader(route.start, from_to(route.waybill or route.start, route.called), throws))
    return found


class ReadersPanel(QWidget):
    """A row a reader."""

    preview_asked = Signal(object)
    """The arm whose reader is to be shown holding; ``None`` ends the preview."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self._document = document
        self.readers: list[Reader] = []
        self.model = QStringListModel(self)
        self.list = named(ChoosingList(self), tr("Readers"))
        self.list.setModel(self.model)
        self.list.setEditTriggers(QListView.EditTrigger.NoEditTriggers)
        self.list.setItemDelegate(_ReaderDelegate(self))
        self.list.setMouseTracking(True)
        self.empty = label(
            tr("A route with a called way has a reader; what it throws is listed here."), "second"
        )
        self.empty.setWordWrap(True)
        self.empty.setContentsMargins(14, 12, 14, 12)
        self.preview_button = QPushButton(tr("Preview"), self)
        self.end_button = QPushButton(tr("End preview"), self)
        row = QHBoxLayout()
        row.setContentsMargins(14, 8, 14, 12)
        row.setSpacing(8)
        row.addWidget(self.preview_button)
        row.addWidget(self.end_button)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.empty)
        column.addWidget(self.list, 1)
        column.addLayout(row)
        column.addStretch(0)
        self.list.selectionModel().selectionChanged.connect(self._choose)
        self.list.clicked.connect(self._preview)
        RowMenu(self.list, (self.preview_button, self.end_button))
        self.preview_button.clicked.connect(lambda: self._preview(self.list.currentIndex()))
        self.end_button.clicked.connect(self._end)
        document.work_out_beside(readers_of)
        document.junction_updated.connect(self.take_over)
        self.show_preview(False)
        self.take_over()

    def show_preview(self, is_on: bool) -> None:
        """Only a preview can be ended."""
        self.end_button.setEnabled(is_on)

    def take_over(self) -> None:
        """Show the readers that the document has now."""
        readers = self._document.shown(readers_of) or []
        if readers != self.readers:
            self.readers = readers
            self.model.setStringList(
                [
                    tr("{arm}: {throws}, waybill {waybill}", arm=r.arm, throws=r.throws, waybill=r.waybill)
                    for r in readers
                ]
            )
        self.empty.setVisible(not readers)
        self.list.setVisible(bool(readers))
        self.list.setMaximumHeight(ROW * len(readers) + 2 * FRAME)
        self.preview_button.setVisible(bool(readers))
        self.end_button.setVisible(bool(readers))
        self.preview_button.setEnabled(self.list.currentIndex().isValid())

    def _choose(self, now: QItemSelection, _before: QItemSelection) -> None:
        for index in now.indexes():
            self._preview(index)
        self.preview_button.setEnabled(self.list.currentIndex().isValid())

    def _preview(self, index: QModelIndex) -> None:
        if index.isValid():
            self.preview_asked.emit(self.readers[index.row()].arm)

    def _end(self) -> None:
        self.list.clearSelection()
        self.preview_asked.emit(None)


class _ReaderDelegate(QStyledItemDelegate):
    def __init__(self, panel: ReadersPanel) -> None:
        super().__init__(panel)
        self._panel = panel

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        theme = themes.current()
        reader = self._panel.readers[index.row()]
        paint_ground(painter, option, theme)
        room = rect_of(option).adjusted(MARGIN, 6, -MARGIN, 0)
        room.setHeight(18)
        half = room.width() // 2
        paint_text(painter, room.adjusted(0, 0, -half, 0), reader.arm, font(12, True), theme.ink)
        paint_text(painter, room.adjusted(half, 0, 0, 0), reader.waybill, font(11), theme.ink2, right=True)
        paint_text(painter, room.translated(0, 18), reader.throws, font(11), theme.ink2)

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        return QSize(200, ROW)
