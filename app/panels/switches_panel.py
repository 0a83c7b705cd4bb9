"""The switches: choosing one chooses its cell on the plan."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QItemSelection, QPointF, QRect, QRectF, Signal
from PySide6.QtGui import QFontMetrics, QPainter, QPen
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app import theme as themes
from app.document import Document
from app.panels.look import font, label, panel
from app.panels.rows import paint_text
from app.panels.switches_model import (
    CALLED_BY,
    IDLE,
    NAME,
    POWERED,
    RESTS,
    SWITCH_ROLE,
    SwitchesModel,
    summary,
)
from app.panels.symbols import paint_shape
from app.panels.table_model import Index
from app.panels.tables import CellDelegate, Table
from app.theme import Theme
from app.translation import tr
from model.grid import Cell
from model.pauses import with_pauses
from model.routing.junction import Junction, Switch

WIDEST_CELL: Final = 112


class SwitchesPanel(QWidget):
    """The table, and one sentence on the whole choice."""

    switch_chosen = Signal(object)
    """The cell of the chosen switch."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self._document = document
        self.model = SwitchesModel(self)
        self.table = Table(tr("Switches"), self.model, self)
        self.table.setItemDelegate(_SwitchDelegate(self.table))
        self.table.hide()
        self.summary = label("", "second")
        self.summary.setWordWrap(True)
        self.summary.setContentsMargins(14, 8, 14, 12)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.table, 1)
        column.addWidget(self.summary)
        column.addStretch(0)
        self.table.selectionModel().selectionChanged.connect(self._choose)
        document.work_out_beside(longest_place)
        document.junction_updated.connect(self.take_over)
        self.take_over()

    def take_over(self) -> None:
        """Show the switches that the document has now."""
        junction = self._document.junction
        if junction is None:
            self._show(())
            self.summary.setText(summary((), 0, serves=True))
            return
        self._show(junction.switches)
        said = summary(junction.switches, len(junction.wanted), serves=junction.control.serves)
        self.summary.setText(
            tr("{said} Being worked out anew…", said=said) if self._document.junction_is_old else said
        )

    def _show(self, switches: tuple[Switch, ...]) -> None:
        if not self.model.show(switches):
            return
        widest = QFontMetrics(font(11)).horizontalAdvance(self._document.shown(longest_place) or "")
        cell = min(max(widest + 12, 68), WIDEST_CELL)
        self.table.set_widths(
            (40, cell, 43, 64, 42, 0), {IDLE: (tr("rests"),), CALLED_BY: (tr("not wired"),)}
        )
        self.table.setVisible(bool(switches))
        self.table.fit_rows()

    def mark(self, cells: frozenset[Cell]) -> None:
        """Choose the row of the switch that is chosen on the plan."""
        rows = (
            [row for cell in cells if (row := self.model.row_of(cell)) is not None] if len(cells) == 1 else []
        )
        selection = self.table.selectionModel()
        blocked = selection.blockSignals(True)
        if rows:
            self.table.selectRow(rows[0])
        else:
            self.table.clearSelection()
        selection.blockSignals(blocked)
        self.table.viewport().update()

    def _choose(self, _now: QItemSelection, _before: QItemSelection) -> None:
        indexes = self.table.selectionModel().selectedRows()
        if indexes:
            self.switch_chosen.emit(indexes[0].data(SWITCH_ROLE).at)


def longest_place(junction: Junction) -> str:
    """The place of a switch that takes the most room; figures are all as wide."""
    return max((str(switch.at) for switch in with_pauses(junction.switches)), key=len, default="")


class _SwitchDelegate(CellDelegate):
    def paint_content(self, painter: QPainter, room: QRect, index: Index) -> None:
        theme = themes.current()
        switch = index.data(SWITCH_ROLE)
        column = index.column()
        if column in (RESTS, POWERED):
            shape = switch.resting if column == RESTS else switch.powered
            square = QRect(room.left() + (8 if column == POWERED else 2), room.center().y() - 11, 24, 24)
            paint_shape(painter, square, shape, theme)
        elif column == IDLE and switch.inverter:
            _paint_inverter(painter, room, theme)
        else:
            grey = column in (IDLE, CALLED_BY) and switch.idle is None
            text = str(index.data())
            paint_text(painter, room, text, font(11, column == NAME), theme.ink2 if grey else theme.ink)


def _paint_inverter(painter: QPainter, room: QRect, theme: Theme) -> None:
    """The drive with the circle of the inverter, as on the plan."""
    left, middle = room.left() + 1.5, room.center().y() + 0.5
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(theme.ink, 1.5))
    painter.drawRect(QRectF(left, middle - 5, 11, 10))
    painter.drawEllipse(QPointF(left + 15, middle), 3.4, 3.4)
    painter.restore()
