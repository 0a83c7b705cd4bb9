"""What the tables of the side panel have in common."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Final

from PySide6.QtCore import QAbstractItemModel, QEvent, QModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter, QResizeEvent
from PySide6.QtWidgets import (
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from app import theme as themes
from app.panels.choosing_list import first_arrow_chooses
from app.panels.look import font
from app.panels.rows import FRAME, MARGIN, paint_ground, paint_text, rect_of
from app.panels.table_model import Index

ROW: Final = 32
HEADER: Final = 28
SMALL: Final = 11
"""Size of the letters of titles and most cells, in px."""
BESIDE: Final = 6
"""px left of what stands in a cell, and about as many right of it."""
AROUND: Final = 4
"""px that Qt keeps free around a title besides."""
NOTHING: Final[Mapping[int, Sequence[str]]] = MappingProxyType({})


class Table(QTableView):
    """Whole rows are chosen; columns are not moved; Tab leaves the table."""

    def __init__(self, name: str, model: QAbstractItemModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._widths: tuple[int, ...] = ()
        self._wanted: tuple[int, ...] = ()
        self.row_under = -1
        """The row under the pointer: a row is chosen as a whole, and shows so before."""
        self.setAccessibleName(name)
        self.setModel(model)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setMouseTracking(True)
        self.entered.connect(lambda index: self._point_at(index.row()))
        self.viewportEntered.connect(lambda: self._point_at(-1))
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
        header.setTextElideMode(Qt.TextElideMode.ElideRight)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)

    def fit_rows(self) -> None:
        """Be no taller than the rows, so that what follows the table stands right below them."""
        self.setMaximumHeight(HEADER + ROW * max(1, self.model().rowCount()) + 2 * FRAME)

    def finish_edit(self) -> None:
        """Take over what is being typed in a cell."""
        if self.state() == QTableView.State.EditingState:
            self.setCurrentIndex(QModelIndex())

    def set_widths(self, widths: tuple[int, ...], words: Mapping[int, Sequence[str]] = NOTHING) -> None:
        """Least widths in pixels; 0 shares out the rest.

        Where there is room, a column is as wide as its title and the words that may stand in it need.
        """
        # Some cells are in bold, which is a little wider.
        header, metrics = self.horizontalHeader(), QFontMetrics(font(SMALL, True))
        self._widths = widths
        self._wanted = tuple(
            max(width, self._title_width(column), _widest(metrics, words.get(column, ())))
            + (MARGIN - BESIDE if column == len(widths) - 1 and not width else 0)
            for column, width in enumerate(widths)
        )
        header.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self._share_out()

    @property
    def wanted_width(self) -> int:
        """The width in px at which no title is cut."""
        return sum(self._wanted) + 2 * FRAME

    def _title_width(self, column: int) -> int:
        title = self.model().headerData(column, Qt.Orientation.Horizontal)
        margin = MARGIN if column == 0 else BESIDE
        return QFontMetrics(font(SMALL)).horizontalAdvance(title) + margin + BESIDE + AROUND if title else 0

    def _share_out(self) -> None:
        """Give the columns what they want as far as the room goes; what is too long loses its end."""
        columns = list(enumerate(zip(self._widths, self._wanted, strict=True)))
        more = sum(wanted - width for _, (width, wanted) in columns if width)
        spare = self.viewport().width() - sum(width or wanted for _, (width, wanted) in columns)
        part = min(1.0, max(0.0, spare / more)) if more else 0.0
        given = {column: width + int(part * (wanted - width)) for column, (width, wanted) in columns if width}
        left = self.viewport().width() - sum(given.values())
        open_ones = [column for column, (width, _) in columns if not width]
        # Those that want most come first: what is left is shared out equally among the others.
        for waiting, column in enumerate(sorted(open_ones, key=lambda column: self._wanted[column])[::-1]):
            share = max(0, left) // (len(open_ones) - waiting)
            given[column] = max(share, min(self._wanted[column], max(0, left)))
            left -= given[column]
        for column, width in given.items():
            self.horizontalHeader().resizeSection(column, width)

    def _point_at(self, row: int) -> None:
        if row != self.row_under:
            self.row_under = row
            self.viewport().update()

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._point_at(-1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._share_out()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not first_arrow_chooses(self, event):
            super().keyPressEvent(event)


class CellDelegate(QStyledItemDelegate):
    """Text in a cell, on the row's ground; the first column keeps the margin."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        if isinstance(option.widget, Table) and index.row() == option.widget.row_under:
            option.state |= QStyle.StateFlag.State_MouseOver
        paint_ground(painter, option, themes.current(), index.column() == 0, _is_last(index))
        self.paint_content(painter, self.room(rect_of(option), index), index)

    def room(self, rect: QRect, index: Index) -> QRect:
        """The part of the cell that the content may use."""
        left, right = MARGIN if index.column() == 0 else BESIDE, MARGIN if _is_last(index) else 4
        return rect.adjusted(left, 0, -right, 0)

    def paint_content(self, painter: QPainter, room: QRect, index: Index) -> None:
        """The content; the row's ground is painted already."""
        paint_text(painter, room, str(index.data()), font(SMALL), themes.current().ink)

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        return QSize(40, ROW)


def _is_last(index: Index) -> bool:
    return index.column() == index.model().columnCount() - 1


def _widest(metrics: QFontMetrics, words: Sequence[str]) -> int:
    """What the longest of the words needs in a cell, in px."""
    return max((metrics.horizontalAdvance(word) + 2 * BESIDE for word in words), default=0)
