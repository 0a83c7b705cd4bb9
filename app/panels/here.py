"""What lies in a cell, in words."""

from __future__ import annotations

from app.canvas.symbols.pieces import TURNED
from app.document import Document
from app.names import part_name
from app.panels.switches_model import switch_sentence
from model.grid import Cell
from model.parts import RAILS, Part
from model.pieces import Piece
from model.signals.containers import reading


def here_words(document: Document, cell: Cell) -> str:
    """A switch with its two shapes, a rail with its shape, another piece with what is set on it."""
    piece = document.plan.pieces.get(cell)
    if piece is None:
        return "nothing here"
    junction = document.junction
    if junction is not None and not document.junction_is_old:
        for switch in junction.switches:
            if switch.at == cell:
                return switch_sentence(switch)
    shape = document.layout.shape(cell)
    if piece.part in RAILS and shape is not None:
        return f"{part_name(piece.part).lower()}, {shape.word}"
    return ", ".join([part_name(piece.part).lower(), *_set_on(piece)])


def _set_on(piece: Piece) -> list[str]:
    said = [f"faces {piece.facing}"] if piece.part in TURNED else []
    if piece.part is Part.REPEATER:
        said.append(f"delay {piece.delay} ticks")
    if piece.part is Part.COMPARATOR:
        said.append(piece.mode.value)
    if piece.holds:
        held = ", ".join(f"{held.count} {held.item}" for held in piece.holds)
        said.append(f"holds {held}, reads {reading(piece)}")
    return said
