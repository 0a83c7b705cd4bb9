"""All pieces in a list beside the plan: choosing one goes there, Enter leads on to the plan view."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QItemSelection, QRect, Qt, QTimer, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QPainter, QShowEvent
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from app import theme as themes
from app.document import Document
from app.names import part_name
from app.panels.cross import add_cross
from app.panels.look import font, label, named, panel
from app.panels.pieces_model import FACING, LEVEL, PART, STATE, PiecesModel
from app.panels.rows import paint_text
from app.panels.table_model import Index
from app.panels.tables import CellDelegate, Table
from app.translation import tr
from model.grid import Cell
from model.parts import Part

TYPED_MS: Final = 150
"""From the last letter typed until the rows follow."""
WIDTHS: Final = (46, 64, 92, 48, 0)


class PiecesPanel(QWidget):
    """A line to look for, the rows, and how many there are."""

    piece_chosen = Signal(object)
    """The cell of the chosen piece."""
    plan_asked = Signal()
    """Enter on a row: the user wants to go on in the plan view."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self._document = document
        self.model = PiecesModel(document, self)
        self.line = named(QLineEdit(placeholderText=tr("rail, 64, south-east…")), tr("Look for pieces"))
        add_cross(self.line, self.line.clear)
        self.table = _PiecesTable(tr("Pieces"), self.model, self)
        self.table.setItemDelegate(_PieceDelegate(self.table))
        self.table.set_widths(WIDTHS, {PART: tuple(map(part_name, Part))})
        self.summary = label("", "second")
        self.summary.setContentsMargins(14, 8, 14, 12)
        self._typed = QTimer(self, singleShot=True, interval=TYPED_MS)
        self._typed.timeout.connect(self.look)
        self._lay_out()
        self._connect()

    def mark(self, cells: frozenset[Cell]) -> None:
        """Choose the row of the piece that is chosen on the plan."""
        row = self.model.row_of(next(iter(cells))) if len(cells) == 1 else None
        selection = self.table.selectionModel()
        blocked = selection.blockSignals(True)
        if row is None:
            self.table.clearSelection()
        else:
            self.table.selectRow(row)
        selection.blockSignals(blocked)
        self.table.viewport().update()

    def look(self) -> None:
        """Take over at once what is typed."""
        self._typed.stop()
        self.model.look_for(self.line.text())

    def _lay_out(self) -> None:
        above = QVBoxLayout()
        above.setContentsMargins(12, 8, 12, 8)
        above.addWidget(self.line)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(above)
        column.addWidget(self.table, 1)
        column.addWidget(self.summary)

    def _connect(self) -> None:
        self.line.textChanged.connect(lambda _text: self._typed.start())
        self.line.returnPressed.connect(self._go_to_rows)
        self.table.selectionModel().selectionChanged.connect(self._choose)
        self.table.plan_asked.connect(self.plan_asked)
        for signal in (self.model.modelReset, self.model.rowsInserted, self.model.rowsRemoved):
            signal.connect(self._tell_count)

    def _go_to_rows(self) -> None:
        self.look()
        self.table.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _choose(self, _now: QItemSelection, _before: QItemSelection) -> None:
        rows = self.table.selectionModel().selectedRows()
        if rows:
            self.piece_chosen.emit(self.model.cell_of(rows[0].row()))

    def _tell_count(self) -> None:
        found, total = self.model.rowCount(), len(self._document.plan.pieces)
        if not total:
            self.summary.setText(tr("Every piece of the plan stands here once there is one."))
        elif found == total:
            self.summary.setText(tr("%n piece(s)", "", total))
        else:
            self.summary.setText(tr("{found} of {pieces}", found=found, pieces=tr("%n piece(s)", "", total)))

    def showEvent(self, event: QShowEvent) -> None:
        self.model.wake(True)
        super().showEvent(event)

    def hideEvent(self, event: QHideEvent) -> None:
        self.model.wake(False)
        super().hideEvent(event)


class _PiecesTable(Table):
    plan_asked = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.plan_asked.emit()
        else:
            super().keyPressEvent(event)


class _PieceDelegate(CellDelegate):
    def paint_content(self, painter: QPainter, room: QRect, index: Index) -> None:
        theme = themes.current()
        second = index.column() in (LEVEL, FACING, STATE)
        text = str(index.data() or "")
        paint_text(painter, room, text, font(11, index.column() == PART), theme.ink2 if second else theme.ink)
