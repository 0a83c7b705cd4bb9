"""*On this page*: every kind of piece on a level with its symbol and count, and how to read the page."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from PySide6.QtCore import QRectF

from app.canvas.symbols import Look, Stage, paint, paper
from app.canvas.symbols.lettering import em_for
from app.canvas.symbols.sheet_signs import draw_sign
from app.export.pencil import HAIR, LEGEND, RULER, SECTION, Align, Pencil
from app.icons import rest_look
from app.names import part_name
from app.sheet_signs import SIGN_WORDS
from app.translation import QT_TR_NOOP, tr
from model.grid import Facing
from model.parts import Part
from model.pieces import Piece
from model.sheet.levels import KeyRow, LevelPage, Sign

PADDING: Final = 5.0
HEADING_HEIGHT: Final = 13.0
TALLEST_ROW: Final = 9.3
NOTE_FEED: Final = 5.6


def draw_key(pencil: Pencil, area: QRectF, level: LevelPage, heading: str) -> None:
    """Heading, rows in one column or two, as there is room, and below them the sentences."""
    columns = 1 if area.height() > area.width() else 2
    notes_height = NOTE_FEED * len(level.notes) + 3
    width = (area.width() - (columns + 1) * PADDING) / columns
    per_column = max(1, -(-len(level.key) // columns))
    room = area.height() - HEADING_HEIGHT - notes_height
    row_height = min(TALLEST_ROW, room / per_column)
    left, top = area.left() + PADDING, area.top()
    pencil.text(left, top + 9.5, heading, SECTION, bold=True)
    for column in range(columns):
        right = left + column * (width + PADDING) + width
        rows = level.key[column * per_column : (column + 1) * per_column]
        if rows:
            pencil.text(right, top + 11, tr("pieces"), RULER, align=Align.RIGHT)
        for index, row in enumerate(rows):
            _draw_row(
                pencil,
                row,
                QRectF(right - width, top + HEADING_HEIGHT + index * row_height, width, row_height),
            )
    baseline = top + HEADING_HEIGHT + per_column * row_height + NOTE_FEED
    for note in level.notes:
        pencil.text(left, baseline, note, LEGEND, widest=area.width() - 2 * PADDING)
        baseline += NOTE_FEED


def _draw_row(pencil: Pencil, row: KeyRow, space: QRectF) -> None:
    side = min(7.2, space.height() - 1.2)
    middle = space.center().y()
    _draw_symbol(pencil, row, space.left(), middle - side / 2, side)
    high = min(LEGEND, 0.36 * space.height())
    baseline = middle + high / 2
    count = f"({row.pieces:,})" if row.of_these else f"{row.pieces:,}"
    indent = 14.0 if row.of_these and row.sign is not Sign.FACING else 11.0
    pencil.text(space.left() + indent, baseline, row_words(row), high, widest=space.width() - indent - 11)
    pencil.text(space.right(), baseline, count, high, bold=not row.of_these, align=Align.RIGHT)


def _draw_symbol(pencil: Pencil, row: KeyRow, x: float, y: float, side: float) -> None:
    stage = Stage(pencil.painter, x, y, paper(side), pencil.theme)
    if row.sample is None:
        draw_sign(stage, row.sign, em_for(RULER))
    else:
        paint(stage, sample_look(row.sample))
    pencil.box(QRectF(x, y, side, side), HAIR, pencil.theme.grid4)


def sample_look(piece: Piece) -> Look:
    """A kind of piece as tables show it: at rest, on its side where it hangs."""
    on_side = piece.part is Part.TORCH and piece.facing is not Facing.UP
    look = Look(Part.TORCH, Facing.NORTH) if on_side else rest_look(piece.part)
    return replace(look, mode=piece.mode)


def row_words(row: KeyRow) -> str:
    """What the row says."""
    if row.sample is None:
        return tr(SIGN_WORDS[row.sign])
    piece, name = row.sample, part_name(row.sample.part)
    if piece.part is Part.COMPARATOR:
        return f"{name}, {tr(piece.mode)}"
    if piece.part is Part.TORCH:
        text = QT_TR_NOOP("{name} on top") if piece.facing is Facing.UP else QT_TR_NOOP("{name} on a side")
        return tr(text, name=name)
    return tr("{name}, delay in ticks", name=name) if piece.part is Part.REPEATER else name
