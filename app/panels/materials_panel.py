"""The materials: what to carry, of the whole plan or of one level."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

from PySide6.QtCore import QObject, QRect, Qt
from PySide6.QtGui import QPainter, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app import theme as themes
from app.background import Newest
from app.canvas.symbols import draw_piece
from app.document import Document
from app.icons import rest_look
from app.names import part_name
from app.panels.choice_box import ChoiceBox
from app.panels.look import font, label, named, panel
from app.panels.rows import paint_text
from app.panels.table_model import Index, TableModel
from app.panels.tables import CellDelegate, Table
from app.panels.words import number
from app.translation import QT_TR_NOOP, tr
from model.parts import Part
from model.plan import Change, Plan
from model.sheet import Materials
from model.sheet.materials import Counts, counted, follow_counts, materials_of, stacks

PART, PIECES, STACKS = range(3)
TITLES: Final = (QT_TR_NOOP("part"), QT_TR_NOOP("pieces"), QT_TR_NOOP("stacks"))
TIPS: Final = (
    QT_TR_NOOP("What to carry"),
    QT_TR_NOOP("How many"),
    QT_TR_NOOP("Full stacks of 64, and the pieces over"),
)
ALL_LEVELS: Final = QT_TR_NOOP("All levels")
PART_ROLE: Final = Qt.ItemDataRole.UserRole
SYMBOL: Final = 24


class Carried(NamedTuple):
    """A row: a part and how many of it."""

    part: Part
    pieces: int


class MaterialsModel(TableModel):
    """A row a part."""

    titles = TITLES
    tips = TIPS

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._rows: list[Carried] = []

    def rows(self) -> Sequence[Carried]:
        """What stands in the table, a row each."""
        return self._rows

    def show(self, found: Materials, level: int | None) -> None:
        """Take over what is carried for a level, or for all."""
        counts = [(m.part, m.pieces if level is None else m.levels.get(level, 0)) for m in found.parts]
        rows = [Carried(part, pieces) for part, pieces in counts if pieces]
        if [row.part for row in rows] != [row.part for row in self._rows]:
            self.beginResetModel()
            self._rows = rows
            self.endResetModel()
            return
        before, self._rows = self._rows, rows
        for place, (row, other) in enumerate(zip(rows, before, strict=True)):
            if row != other:
                self.dataChanged.emit(self.index(place, PIECES), self.index(place, STACKS))

    @property
    def pieces(self) -> int:
        """All that is carried."""
        return sum(row.pieces for row in self._rows)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        row = self._rows[index.row()]
        if role == PART_ROLE:
            return row.part
        words = (part_name(row.part), str(row.pieces), str(stacks(row.pieces)))[index.column()]
        if role == Qt.ItemDataRole.DisplayRole:
            return words
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{tr(TITLES[index.column()])} {words}"
        return None


class MaterialsPanel(QWidget):
    """The table with a choice of the level; worked out only while it can be seen."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self._document = document
        self._counts: Counts | None = None
        """``None`` while they are not of the present plan."""
        self._found = Materials(())
        self._worker = Newest(self)
        self._worker.yielded.connect(self._take_over)
        self.model = MaterialsModel(self)
        self.table = Table(tr("Materials"), self.model, self)
        self.table.setItemDelegate(_MaterialDelegate(self.table))
        self.table.set_widths((0, 70, 84))
        self.levels = named(ChoiceBox(self), tr("Level of the materials"))
        self.levels.addItem(tr(ALL_LEVELS))
        self.total = label("", "second")
        self.total.setContentsMargins(14, 8, 14, 12)
        row = QHBoxLayout()
        row.setContentsMargins(14, 8, 14, 4)
        row.addWidget(self.levels)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(row)
        column.addWidget(self.table, 1)
        column.addWidget(self.total)
        column.addStretch(0)
        self.levels.currentIndexChanged.connect(self._show)
        document.changed.connect(self._follow)
        document.reset.connect(self._count_anew)

    def wait(self) -> None:
        """Wait until the materials are worked out; they arrive with the next events."""
        self._worker.finish()

    def _count_anew(self) -> None:
        self._counts = None
        self._worker.drop()
        if self.isVisible():
            plan = self._document.plan
            self._worker.ask(lambda: _count(plan))

    def _follow(self, change: Change, _reshaped: object) -> None:
        if self._counts is None or not self.isVisible():
            self._count_anew()
        else:
            follow_counts(self._counts, change)
            self._take_over(self._counts)

    def _take_over(self, counts: object) -> None:
        assert isinstance(counts, Counter)
        self._counts = counts
        self._found = materials_of(counts)
        self._offer_levels()
        self._show()

    def _offer_levels(self) -> None:
        present = self.levels.currentData()
        here = sorted({level for material in self._found.parts for level in material.levels}, reverse=True)
        if here == [self.levels.itemData(index) for index in range(1, self.levels.count())]:
            return
        blocked = self.levels.blockSignals(True)
        self.levels.clear()
        self.levels.addItem(tr(ALL_LEVELS))
        for level in here:
            self.levels.addItem(tr("Level {number}", number=number(level)), level)
        self.levels.setCurrentIndex(here.index(present) + 1 if present in here else 0)
        self.levels.blockSignals(blocked)

    def _show(self, *_: object) -> None:
        self.model.show(self._found, self.levels.currentData())
        self.table.setVisible(bool(self.model.pieces))
        self.table.fit_rows()
        none = tr("What to carry is counted here as you draw.")
        self.total.setText(
            tr("{counted} in all", counted=tr("%n piece(s)", "", self.model.pieces))
            if self.model.pieces
            else none
        )

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self._counts is None:
            self._count_anew()


class _MaterialDelegate(CellDelegate):
    def paint_content(self, painter: QPainter, room: QRect, index: Index) -> None:
        theme = themes.current()
        if index.column() == PART:
            top = room.center().y() - SYMBOL // 2 + 1
            look = rest_look(Part(index.data(PART_ROLE)))
            draw_piece(painter, room.left(), top, SYMBOL, look, theme)
            room = room.adjusted(SYMBOL + 10, 0, 0, 0)
        paint_text(painter, room, str(index.data()), font(12), theme.ink)


def _count(plan: Plan) -> Iterator[object]:
    yield counted(plan.pieces)
