"""What the tables of the side panel have in common."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QAbstractItemModel, QModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QKeyEvent, QPainter
from PySide6.QtWidgets import QHeaderView, QStyledItemDelegate, QStyleOptionViewItem, QTableView, QWidget

from app import theme as themes
from app.panels.choosing_list import first_arrow_chooses
from app.panels.look import font
from app.panels.rows import FRAME, MARGIN, paint_ground, paint_text, rect_of
from app.panels.table_model import Index

ROW: Final = 32
HEADER: Final = 28


class Table(QTableView):
    """Whole rows are chosen; columns are not moved; Tab leaves the table."""

    def __init__(self, name: str, model: QAbstractItemModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setModel(model)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setMouseTracking(True)
        self.setSelectionBehavior(QTableView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QTableView.SelectionMode.SingleSelection)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QTableView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(ROW)
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        header = self.horizontalHeader()
        header.setFixedHeight(HEADER)
        header.setMinimumSectionSize(16)
        header.setHighlightSections(False)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)

    def fit_rows(self) -> None:
        """Be no taller than the rows, so that what follows the table stands right below them."""
        self.setMaximumHeight(HEADER + ROW * max(1, self.model().rowCount()) + 2 * FRAME)

    def finish_edit(self) -> None:
        """Take over what is being typed in a cell."""
        if self.state() == QTableView.State.EditingState:
            self.setCurrentIndex(QModelIndex())

    def set_widths(self, widths: tuple[int, ...]) -> None:
        """Fixed widths in pixels; 0 shares out the rest."""
        header = self.horizontalHeader()
        for column, width in enumerate(widths):
            if width:
                header.setSectionResizeMode(column, QHeaderView.ResizeMode.Fixed)
                header.resizeSection(column, width)
            else:
                header.setSectionResizeMode(column, QHeaderView.ResizeMode.Stretch)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not first_arrow_chooses(self, event):
            super().keyPressEvent(event)


class CellDelegate(QStyledItemDelegate):
    """Text in a cell, on the row's ground; the first column keeps the margin."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        paint_ground(painter, option, themes.current(), index.column() == 0)
        self.paint_content(painter, self.room(rect_of(option), index), index)

    def room(self, rect: QRect, index: Index) -> QRect:
        """The part of the cell that the content may use."""
        return rect.adjusted(MARGIN if index.column() == 0 else 6, 0, -4, 0)

    def paint_content(self, painter: QPainter, room: QRect, index: Index) -> None:
        """The content; the row's ground is painted already."""
        paint_text(painter, room, str(index.data()), font(11), themes.current().ink)

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        return QSize(40, ROW)
