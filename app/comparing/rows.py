"""What differs as rows of a list: what a builder does, what of it, and where."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final, TypeAlias

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem

from app import theme as themes
from app.canvas.symbols.differences import draw_difference_sign
from app.compare_words import aspect_words, beside_words, name_words
from app.names import part_name
from app.panels.findings_delegate import MARKER_MIDDLE, TEXT_LEFT
from app.panels.findings_model import FINDING_ROLE, PLACE_ROLE, SECOND_ROLE
from app.panels.kept_rows import KeptRows
from app.panels.look import font
from app.panels.rows import MARGIN, paint_ground, paint_text, rect_of
from app.panels.table_model import Index
from app.panels.words import plain_tip
from app.translation import QT_TR_NOOP, tr
from model.comparing import Beside, Difference, Kind
from model.grid import Cell
from model.plan import Arm

TITLES: Final = {
    Kind.TAKEN: QT_TR_NOOP("Take away {part}"),
    Kind.TURNED: QT_TR_NOOP("Turn {part}"),
    Kind.CHANGED: QT_TR_NOOP("Change {part}"),
    Kind.PLACED: QT_TR_NOOP("Place {part}"),
    Kind.RESHAPED: QT_TR_NOOP("{part} lies otherwise"),
}
ROW: Final = 30
GAP: Final = 8
SIGN: Final = 16
"""px, the width of a sign in a row."""


@dataclass(frozen=True)
class CellRow:
    """A cell that differs, drawn as a finding is; its words are made when they are shown."""

    found: Difference
    waived: bool = False
    """What differs cannot be set aside."""

    @property
    def key(self) -> Cell:
        """A cell differs once."""
        return self.found.at

    @property
    def kind(self) -> Kind:
        """Which sign it has."""
        return self.found.kind

    @property
    def cell(self) -> Cell | None:
        """Where to look."""
        return self.found.at

    @property
    def title(self) -> str:
        """``Take away rail``"""
        piece = self.found.after if self.found.before is None else self.found.before
        assert piece is not None, "one of the two plans has a piece"
        name = part_name(piece.part)
        return tr(TITLES[self.kind], part=name if self.kind is Kind.RESHAPED else name.lower())

    @property
    def second(self) -> str:
        """``facing up → facing east``"""
        return aspect_words(self.found)


@dataclass(frozen=True)
class BesideRow:
    """What differs beside the pieces, in the same form."""

    found: Beside
    waived: bool = False
    kind = Kind.CHANGED

    @property
    def key(self) -> tuple[str, str]:
        """What it is, and its name."""
        return self.found.what, self.found.name

    @property
    def cell(self) -> Cell | None:
        """Where an arm is; what else stands beside the pieces is nowhere."""
        return next(filter(None, map(_cell_of, (self.found.after, self.found.before))), None)

    @property
    def title(self) -> str:
        """``Arm Mill``"""
        name = name_words(self.found)
        return name[0].upper() + name[1:]

    @property
    def second(self) -> str:
        """``idle Fen → none``"""
        return beside_words(self.found)


ComparedRow: TypeAlias = CellRow | BesideRow


def rows_of(differences: Iterable[Difference], beside: Iterable[Beside]) -> list[ComparedRow]:
    """The cells that differ, then what differs beside the pieces."""
    return [*map(CellRow, differences), *map(BesideRow, beside)]


def place_words(row: ComparedRow) -> str:
    """Its cell, where it has one."""
    return "" if row.cell is None else str(row.cell)


def row_words(row: ComparedRow) -> str:
    """All that a row says, in one line."""
    return ", ".join(filter(None, (row.title, row.second, place_words(row))))


def _cell_of(value: object) -> Cell | None:
    if not isinstance(value, Arm):
        return None
    end = value.leave if value.enter is None else value.enter
    return None if end is None else end.at


class DifferencesModel(KeptRows[ComparedRow]):
    """The rows in their order."""

    def row_of(self, row: ComparedRow) -> int | None:
        """Where what differs there stands now; ``None`` where nothing differs there any more."""
        return next((number for number, other in enumerate(self._rows) if other.key == row.key), None)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        row = self.at(index.row())
        if role == Qt.ItemDataRole.DisplayRole:
            return row.title
        if role == PLACE_ROLE:
            return place_words(row)
        if role == SECOND_ROLE:
            return row.second
        if role == FINDING_ROLE:
            return row
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(f"{row.title}\n{row.second}".rstrip())
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return row_words(row)
        return None


class DifferencesDelegate(QStyledItemDelegate):
    """A row in one line, as many are gone through: sign, title, what of it, place."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        theme, rect, row = themes.current(), rect_of(option), index.data(FINDING_ROLE)
        paint_ground(painter, option, theme)
        middle = rect.top() + ROW / 2
        draw_difference_sign(painter, rect.left() + MARKER_MIDDLE, middle, row.kind, theme, SIGN)
        line = rect.adjusted(TEXT_LEFT, 0, -MARGIN, 0)
        place = paint_text(painter, line, place_words(row), font(11), theme.ink2, right=True)
        line = line.adjusted(0, 0, -place - GAP, 0)
        title = paint_text(painter, line, row.title, font(12, True), theme.ink)
        paint_text(painter, line.adjusted(title + GAP, 0, 0, 0), row.second, font(11), theme.ink2)

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        return QSize(200, ROW)
