"""Sentences on faults, a row each; choosing one says of which faults it speaks."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QAbstractListModel, QItemSelection, QObject, QRect, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QPainter, QResizeEvent
from PySide6.QtWidgets import QListView, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from app import theme as themes
from app.panels.choosing_list import ChoosingList
from app.panels.commissioning_words import Said
from app.panels.look import font
from app.panels.rows import FRAME, MARGIN, paint_ground, rect_of
from app.panels.table_model import ROOT, Index

AROUND: Final = 7
"""Above and below the words of a row, in pixels."""
LEAST_LINES: Final = 2
"""So many lines stay in sight, however low the window."""
WRAPPED: Final = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignVCenter


class SentencesModel(QAbstractListModel):
    """The sentences in their order."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.rows: Sequence[Said] = ()
        self.is_old = False

    def show(self, rows: Sequence[Said], is_old: bool) -> None:
        """Take over sentences; the choice stays where they are the same."""
        if rows != self.rows:
            self.beginResetModel()
            self.rows, self.is_old = rows, is_old
            self.endResetModel()
        elif is_old != self.is_old:
            self.is_old = is_old
            self.dataChanged.emit(self.index(0), self.index(len(rows) - 1))

    def rowCount(self, parent: Index = ROOT) -> int:
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return self.rows[index.row()].words
        return None


class SentencesList(ChoosingList):
    """As high as its sentences where there is room, else it scrolls."""

    faults_chosen = Signal(object)
    """The faults of the chosen row."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sentences = SentencesModel(self)
        self.setModel(self.sentences)
        self.setItemDelegate(_SentenceDelegate(self.sentences))
        self.setMouseTracking(True)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.selectionModel().selectionChanged.connect(self._choose)

    def show_sentences(self, rows: Sequence[Said], is_old: bool) -> None:
        """Show sentences, grey where they are old."""
        self.sentences.show(rows, is_old)
        self._fit()

    def _fit(self) -> None:
        heights = [self.sizeHintForRow(row) for row in range(len(self.sentences.rows))]
        line = QFontMetrics(font(12)).height()
        self.setMaximumHeight(sum(heights) + 2 * FRAME)
        self.setMinimumHeight(min(sum(heights), LEAST_LINES * line + 2 * AROUND) + 2 * FRAME)

    def _choose(self, now: QItemSelection, _before: QItemSelection) -> None:
        for index in now.indexes():
            self.faults_chosen.emit(self.sentences.rows[index.row()].faults)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()


class _SentenceDelegate(QStyledItemDelegate):
    def __init__(self, model: SentencesModel) -> None:
        super().__init__(model)
        self._model = model

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        theme = themes.current()
        paint_ground(painter, option, theme)
        painter.setFont(font(12))
        painter.setPen(theme.ink2 if self._model.is_old else theme.ink)
        painter.drawText(rect_of(option).adjusted(MARGIN, 0, -MARGIN, 0), WRAPPED, str(index.data()))

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        view = option.widget
        width = view.viewport().width() if isinstance(view, QListView) else 200
        room = QRect(0, 0, width - 2 * MARGIN, 1000)
        needed = QFontMetrics(font(12)).boundingRect(room, WRAPPED, str(index.data()))
        return QSize(width, needed.height() + 2 * AROUND)
