"""The table of the test runs: a box to tick, and a choice of what the cart did."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import (
    QAbstractItemModel,
    QItemSelection,
    QItemSelectionModel,
    QPointF,
    QRect,
    QRectF,
    Qt,
    QTimer,
    Signal,
)
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPen
from PySide6.QtWidgets import QComboBox, QStyleOptionViewItem, QWidget

from app import theme as themes
from app.panels.choice_box import ChoiceBox
from app.panels.commissioning_model import NUMBER, SAW, SAW_ROLE, RunsModel
from app.panels.editing_delegate import EditingDelegate
from app.panels.look import font, named
from app.panels.rows import FRAME, paint_text
from app.panels.table_model import Index
from app.panels.tables import HEADER, ROW, Table
from app.theme import Theme
from app.translation import tr

BOX: Final = 14
"""Of the box to tick, in pixels."""
WIDEST_CHOICE: Final = 320
"""Of the list of what a cart may have done, in pixels; the cell is too narrow for most names."""
LEAST_ROWS: Final = 2
"""So many runs stay in sight, however low the window."""


class RunsTable(Table):
    """Space ticks the chosen run, Return offers what its cart may have done; so do clicks on either."""

    run_chosen = Signal(object)
    """The run whose way is to be shown."""

    def __init__(self, model: RunsModel, parent: QWidget | None = None) -> None:
        self._runs = model
        self._is_taking_over = False
        self._was_chosen = False
        super().__init__(tr("Test runs"), model, parent)
        self.setAccessibleDescription(
            tr("Space ticks a run whose cart came out as it must; Enter offers what else it may have done.")
        )
        self.setItemDelegate(_RunDelegate(model, self))
        self.set_widths((46, 0, 0, 76, 0))
        self.setEditTriggers(Table.EditTrigger.NoEditTriggers)
        self.clicked.connect(self._act)

    def take_over(self) -> None:
        """Show what the book holds now; the chosen run stays chosen, and its way is not shown anew."""
        rows = self.selectionModel().selectedRows()
        chosen = self._runs.run(rows[0].row()) if rows else None
        self._is_taking_over = True
        self._runs.take_over()
        row = None if chosen is None else self._runs.row_of(chosen)
        # Choosing it anew would close the choices that are offered in it.
        if row is not None and row not in {index.row() for index in self.selectionModel().selectedRows()}:
            self.choose_row(row)
        self._is_taking_over = False
        self.fit_rows()
        self.setMinimumHeight(HEADER + ROW * min(LEAST_ROWS, self._runs.rowCount()) + 2 * FRAME)

    def choose_row(self, row: int) -> None:
        """Choose a run and bring it into sight."""
        choose = QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
        self.selectionModel().setCurrentIndex(self._runs.index(row, NUMBER), choose)

    def _act(self, index: Index) -> None:
        if index.column() == NUMBER:
            self._runs.tick(index.row())
        elif index.column() == SAW:
            self._offer(index.row())
        elif self._was_chosen:
            self.run_chosen.emit(self._runs.run(index.row()))

    def _offer(self, row: int) -> None:
        self.edit(self._runs.index(row, SAW))

    def selectionChanged(self, now: QItemSelection, before: QItemSelection) -> None:
        super().selectionChanged(now, before)
        rows = {index.row() for index in now.indexes()}
        if rows and not self._is_taking_over:
            self.run_chosen.emit(self._runs.run(rows.pop()))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        # A click on the row that is chosen already shows the way once more.
        self._was_chosen = self.selectionModel().isSelected(self.indexAt(event.position().toPoint()))
        super().mousePressEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows choose; the first one chooses the first row instead of passing it by."""
        row, key = self.currentIndex().row(), event.key()
        chosen = self.selectionModel().hasSelection()
        if row < 0 or self.state() == Table.State.EditingState:
            super().keyPressEvent(event)
        elif key in (Qt.Key.Key_Up, Qt.Key.Key_Down) and not chosen:
            self.choose_row(row)
        elif key == Qt.Key.Key_Space:
            self.choose_row(row)
            self._runs.tick(row)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_F2):
            self.choose_row(row)
            self._offer(row)
        else:
            super().keyPressEvent(event)


class _RunDelegate(EditingDelegate):
    """Draws the box as on the sheet; offers the arms as choices."""

    def __init__(self, model: RunsModel, parent: QWidget) -> None:
        super().__init__(parent)
        self._runs = model

    def paint_content(self, painter: QPainter, room: QRect, index: Index) -> None:
        theme = themes.current()
        did = index.data(SAW_ROLE)
        if index.column() == NUMBER:
            _paint_box(painter, room, did, theme)
            room = room.adjusted(BOX + 6, 0, 4, 0)
        quiet = index.column() == SAW and did is None
        bold = index.column() == SAW and did is False
        colour = theme.ink2 if quiet else theme.ink
        paint_text(painter, room, str(index.data()), font(11, bold), colour)

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        box = named(ChoiceBox(parent), tr("What the cart of run {row} did", row=index.row() + 1))
        for words, saw in self._runs.choices(index.row()):
            box.addItem(words, saw)
        box.setCurrentIndex(max(0, box.findData(index.data(Qt.ItemDataRole.EditRole))))
        box.view().setMinimumWidth(min(box.view().sizeHintForColumn(0) + 2 * FRAME, WIDEST_CHOICE))
        # Who asked for the choices wants to see them; a choice made is an answer given.
        box.activated.connect(lambda: self.end(box))
        QTimer.singleShot(0, box, box.showPopup)
        return box

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """The box is filled when it is made; news from the background must not change it."""

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        if isinstance(editor, QComboBox):
            model.setData(index, editor.currentData())


def _paint_box(painter: QPainter, room: QRect, did: bool | None, theme: Theme) -> None:
    """An empty box, ticked when the cart did as it must, crossed when it did not."""
    left, top = room.left() + 0.5, room.center().y() - BOX // 2 + 0.5
    painter.save()
    painter.setPen(QPen(theme.ink, 1))
    painter.fillRect(QRectF(left, top, BOX, BOX), theme.paper)
    painter.drawRect(QRectF(left, top, BOX, BOX))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(theme.ink, 2))
    if did is True:
        points = [(0.2, 0.55), (0.42, 0.78), (0.82, 0.25)]
        painter.drawPolyline([QPointF(left + BOX * x, top + BOX * y) for x, y in points])
    elif did is False:
        for y in (0.22, 0.78):
            ends = ((0.22, y), (0.78, 1 - y))
            painter.drawLine(*(QPointF(left + BOX * x, top + BOX * v) for x, v in ends))
    painter.restore()
