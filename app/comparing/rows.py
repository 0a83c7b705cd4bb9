"""What differs as rows of a list: what a builder does, what of it, and where."""

from __future__ import annotations

from collections.abc import Hashable, Iterable
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter

from app import theme as themes
from app.canvas.symbols.differences import draw_difference_sign
from app.compare_words import aspect_words, beside_words, name_words
from app.names import part_name
from app.panels.findings_delegate import FindingsDelegate
from app.panels.findings_model import FINDING_ROLE, PLACE_ROLE, SECOND_ROLE
from app.panels.kept_rows import KeptRows
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
SIGN: Final = 16
"""px, the width of a sign in a row."""


@dataclass(frozen=True)
class ComparedRow:
    """A difference, drawn as a finding is."""

    key: Hashable
    kind: Kind
    title: str
    second: str
    place: str
    cell: Cell | None
    """Where to look; ``None`` where it is in no cell."""
    waived: bool = False
    """What differs cannot be set aside."""


def rows_of(differences: Iterable[Difference], beside: Iterable[Beside]) -> list[ComparedRow]:
    """The cells that differ, then what differs beside the pieces."""
    return [*map(_cell_row, differences), *map(_beside_row, beside)]


def _cell_row(found: Difference) -> ComparedRow:
    piece = found.after if found.before is None else found.before
    assert piece is not None, "one of the two plans has a piece"
    name = part_name(piece.part)
    title = tr(TITLES[found.kind], part=name if found.kind is Kind.RESHAPED else name.lower())
    return ComparedRow(found.at, found.kind, title, aspect_words(found), str(found.at), found.at)


def _beside_row(found: Beside) -> ComparedRow:
    name = name_words(found)
    cell = next(filter(None, map(_cell_of, (found.after, found.before))), None)
    place = "" if cell is None else str(cell)
    key = (found.what, found.name)
    return ComparedRow(key, Kind.CHANGED, name[0].upper() + name[1:], beside_words(found), place, cell)


def _cell_of(value: object) -> Cell | None:
    """Where an arm is; what else stands beside the pieces is nowhere."""
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
            return row.place
        if role == SECOND_ROLE:
            return row.second
        if role == FINDING_ROLE:
            return row
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(f"{row.title}\n{row.second}".rstrip())
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return ", ".join(filter(None, (row.title, row.second, row.place)))
        return None


class DifferencesDelegate(FindingsDelegate):
    """Draws a row with the sign that the plan view has for it."""

    def draw_mark(self, painter: QPainter, x: float, y: float, index: Index) -> None:
        row = index.data(FINDING_ROLE)
        draw_difference_sign(painter, x, y, row.kind, themes.current(), SIGN)
