"""All pieces as rows: another way to read a plan. A row is worked out when it is seen, and no sooner."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence
from typing import Final

from PySide6.QtCore import QObject, Qt

from app.canvas.symbols.pieces import TURNED
from app.document import Document
from app.names import part_name
from app.panels.here import here_sentence, set_on
from app.panels.table_model import ROOT, Index, TableModel
from app.panels.words import number, plain_tip
from app.translation import QT_TR_NOOP, tr
from model.grid import Cell
from model.parts import RAILS, Part
from model.pieces import Piece
from model.plan import Change

LEVEL, PLACE, PART, FACING, STATE = range(5)
TITLES: Final = (
    QT_TR_NOOP("level"),
    QT_TR_NOOP("x z"),
    QT_TR_NOOP("part"),
    QT_TR_NOOP("faces"),
    QT_TR_NOOP("lies, is set"),
)
TIPS: Final = (
    QT_TR_NOOP("The height at which the piece stands"),
    QT_TR_NOOP("To the east and to the south"),
    QT_TR_NOOP("What it is"),
    QT_TR_NOOP("The way that it points, where that means something"),
    QT_TR_NOOP("The shape of a rail; delay, mode and content of other pieces"),
)
ONE_BY_ONE: Final = 200
"""So many rows at most come and go one by one; after a larger change the rows are made anew."""

Key = tuple[int, int, int]
"""Level, z and x: the order of the rows is that in which one reads."""


def key_of(cell: Cell) -> Key:
    """Where a cell stands in the order of the rows."""
    return cell.y, cell.z, cell.x


class PiecesModel(TableModel):
    """The pieces that have all words looked for. Nobody looks while it is asleep: then nothing is kept up."""

    titles = TITLES
    tips = TIPS

    def __init__(self, document: Document, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self._keys: list[Key] = []
        self._words: tuple[str, ...] = ()
        self._awake = False
        document.changed.connect(self._follow)
        document.reset.connect(self._make_anew)
        document.junction_updated.connect(self._tell_all)

    def wake(self, awake: bool) -> None:
        """Somebody looks, or nobody does."""
        if awake != self._awake:
            self._awake = awake
            self._make_anew()

    def look_for(self, text: str) -> None:
        """Keep the rows that have every word: of the part, the facing, the shape, or a coordinate."""
        words = tuple(text.casefold().replace("\u2212", "-").split())
        if words != self._words:
            self._words = words
            self._make_anew()

    def rows(self) -> Sequence[Key]:
        """What stands in the table, a row each."""
        return self._keys

    def cell_of(self, row: int) -> Cell:
        """The cell of a row."""
        y, z, x = self._keys[row]
        return Cell(x, y, z)

    def row_of(self, cell: Cell) -> int | None:
        """The row of the piece in a cell, or ``None`` where it has none."""
        key = key_of(cell)
        row = bisect_left(self._keys, key)
        return row if row < len(self._keys) and self._keys[row] == key else None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        cell = self.cell_of(index.row())
        piece = self._document.plan.pieces.get(cell)
        if piece is None:
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self._text(piece, index.column())
        if role == Qt.ItemDataRole.UserRole:
            return piece
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(here_sentence(self._document, cell))
        if role == Qt.ItemDataRole.AccessibleTextRole:
            # The first column says the row as a whole; the others what stands in them.
            said = self._text(piece, index.column())
            return here_sentence(self._document, cell) if index.column() == LEVEL else said
        return None

    def _text(self, piece: Piece, column: int) -> str:
        if column == LEVEL:
            return number(piece.at.y)
        if column == PLACE:
            return f"{number(piece.at.x)} {number(piece.at.z)}"
        if column == PART:
            return part_name(piece.part)
        if column == FACING:
            return str(piece.facing) if piece.part in TURNED else ""
        return self._state(piece)

    def _state(self, piece: Piece) -> str:
        shape = self._document.layout.shape(piece.at)
        if piece.part not in RAILS or shape is None:
            return ", ".join(set_on(piece))
        junction = self._document.junction
        is_known = junction is not None and not self._document.junction_is_old
        if is_known and junction is not None and piece.at in junction.switch_states:
            return tr("switch, {shape}", shape=shape.word)
        return tr(shape.word)

    def _make_anew(self) -> None:
        self.beginResetModel()
        pieces = self._document.plan.pieces if self._awake else ()
        self._keys = sorted(key_of(piece.at) for piece in self._matching(pieces))
        self.endResetModel()

    def _matching(self, pieces: Iterable[Piece]) -> Iterable[Piece]:
        if not self._words:
            return pieces
        parts = {part: part_name(part).casefold() for part in Part}
        return (piece for piece in pieces if self._has_words(piece, parts[piece.part]))

    def _has_words(self, piece: Piece, name: str) -> bool:
        figures = (str(piece.at.x), str(piece.at.y), str(piece.at.z))
        shape = self._document.layout.shape(piece.at)
        faces = tr(piece.facing) if piece.part in TURNED else ""
        said = f"{name} {faces} {'' if shape is None else tr(shape.word)}"
        return all(word in figures or word in said for word in self._words)

    def _follow(self, change: Change, reshaped: frozenset[Cell]) -> None:
        if not self._awake:
            return
        if len(change.taken) + len(change.placed) > ONE_BY_ONE:
            self._make_anew()
            return
        cells = change.cells | reshaped
        for cell in cells:
            piece = self._document.plan.pieces.get(cell)
            self._keep(cell, piece is not None and any(True for _ in self._matching((piece,))))
        self._tell(cells)

    def _tell(self, cells: frozenset[Cell]) -> None:
        """What stands in the rows of these cells is otherwise."""
        if len(cells) > ONE_BY_ONE:
            self._tell_all()
            return
        for cell in cells:
            row = self.row_of(cell)
            if row is not None:
                self.dataChanged.emit(self.index(row, 0), self.index(row, STATE))

    def _keep(self, cell: Cell, is_wanted: bool) -> None:
        """The row of a cell is there or not; the others stay, and so does the one that is chosen."""
        key = key_of(cell)
        row = bisect_left(self._keys, key)
        is_there = row < len(self._keys) and self._keys[row] == key
        if is_wanted and not is_there:
            self.beginInsertRows(ROOT, row, row)
            self._keys.insert(row, key)
            self.endInsertRows()
        elif is_there and not is_wanted:
            self.beginRemoveRows(ROOT, row, row)
            del self._keys[row]
            self.endRemoveRows()

    def _tell_all(self) -> None:
        """What stands in the rows may be otherwise; only the rows in sight are asked for again."""
        if self._keys:
            self.dataChanged.emit(self.index(0, 0), self.index(len(self._keys) - 1, STATE))
